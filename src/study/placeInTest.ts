/** From a place inside a sentence’s test to line and column of the study's file, however YAML folds or quotes it. */

import { isMap, isScalar, isSeq, type Scalar, type YAMLMap } from 'yaml';
import type { Place } from './model.ts';
import { parseAsText } from './textEdit.ts';

/**
 * @param text     of the whole study
 * @param id       of the sentence
 * @param offset   into its test as the study holds it
 * @returns null where the text has no such sentence with a test
 */
export function placeInTest(text: string, id: string, offset: number): Place | null {
  return placeInNode(text, itemOf(text, 'sentences', id)?.get('holds', true), offset);
}

/** The same in a leg, or a place where it breaks, of an analogy; `at` counts from 0. */
export function placeInAnalogy(
  text: string,
  id: string,
  part: 'legs' | 'breaksWhere',
  at: number,
  offset: number,
): Place | null {
  const parts = itemOf(text, 'analogies', id)?.get(part);
  const one = isSeq(parts) ? parts.items[at] : undefined;
  const test = isMap(one) ? one.get(part === 'legs' ? 'holds' : 'when', true) : undefined;
  return placeInNode(text, test, offset);
}

function itemOf(text: string, list: string, id: string): YAMLMap | null {
  const items = parseAsText(text).get(list);
  const found = isSeq(items)
    ? items.items.find((item) => isMap(item) && String(item.get('id')).trim() === id)
    : undefined;
  return isMap(found) ? found : null;
}

function placeInNode(text: string, node: unknown, offset: number): Place | null {
  if (!isScalar(node) || !node.range) return null;
  return placeOf(text, offsetInFile(text, node, offset));
}

/** Folding moves only spaces and line ends, so the signs between them keep their number and order. */
function offsetInFile(text: string, node: Scalar, offset: number): number {
  const [start, end] = node.range!;
  const value = String(node.value).trim();
  let left = value.slice(0, offset).replace(/\s/g, '').length;
  let at = start + headOf(text.slice(start, end), node.type);
  // The sign at the place itself, so spaces before it are passed too.
  for (; at < end; at++) {
    if (/\s/.test(text[at]!)) continue;
    if (left === 0) return at;
    left -= signs(text, at, node.type) === 2 ? 0 : 1;
  }
  return Math.max(start, end - 1);
}

/** Signs before the value itself: a quote, or the line of `>-`. */
function headOf(source: string, type: Scalar['type']): number {
  if (type === 'BLOCK_FOLDED' || type === 'BLOCK_LITERAL') return source.indexOf('\n') + 1;
  return type === 'QUOTE_DOUBLE' || type === 'QUOTE_SINGLE' ? 1 : 0;
}

/** A backslash in double quotes, or the first of two single ones, stands for nothing by itself. */
function signs(text: string, at: number, type: Scalar['type']): 1 | 2 {
  if (type === 'QUOTE_DOUBLE' && text[at] === '\\') return 2;
  return type === 'QUOTE_SINGLE' && text[at] === "'" && text[at + 1] === "'" ? 2 : 1;
}

function placeOf(text: string, offset: number): Place {
  const before = text.slice(0, offset);
  const lineStart = before.lastIndexOf('\n') + 1;
  return { line: before.split('\n').length, column: offset - lineStart + 1 };
}
