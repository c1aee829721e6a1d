import { useEffect, useRef, useState } from 'preact/hooks';
import { type InputRow, steppedText } from '../state/inputRows.ts';
import { commitValue } from '../state/studyStore.ts';

const originWords: Readonly<Record<InputRow['origin'], string>> = {
  own: '',
  shared: 'From the engine that this one is like; writing here makes it its own.',
  default: 'A default; the study does not say.',
};

interface FieldProps {
  readonly row: InputRow;
  readonly label: string;
  /** Id of the element that says what is wrong with this value; null when nothing is. */
  readonly faultId: string | null;
  /** Told what kept the value from being written; null when nothing did. */
  readonly onRefusal: (words: string | null) => void;
}

/** Arrow keys gather this long before the file is written [ms]. */
const stepPause = 350;

/** One input as text with any unit; written when committed, its faults said in place. */
export function Field({ row, label, faultId, onRefusal }: FieldProps) {
  const [draft, setDraft] = useState<string | null>(null);
  const timer = useRef<ReturnType<typeof setTimeout> | null>(null);
  const shown = draft ?? row.text;

  // A new text in the study takes the place of the draft it was made of; another draft stays, and is told of it.
  const sent = useRef<readonly string[]>([]);
  const known = useRef(row.text);
  useEffect(() => {
    const isNews = known.current !== row.text;
    known.current = row.text;
    const mine = sent.current.indexOf(row.text.trim());
    sent.current = sent.current.slice(mine + 1);
    if (isNews && draft !== null && draft.trim() !== row.text.trim()) {
      // An own edit has come through, and the next is on its way; or somebody else’s crosses one that is being made.
      if (mine < 0 && sent.current.length === 0)
        onRefusal(`This became ${row.text} meanwhile. Enter writes what stands here, Escape takes it back.`);
      return;
    }
    setDraft(null);
    onRefusal(null);
  }, [row.text, row.path]);
  useEffect(() => () => clearPause(), []);

  function clearPause() {
    if (timer.current !== null) clearTimeout(timer.current);
    timer.current = null;
  }
  function takeBack() {
    clearPause();
    setDraft(null);
    onRefusal(null);
  }
  function commit(text: string) {
    clearPause();
    if (text.trim() === row.text.trim() && sent.current.length === 0) return takeBack();
    const trimmed = text.trim();
    sent.current = [...sent.current, trimmed];
    commitValue(row.path, trimmed).then((problems) => {
      if (problems.length > 0) sent.current = sent.current.filter((one) => one !== trimmed);
      onRefusal(problems.length === 0 ? null : problems.map(wordsOf).join(' '));
    }, reportError);
  }
  function step(direction: 1 | -1, large: boolean) {
    const next = steppedText(shown, direction, large);
    if (next === null) return;
    setDraft(next);
    clearPause();
    timer.current = setTimeout(() => commit(next), stepPause);
  }
  function onKeyDown(event: KeyboardEvent) {
    const step1 = { ArrowUp: 1, ArrowDown: -1, PageUp: 1, PageDown: -1 } as const;
    if (event.key === 'Enter') commit(shown);
    else if (event.key === 'Escape') takeBack();
    else if (event.key in step1 && !event.altKey && !event.ctrlKey && !event.metaKey) {
      event.preventDefault();
      const key = event.key as keyof typeof step1;
      step(step1[key], event.shiftKey || key.startsWith('Page'));
    }
  }

  const shared = {
    id: `field-${row.path}`,
    'aria-label': label,
    class: `field ${row.origin}`,
    ...(originWords[row.origin] === '' ? {} : { title: originWords[row.origin] }),
  } as const;
  return (
    <>
      {row.choices !== undefined ? (
        <select {...shared} value={row.text} onChange={(event) => commit(event.currentTarget.value)}>
          {row.choices.map((choice) => (
            <option key={choice} value={choice}>
              {inWords(choice)}
            </option>
          ))}
        </select>
      ) : (
        <input
          {...shared}
          type="text"
          autocomplete="off"
          spellcheck={false}
          value={shown}
          data-changed={draft !== null}
          aria-invalid={faultId !== null}
          {...(faultId === null ? {} : { 'aria-describedby': faultId })}
          onInput={(event) => {
            clearPause();
            setDraft(event.currentTarget.value);
          }}
          onBlur={() => draft !== null && commit(draft)}
          onKeyDown={onKeyDown}
        />
      )}
    </>
  );
}

function wordsOf({ what, mend }: { readonly what: string; readonly mend: string }): string {
  return `${what} ${mend}`;
}

/** `dual bell` for `dualBell`: the file’s word, as one reads it. */
const inWords = (choice: string): string => choice.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
