import type { EnginesAnswer } from '../../../answer/model.ts';
import { answerParts } from '../state/answerNumbers.ts';
import { isEstimated } from '../state/estimates.ts';
import { awaitedShown } from '../state/pair.ts';
import { solved } from '../state/studyStore.ts';
import { TracedNumber } from './TracedNumber.tsx';

/** The question, and the short answer with its verdict first; paler while the engines below are others by an estimate. */
export function Question() {
  const study = solved.value;
  if (study === null) return <h1 class="question">Plumeline</h1>;
  const { answer } = study;
  const heading = (
    <h1 class={answer.question.length > 76 ? 'question long' : 'question'}>{answer.question}</h1>
  );
  if (answer.shortAnswer.verdict === '') {
    return (
      <div class="asked">
        {heading}
        <p class="answer before">{followsWords(awaitedShown.value)}</p>
      </div>
    );
  }
  return (
    <div class="asked">
      {heading}
      <p class={isEstimated.value ? 'answer before' : 'answer'}>
        {isEstimated.value && <span class="unseen">As it was before: </span>}
        <strong>
          <Told text={`${answer.shortAnswer.verdict}.`} answer={answer} />
        </strong>{' '}
        <Told text={answer.shortAnswer.text} answer={answer} />
      </p>
    </div>
  );
}

function followsWords(names: readonly string[]): string {
  if (names.length === 0) return 'The short answer follows …';
  return `${names.join(' and ')} ${names.length === 1 ? 'is' : 'are'} being worked out; the short answer follows …`;
}

/** Each of its numbers tells, when pressed, where it comes from. */
function Told({ text, answer }: { readonly text: string; readonly answer: EnginesAnswer }) {
  return (
    <>
      {answerParts(text, answer).map(({ text: words, card, mark }, i) =>
        card === null ? (
          unbroken(words)
        ) : (
          // A full stop does not go to the next line without its number.
          <span key={`${i} ${words}`} class="kept-together">
            <TracedNumber {...card} shown={unbroken(words)} label={`Short answer ${card.condition}`} />
            {mark}
          </span>
        ),
      )}
    </>
  );
}

/** A number and its unit stay on one line. */
function unbroken(text: string): string {
  return text.replace(/(\d) (?=(?:%|s|km|m|mm|bar|kN|N|K)(?![a-z]))/g, '$1\u00a0');
}
