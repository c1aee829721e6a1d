import { isEstimated } from '../state/estimates.ts';
import { solved } from '../state/studyStore.ts';

/** The question, and the short answer with its verdict first; paler while the engines below are others by an estimate. */
export function Question() {
  const study = solved.value;
  if (study === null) return <h1 class="question">Plumeline</h1>;
  const { answer } = study;
  return (
    <div class="asked">
      <h1 class={answer.question.length > 76 ? 'question long' : 'question'}>{answer.question}</h1>
      <p class={isEstimated.value ? 'answer before' : 'answer'}>
        {isEstimated.value && <span class="unseen">As it was before: </span>}
        <strong>{answer.shortAnswer.verdict}.</strong> {unbroken(answer.shortAnswer.text)}
      </p>
    </div>
  );
}

/** A number and its unit stay on one line. */
function unbroken(text: string): string {
  return text.replace(/(\d) (?=(?:%|s|km|m|mm|bar|kN|N|K)(?![a-z]))/g, '$1\u00a0');
}
