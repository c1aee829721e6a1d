import { useSignal } from '@preact/signals';
import { clock } from '../../../telling/script/clock.ts';
import type { ScriptAnswer } from '../../../telling/script/scriptAnswer.ts';
import { saveReadingPage } from '../state/readingDownload.ts';
import {
  recordNumbers,
  saveScript,
  scriptConflict,
  scriptCut,
  scriptIsRead,
  scriptShown,
  scriptText,
  scriptTrouble,
  scriptWorking,
  settleScript,
  writeScript,
} from '../state/scriptStore.ts';
import { studyName } from '../state/studyStore.ts';
import { ReadingView } from './ReadingView.tsx';
import { ScriptScenes } from './ScriptScenes.tsx';

/** The script: read with its numbers and flags, written as text, and read aloud. */
export function Script() {
  const isWritten = useSignal(false);
  const isReading = useSignal(false);
  const text = scriptText.value;
  const shown = scriptShown.value;
  if (!scriptIsRead.value) return <Trouble />;
  if (text === null && !isWritten.value) {
    return (
      <div class="script">
        <p>The study has no script yet.</p>
        <button
          type="button"
          class="main-button"
          onClick={() => {
            isWritten.value = true;
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
        <span>{shown === null ? 'Being worked out …' : <Standing answer={shown.answer} />}</span>
      </p>
      <p class="actions">
        <button
          type="button"
          class="plain-button"
          aria-pressed={isWritten.value}
          onClick={() => {
            void saveScript();
            isWritten.value = !isWritten.value;
          }}
        >
          {isWritten.value ? 'Done' : 'Write'}
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
      <Conflict />
      <Trouble />
      {isWritten.value ? (
        <Editor text={text ?? ''} />
      ) : (
        shown !== null && <ScriptScenes answer={shown.answer} />
      )}
      {isWritten.value && shown !== null && <ScriptProblems answer={shown.answer} />}
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

function Standing({ answer }: { readonly answer: ScriptAnswer }) {
  const failing = answer.flags.filter(({ fails }) => fails).length;
  const looks = answer.flags.length - failing;
  return (
    <>
      {`${clock(answer.seconds)}, ${answer.words} words; ${failing === 0 ? 'nothing that is said fails' : `${failing} not to be said so`}, ${looks} to look at`}
      {scriptWorking.value && ' …'}
    </>
  );
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

function Editor({ text }: { readonly text: string }) {
  return (
    <>
      <label for="script-text" class="unseen">
        Text of script.md
      </label>
      <textarea
        id="script-text"
        class="script-text"
        rows={30}
        spellcheck
        value={text}
        onInput={(event) => writeScript(event.currentTarget.value)}
        onBlur={() => void saveScript()}
      />
      <p class="hint">
        Scenes under ## headings, what is said in paragraphs, what is shown after &gt;, live numbers in double
        braces, e.g. {'{{bell.thrust(pad) in kN, about}}'}.
      </p>
    </>
  );
}

/** What cannot be read of the text, with its line. */
function ScriptProblems({ answer }: { readonly answer: ScriptAnswer }) {
  return (
    <ul class="script-problems">
      {answer.problems.map(({ what, mend, place }) => (
        <li key={`${place?.line}:${place?.column}:${what}`} class="fault">
          {`Line ${place?.line ?? 1}: ${what} ${mend}`}
        </li>
      ))}
    </ul>
  );
}

function Conflict() {
  if (scriptConflict.value === null) return null;
  return (
    <div role="alert" class="fault">
      <p>The script was changed elsewhere while you wrote here.</p>
      <p class="actions">
        <button type="button" class="plain-button" onClick={() => void settleScript(true)}>
          Keep mine
        </button>
        <button type="button" class="plain-button" onClick={() => void settleScript(false)}>
          Take theirs
        </button>
      </p>
    </div>
  );
}

function Trouble() {
  const problem = scriptTrouble.value;
  return problem === null ? null : <p role="alert" class="fault">{`${problem.what} ${problem.mend}`}</p>;
}
