/** The words of a live answer: a number, or the verdict of a sentence, and how sure. */

import { needsOf } from '../../../answer/asked/askProblem.ts';
import type { CheckedSentence } from '../../../answer/sentences/model.ts';
import { besideWords, verdictLabel } from '../../../answer/sentences/words.ts';
import { capital } from '../../../study/capital.ts';
import { altitude } from '../state/altitude.ts';
import { liveEntry } from '../state/live.ts';
import { liveJudged, liveSaid } from '../state/liveSaid.ts';
import { liveWords } from '../state/liveWords.ts';
import { airHere, altitudeText } from '../state/shown.ts';
import { solved } from '../state/studyStore.ts';
import { checkedById, checking, checkStage } from '../state/verdicts.ts';
import { shareWords } from './shareWords.ts';
import { markOf, VerdictMark } from './VerdictMark.tsx';

/** Size of a ± beside that of its number. */
const SMALLER = 0.33;

/** Behind a verdict that is not the last word. */
const SO_FAR = ' so far';

export function LiveNumberWords() {
  const { number, plusMinus, what, sure } = liveWords.value;
  return (
    <>
      <p
        class="live-number"
        style={{ '--signs': String(Math.max(4, number.length + SMALLER * plusMinus.length)) }}
      >
        <b>{number}</b> <span>{plusMinus}</span>
      </p>
      <p class="live-what">{what}</p>
      <p class="live-where">{whereWords()}</p>
      <p class="live-sure">{sure}</p>
      <Said />
    </>
  );
}

/** What may be said of the number, with its verdict. */
function Said() {
  const said = liveSaid.value;
  if (said === null) return null;
  const found = liveJudged.value;
  const judged = found?.ok ? found.value : null;
  return (
    <p class="live-said" role="status">
      {found?.ok === false ? (
        <span>
          not checked: “{said.say}” {found.problem.what}
        </span>
      ) : judged === null ? (
        <span>
          {found === null ? 'being checked' : 'not checked'}: “{said.say}”
        </span>
      ) : (
        <>
          <VerdictMark verdict={markOf(judged)} size={26} />
          <span>
            <b>{capital(verdictLabel(judged))}</b>: “{said.say}”{' '}
            {judged.share !== null && `It ${shareWords(judged.share)}, on few draws.`}
          </span>
        </>
      )}
    </p>
  );
}

/** A sentence of the study: its verdict large, the words, what is known of it, and what to say instead. */
export function LiveSentenceWords({ id }: { readonly id: string }) {
  const sentence = solved.value?.study.sentences.find((one) => one.id === id);
  if (sentence === undefined) {
    return <p class="live-what">The address names a sentence that this study does not have.</p>;
  }
  const checked = checkedById.value.get(id) ?? null;
  const label = checked === null ? 'being checked' : verdictLabel(checked);
  const isLast = checked === null || !checking.value;
  return (
    <>
      <p
        class={isLast ? 'live-number' : 'live-number not-last'}
        style={{ '--signs': String(label.length + (isLast ? 0 : SMALLER * SO_FAR.length)) }}
      >
        <b>{label}</b>
        {!isLast && <span>{SO_FAR}</span>}
      </p>
      <p class="live-what">“{sentence.say}”</p>
      <div class="live-sure" role="status">
        {checked !== null && <Known checked={checked} />}
      </div>
    </>
  );
}

function Known({ checked }: { readonly checked: CheckedSentence }) {
  const { share } = checked;
  return (
    <>
      <p class="live-said">
        <VerdictMark verdict={markOf(checked)} size={26} />
        <span>
          {share === null ? capital(checked.why) : `It ${shareWords(share)}.`}
          {checking.value &&
            (checkStage.value === null
              ? ' So it was before the last change; it is being checked again.'
              : ' A first look; still being checked.')}
        </span>
      </p>
      <p>{besideWords(checked)}</p>
    </>
  );
}

/** `12.0 km up, 0.19 bar of air`; empty where the number is the same everywhere. */
function whereWords(): string {
  const entry = liveEntry.value;
  if (entry === null || !needsOf(entry).ambient) return '';
  if (!Number.isFinite(altitude.value)) return 'in vacuum';
  return altitude.value === 0
    ? `at the pad, ${airHere.value} of air`
    : `${altitudeText.value} up, ${airHere.value} of air`;
}
