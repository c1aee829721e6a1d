/** Entries put into and taken out of the lists of a study's text, comments and all else staying as they are. */

import { isMap, isScalar, isSeq, type Pair, type YAMLMap, type YAMLSeq } from 'yaml';
import { ProblemError } from '../numerics/problem.ts';
import { quote } from './report.ts';
import {
  contentEnd,
  editText,
  lineBreakOf,
  lineStart,
  nextLine,
  parseAsText,
  splice,
  startOf,
  yamlScalar,
} from './textEdit.ts';

/** One entry, its keys in the order in which they are written. */
export type ListEntry = Readonly<Record<string, EntryValue>>;
type EntryValue = string | boolean | readonly string[] | Readonly<Record<string, string>>;

/** One change of a list at the top of the study whose entries have ids, such as `sentences`. */
export type ListEdit =
  | {
      readonly list: string;
      readonly add: ListEntry;
      /** One line above the entry. */ readonly comment?: string;
    }
  | { readonly list: string; readonly remove: string };

/** The text after the change; the text must parse. @throws ProblemError where there is no such entry */
export function editList(text: string, edit: ListEdit): string {
  return 'add' in edit
    ? added(text, edit.list, edit.add, edit.comment)
    : removed(text, edit.list, edit.remove);
}

/** What the change should make of the study's tree. */
export function listAfter(items: readonly unknown[], edit: ListEdit): readonly unknown[] {
  return 'add' in edit ? [...items, asText(edit.add)] : items.filter((item) => !hasId(item, edit.remove));
}

function asText(entry: ListEntry): Readonly<Record<string, unknown>> {
  return Object.fromEntries(Object.entries(entry).map(([key, value]) => [key, valueAsText(value)]));
}

function valueAsText(value: EntryValue): unknown {
  if (typeof value !== 'object') return String(value).trim();
  if (isList(value)) return value.map((one) => one.trim());
  return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, one.trim()]));
}

function isList(value: EntryValue): value is readonly string[] {
  return Array.isArray(value);
}

function hasId(item: unknown, id: string): boolean {
  return typeof item === 'object' && item !== null && 'id' in item && String(item.id).trim() === id;
}

/** Place of the entry with this id in its list; null where there is none. */
export function placeInList(text: string, list: string, id: string): number | null {
  const tree: unknown = parseAsText(text).toJS();
  const items = (tree as Readonly<Record<string, unknown>> | null)?.[list];
  const place = Array.isArray(items) ? items.findIndex((item) => hasId(item, id)) : -1;
  return place < 0 ? null : place;
}

function topPair(text: string, list: string): { readonly map: YAMLMap; readonly pair: Pair | undefined } {
  const map = parseAsText(text).contents;
  if (!isMap(map)) throw unknownEntry(list, 'The study has no keys.');
  return { map, pair: map.items.find(({ key }) => isScalar(key) && key.value === list) as Pair | undefined };
}

function added(text: string, list: string, entry: ListEntry, comment?: string): string {
  const lineBreak = lineBreakOf(text);
  const { pair } = topPair(text, list);
  const items = pair?.value;
  if (pair === undefined) {
    const gap = text.endsWith('\n') ? '' : lineBreak;
    return `${text}${gap}${lineBreak}${list}:${lineBreak}${blockOf(entry, '  ', lineBreak, comment)}`;
  }
  if (!isSeq(items) || items.items.length === 0) {
    const emptied = editText(text, { path: [list], value: null });
    return added(emptied, list, entry, comment);
  }
  const last = items.items.at(-1);
  const end = contentEnd(last);
  if (items.flow && comment !== undefined) {
    throw new ProblemError({
      code: 'edit-not-possible',
      what: `${quote(list)} is written in one line, in square brackets, where no comment can stand; nothing was written.`,
      mend: `Take the square brackets away, write each entry on a line of its own below “${list}:”, behind two spaces and a dash (“  - { id: …, say: … }”), and try again.`,
      where: list,
    });
  }
  if (items.flow) return splice(text, end, end, `, { ${pairsOf(entry).join(', ')} }`);
  const at = nextLine(text, end);
  const before = at > 0 && text[at - 1] !== '\n' ? lineBreak : '';
  const gap = isSpaced(text, items) ? lineBreak : '';
  return splice(text, at, at, `${before}${gap}${blockOf(entry, indentOf(text, items), lineBreak, comment)}`);
}

function removed(text: string, list: string, id: string): string {
  const { pair } = topPair(text, list);
  const items = pair?.value;
  const place = placeInList(text, list, id);
  if (place === null || !isSeq(items))
    throw unknownEntry(list, `There is no ${quote(id)} in ${quote(list)}.`);
  if (items.items.length === 1) return editText(text, { path: [list], value: null });
  const item = items.items[place];
  const next = items.items[place + 1];
  if (items.flow) {
    return next === undefined
      ? splice(text, contentEnd(items.items[place - 1]), contentEnd(item), '')
      : splice(text, startOf(item), startOf(next), '');
  }
  const from = lineStart(text, startOf(item));
  const to = nextLine(text, contentEnd(item));
  // Two blank lines in a row would tell of what is gone.
  const blank = /\n[ \t]*\r?\n$/.test(text.slice(0, from)) ? /^[ \t]*\r?\n/.exec(text.slice(to)) : null;
  return splice(text, from, to + (blank?.[0].length ?? 0), '');
}

/** What stands before the dashes. */
function indentOf(text: string, { items: [first] }: YAMLSeq): string {
  const start = startOf(first);
  return /^ */.exec(text.slice(lineStart(text, start), start))![0];
}

/** Whether the entries are parted by blank lines. */
function isSpaced(text: string, { items }: YAMLSeq): boolean {
  const [first, second] = items.slice(-2);
  if (second === undefined) return true;
  return /\n[ \t]*\r?\n/.test(text.slice(contentEnd(first) - 1, startOf(second)));
}

const pairsOf = (entry: ListEntry): readonly string[] =>
  Object.entries(entry).map(([key, value]) => `${key}: ${valueText(value)}`);

function valueText(value: EntryValue): string {
  if (typeof value !== 'object') return yamlScalar(value);
  if (isList(value)) return `[${value.map(yamlScalar).join(', ')}]`;
  return `{ ${pairsOf(value).join(', ')} }`;
}

function blockOf(entry: ListEntry, indent: string, lineBreak: string, comment?: string): string {
  const above = comment === undefined ? '' : `${indent}# ${comment.replace(/\s+/g, ' ')}${lineBreak}`;
  const block = pairsOf(entry)
    .map((pair, i) => `${indent}${i === 0 ? '- ' : '  '}${pair}${lineBreak}`)
    .join('');
  return above + block;
}

function unknownEntry(list: string, what: string): ProblemError {
  return new ProblemError({
    code: 'edit-path-unknown',
    what,
    mend: 'Change it in the file itself.',
    where: list,
  });
}
