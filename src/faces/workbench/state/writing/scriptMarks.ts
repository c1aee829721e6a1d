/** What the parts of a script's text are, line by line, as the editor colours them. Nothing is left out: the marks joined are the text. */

export type MarkKind = 'words' | 'title' | 'scene' | 'shown' | 'number' | 'name' | 'note' | 'head';

export interface TextMark {
  readonly kind: MarkKind;
  readonly text: string;
}

/** A line of the text, its end left out. */
export interface MarkedLine {
  readonly marks: readonly TextMark[];
}

const NUMBER_OR_NAME = /\{\{.*?(?:\}\}|$)|(?<!\\)\{[^{}]*\}\s*$/g;

export function markedLines(text: string): readonly MarkedLine[] {
  const lines = text.split('\n');
  const headEnd =
    lines[0]?.trim() === '---' ? lines.findIndex((line, i) => i > 0 && line.trim() === '---') : -1;
  let isNote = false;
  return lines.map((line, i) => {
    if (i <= headEnd) return { marks: [{ kind: 'head', text: line }] };
    const wasNote = isNote;
    isNote = noteGoesOn(line, wasNote);
    if (wasNote || /^\s*<!--/.test(line)) return { marks: [{ kind: 'note', text: line }] };
    return { marks: inline(line, kindOf(line)) };
  });
}

/** Whether a note to oneself is still open behind this line. */
function noteGoesOn(line: string, isOpen: boolean): boolean {
  const [begin, end] = [line.lastIndexOf('<!--'), line.lastIndexOf('-->')];
  return begin < 0 && end < 0 ? isOpen : begin > end;
}

function kindOf(line: string): MarkKind {
  if (/^#\s/.test(line)) return 'title';
  if (/^#{2,6}\s/.test(line)) return 'scene';
  return /^\s*>/.test(line) ? 'shown' : 'words';
}

/** Live numbers, and the braces at the end that name a line. */
function inline(line: string, kind: MarkKind): readonly TextMark[] {
  const marks: TextMark[] = [];
  let from = 0;
  const upTo = (to: number): void => {
    if (to > from) marks.push({ kind, text: line.slice(from, to) });
  };
  for (const match of line.matchAll(NUMBER_OR_NAME)) {
    upTo(match.index);
    marks.push({ kind: match[0].startsWith('{{') ? 'number' : 'name', text: match[0] });
    from = match.index + match[0].length;
  }
  upTo(line.length);
  return marks;
}

/** The live number that the caret stands in, still open or closed. */
export interface NumberAtCaret {
  /** What is asked so far, up to the caret. */ readonly typed: string;
  /** Of all that is asked, from behind the first braces up to a comma or the last braces. */
  readonly from: number;
  readonly to: number;
  readonly isClosed: boolean;
}

/** Null where the caret stands outside, or behind the comma after which it is said how the number is told. */
export function numberAt(text: string, caret: number): NumberAtCaret | null {
  const lineStart = text.lastIndexOf('\n', caret - 1) + 1;
  const before = text.slice(lineStart, caret);
  const open = before.lastIndexOf('{{');
  if (open < 0 || before.indexOf('}}', open) >= 0) return null;
  const from = lineStart + open + 2;
  const typed = text.slice(from, caret);
  if (depthOf(typed) === 0 && typed.includes(',') && !/\([^)]*,[^)]*\)$/.test(typed)) return null;
  const lineEnd = text.indexOf('\n', caret);
  const rest = text.slice(caret, lineEnd < 0 ? undefined : lineEnd);
  const close = rest.indexOf('}}');
  const isClosed = close >= 0 && !rest.slice(0, close).includes('{{');
  if (!isClosed) return { typed, from, to: caret, isClosed };
  const asked = rest.slice(0, close);
  const comma = depthOf(typed) === 0 ? asked.indexOf(',') : -1;
  return { typed, from, to: caret + (comma < 0 ? asked.length : comma), isClosed };
}

/** Brackets still open. */
const depthOf = (text: string): number => text.split('(').length - text.split(')').length;

export interface Replaced {
  readonly from: number;
  readonly to: number;
  readonly text: string;
  /** Where the caret goes. */ readonly caret: number;
}

/** The expression put in the place of what was typed, with braces behind it where there are none. */
export function completed({ from, to, isClosed }: NumberAtCaret, expression: string): Replaced {
  const text = isClosed ? expression : `${expression}}}`;
  return { from, to, text, caret: from + expression.length + 2 };
}

/** A live number put into the words at the caret, with a space where one is missing. */
export function inserted(text: string, caret: number, expression: string): Replaced {
  const [before, after] = [text[caret - 1] ?? '\n', text[caret] ?? '\n'];
  const open = /\s/.test(before) ? '' : ' ';
  const close = /[\s.,;:!?)]/.test(after) ? '' : ' ';
  const words = `${open}{{${expression}}}${close}`;
  return { from: caret, to: caret, text: words, caret: caret + words.length };
}

/** A live number as a paragraph of its own at the end. */
export function appended(text: string, expression: string): Replaced {
  const gap = text === '' || text.endsWith('\n\n') ? '' : text.endsWith('\n') ? '\n' : '\n\n';
  const words = `${gap}{{${expression}}}`;
  return { from: text.length, to: text.length, text: words, caret: text.length + words.length };
}

/** Place of the first sign of a line, from 1. */
export function startOfLine(text: string, line: number): number {
  let at = 0;
  for (let i = 1; i < line; i++) {
    const next = text.indexOf('\n', at);
    if (next < 0) return at;
    at = next + 1;
  }
  return at;
}
