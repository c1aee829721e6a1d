import { useSignal } from '@preact/signals';
import type { RefObject } from 'preact';
import { useEffect, useLayoutEffect, useMemo, useRef } from 'preact/hooks';
import { askNumbers, namedNumbers } from '../state/find/foundNumbers.ts';
import { saveScript, writeScript } from '../state/scriptStore.ts';
import { solved, solving } from '../state/studyStore.ts';
import type { LineFault } from '../state/writing/lineFaults.ts';
import { putIn } from '../state/writing/putIn.ts';
import { completed, type MarkedLine, markedLines, numberAt } from '../state/writing/scriptMarks.ts';
import { caret } from '../state/writing/writing.ts';

interface ScriptFieldProps {
  readonly field: RefObject<HTMLTextAreaElement | null>;
  readonly text: string;
  readonly faults: readonly LineFault[];
}

/** Offers shown at a time. */
const MOST_OFFERS = 6;

/** A plain field with its text coloured behind it, and live numbers offered by plain words while one is written. */
export function ScriptField({ field, text, faults }: ScriptFieldProps) {
  const marked = useSignal(0);
  const isOpen = useSignal(false);
  const lines = useMemo(() => markedLines(text), [text]);
  const number = isOpen.value && caret.value !== null ? numberAt(text, caret.value) : null;
  const words = number?.typed.trim() ?? '';
  const [study, isSolving] = [solved.value, solving.value];
  useEffect(() => {
    if (words !== '' && study?.isWhole !== false && !isSolving) askNumbers(words).catch(reportError);
  }, [words, study, isSolving]);
  const offers = words === '' ? [] : namedNumbers(wordsOf(words)).slice(0, MOST_OFFERS);
  const at = Math.min(marked.value, offers.length - 1);

  function take(index: number): void {
    const offer = offers[index];
    if (field.current === null || number === null || offer === undefined) return;
    isOpen.value = false;
    putIn(field.current, completed(number, offer.expression));
  }
  function follow(): void {
    caret.value = field.current?.selectionStart ?? null;
  }
  function onKeyDown(event: KeyboardEvent): void {
    if (event.key === ' ' && event.ctrlKey) {
      isOpen.value = true;
      follow();
    } else if (offers.length === 0) return;
    else if (event.key === 'ArrowDown') marked.value = (at + 1) % offers.length;
    else if (event.key === 'ArrowUp') marked.value = (at + offers.length - 1) % offers.length;
    else if (event.key === 'Enter' || event.key === 'Tab') take(at);
    else if (event.key === 'Escape') isOpen.value = false;
    else return;
    event.preventDefault();
    event.stopPropagation();
  }
  const place = useRef<HTMLDivElement>(null);
  // Below the line that is being written.
  useLayoutEffect(() => {
    const element = place.current;
    const line = text.slice(0, caret.value ?? 0).split('\n').length - 1;
    const written = element?.parentElement?.querySelectorAll<HTMLElement>('.line')[line];
    if (element === null || written === undefined || offers.length === 0) return;
    element.style.top = `${written.offsetTop + written.offsetHeight + 2}px`;
    element.scrollIntoView({ block: 'nearest' });
  }, [offers.length, words]);
  return (
    <div class="script-field">
      <label for="script-text" class="unseen">
        Text of script.md
      </label>
      <Coloured lines={lines} faults={faults} />
      <textarea
        ref={field}
        id="script-text"
        spellcheck
        aria-autocomplete="list"
        aria-controls="script-offers"
        {...(offers.length > 0 ? { 'aria-activedescendant': `script-offer-${at}` } : {})}
        value={text}
        onInput={(event) => {
          marked.value = 0;
          isOpen.value = true;
          follow();
          writeScript(event.currentTarget.value);
        }}
        onSelect={follow}
        onKeyDown={onKeyDown}
        onBlur={() => {
          isOpen.value = false;
          void saveScript();
        }}
      />
      <div
        id="script-offers"
        role="listbox"
        aria-label="Live numbers"
        class={offers.length > 0 ? 'offers' : 'offers none'}
      >
        {offers.map(({ expression, label, shown }, index) => (
          // biome-ignore lint/a11y/useKeyWithClickEvents: the field has the keys, as in every combobox
          // biome-ignore lint/a11y/useFocusableInteractive: the focus stays in the field, which names the marked one
          <div
            key={expression}
            id={`script-offer-${index}`}
            role="option"
            aria-selected={index === at}
            class="option"
            onMouseDown={(event) => event.preventDefault()}
            onClick={() => take(index)}
          >
            <span>
              {label} <code>{expression}</code>
            </span>
            <span class="detail">{shown}</span>
          </div>
        ))}
      </div>
    </div>
  );
}

/** `bell.exit pressure(10 km` is looked for by its words. */
const wordsOf = (typed: string): string => typed.replace(/[.()]/g, ' ');

interface ColouredProps {
  readonly lines: readonly MarkedLine[];
  readonly faults: readonly LineFault[];
}

function Coloured({ lines, faults }: ColouredProps) {
  const failing = new Map<number, boolean>();
  for (const { line, fails } of faults) failing.set(line, fails || failing.get(line) === true);
  return (
    <pre aria-hidden="true">
      {lines.map(({ marks }, i) => (
        <div key={i} class={lineClass(failing.get(i + 1))}>
          {marks.map(({ kind, text }, k) => (
            <span key={k} class={`mark-${kind}`}>
              {text}
            </span>
          ))}
          {'\n'}
        </div>
      ))}
    </pre>
  );
}

function lineClass(fails: boolean | undefined): string {
  if (fails === undefined) return 'line';
  return fails ? 'line fails' : 'line looks';
}
