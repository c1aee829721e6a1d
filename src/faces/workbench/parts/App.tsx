import { useEffect } from 'preact/hooks';
import { liveRoute } from '../state/liveRoute.ts';
import { pairIsThere } from '../state/pair.ts';
import { redo, undo } from '../state/studySteps.ts';
import { outdated, solved } from '../state/studyStore.ts';
import { ConflictAsked } from './ConflictAsked.tsx';
import { Faults } from './Faults.tsx';
import { FigureView } from './FigureView.tsx';
import { FindBox } from './FindBox.tsx';
import { Foot } from './Foot.tsx';
import { Header } from './Header.tsx';
import { Ledger } from './Ledger.tsx';
import { Live } from './Live.tsx';
import { Question } from './Question.tsx';
import { RightColumn } from './RightColumn.tsx';
import { Stage } from './Stage.tsx';

export function App() {
  useEffect(() => {
    document.addEventListener('keydown', undoByKey);
    return () => document.removeEventListener('keydown', undoByKey);
  }, []);
  const settled = pairIsThere.value || outdated.value;
  useEffect(() => {
    if (settled) document.documentElement.dataset.ready = 'true';
  }, [settled]);
  return (
    <>
      {liveRoute.value === null ? <Workbench /> : <Live />}
      <FindBox />
      <FigureView />
    </>
  );
}

function Workbench() {
  return (
    <>
      <Header />
      <main class={outdated.value ? 'page outdated' : 'page'}>
        <Question />
        <Faults />
        <ConflictAsked />
        {solved.value !== null && (
          <>
            <Stage />
            <Ledger />
          </>
        )}
      </main>
      <RightColumn />
      <Foot />
    </>
  );
}

/** Ctrl+Z and Ctrl+Shift+Z (or Ctrl+Y) on the study, unless a field being edited wants them for itself. */
function undoByKey(event: KeyboardEvent): void {
  if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
  const key = event.key.toLowerCase();
  const back = key === 'z' && !event.shiftKey;
  const forth = (key === 'z' && event.shiftKey) || key === 'y';
  if (!back && !forth) return;
  if (wantsKeys(event.target)) return;
  event.preventDefault();
  void (back ? undo() : redo());
}

/** A field with something of its own to take back. */
function wantsKeys(field: EventTarget | null): boolean {
  if (field instanceof HTMLTextAreaElement) return true;
  if (!(field instanceof HTMLInputElement) || !['text', 'search'].includes(field.type)) return false;
  return field.dataset.changed !== 'false';
}
