import { useEffect, useLayoutEffect, useRef } from 'preact/hooks';
import { saveScript, scriptIsSaved, scriptShown, scriptWorking } from '../state/scriptStore.ts';
import { lineFaults } from '../state/writing/lineFaults.ts';
import { putIn } from '../state/writing/putIn.ts';
import { appended, inserted, startOfLine } from '../state/writing/scriptMarks.ts';
import { caret, isWriting, toPutIn } from '../state/writing/writing.ts';
import { ScriptField } from './ScriptField.tsx';
import { ScriptConflict, ScriptStanding, ScriptTrouble } from './ScriptHead.tsx';
import { ScriptScenes } from './ScriptScenes.tsx';

/** The script written over the whole page: its text, and beside it as it reads. */
export function ScriptWriting({ text }: { readonly text: string }) {
  const dialog = useRef<HTMLDialogElement>(null);
  const field = useRef<HTMLTextAreaElement>(null);
  useLayoutEffect(() => {
    dialog.current?.showModal();
    field.current?.focus();
  }, []);
  useEffect(() => {
    const [expression, element] = [toPutIn.value, field.current];
    if (expression === null || element === null) return;
    toPutIn.value = null;
    const { value } = element;
    const at = caret.value;
    putIn(
      element,
      at === null || at > value.length ? appended(value, expression) : inserted(value, at, expression),
    );
  }, [toPutIn.value]);
  const answer = scriptShown.value?.answer ?? null;
  const faults = answer === null ? [] : lineFaults(answer);
  return (
    <dialog
      ref={dialog}
      class="writing script"
      aria-label="The script being written"
      onClose={() => {
        void saveScript();
        isWriting.value = false;
      }}
    >
      <header class="writing-head">
        <p>
          {answer === null ? 'Being worked out …' : <ScriptStanding answer={answer} />}
          <span class="hint" role="status">
            {scriptIsSaved.value ? ' saved in script.md' : ' saving …'}
          </span>
        </p>
        <button type="button" class="plain-button" onClick={() => dialog.current?.close()}>
          Done
        </button>
      </header>
      <ScriptConflict />
      <ScriptTrouble />
      <div class="writing-sides">
        <section aria-label="Text">
          <ScriptField field={field} text={text} faults={faults} />
          <p class="hint">
            Scenes under ## headings, what is said in paragraphs, what is shown after &gt;. Two braces begin a
            live number: then plain words find it, such as {'{{thrust at the pad'}.
          </p>
          <ul class="script-problems">
            {faults.map(({ line, fails, words }) => (
              <li key={`${line} ${words}`} class={fails ? 'fault' : ''}>
                <button type="button" class="plain-button" onClick={() => goToLine(field.current, line)}>
                  Line {line}
                </button>{' '}
                {words}
              </li>
            ))}
          </ul>
        </section>
        <section aria-label="As it reads" class={scriptWorking.value ? 'reads working' : 'reads'}>
          {answer !== null && <ScriptScenes answer={answer} />}
        </section>
      </div>
    </dialog>
  );
}

function goToLine(field: HTMLTextAreaElement | null, line: number): void {
  if (field === null) return;
  const at = startOfLine(field.value, line);
  field.focus();
  field.setSelectionRange(at, at);
  caret.value = at;
}
