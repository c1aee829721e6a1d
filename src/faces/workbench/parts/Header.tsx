import {
  canRedo,
  canUndo,
  redo,
  type SaveState,
  saveState,
  solving,
  studyName,
  undo,
} from '../state/studyStore.ts';
import { theme, toggleTheme } from '../state/view.ts';

const saveWords: Readonly<Record<SaveState, string>> = {
  saved: 'saved in study.yaml',
  saving: 'saving …',
  reloaded: 'study.yaml was changed elsewhere; shown as it is now',
  failed: 'not saved',
};

export function Header() {
  return (
    <header>
      <strong class="mark">Plumeline</strong>
      <span>{studyName}</span>
      <span class="hint" role="status">
        {solving.value ? 'working it out …' : saveWords[saveState.value]}
      </span>
      <div class="tools">
        <button type="button" disabled={!canUndo.value} onClick={() => void undo()}>
          Undo
        </button>
        <button type="button" disabled={!canRedo.value} onClick={() => void redo()}>
          Redo
        </button>
        <button type="button" onClick={toggleTheme}>
          {theme.value === 'dark' ? 'Light' : 'Dark'}
        </button>
      </div>
    </header>
  );
}
