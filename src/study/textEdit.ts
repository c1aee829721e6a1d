/**
 * Small changes of YAML text: set or delete one key, every other byte staying as it is. The tree of the `yaml`
 * library says where to cut.
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
  type YAMLMap,
} from 'yaml';
import { ProblemError } from '../numerics/problem.ts';
import { quote } from './report.ts';

export interface StudyEdit {
  /** From the top of the study, e.g. `['engines', 'bell', 'chamber', 'pressure']`. */
  readonly path: readonly (string | number)[];
  /** The text as a user writes it; null deletes the key. */ readonly value: string | number | boolean | null;
}

/** All scalars as text, so that what is compared is what is written. */
export const parseAsText = (text: string): Document.Parsed =>
  parseDocument(text, { schema: 'failsafe', merge: false, prettyErrors: false, logLevel: 'silent' });

const refuse = (code: string, what: string, mend: string, path: StudyEdit['path']): never => {
  throw new ProblemError({ code, what, mend, where: path.join('.') });
};

const READ_OTHERWISE = /^(?:~|null|true|false|yes|no|on|off)$/i;

/** `value` as one line of YAML that reads back as the same text: plain where that is safe, else in quotes. */
export function yamlScalar(value: string | number | boolean): string {
  if (typeof value === 'boolean') return String(value);
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) throw new RangeError(`not a finite number: ${value}`);
    return String(value);
  }
  const text = value.trim();
  // What is plain between commas and brackets is plain everywhere.
  const list = /^[^\p{Cc}]+$/u.test(text) ? parseAsText(`[${text}]`) : null;
  const items = list !== null && list.errors.length === 0 && isSeq(list.contents) ? list.contents.items : [];
  const [only] = items;
  const plain =
    items.length === 1 &&
    isScalar(only) &&
    only.type === 'PLAIN' &&
    only.value === text &&
    only.tag === undefined &&
    only.anchor === undefined &&
    !READ_OTHERWISE.test(text);
  return plain ? text : JSON.stringify(text);
}

export const splice = (text: string, from: number, to: number, insert: string): string =>
  text.slice(0, from) + insert + text.slice(to);
export const lineStart = (text: string, at: number): number => text.lastIndexOf('\n', at - 1) + 1;
const lineEnd = (text: string, at: number): number => {
  const end = text.indexOf('\n', at);
  return end < 0 ? text.length : end + 1;
};
export const lineBreakOf = (text: string): string => (text.includes('\r\n') ? '\r\n' : '\n');
export const startOf = (node: unknown): number => (isNode(node) && node.range ? node.range[0] : 0);

/** Where the last sign of a node's own content stands, comments and blank lines behind it left out. */
export function contentEnd(node: unknown): number {
  if (!isNode(node) || !node.range) return 0;
  if (isCollection(node) && !node.flow && node.items.length > 0) {
    const last = node.items.at(-1) as Pair | Node;
    return isNode(last) ? contentEnd(last) : pairEnd(last);
  }
  return node.range[1];
}
const pairEnd = (pair: Pair): number => Math.max(contentEnd(pair.key), contentEnd(pair.value));

/** Begin of the line behind `end`; a block of text already ends there. */
export const nextLine = (text: string, end: number): number =>
  end > 0 && text[end - 1] === '\n' ? end : lineEnd(text, end);

/** `chamber: { pressure: 90 bar }` for keys that are not there yet. */
function entryOf(keys: readonly (string | number)[], value: string): string {
  const inner = keys.length === 1 ? value : `{ ${entryOf(keys.slice(1), value)} }`;
  return `${yamlScalar(keys[0]!)}: ${inner}`;
}

function insert(text: string, map: YAMLMap, entry: string): string {
  const last = map.items.at(-1);
  if (last === undefined) return splice(text, startOf(map), map.range![1], `{ ${entry} }`);
  const end = pairEnd(last);
  if (map.flow) return splice(text, end, end, `, ${entry}`);
  const first = startOf(map.items[0]!.key);
  const indent = text.slice(lineStart(text, first), first).replace(/[^ ]/g, ' ');
  const at = nextLine(text, end);
  const lineBreak = lineBreakOf(text);
  const before = at > 0 && text[at - 1] !== '\n' ? lineBreak : '';
  return splice(text, at, at, `${before}${indent}${entry}${lineBreak}`);
}

