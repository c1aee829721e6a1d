import type { StudyProblem } from '../../../study/model.ts';
import { stopWords } from '../state/standing.ts';
import { faults, solved, trouble } from '../state/studyStore.ts';

/** What is wrong with the study as a whole: said above the picture, which stays as it was, greyed. */
export function Faults() {
  const stopped = trouble.value;
  if (stopped !== null) {
    return (
      <section class="faults" role="alert">
        <h2>{stopWords}</h2>
        <p>
          {stopped.what} {stopped.mend}
        </p>
      </section>
    );
  }
  const found = faults.value;
  if (found.length === 0) return null;
  return (
    <section class="faults" role="alert">
      <h2>
        {found.length === 1 ? 'A fault' : `${found.length} faults`} in study.yaml
        {solved.value !== null && '; the picture shows the last study without faults'}
      </h2>
      <ul>
        {found.map((fault) => (
          <li key={`${fault.path}${fault.code}${placeWords(fault)}`}>
            <code>{placeWords(fault)}</code> {fault.what} {fault.mend}
          </li>
        ))}
      </ul>
    </section>
  );
}

function placeWords({ place, path }: StudyProblem): string {
  if (place === null) return path;
  return `line ${place.line}, column ${place.column}`;
}
