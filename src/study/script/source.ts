/** A script's text on its way to the reader: bounded, with every place kept where it was. */

import { newReport, quote, type Report } from '../report.ts';

/** An hour of talk is some 60 000 characters. */
export const MOST_SCRIPT_CHARACTERS = 400_000;
/** Nobody says a paragraph of more. */
const MOST_IN_PARAGRAPH = 4_000;

/** Marks that turn the direction of words around them, and signs that cannot be seen. */
const HIDDEN = /[\u00ad\u061c\u200b\u200e\u200f\u202a-\u202e\u2060-\u2069\ufeff]/g;
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
const CONTROLS = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u2028\u2029\ufffe\uffff]|\p{Cs}/gu;

export interface ScriptSource {
  /** As long as what was given; empty where it is too long to be read. */ readonly text: string;
  readonly report: Report;
  placeOf(offset: number): { readonly line: number; readonly column: number };
}

export function scriptSource(given: string, file: string): ScriptSource {
  const placeOf = placesIn(given);
  const report = newReport(file, placeOf);
  if (given.length > MOST_SCRIPT_CHARACTERS) {
    report.problem(
      {
        code: 'script-too-long',
        what: `The script has ${given.length} characters; up to ${MOST_SCRIPT_CHARACTERS} are read.`,
        mend: 'Split it into several studies, each with its own script.',
      },
      '',
      0,
    );
    return { text: '', report, placeOf };
  }
  tellHidden(given, report);
  const plain = given
    .replace(/^\uFEFF/, ' ')
    .replace(/\r\n/g, ' \n')
    .replace(/\r/g, '\n')
    .replace(CONTROLS, (sign) => ' '.repeat(sign.length));
  return { text: withoutEndless(plain, report), report, placeOf };
}

/** Words without signs that cannot be seen. */
export const withoutHidden = (text: string): string => text.replace(HIDDEN, '');

function tellHidden(text: string, report: Report): void {
  for (const [pattern, what] of [
    [HIDDEN, 'a sign that cannot be seen, or one that turns the direction of the words around it'],
    [CONTROLS, 'a control character'],
  ] as const) {
    const at = text.slice(1).search(pattern);
    if (at < 0) continue;
    const code = text
      .codePointAt(at + 1)!
      .toString(16)
      .toUpperCase()
      .padStart(4, '0');
    report.problem(
      {
        code: 'hidden-sign',
        what: `There is ${what} (U+${code}) in the script; it is left out.`,
        mend: 'Delete it, and any others like it.',
      },
      '',
      at + 1,
    );
  }
}

/** A paragraph beyond what anybody says is blanked: no parser should meet it. */
function withoutEndless(text: string, report: Report): string {
  return text.replace(/(?:[^\n]*\S[^\n]*(?:\n|$))+/g, (block, at: number) => {
    if (block.length <= MOST_IN_PARAGRAPH) return block;
    report.problem(
      {
        code: 'paragraph-too-long',
        what: `The paragraph ${quote(block.trim().slice(0, 40))} has ${block.length} characters; up to ${MOST_IN_PARAGRAPH} are read. It is left out.`,
        mend: 'Split it with empty lines.',
      },
      '',
      at,
    );
    return block.replace(/[^\n]/g, ' ');
  });
}

/** Line and column of a character. */
export function placesIn(text: string): ScriptSource['placeOf'] {
  const starts = [0];
  for (const { index } of text.matchAll(/\r\n|\n|\r/g))
    starts.push(index + (text.startsWith('\r\n', index) ? 2 : 1));
  return (offset) => {
    let [low, high] = [0, starts.length - 1];
    while (low < high) {
      const middle = Math.ceil((low + high) / 2);
      if (starts[middle]! <= offset) low = middle;
      else high = middle - 1;
    }
    return { line: low + 1, column: offset - starts[low]! + 1 };
  };
}
