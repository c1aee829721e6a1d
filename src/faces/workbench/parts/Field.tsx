import type { InputRow } from '../state/inputRows.ts';
import type { InputSlider } from '../state/inputSliders.ts';
import type { ValueEdit } from '../workshop/messages.ts';
import { warmUp } from '../workshop/workshop.ts';
import { FieldSlider } from './FieldSlider.tsx';
import { type FieldDraft, useFieldDraft } from './useFieldDraft.ts';

const originWords: Readonly<Record<InputRow['origin'], string>> = {
  own: '',
  shared: 'From the engine that this one is like; writing here makes it its own.',
  default: 'A default; the study does not say.',
};

interface FieldProps {
  readonly row: InputRow;
  readonly label: string;
  /** Null where the input is no number, or cannot be moved alone. */ readonly slider: InputSlider | null;
  /** What writing a text means. */ readonly editsOf: (text: string) => readonly ValueEdit[];
  /** Id of the element that says what is wrong with this value; null when nothing is. */
  readonly faultId: string | null;
  /** Told what kept the value from being written; null when nothing did. */
  readonly onRefusal: (words: string | null) => void;
}

/** One input as text with any unit, and as a slider; written when committed, its faults said in place. */
export function Field({ row, label, slider, editsOf, faultId, onRefusal }: FieldProps) {
  const draft = useFieldDraft(row, editsOf, onRefusal);
  const shared = {
    id: `field-${row.path}`,
    'aria-label': label,
    class: `field ${row.origin}`,
    ...(originWords[row.origin] === '' ? {} : { title: originWords[row.origin] }),
  } as const;
  if (row.choices !== undefined) {
    return (
      <select {...shared} value={row.text} onChange={(event) => draft.commit(event.currentTarget.value)}>
        {row.choices.map((choice) => (
          <option key={choice} value={choice}>
            {inWords(choice)}
          </option>
        ))}
      </select>
    );
  }
  return (
    <>
      <input
        {...shared}
        type="text"
        autocomplete="off"
        spellcheck={false}
        value={draft.shown}
        data-changed={draft.isChanged}
        aria-invalid={faultId !== null}
        {...(faultId === null ? {} : { 'aria-describedby': faultId })}
        onFocus={warmUp}
        onInput={(event) => draft.write(event.currentTarget.value)}
        onBlur={() => draft.isChanged && draft.commit()}
        onKeyDown={(event) => onKeyDown(event, draft)}
      />
      {slider !== null && (
        <FieldSlider slider={slider} draft={draft} label={label} isInherited={row.origin !== 'own'} />
      )}
    </>
  );
}

const steps = { ArrowUp: 1, ArrowDown: -1, PageUp: 1, PageDown: -1 } as const;

function onKeyDown(event: KeyboardEvent, draft: FieldDraft): void {
  if (event.key === 'Enter') draft.commit();
  else if (event.key === 'Escape') draft.takeBack();
  else if (event.key in steps && !event.altKey && !event.ctrlKey && !event.metaKey) {
    event.preventDefault();
    const key = event.key as keyof typeof steps;
    draft.step(steps[key], event.shiftKey || key.startsWith('Page'));
  }
}

/** `dual bell` for `dualBell`: the file’s word, as one reads it. */
const inWords = (choice: string): string => choice.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
