import { answerParts } from '../state/answerNumbers.ts';
import { isEstimated } from '../state/estimates.ts';
import { awaitedShown } from '../state/pair.ts';
import { solved } from '../state/studyStore.ts';
import { ToldText } from './ToldText.tsx';

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
          <ToldText parts={answerParts(`${answer.shortAnswer.verdict}.`, answer)} of="Short answer" />
        </strong>{' '}
        <ToldText parts={answerParts(answer.shortAnswer.text, answer)} of="Short answer" />
      </p>
    </div>
  );
}

function followsWords(names: readonly string[]): string {
  if (names.length === 0) return 'The short answer follows …';
  return `${names.join(' and ')} ${names.length === 1 ? 'is' : 'are'} being worked out; the short answer follows …`;
}