/** The end of the colon behind a key; the key's end where there is none. */
function colonEnd(text: string, pair: Pair): number {
  const end = contentEnd(pair.key);
  return end + (/^[ \t]*:/.exec(text.slice(end))?.[0].length ?? 0);
}

/** Put `value` in the place of `node`, which stands behind the key of `holder`, or behind a dash (null). */
function replace(text: string, node: Node, holder: Pair | null, value: string): string {
  const start = startOf(node);
  const end = contentEnd(node);
  const colon = holder === null ? start : colonEnd(text, holder);
  if (isCollection(node) && !node.flow && text.slice(colon, start).includes('\n')) {
    // The section stands on lines of its own: they go, comments between key and section stay.
    const gone = splice(text, lineStart(text, start), nextLine(text, end), '');
    return splice(gone, colon, colon, ` ${value}`);
  }
  const endsLine = end > start && text[end - 1] === '\n';
  return splice(text, start, end, `${value}${endsLine ? lineBreakOf(text) : ''}`);
}

function remove(text: string, map: YAMLMap, holder: Pair | null, index: number): string {
  if (map.items.length === 1) return replace(text, map, holder, '{}');
  const pair = map.items[index]!;
  const next = map.items[index + 1];
  const start = startOf(pair.key);
  const end = pairEnd(pair);
  if (map.flow) {
    if (next !== undefined) return splice(text, start, startOf(next.key), '');
    return splice(text, pairEnd(map.items[index - 1]!), end, '');
  }
  const from = lineStart(text, start);
  // The first key of a list's item shares its line with the dash.
  if (text.slice(from, start).trim() !== '') return splice(text, start, startOf(next!.key), '');
  return splice(text, from, nextLine(text, end), '');
}

const isEmpty = (value: unknown): boolean =>
  !isNode(value) || (isScalar(value) && value.type === 'PLAIN' && value.value === '');

/** Put `value` behind a key that stands alone, with or without its colon. */
function fill(text: string, pair: Pair, value: string): string {
  return splice(text, contentEnd(pair.key), colonEnd(text, pair), `: ${value}`);
}

/** The text after one edit; the text must parse. Throws ProblemError where the path leads nowhere. */
export function editText(text: string, edit: StudyEdit): string {
  const { path } = edit;
  const value = edit.value === null ? null : yamlScalar(edit.value);
  let node: unknown = parseAsText(text).contents;
  let holder: Pair | null = null;
  for (const [depth, step] of path.entries()) {
    const rest = path.slice(depth);
    const last = rest.length === 1;
    if (isSeq(node)) {
      const item: unknown = typeof step === 'number' ? node.items[step] : undefined;
      if (!isNode(item) || (last && value === null)) {
        const mend = 'Change lists in the file itself.';
        return refuse('edit-path-unknown', `There is no item ${quote(String(step))} to change.`, mend, path);
      }
      node = item;
      holder = null;
      continue;
    }
    if (!isMap(node)) {
      const holder = quote(path.slice(0, depth).join('.'));
      const what = `${holder} holds a single value, so ${quote(String(step))} cannot be set in it.`;
      return refuse('edit-path-not-a-map', what, 'Replace the value as a whole.', path);
    }
    const index = node.items.findIndex(
      (pair) => isScalar(pair.key) && String(pair.key.value) === String(step),
    );
    const pair = node.items[index];
    if (pair === undefined) return value === null ? text : insert(text, node, entryOf(rest, value));
    if (last && value === null) return remove(text, node, holder, index);
    if (isEmpty(pair.value)) {
      if (value === null) return text;
      return fill(text, pair, last ? value : `{ ${entryOf(rest.slice(1), value)} }`);
    }
    node = pair.value;
    holder = pair;
  }
  if (!isNode(node) || value === null || path.length === 0)
    return refuse('edit-path-unknown', 'The edit names no key.', 'Name one.', path);
  return replace(text, node, holder, value);
}
