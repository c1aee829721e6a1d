import type { AnswerNumber } from '../../../telling/script/scriptAnswer.ts';
import { setAltitude } from '../state/altitude.ts';
import { kilometresOf, namedIn } from '../state/namedIn.ts';
import { namesSelected, ownerIds } from '../state/selected.ts';
import { showCard } from '../state/view.ts';
import { isWriting } from '../state/writing/writing.ts';

/** A live number of the script: pressed, it tells where it comes from, and every view shows what it is of. */
export function ScriptNumber({ number }: { readonly number: AnswerNumber }) {
  const { expression, text, problem } = number;
  const named = namedIn(expression, ownerIds.value);
  const [first] = named;
  const isMarked = namesSelected(expression);
  const looks = `script-number${problem === null ? '' : ' absent'}${isMarked ? ' marked' : ''}`;
  if (first === undefined || isWriting.value) {
    return (
      <span class={looks} title={expression}>
        {text}
      </span>
    );
  }
  const show = (): void => {
    const here = kilometresOf(first.place);
    if (here !== null) setAltitude(here);
    showCard({
      quantity: first.quantity,
      engine: first.owner,
      shown: text,
      condition: `in the script: ${expression}`,
      expression,
    });
  };
  return (
    <button type="button" class={`number ${looks}`} title={expression} onClick={show}>
      {text}
    </button>
  );
}
