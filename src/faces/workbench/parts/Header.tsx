import { openFind } from '../state/find/findBox.ts';
import { standing } from '../state/standing.ts';
import { redoWords, undoWords } from '../state/studyHistory.ts';
import { redo, undo } from '../state/studySteps.ts';
import { studyName } from '../state/studyStore.ts';
import { theme, toggleTheme } from '../state/view.ts';

export function Header() {
  return (
    <header>
      <strong class="mark">Plumeline</strong>
      <span>{studyName}</span>
      <span class="hint" role="status">
        {standing}
      </span>
      <div class="tools">
        <button
          type="button"
          class="find-button"
          aria-haspopup="dialog"
          aria-keyshortcuts="Control+K /"
          onClick={openFind}
        >
          Find <kbd>Ctrl K</kbd>
        </button>
        <StepButton name="Undo" words={undoWords.value} step={undo} />
        <StepButton name="Redo" words={redoWords.value} step={redo} />
        <button type="button" onClick={toggleTheme}>
          {theme.value === 'dark' ? 'Light' : 'Dark'}
        </button>
      </div>
    </header>
  );
}

interface StepButtonProps {
  readonly name: string;
  /** What it would step over. */ readonly words: string | null;
  readonly step: () => Promise<void>;
}

function StepButton({ name, words, step }: StepButtonProps) {
  return (
    <button
      type="button"
      disabled={words === null}
      {...(words === null ? {} : { title: `${name}: ${words}` })}
      onClick={() => void step()}
    >
      {name}
    </button>
  );
}
