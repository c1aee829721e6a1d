/**
 * The text of a study as a YAML 1.2 tree that is safe to walk: bounded in size and depth, plain maps, lists and
 * text only. Everything is kept as text (`failsafe` schema), so `1e400`, `012` and `yes` reach the reader as
 * written.
 */
import {
  Composer,
  type CST,
  type Document,
  isAlias,
  isNode,
  isPair,
  isScalar,
  LineCounter,
  type Node,
  Parser,
  visit,
} from 'yaml';
import type { Place } from './model.ts';
import { newReport, quote, type Report } from './report.ts';

/** Text longer than this is not a study. */
export const MOST_BYTES = 1_000_000;
const MOST_DEPTH = 20;

export interface YamlTree {
  /** Null where the text could not be read; the report then says why. */ readonly document: Document.Parsed | null;
  readonly report: Report;
}

/** Depth of nesting, counted on the tokens so that no recursion can overflow; stops once it is too deep. */
function firstTooDeep(token: CST.Token): number | null {
  const stack: { readonly token: CST.Token; readonly depth: number }[] = [{ token, depth: 0 }];
  while (stack.length > 0) {
    const { token: current, depth } = stack.pop()!;
    if (depth > MOST_DEPTH) return current.offset;
    if (current.type === 'document' && current.value) stack.push({ token: current.value, depth });
    if ('items' in current) {
      for (const item of current.items) {
        if (item.key) stack.push({ token: item.key, depth: depth + 1 });
        if (item.value) stack.push({ token: item.value, depth: depth + 1 });
      }
    }
  }
  return null;
}

/** Mends for the parser's own error codes; its message says what is wrong. */
const syntaxMends: Readonly<Record<string, string>> = {
  TAB_AS_INDENT: 'Indent with spaces, never with tabs.',
  BAD_INDENT: 'Line up the keys of one section in one column, and close what was opened with { [ or a quote.',
  BLOCK_AS_IMPLICIT_KEY:
    'Put text that holds a colon and a space into quotes: "like: this". Inside { } part entries with commas.',
  MISSING_CHAR: 'Look for a missing colon, comma, bracket or quote on this line.',
  BAD_SCALAR_START: 'Put text that begins with one of @ ` % & * ! | > into quotes.',
  MULTILINE_IMPLICIT_KEY: 'A key stands on one line; look for a missing colon.',
  UNEXPECTED_TOKEN: 'Look for a stray bracket, quote or comma here.',
  KEY_OVER_1024_CHARS: 'A key is a short word.',
};

const syntaxNames: Readonly<Record<string, string>> = {
  TAB_AS_INDENT: 'The line is indented with a tab.',
  BAD_INDENT: 'The indentation does not fit the lines around it, or something opened is not closed.',
  BLOCK_AS_IMPLICIT_KEY: 'There is a second “: ” in this line where one value is expected.',
  MISSING_CHAR: 'Something is missing here: a colon, a comma, a bracket or a quote.',
  BAD_SCALAR_START: 'A value begins with a sign that YAML reserves.',
};

function checkText(text: string, report: Report): boolean {
  const bytes = new TextEncoder().encode(text).length;
  if (bytes > MOST_BYTES) {
    report.problem(
      {
        code: 'file-too-large',
        what: `The file holds ${bytes} bytes; a study may hold up to ${MOST_BYTES}.`,
        mend: 'Keep data and long texts in files of their own.',
      },
      '',
      null,
    );
    return false;
  }
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is looked for
  const control = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f\ufffe\uffff]/.exec(text);
  if (control !== null) {
    const code = control[0].charCodeAt(0).toString(16).padStart(4, '0');
    report.problem(
      {
        code: 'control-character',
        what: `There is a control character (U+${code.toUpperCase()}) in the file.`,
        mend: 'Delete it; is this a text file?',
      },
      '',
      control.index,
    );
    return false;
  }
  return true;
}

