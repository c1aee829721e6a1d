import { useEffect, useRef } from 'preact/hooks';
import type { CheckedSentence } from '../../../answer/sentences/model.ts';
import { besideWords, untestedReasons, verdictLabel } from '../../../answer/sentences/words.ts';
import { capital } from '../../../study/capital.ts';
import type { SentenceInput } from '../../../study/model.ts';
import { namesSelected } from '../state/selected.ts';
import { editDraft, openSentence } from '../state/sentenceView.ts';
import { checkedById, checking, checkStage, verdictChanges } from '../state/verdicts.ts';
import { SentenceDetails } from './SentenceDetails.tsx';
import { ShareBar } from './ShareBar.tsx';
import { shareWords } from './shareWords.ts';
import { markOf, VerdictMark } from './VerdictMark.tsx';

/** One sentence: mark, words, share, verdict, and what to say; pressed, all that stands behind it. */
export function SentenceCard({ sentence }: { readonly sentence: SentenceInput }) {
  const { id, say, holds, said } = sentence;
  const checked = checkedById.value.get(id) ?? null;
  const open = openSentence.value === id;
  const place = useRef<HTMLLIElement>(null);
  // Asked for from elsewhere on the page, it comes into sight.
  useEffect(() => {
    if (open) place.current?.scrollIntoView({ block: 'nearest' });
  }, [open]);
  return (
    <li
      class={`sentence${checking.value ? ' provisional' : ''}${namesSelected(holds) ? ' marked' : ''}`}
      id={`sentence-${id}`}
      ref={place}
    >
      <VerdictMark verdict={markOf(checked)} />
      <div>
        <button
          type="button"
          class="say"
          aria-expanded={open}
          onClick={() => {
            openSentence.value = open ? null : id;
          }}
        >
          {say}
        </button>
        {checked?.share !== null && checked !== null && <ShareBar share={checked.share} />}
        <p class="state">{verdictWords(checked, holds)}</p>
        {checked !== null &&
          untestedReasons(checked).map((words) => (
            <p key={words} class="aside-words">
              {words}
            </p>
          ))}
        {!said && <p class="aside-words">Kept to be discussed, not to be said.</p>}
        <Change id={id} />
        {checked !== null && holds !== null && <p class="beside">{besideWords(checked)}</p>}
        {open && checked !== null && <SentenceDetails sentence={checked} />}
        {open && (
          <p class="actions">
            <button
              type="button"
              class="plain-button"
              onClick={() => {
                editDraft.value = { was: id, say, holds: holds ?? '', said };
              }}
            >
              Change words or test
            </button>
          </p>
        )}
      </div>
    </li>
  );
}

/** `Safe to say, holds in 97 % of what is not known`, and how final that is. */
function verdictWords(checked: CheckedSentence | null, holds: string | null) {
  if (holds === null) return <b>No test stands beside the words</b>;
  if (checked === null) return <b>Being checked …</b>;
  const { share } = checked;
  return (
    <>
      <b>{capital(verdictLabel(checked))}</b>
      {share !== null && `, ${shareWords(share)}`}
      {checking.value && <span class="first-look"> · {provisionalWords()}</span>}
    </>
  );
}

function provisionalWords(): string {
  return checkStage.value === 'first look' ? 'provisional' : 'of before; being checked again';
}

/** What the last edit did to it. */
function Change({ id }: { readonly id: string }) {
  const change = verdictChanges.value.get(id);
  if (change === undefined || change.before === null || change.after === null) return null;
  return (
    <p class="change">
      Changed by the last edit: {change.beforeWords} → {change.afterWords}
    </p>
  );
}
