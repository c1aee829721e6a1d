/** The inside of a paragraph or heading: words without their markup, live numbers, attributes. */

import type { SyntaxNode } from '@lezer/common';
import { quote, type Report } from '../report.ts';
import { liveNumber } from './liveNumber.ts';
import { childrenOf } from './markdown.ts';
import type { NumberPiece, Piece } from './model.ts';
import { withoutHidden } from './source.ts';

export interface Inside {
  readonly pieces: readonly Piece[];
  /** With braces; null where there are none. */ readonly attributes: {
    readonly raw: string;
    readonly from: number;
  } | null;
}

/** Signs that shape the words and are not said. */
const MARKS: ReadonlySet<string> = new Set([
  'EmphasisMark',
  'CodeMark',
  'LinkMark',
  'LinkTitle',
  'HeaderMark',
  'QuoteMark',
  'Comment',
]);
const ENTITIES: Readonly<Record<string, string>> = {
  amp: '&',
  lt: '<',
  gt: '>',
  quot: '"',
  apos: "'",
  nbsp: '\u00a0',
};

/** A stretch of words, by character of the file. */
interface Stretch {
  text: string;
  from: number;
  to: number;
}

export function insideOf(block: SyntaxNode, text: string, report: Report): Inside {
  const pieces: Piece[] = [];
  let open: Stretch | null = null;
  let attributes: Inside['attributes'] = null;

  const say = (words: string, from: number, to: number): void => {
    if (open === null) open = { text: words, from, to };
    else {
      open.text += words;
      open.to = to;
    }
  };
  const close = (): void => {
    if (open !== null) pushWords(pieces, open);
    open = null;
  };
  const number = (piece: NumberPiece): void => {
    close();
    pieces.push(piece);
  };

  /** Walked with a list of what is still to do: nesting may be deep. */
  type Step = SyntaxNode | { readonly words: true; readonly from: number; readonly to: number };
  const todo: Step[] = stepsIn(block);
  while (todo.length > 0) {
    const step = todo.pop()!;
    const { from, to } = step;
    const raw = text.slice(from, to);
    if ('words' in step) say(raw, from, to);
    else if (MARKS.has(step.name)) continue;
    else if (step.name === 'Attributes') attributes = { raw, from };
    else if (step.name === 'LiveNumber') {
      const piece = liveNumber(raw, from, report);
      if (piece === null) say(raw, from, to);
      else number(piece);
    } else if (step.name === 'LiveNumberOpen') {
      report.problem(
        {
          code: 'number-open',
          what: 'Two braces begin a live number here, and it does not end.',
          mend: 'Write }} behind it in the same paragraph, or \\{\\{ for braces that are said.',
        },
        '',
        from,
      );
      say(raw, from, to);
    } else if (step.name === 'Escape') say(raw.slice(1), from, to);
    else if (step.name === 'Entity') say(entity(raw), from, to);
    else if (step.name === 'HardBreak') say(' ', from, to);
    else if (step.name === 'URL' && step.parent?.name !== 'Autolink') {
      // A link's address is not said; an address that stands by itself is.
      if (step.parent?.name !== 'Link' && step.parent?.name !== 'Image') say(raw, from, to);
    } else if (NOT_SAID.has(step.name)) notSaid(step.name, raw, from, report);
    else todo.push(...stepsIn(step));
  }
  close();
  return { pieces: trimmed(pieces), attributes };

  function stepsIn(node: SyntaxNode): Step[] {
    const steps: Step[] = [];
    let at = node.from;
    for (const child of childrenOf(node)) {
      if (child.from > at) steps.push({ words: true, from: at, to: child.from });
      steps.push(child);
      at = child.to;
    }
    if (at < node.to) steps.push({ words: true, from: at, to: node.to });
    return steps.reverse();
  }
}

const NOT_SAID: ReadonlyMap<string, string> = new Map([
  ['HTMLTag', 'a tag'],
  ['Image', 'a picture'],
  ['ProcessingInstruction', 'an instruction to a program'],
]);

function notSaid(name: string, raw: string, from: number, report: Report): void {
  report.problem(
    {
      code: 'not-said',
      what: `${quote(raw)} is ${NOT_SAID.get(name) ?? 'nothing'}, which nobody can say; it is left out.`,
      mend:
        name === 'Image'
          ? 'Tell what is shown in a block quote: > a picture of …'
          : 'Delete it, or put a backslash before a < that is said.',
    },
    '',
    from,
  );
}

function entity(raw: string): string {
  const name = raw.slice(1, -1);
  const code = /^#x([0-9a-f]+)$/i.exec(name)?.[1];
  const point =
    code !== undefined ? Number.parseInt(code, 16) : /^#\d+$/.test(name) ? Number(name.slice(1)) : null;
  if (point === null) return ENTITIES[name] ?? raw;
  const sign = point <= 0x10ffff ? String.fromCodePoint(point) : '';
  return /^[\p{Cc}\p{Cs}]$/u.test(sign) ? '' : sign;
}

function pushWords(pieces: Piece[], { text, from, to }: Stretch): void {
  const words = withoutHidden(text).replace(/[ \t]*\n[ \t]*|[ \t]+/g, ' ');
  if (words !== '') pieces.push({ kind: 'words', text: words, from, to });
}

/** Without space at the ends. */
function trimmed(pieces: readonly Piece[]): readonly Piece[] {
  return pieces.flatMap((piece, i): readonly Piece[] => {
    if (piece.kind === 'number') return [piece];
    const start = i === 0 ? piece.text.trimStart() : piece.text;
    const text = i === pieces.length - 1 ? start.trimEnd() : start;
    return text === '' ? [] : [{ ...piece, text }];
  });
}

/** Words alone, live numbers as they are written. */
export function wordsOf(pieces: readonly Piece[], text: string): string {
  return pieces
    .map((piece) => (piece.kind === 'words' ? piece.text : text.slice(piece.from, piece.to)))
    .join('');
}