/** Anchors, aliases, merge keys, tags and keys that are not plain words have no meaning in a study. */
function checkFeatures(document: Document.Parsed, report: Report): void {
  const refuse = (code: string, node: Node, what: string, mend: string): void =>
    report.problem({ code, what, mend }, '', node.range?.[0] ?? 0);
  visit(document, {
    Node(_, node) {
      if (isAlias(node)) {
        const mend = 'Write the value out, or let an engine share another’s inputs with like:.';
        refuse('yaml-alias', node, `*${node.source} is a YAML alias, which a study does not use.`, mend);
        return;
      }
      if (node.anchor !== undefined) {
        const mend = 'Delete it; an engine shares another’s inputs with like:.';
        refuse('yaml-anchor', node, `&${node.anchor} is a YAML anchor, which a study does not use.`, mend);
      }
      if (node.tag !== undefined) {
        refuse(
          'yaml-tag',
          node,
          `${quote(node.tag)} is a YAML tag, which a study does not use.`,
          'Delete it.',
        );
      }
    },
    Pair(_, pair) {
      if (isScalar(pair.key)) {
        if (pair.key.value === '<<') {
          const mend = 'Let the engine share another’s inputs with like:.';
          refuse('yaml-merge-key', pair.key, '<< is a YAML merge key, which a study does not use.', mend);
        }
      } else if (isNode(pair.key) && !isAlias(pair.key)) {
        refuse(
          'key-not-a-word',
          pair.key,
          'A key is itself a list or a map.',
          'Write a plain word before the colon.',
        );
      }
    },
  });
}

/** Read the text; what it may not hold goes to the report. The tree is null where nothing can be read from it. */
export function readYaml(text: string, file: string): YamlTree {
  const lines = new LineCounter();
  // Told before the parser runs, so that a problem of the bare text has its place too.
  lines.addNewLine(0);
  for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) lines.addNewLine(at + 1);
  const placeOf = (offset: number): Place => {
    const { line, col } = lines.linePos(offset);
    return { line: Math.max(1, line), column: Math.max(1, col) };
  };
  const report = newReport(file, placeOf);
  const nothing = { document: null, report };
  if (!checkText(text, report)) {
    return nothing;
  }
  const tokens = [...new Parser().parse(text)];
  for (const token of tokens) {
    const deep = firstTooDeep(token);
    if (deep !== null) {
      report.problem(
        {
          code: 'nested-too-deep',
          what: `Brackets or lists are nested more than ${MOST_DEPTH} deep here.`,
          mend: 'A study needs no more than six levels; look for a bracket that is not closed.',
        },
        '',
        deep,
      );
      return nothing;
    }
  }
  const options = {
    version: '1.2',
    schema: 'failsafe',
    merge: false,
    uniqueKeys: false,
    prettyErrors: false,
    strict: true,
    logLevel: 'silent',
  } as const;
  const documents = [...new Composer(options).compose(tokens, true, text.length)];
  const [document, second] = documents;
  if (document === undefined) return nothing;
  if (second !== undefined) {
    report.problem(
      {
        code: 'several-documents',
        what: 'A line --- begins a second document in this file.',
        mend: 'Keep one study in one file; write a rule line as a comment.',
      },
      '',
      second.range[0],
    );
    return nothing;
  }
  if (document.directives?.yaml.explicit || Object.keys(document.directives?.tags ?? {}).length > 1) {
    report.problem(
      {
        code: 'yaml-directive',
        what: 'A line beginning with % sets how YAML is read, which a study does not use.',
        mend: 'Delete that line.',
      },
      '',
      0,
    );
  }
  for (const error of document.errors) {
    report.problem(
      {
        code: 'yaml-syntax',
        what: syntaxNames[error.code] ?? `${error.message}.`,
        mend: syntaxMends[error.code] ?? 'Compare the line with docs/study-file.md.',
      },
      '',
      error.pos[0],
    );
  }
  checkFeatures(document, report);
  return document.errors.length > 0 ? nothing : { document, report };
}

/** Offset of a node in the text; null for a node that a migration made. */
export const offsetOf = (node: unknown): number | null =>
  isNode(node) && node.range ? node.range[0] : isPair(node) ? offsetOf(node.key) : null;
