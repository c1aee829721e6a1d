import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { CheckedSentence } from '../../../answer/sentences/model.ts';
import { besideWords, untestedReasons, verdictLabel } from '../../../answer/sentences/words.ts';
import type { Outcome } from '../../../numerics/problem.ts';
import { capital } from '../../../study/capital.ts';
import type { SentenceDraft } from '../state/sentenceView.ts';
import { solved } from '../state/studyStore.ts';
import { askDesk, QuestionEnded } from '../workshop/desk.ts';
import { shareWords } from './shareWords.ts';
import { markOf, VerdictMark } from './VerdictMark.tsx';

/** A sentence is judged when nothing was typed for so long [ms]. */
const pause = 600;

/** What a sentence would be, while it is written; nothing is kept. */
export function DraftVerdict({ draft }: { readonly draft: SentenceDraft }) {
  const judged = useJudged(draft.say, draft.holds);
  return (
    <div role="status">
      {judged === 'being judged' && <p class="hint">being judged …</p>}
      {judged !== null && judged !== 'being judged' && <Judged judged={judged} />}
    </div>
  );
}

function Judged({ judged }: { readonly judged: Outcome<CheckedSentence | null> }) {
  if (!judged.ok) return <p class="hint">{`${judged.problem.what} ${judged.problem.mend}`}</p>;
  const sentence = judged.value;
  if (sentence === null) return null;
  const { share } = sentence;
  return (
    <div class="draft-verdict">
      <VerdictMark verdict={markOf(sentence)} />
      <div>
        <p class="state">
          <b>{capital(verdictLabel(sentence))}</b>
          {share !== null && `, ${shareWords(share)}`}
          <span class="first-look"> · provisional, on few draws; not kept yet</span>
        </p>
        {untestedReasons(sentence).map((words) => (
          <p key={words} class="aside-words">
            {words}
          </p>
        ))}
        <p class="beside">{besideWords(sentence)}</p>
      </div>
    </div>
  );
}

/** Null: there is nothing to judge. */
function useJudged(say: string, holds: string): Outcome<CheckedSentence | null> | 'being judged' | null {
  const found = useSignal<{ readonly of: string; readonly judged: Outcome<CheckedSentence | null> } | null>(
    null,
  );
  const study = solved.value?.study;
  const of = JSON.stringify([say.trim(), holds.trim()]);
  useEffect(() => {
    if (holds.trim() === '') return;
    const gone = new AbortController();
    const timer = setTimeout(() => {
      askDesk('judged', { say, holds }, gone.signal).then(
        (judged) => {
          found.value = { of, judged };
        },
        (error: unknown) => {
          if (!(error instanceof QuestionEnded)) reportError(error);
        },
      );
    }, pause);
    return () => {
      clearTimeout(timer);
      gone.abort();
    };
  }, [of, study]);
  if (holds.trim() === '') return null;
  return found.value?.of === of ? found.value.judged : 'being judged';
}
