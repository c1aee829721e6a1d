import { countWords } from '../../../answer/sentences/words.ts';
import { editDraft } from '../state/sentenceView.ts';
import { solved } from '../state/studyStore.ts';
import { checkedById, checking, checkProblem, checkProgress } from '../state/verdicts.ts';
import { Reported } from './Reported.tsx';
import { SentenceCard } from './SentenceCard.tsx';
import { SentenceEditor } from './SentenceEditor.tsx';

/** What is meant to be said, each sentence with its verdict; and a place to write more. */
export function Sentences() {
  const sentences = solved.value?.study.sentences ?? [];
  const draft = editDraft.value;
  return (
    <div class="sentences">
      <h2 class="unseen">Sentences you mean to say</h2>
      <p class="sentences-head">
        <span>{sentences.length === 0 ? 'No sentences yet' : <Standing />}</span>
        {draft === null && (
          <button
            type="button"
            class="plain-button"
            onClick={() => {
              editDraft.value = { was: null, say: '', holds: '', said: true };
            }}
          >
            Add a sentence
          </button>
        )}
      </p>
      {draft?.was === null && <SentenceEditor draft={draft} />}
      <ul>
        {sentences.map((sentence) =>
          draft?.was === sentence.id ? (
            <li key={sentence.id} class="being-edited">
              <SentenceEditor draft={draft} />
            </li>
          ) : (
            <SentenceCard key={sentence.id} sentence={sentence} />
          ),
        )}
      </ul>
      {sentences.length > 0 && (
        <p class="hint">
          The share says in how much of what is not known a sentence holds: inputs with ±, and the published
          errors of the models.
        </p>
      )}
      <Reported />
    </div>
  );
}

/** `5 safe to say, 1 say with care`, or how far the check has come. */
function Standing() {
  const problem = checkProblem.value;
  if (problem !== null) return <>{`Not checked: ${problem.what} ${problem.mend}`}</>;
  if (!checking.value) return <>{countWords([...checkedById.value.values()])}</>;
  const progress = checkProgress.value;
  return <>{progress === null ? 'Being checked …' : `Being checked, ${progress.done} of ${progress.of} …`}</>;
}
