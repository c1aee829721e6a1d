import { useSignal } from '@preact/signals';
import { useEffect, useId, useRef } from 'preact/hooks';
import type { ExpressionProblem } from '../../../answer/expression/model.ts';
import { engineInputs } from '../state/pair.ts';
import { removeSentence, saveSentence } from '../state/sentenceEdits.ts';
import { editDraft, openSentence, type SentenceDraft } from '../state/sentenceView.ts';
import { askDesk, QuestionEnded } from '../workshop/desk.ts';
import { DraftVerdict } from './DraftVerdict.tsx';

/** A test is looked at when nothing was typed for so long [ms]. */
const pause = 200;

/** Words and test of one sentence; a wrong test is told beside its field before anything runs. */
export function SentenceEditor({ draft }: { readonly draft: SentenceDraft }) {
  const id = useId();
  const words = useRef<HTMLTextAreaElement>(null);
  const refused = useSignal<string | null>(null);
  const problem = useTestProblem(draft.holds);
  const [one = 'bell', other = one] = engineInputs.value.map((engine) => engine.id);
  useEffect(() => words.current?.focus(), [draft.was]);
  const set = (change: Partial<SentenceDraft>) => {
    refused.value = null;
    editDraft.value = { ...draft, ...change };
  };
  const cancel = () => {
    editDraft.value = null;
  };
  async function save() {
    const problems = await saveSentence(draft);
    if (problems.length > 0) refused.value = problems.map(({ what, mend }) => `${what} ${mend}`).join(' ');
    else editDraft.value = null;
  }
  return (
    <form
      class="editor"
      aria-label={draft.was === null ? 'New sentence' : 'Change a sentence'}
      onSubmit={(event) => {
        event.preventDefault();
        if (problem === null) save().catch(reportError);
      }}
      onKeyDown={(event) => {
        if (event.key === 'Escape') cancel();
      }}
    >
      <label for={`${id}-say`}>Words to be said</label>
      <textarea
        ref={words}
        id={`${id}-say`}
        rows={3}
        value={draft.say}
        onInput={(event) => set({ say: event.currentTarget.value })}
      />
      <label for={`${id}-holds`}>Test that decides them</label>
      <textarea
        id={`${id}-holds`}
        class="test-field"
        rows={3}
        spellcheck={false}
        value={draft.holds}
        aria-invalid={problem !== null}
        {...(problem === null ? {} : { 'aria-describedby': `${id}-problem` })}
        onInput={(event) => set({ holds: event.currentTarget.value })}
      />
      <div role="alert">
        {problem !== null && <TestProblem id={`${id}-problem`} text={draft.holds} problem={problem} />}
        {refused.value !== null && <p class="fault">{refused.value}</p>}
      </div>
      <DraftVerdict draft={draft} />
      <label class="tick">
        <input
          type="checkbox"
          checked={draft.said}
          onChange={(event) => set({ said: event.currentTarget.checked })}
        />
        Meant to be said (else kept to be discussed)
      </label>
      <p class="actions">
        <button type="submit" class="main-button" disabled={draft.say.trim() === '' || problem !== null}>
          Keep in the study
        </button>
        <button type="button" class="plain-button" onClick={cancel}>
          Cancel
        </button>
        {draft.was !== null && <RemoveButton id={draft.was} />}
      </p>
      <p class="hint">
        A test compares numbers, for example <code>{one}.thrust(0 km) &gt; 600 kN</code> or{' '}
        <code>{other}.specificImpulse(vacuum) is about 350 s</code>.
      </p>
    </form>
  );
}

function RemoveButton({ id }: { readonly id: string }) {
  return (
    <button
      type="button"
      class="plain-button"
      onClick={() => {
        editDraft.value = null;
        openSentence.value = null;
        removeSentence(id).catch(reportError);
      }}
    >
      Remove
    </button>
  );
}

interface TestProblemProps {
  readonly id: string;
  readonly text: string;
  readonly problem: ExpressionProblem;
}

/** What is wrong, and the part of the test it is about. */
function TestProblem({ id, text, problem }: TestProblemProps) {
  const { start, end, what, mend } = problem;
  const part = text.slice(start, Math.max(end, start + 1));
  return (
    <p class="fault" id={id}>
      At sign {start + 1}
      {part.trim() === '' ? '' : `, “${part.trim()}”`}: {what} {mend}
    </p>
  );
}

/** What is wrong with a test as it stands; null while it is looked at, and where nothing is. */
function useTestProblem(holds: string): ExpressionProblem | null {
  const found = useSignal<{ readonly text: string; readonly problem: ExpressionProblem | null } | null>(null);
  useEffect(() => {
    const text = holds.trim();
    if (text === '') {
      found.value = null;
      return;
    }
    const gone = new AbortController();
    const timer = setTimeout(() => {
      // Offsets are told of the text as it stands in the field.
      askDesk('test', { text: holds }, gone.signal).then(
        (problem) => {
          found.value = { text: holds, problem };
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
  }, [holds]);
  return found.value?.text === holds ? found.value.problem : null;
}
