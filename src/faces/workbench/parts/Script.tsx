import { useSignal } from '@preact/signals';
import { clock } from '../../../telling/script/clock.ts';
import type { ScriptAnswer } from '../../../telling/script/scriptAnswer.ts';
import { saveReadingPage } from '../state/readingDownload.ts';
import { recordNumbers, scriptCut, scriptIsRead, scriptShown, scriptText } from '../state/scriptStore.ts';
import { studyName } from '../state/studyStore.ts';
import { isWriting } from '../state/writing/writing.ts';
import { ReadingView } from './ReadingView.tsx';
import { ScriptConflict, ScriptStanding, ScriptTrouble } from './ScriptHead.tsx';
import { ScriptScenes } from './ScriptScenes.tsx';
import { ScriptWriting } from './ScriptWriting.tsx';

/** The script: read with its numbers and flags, written as text, and read aloud. */
export function Script() {
  const isReading = useSignal(false);
  const text = scriptText.value;
  const shown = scriptShown.value;
  if (!scriptIsRead.value) return <ScriptTrouble />;
  if (text === null && !isWriting.value) {
    return (
      <div class="script">
        <p>The study has no script yet.</p>
        <button
          type="button"
          class="main-button"
          onClick={() => {
            isWriting.value = true;
          }}
        >
          Write one
        </button>
      </div>
    );
  }
  return (
    <div class="script">
      <h2 class="unseen">Script</h2>
      <p class="script-head">
        <span>
          {shown === null ? 'Its numbers are being worked out …' : <ScriptStanding answer={shown.answer} />}
        </span>
      </p>
      <p class="actions">
        <button
          type="button"
          class="plain-button"
          onClick={() => {
            isWriting.value = true;
          }}
        >
          Write
        </button>
        {shown !== null && (
          <>
            <button
              type="button"
              class="plain-button"
              onClick={() => {
                isReading.value = true;
              }}
            >
              Read aloud
            </button>
            <button
              type="button"
              class="plain-button"
              title="One file that a tablet opens without a network"
              onClick={() => {
                saveReadingPage(shown.answer, studyName.value).catch(reportError);
              }}
            >
              Save to read elsewhere
            </button>
            <button type="button" class="plain-button" onClick={() => void recordNumbers()}>
              Record its numbers
            </button>
            <CutChoice answer={shown.answer} />
          </>
        )}
      </p>
      <ScriptConflict />
      <ScriptTrouble />
      {shown === null ? (
        <p class="script-as-written">{spokenPart(text ?? '')}</p>
      ) : (
        <ScriptScenes answer={shown.answer} />
      )}
      {isWriting.value && <ScriptWriting text={text ?? ''} />}
      {isReading.value && shown !== null && (
        <ReadingView
          answer={shown.answer}
          onClose={() => {
            isReading.value = false;
          }}
        />
      )}
    </div>
  );
}

/** What is said and shown, without the settings at its head and what is noted for writers. */
function spokenPart(text: string): string {
  return text
    .replace(/^---\n[\s\S]*?\n---\n/, '')
    .replace(/<!--[\s\S]*?-->\n*/g, '')
    .replace(/\{\{[^}]*\}\}/g, '…')
    .replace(/\s*\{#[^}]*\}/g, '')
    .replace(/^(#+|>)\s*/gm, '')
    .replace(/([^\n])\n(?!\n)/g, '$1 ')
    .trim();
}

function CutChoice({ answer }: { readonly answer: ScriptAnswer }) {
  if (answer.cuts.length === 0) return null;
  return (
    <label>
      Cut{' '}
      <select
        value={answer.cut?.name ?? ''}
        onChange={(event) => {
          scriptCut.value = event.currentTarget.value || null;
        }}
      >
        <option value="">whole</option>
        {answer.cuts.map(({ name, length }) => (
          <option key={name} value={name}>{`${name}, ${clock(length)}`}</option>
        ))}
      </select>
    </label>
  );
}
