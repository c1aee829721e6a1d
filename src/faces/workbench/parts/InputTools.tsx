import { copyEdits, lineBack } from '../state/inputEdits.ts';
import type { InputLine } from '../state/inputLines.ts';
import { locks, toggleLock } from '../state/inputLocks.ts';
import { commitEdits } from '../state/studyEdits.ts';
import type { ValueEdit } from '../workshop/messages.ts';

interface InputToolsProps {
  readonly line: InputLine;
  /** Told what kept a copy or a way back from being written; null when nothing did. */
  readonly onRefusal: (words: string | null) => void;
}

/** What can be done with a line as a whole: lock it, copy one way or the other, take it back. */
export function InputTools({ line, onRefusal }: InputToolsProps) {
  const { key, label, cells } = line;
  const back = lineBack(line);
  const isLocked = locks.value.has(key);
  const [first, second] = cells;
  const isPair =
    first?.row !== undefined && second?.row !== undefined && !first.row.fixed && !second.row.fixed;
  const name = label.toLowerCase();
  const write = (edits: readonly ValueEdit[]): void => {
    commitEdits(edits).then(([problem]) => {
      onRefusal(problem === undefined ? null : `${problem.what} ${problem.mend}`);
    }, reportError);
  };
  return (
    <div class={isLocked ? 'input-tools locked' : 'input-tools'}>
      {isPair && (
        <>
          <button
            type="button"
            aria-pressed={isLocked}
            aria-label={`Lock ${name} of both together`}
            title={isLocked ? lockedWords(line) : 'Lock together: a change goes to both'}
            onClick={() => toggleLock(key)}
          >
            <Icon d={isLocked ? closedLock : openLock} />
          </button>
          <CopyTool line={line} from={first} to={second} arrow={rightArrow} write={write} />
          <CopyTool line={line} from={second} to={first} arrow={leftArrow} write={write} />
        </>
      )}
      {back !== null && (
        <button
          type="button"
          aria-label={`Take ${name} back to ${back.words}`}
          title={`Back to what it was when this page opened the study: ${back.words}`}
          onClick={() => write(back.edits)}
        >
          <Icon d={backArrow} />
        </button>
      )}
    </div>
  );
}

const lockedWords = ({ stands }: InputLine): string =>
  stands === 'differs' ? 'Locked: the next change sets both' : 'Locked: a change goes to both';

interface CopyToolProps {
  readonly line: InputLine;
  readonly from: InputLine['cells'][number];
  readonly to: InputLine['cells'][number];
  readonly arrow: string;
  readonly write: (edits: readonly ValueEdit[]) => void;
}

function CopyTool({ line, from, to, arrow, write }: CopyToolProps) {
  const edits = copyEdits(line, from);
  const words = `Copy ${from.row?.text ?? ''} of ${from.engine.input.name} to ${to.engine.input.name}`;
  return (
    <button
      type="button"
      disabled={edits.length === 0}
      aria-label={`${line.label}: ${words}`}
      title={words}
      onClick={() => write(edits)}
    >
      <Icon d={arrow} />
    </button>
  );
}

function Icon({ d }: { readonly d: string }) {
  return (
    <svg width="16" height="16" viewBox="0 0 16 16" aria-hidden="true">
      <path class="icon-line" d={d} />
    </svg>
  );
}

const closedLock = 'M3.5 7.5h9v6h-9zM5.5 7.5V5a2.5 2.5 0 0 1 5 0v2.5M8 10v1.4';
const openLock = 'M3.5 7.5h9v6h-9zM5.5 7.5V4.4a2.5 2.5 0 0 1 4.9 -.7';
const rightArrow = 'M2.5 8h10.5M9.2 4.2L13 8l-3.8 3.8';
const leftArrow = 'M13.5 8H3M6.8 4.2L3 8l3.8 3.8';
const backArrow = 'M3 3.2v3.6h3.6M3.4 6.6a5 5 0 1 1 -.3 3.2';
