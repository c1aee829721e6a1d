import { countWords, untestedReasons, verdictLabel } from '../../../answer/sentences/words.ts';
import { namesSelected } from '../state/selected.ts';
import { showSentence } from '../state/sentenceView.ts';
import { solved } from '../state/studyStore.ts';
import { checkedById, checking, verdictChanges } from '../state/verdicts.ts';
import { shareWords } from './shareWords.ts';
import { markOf, VerdictMark } from './VerdictMark.tsx';

/** All verdicts in one row, in sight beside the inputs: what an edit does to them is seen at once. */
export function VerdictStrip() {
  const sentences = solved.value?.study.sentences ?? [];
  if (sentences.length === 0) return null;
  const changes = [...verdictChanges.value.values()];
  return (
    <section class="verdict-strip" aria-label="Verdicts of the sentences">
      <ul class={checking.value ? 'provisional' : ''}>
        {sentences.map(({ id, say, holds }) => {
          const checked = checkedById.value.get(id);
          const share = checked?.share ?? null;
          const words = [
            checked === undefined ? 'not checked yet' : verdictLabel(checked),
            ...(share === null ? [] : [shareWords(share)]),
            ...(checked === undefined ? [] : untestedReasons(checked)),
          ].join(', ');
          return (
            <li key={id} class={namesSelected(holds) ? 'marked' : ''}>
              <button
                type="button"
                title={`${say} – ${words}`}
                aria-label={`${say} ${words}. Show it`}
                onClick={() => showSentence(id)}
              >
                <VerdictMark verdict={markOf(checked ?? null)} />
              </button>
            </li>
          );
        })}
      </ul>
      {checkedById.value.size > 0 && <p class="counts">{countWords([...checkedById.value.values()])}</p>}
      <div role="status">
        {checking.value ? (
          <p class="hint">being checked …</p>
        ) : (
          changes.map(({ id, say, beforeWords, afterWords }) => (
            <p key={id} class="change">
              “{say}” {beforeWords} → {afterWords}
            </p>
          ))
        )}
      </div>
    </section>
  );
}
