/**
 * Edits of a study's text. An edit is a small change of the text itself: everything around it, comments, order,
 * spaces and line ends, stays byte for byte. The tree of the `yaml` library says where to cut, and afterwards
 * what the text has become; where the two disagree the edit is refused.
 */
import {
  type Document,
  isCollection,
  isMap,
  isNode,
  isScalar,
  isSeq,
  type Node,
  type Pair,
  parseDocument,
} from 'yaml';
import { ProblemError } from '../numerics/problem.ts';
import type { StudyProblem } from './model.ts';
import { type ReadOptions, readStudy } from './read.ts';
import { quote } from './report.ts';

export interface StudyEdit {
  /** From the top of the study, e.g. `['engines', 'bell', 'chamber', 'pressure']`. */
  readonly path: readonly (string | number)[];
  /** The text as a user writes it; null deletes the key. */ readonly value: string | number | null;
}

const parse = (text: string): Document.Parsed =>
  parseDocument(text, { schema: 'failsafe', merge: false, prettyErrors: false, logLevel: 'silent' });

const refuse = (code: string, what: string, mend: string, path: StudyEdit['path']): never => {
  throw new ProblemError({ code, what, mend, where: path.join('.') });
};

/** `value` as one line of YAML that reads back as the same text, plain where that is safe. */
function written(value: string | number): string {
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) throw new RangeError(`not a finite number: ${value}`);
    return String(value);
  }
  const line = value.trim();
  // Plain in a flow map is plain everywhere; anything YAML would read otherwise is put into quotes.
  const plain = /^[^\s\p{Cc}](?:[^\p{Cc}]*[^\s\p{Cc}])?$/u.test(line) ? parse(`[${line}]`) : null;
  const item = plain !== null && isSeq(plain.contents) ? plain.contents.items : [];
  const [only] = item;
  const same =
    plain?.errors.length === 0 &&
    item.length === 1 &&
    isScalar(only) &&
    only.type === 'PLAIN' &&
    only.value === line &&
    only.tag === undefined &&
    only.anchor === undefined &&
    !/^(?:~|null|true|false|yes|no|on|off)$/i.test(line);
  return same ? line : JSON.stringify(value);
}

const splice = (text: string, from: number, to: number, insert: string): string =>
  text.slice(0, from) + insert + text.slice(to);

const keyText = (pair: Pair): string => (isScalar(pair.key) ? String(pair.key.value) : '');
const rangeOf = (node: Node): [number, number, number] => node.range as [number, number, number];
const lineStart = (text: string, at: number): number => text.lastIndexOf('\n', at - 1) + 1;
const lineEnd = (text: string, at: number): number => {
  const end = text.indexOf('\n', at);
  return end < 0 ? text.length : end + 1;
};
const lineBreakOf = (text: string): string => (/\r\n/.test(text) ? '\r\n' : '\n');

/** The value as it stands after `keys`, e.g. `chamber: { pressure: 90 bar }` for a key that has to be made. */
function nested(keys: readonly (string | number)[], value: string): string {
  let inner = value;
  for (const key of [...keys].reverse().slice(0, -1)) inner = `{ ${written(key)}: ${inner} }`;
  return `${written(keys[0]!)}: ${inner}`;
}

/** Where the last thing in a block map ends: behind its value and the comment on the same line. */
function insertIntoBlock(text: string, map: Node & { items: Pair[] }, entry: string): string {
  const first = map.items[0]!.key as Node;
  const column = rangeOf(first)[0] - lineStart(text, rangeOf(first)[0]);
  const indent = text.slice(lineStart(text, rangeOf(first)[0]), rangeOf(first)[0]).replace(/[^ ]/g, ' ');
  const last = map.items.at(-1)!;
  const lastNode = (isNode(last.value) ? last.value : last.key) as Node;
  const lastEnd = Math.max(rangeOf(last.key as Node)[1], rangeOf(lastNode)[1]);
  // A block value ends at the start of the next line, anything else inside its own line.
  const end = lastEnd > 0 && text[lastEnd - 1] === '\n' ? lastEnd : lineEnd(text, lastEnd);
  const lineBreak = lineBreakOf(text);
  const before = end > 0 && text[end - 1] !== '\n' ? lineBreak : '';
  return splice(text, end, end, `${before}${indent.padEnd(column)}${entry}${lineBreak}`);
}

function insertIntoFlow(text: string, map: Node & { items: Pair[] }, entry: string): string {
  const [start, end] = rangeOf(map);
  if (map.items.length === 0) return splice(text, start, end, `{ ${entry} }`);
  const last = map.items.at(-1)!;
  const lastNode = (isNode(last.value) ? last.value : last.key) as Node;
  const lastEnd = Math.max(rangeOf(last.key as Node)[1], rangeOf(lastNode)[1]);
  return splice(text, lastEnd, lastEnd, `, ${entry}`);
}

function deleteFromMap(text: string, map: Node & { items: Pair[]; flow?: boolean }, index: number): string {
  const pair = map.items[index]!;
  const start = rangeOf(pair.key as Node)[0];
  const node = isNode(pair.value) ? pair.value : (pair.key as Node);
  const end = Math.max(rangeOf(pair.key as Node)[1], rangeOf(node)[1]);
  if (map.items.length === 1) {
    const [from, to] = rangeOf(map);
    const tail = text.slice(from, to).endsWith('\n') ? lineBreakOf(text) : '';
    return splice(text, from, to, `{}${tail}`);
  }
  if (!map.flow) {
    const next = map.items[index + 1];
    const from = index === 0 ? start : lineStart(text, start);
    if (index === 0) return splice(text, start, rangeOf(next!.key as Node)[0], '');
    return splice(text, from, text[end - 1] === '\n' ? end : lineEnd(text, end), '');
  }
  const next = map.items[index + 1];
  if (next !== undefined) return splice(text, start, rangeOf(next.key as Node)[0], '');
  const before = map.items[index - 1]!;
  const beforeNode = isNode(before.value) ? before.value : (before.key as Node);
  const beforeEnd = Math.max(rangeOf(before.key as Node)[1], rangeOf(beforeNode)[1]);
  return splice(text, beforeEnd, end, '');
}

