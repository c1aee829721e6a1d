import { standing } from '../state/standing.ts';
import { canRedo, canUndo, redo, studyName, undo } from '../state/studyStore.ts';
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
