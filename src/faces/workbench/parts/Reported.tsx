import type { AnalogyInput, ReportedFact, SourceInput } from '../../../study/model.ts';
import { solved } from '../state/studyStore.ts';
import { VerdictMark } from './VerdictMark.tsx';

/** Facts that no computation decides, and likenesses from daily life, as the study has them. */
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
          <Analogy key={analogy.id} analogy={analogy} />
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

function Analogy({ analogy }: { readonly analogy: AnalogyInput }) {
  const { say, stands, legs, holdsFor, breaksWhere } = analogy;
  return (
    <li class="sentence">
      <VerdictMark verdict="not checked" />
      <div>
        <p class="say">{say}</p>
        <p class="state">
          <b>A likeness; its parts are not tested on this page</b>
        </p>
        {stands.map((one) => (
          <p key={one.this} class="aside-words">
            {one.this} stands for {one.for}.
          </p>
        ))}
        {legs.map((leg) => (
          <p key={leg.say} class="aside-words">
            It makes people believe: {leg.say}
          </p>
        ))}
        <p class="aside-words">Holds for: {holdsFor}</p>
        {breaksWhere.map((one) => (
          <p key={one.say} class="aside-words">
            Breaks where: {one.say}
          </p>
        ))}
      </div>
    </li>
  );
}
