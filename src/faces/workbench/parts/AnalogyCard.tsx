import type { CheckedAnalogy, CheckedBreak, CheckedLeg } from '../../../answer/analogies/model.ts';
import { verdictLabel } from '../../../answer/sentences/words.ts';
import { capital } from '../../../study/capital.ts';
import type { AnalogyInput } from '../../../study/model.ts';
import { analogiesJudged, analogiesProblem, judgedById } from '../state/verdicts.ts';
import { markOf, VerdictMark } from './VerdictMark.tsx';

/** A likeness from daily life: what it makes people believe, each part with what is found about it. */
export function AnalogyCard({ analogy }: { readonly analogy: AnalogyInput }) {
  const { id, say, said, stands, legs, holdsFor, breaksWhere } = analogy;
  const checked = judgedById.value.get(id) ?? null;
  return (
    <li class={analogiesJudged.value ? 'sentence' : 'sentence provisional'} id={`analogy-${id}`}>
      <VerdictMark verdict={markOf(checked)} />
      <div>
        <p class="say">{say}</p>
        <p class="state">{verdictWords(checked)}</p>
        {!said && <p class="aside-words">Kept to be discussed, not to be said.</p>}
        {checked !== null && <p class="beside">{besideOf(checked)}</p>}
        {stands.map((one) => (
          <p key={one.this} class="aside-words">
            {one.this} stands for {one.for}.
          </p>
        ))}
        {legs.map((leg, i) => (
          <p key={leg.say} class="aside-words">
            It makes people believe: {leg.say} {foundWords(checked?.legs[i])}
          </p>
        ))}
        <p class="aside-words">Holds for: {holdsFor}</p>
        {breaksWhere.map((one, i) => (
          <p key={one.say} class="aside-words">
            Breaks where: {one.say}
            {hereWords(checked?.breaksWhere[i])}
          </p>
        ))}
      </div>
    </li>
  );
}

/** `Say with care`, and how final that is. */
function verdictWords(checked: CheckedAnalogy | null) {
  const problem = analogiesProblem.value;
  if (problem !== null) return <b>{`Not checked: ${problem.what} ${problem.mend}`}</b>;
  if (checked === null) return <b>Being checked …</b>;
  return (
    <>
      <b>{capital(verdictLabel(checked))}</b>
      {!analogiesJudged.value && <span class="first-look"> · of before; being checked again</span>}
    </>
  );
}

/** Why, and where it may be said, what to add to it. */
const besideOf = ({ why, problem, wording }: CheckedAnalogy): string =>
  problem === null ? (wording ?? why) : `${why} ${problem.mend}`;

function foundWords(leg: CheckedLeg | undefined) {
  if (leg === undefined) return null;
  return (
    <>
      – <b>{leg.verdict}</b>. {leg.found}
    </>
  );
}

function hereWords(found: CheckedBreak | undefined): string {
  if (found === undefined || found.here === null) return '';
  return found.here ? ' – as in this study' : ' – not in this study';
}
