import { mapFindings, sweepFindings } from '../../../answer/sweeps/findings.ts';
import { TRIAL } from '../state/ownSweeps.ts';
import { keepSweep } from '../state/sweepKept.ts';
import {
  cancelSweep,
  chosenSweep,
  found,
  ownOnes,
  progress,
  shownSweep,
  sweepProblem,
} from '../state/sweepTrial.ts';
import { Choice } from './Choice.tsx';
import { isMap, SweepChart } from './SweepChart.tsx';
import { SweepTried } from './SweepTried.tsx';

/** A place to try: any quantity of the engines shown, or of a flight, against any input. */
export function Sweeps() {
  const sweep = found.value;
  const problem = sweepProblem.value;
  const own = ownOnes.value;
  const isOwn = shownSweep.value !== null;
  return (
    <div class="sweeps">
      <h2 class="unseen">Sweeps</h2>
      {own.length > 0 && (
        <Choice
          label="Show"
          value={shownSweep.value ?? TRIAL}
          choose={(key) => {
            chosenSweep.value = key;
          }}
        >
          <option value={TRIAL}>one to try out</option>
          {own.map(({ key, words }) => (
            <option key={key} value={key}>
              {words}
            </option>
          ))}
        </Choice>
      )}
      {!isOwn && <SweepTried />}
      <Progress />
      {problem !== null && (
        <p class="fault">
          {problem.what} {problem.mend}
        </p>
      )}
      {sweep !== null && (
        <>
          <SweepChart found={sweep} />
          <ul class="findings">
            {(isMap(sweep) ? mapFindings(sweep) : sweepFindings(sweep)).map((words) => (
              <li key={words}>{words}</li>
            ))}
          </ul>
          {sweep.held.short !== '' && <p class="hint">{sweep.held.short}</p>}
          {!isOwn && (
            <p class="actions">
              <button type="button" class="plain-button" onClick={() => void keepSweep().catch(reportError)}>
                Keep in the study
              </button>
            </p>
          )}
        </>
      )}
    </div>
  );
}

/** How far it has come, with a way to stop. */
function Progress() {
  const so = progress.value;
  return (
    <p class="sweep-progress" role="status">
      {so !== null && (
        <>
          {`${so.done} of at most ${so.most} points `}
          <button type="button" class="plain-button" onClick={cancelSweep}>
            Stop
          </button>
        </>
      )}
    </p>
  );
}
