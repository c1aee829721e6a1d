import { solved } from '../state/studyStore.ts';

/** The sentences as written. This version does not check them, and says so. */
export function Sentences() {
  const sentences = solved.value?.study.sentences ?? [];
  if (sentences.length === 0) {
    return <p class="hint">The study has no sentences yet. Write them under “sentences” in study.yaml.</p>;
  }
  return (
    <ul class="sentences">
      {sentences.map((sentence) => (
        <li key={sentence.id}>
          <svg width="20" height="20" viewBox="0 0 20 20" aria-hidden="true">
            <circle cx="10" cy="10" r="8.4" class="unchecked-ring" />
          </svg>
          <div>
            <p class="say">{sentence.say}</p>
            <p class="state">Not checked by this version</p>
            {sentence.holds !== null && (
              <p class="test">
                Meant to hold: <code>{sentence.holds}</code>
              </p>
            )}
            {sentence.sources.length > 0 && <p class="test">Sources: {sentence.sources.join(', ')}</p>}
          </div>
        </li>
      ))}
    </ul>
  );
}
