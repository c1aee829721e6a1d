import type { ReportedFact, SourceInput } from '../../../study/model.ts';
import { solved } from '../state/studyStore.ts';
import { AnalogyCard } from './AnalogyCard.tsx';
import { VerdictMark } from './VerdictMark.tsx';

/** Facts that no computation decides, and likenesses from daily life with what of them is so. */
export function Reported() {
  const study = solved.value?.study;
  if (study === undefined || study.facts.length + study.analogies.length === 0) return null;
  return (
    <>
      {study.facts.length > 0 && <h3>Reported facts</h3>}
      <ul>
        {study.facts.map((fact) => (
          <Fact key={fact.id} fact={fact} sources={study.sources} />
        ))}
      </ul>
      {study.analogies.length > 0 && <h3>Likenesses</h3>}
      <ul>
        {study.analogies.map((analogy) => (
          <AnalogyCard key={analogy.id} analogy={analogy} />
        ))}
      </ul>
    </>
  );
}

function Fact({ fact, sources }: { readonly fact: ReportedFact; readonly sources: readonly SourceInput[] }) {
  const { say, value, at, disagree } = fact;
  const cited = [...fact.sources, ...(disagree?.values.map(({ source }) => source) ?? [])];
  const told = [value?.text, at].filter((words) => words !== undefined && words !== null).join(', ');
  return (
    <li class="sentence">
      <VerdictMark verdict="reported" />
      <div>
        <p class="say">{say}</p>
        <p class="state">
          <b>Reported, not computed</b>
          {told !== '' && `: ${told}`}
        </p>
        {disagree !== null && (
          <p class="aside-words">
            Sources disagree: {disagree.values.map((one) => `${one.value.text} (${one.source})`).join(', ')}.{' '}
            {disagree.values[disagree.chosen - 1]?.value.text} is followed: {disagree.because}
          </p>
        )}
        <p class="aside-words">
          {cited.length === 0
            ? 'It has no source, and should not be said without one.'
            : `Source: ${[...new Set(cited)].map((id) => citation(id, sources)).join('; ')}`}
        </p>
      </div>
    </li>
  );
}

function citation(id: string, sources: readonly SourceInput[]): string {
  const source = sources.find((one) => one.id === id);
  if (source === undefined) return `${id}, which is none of the study’s sources`;
  return [source.author, source.title, source.year].filter((part) => part !== null).join(', ');
}