/** One edit on text that parses. */
function applyEdit(text: string, edit: StudyEdit): string {
  const { path, value } = edit;
  if (path.length === 0) refuse('edit-path-empty', 'An edit names no place.', 'Name a key.', path);
  let node: Node | null = parse(text).contents;
  for (let depth = 0; depth < path.length; depth++) {
    const step = path[depth]!;
    const rest = path.slice(depth);
    if (isSeq(node)) {
      const item: unknown = typeof step === 'number' ? node.items[step] : undefined;
      if (!isNode(item))
        return refuse(
          'edit-path-unknown',
          `There is no item ${quote(String(step))} here.`,
          'Edit the file itself.',
          path,
        );
      node = item;
      if (rest.length === 1) break;
      continue;
    }
    if (!isMap(node)) {
      return refuse(
        'edit-path-not-a-map',
        `${quote(path.slice(0, depth).join('.'))} holds a single value, so ${quote(String(step))} cannot be set in it.`,
        'Replace the value as a whole.',
        path,
      );
    }
    const index = node.items.findIndex((pair) => keyText(pair) === String(step));
    const pair: Pair | undefined = node.items[index];
    if (pair === undefined) {
      if (value === null) return text;
      const entry = nested(rest, written(value));
      const map = node as Node & { items: Pair[]; flow?: boolean };
      return map.flow || map.items.length === 0
        ? insertIntoFlow(text, map, entry)
        : insertIntoBlock(text, map, entry);
    }
    if (rest.length === 1 && value === null)
      return deleteFromMap(text, node as Node & { items: Pair[] }, index);
    if (!isNode(pair.value)) {
      const end = rangeOf(pair.key as Node)[1];
      const inner = rest.length === 1 ? written(value!) : `{ ${nested(rest.slice(1), written(value!))} }`;
      const colon = text.slice(end).match(/^\s*:/)?.[0] ?? '';
      return splice(text, end, end + colon.length, `: ${inner}`);
    }
    const empty = isScalar(pair.value) && pair.value.value === '' && pair.value.type === 'PLAIN';
    if (empty && value !== null) {
      const at = rangeOf(pair.value)[0];
      const inner = rest.length === 1 ? written(value) : `{ ${nested(rest.slice(1), written(value))} }`;
      return splice(text, at, at, ` ${inner}`);
    }
    node = pair.value;
  }
  if (!isNode(node) || value === null)
    return refuse('edit-path-unknown', 'Only keys of a map can be deleted.', 'Edit the file itself.', path);
  const [start, end] = rangeOf(node);
  const block = isCollection(node) ? !node.flow : isScalar(node) && /^BLOCK/.test(node.type ?? '');
  const old = text.slice(start, end);
  const tail = block ? (/\s*$/.exec(old)?.[0] ?? '') : '';
  if (block && isCollection(node)) {
    // The map begins on a line of its own: take it back to behind the colon.
    const from = text.slice(0, start).trimEnd().length;
    return splice(text, from, end, ` ${written(value)}${tail}`);
  }
  return splice(text, start, end, `${written(value)}${tail}`);
}

/** What the edit should make of the study, by the library's own tree. */
function expected(text: string, edit: StudyEdit): unknown {
  const document = parse(text);
  if (edit.value === null) document.deleteIn(edit.path);
  else document.setIn(edit.path, String(typeof edit.value === 'string' ? edit.value.trim() : edit.value));
  return document.toJS();
}

const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

const keyOfProblem = (problem: StudyProblem): string =>
  JSON.stringify([problem.code, problem.path, problem.what]);

/**
 * The text after `edits`, comments and order kept. An engine that gets its inputs by `like:` gets keys of its own.
 *
 * @throws ProblemError when the text is not a study of the current form, when an edit leads nowhere, or when it
 * would bring a problem into the study that was not there before. The text given is then unchanged.
 */
export function editStudy(text: string, edits: readonly StudyEdit[], options: ReadOptions = {}): string {
  const before = readStudy(text, options);
  const old = before.ok ? [] : before.problems;
  const closed = old.find((p) => p.path === '' || p.path === 'plumeline');
  if (closed !== undefined) throw new ProblemError(closed);
  let edited = text;
  for (const edit of edits) {
    const wanted = expected(edited, edit);
    edited = applyEdit(edited, edit);
    const got = parse(edited);
    if (got.errors.length > 0 || !same(got.toJS(), wanted)) {
      refuse(
        'edit-not-possible',
        `${quote(edit.path.join('.'))} cannot be changed without touching what stands around it.`,
        'Edit the file itself.',
        edit.path,
      );
    }
  }
  const after = readStudy(edited, options);
  if (!after.ok) {
    const known = new Set(old.map(keyOfProblem));
    const fresh = after.problems.find((problem) => !known.has(keyOfProblem(problem)));
    if (fresh !== undefined) throw new ProblemError(fresh);
  }
  return edited;
}

/** A new study from a starter's text: its comments, with the question put in. */
export function newStudyText(starter: string, question: string | null = null): string {
  return question === null
    ? editStudy(starter, [])
    : editStudy(starter, [{ path: ['question'], value: question }]);
}
