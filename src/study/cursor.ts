/** A node of the study's tree with the key before it and its path; and the reading of single values. */
import { isAlias, isMap, isNode, isScalar, isSeq, type Node } from 'yaml';
import { tornValue } from './commaInFlow.ts';
import type { ChoiceField, QuantityField, Range } from './form.ts';
import type { Ambient, Quantity } from './model.ts';
import { nearestName } from './nearest.ts';
import { listNames, quote, type Report } from './report.ts';
import { parseQuantity } from './units.ts';
import type { QuantityKind } from './unitTable.ts';
import { offsetOf } from './yamlText.ts';

export interface Cursor {
  /** Null where a key stands alone, as in `{ a }`. */ readonly node: Node | null;
  readonly key: Node | null;
  readonly path: string;
}

/** Where a message about this value points: the value, or its key where the value is empty. */
export function offsetAt(cursor: Cursor): number | null {
  const empty = cursor.node === null || (isScalar(cursor.node) && cursor.node.value === '');
  return (empty ? null : offsetOf(cursor.node)) ?? offsetOf(cursor.key) ?? offsetOf(cursor.node);
}

export const keyOffset = (cursor: Cursor): number | null => offsetOf(cursor.key) ?? offsetOf(cursor.node);

const joined = (path: string, key: string): string => (path === '' ? key : `${path}.${key}`);

/** What a value is, for messages. */
export function describeFound(cursor: Cursor): string {
  const { node } = cursor;
  if (holdsNothing(cursor)) return 'nothing';
  if (isMap(node)) return 'a map of keys';
  if (isSeq(node)) return 'a list';
  return isScalar(node) ? quote(String(node.value)) : 'something else';
}

const isPlain = (node: Node): boolean => isScalar(node) && node.type === 'PLAIN';
const emptyText = (text: string, plain: boolean): boolean =>
  text.trim() === '' || (plain && (text === '~' || text === 'null'));

/** Nothing stands behind the key, or an empty text. */
export const holdsNothing = ({ node }: Cursor): boolean =>
  node === null || (isScalar(node) && emptyText(String(node.value), isPlain(node)));

/** Aliases have been reported already; nothing more is said about them. */
const reported = (cursor: Cursor): boolean => isAlias(cursor.node);

/** Text of a single value, or null with a problem. */
export function textAt(cursor: Cursor, expected: string, mend: string, report: Report): string | null {
  const { node } = cursor;
  if (reported(cursor)) return null;
  if (isScalar(node) && !emptyText(String(node.value), isPlain(node))) return String(node.value);
  const nothing = node === null || isScalar(node);
  report.problem(
    {
      code: nothing ? 'value-missing' : 'value-of-other-form',
      what: `${quote(cursor.path)} holds ${describeFound(cursor)}; ${expected} is expected.`,
      mend,
    },
    cursor.path,
    offsetAt(cursor),
  );
  return null;
}

export type Entries = ReadonlyMap<string, Cursor>;

/** The entries of a map by key, or null with a problem. A key given twice is a problem; the first counts. */
export function entriesAt(cursor: Cursor, expected: string, mend: string, report: Report): Entries | null {
  const { node } = cursor;
  if (reported(cursor)) return null;
  if (!isMap(node)) {
    report.problem(
      {
        code:
          node === null || (isScalar(node) && node.value === '') ? 'value-missing' : 'value-of-other-form',
        what: `${cursor.path === '' ? 'The study' : quote(cursor.path)} holds ${describeFound(cursor)}; ${expected} is expected.`,
        mend,
      },
      cursor.path,
      offsetAt(cursor) ?? 0,
    );
    return null;
  }
  const entries = new Map<string, Cursor>();
  let taken = 0;
  for (const [index, pair] of node.items.entries()) {
    if (taken > 0) {
      taken -= 1;
      continue;
    }
    if (!isScalar(pair.key) || pair.key.value === '<<') continue;
    const key = String(pair.key.value);
    const path = joined(cursor.path, key);
    const torn = tornValue(node, index);
    if (torn !== null) {
      taken = torn.taken;
      report.problem(
        {
          code: 'decimal-comma',
          what: `${quote(torn.text)} has a comma where a point marks decimals; inside braces a comma begins the next key.`,
          mend: `Write ${key}: ${torn.pointed}, with a point.`,
        },
        path,
        offsetOf(pair.key),
      );
    }
    const value = torn?.node ?? pair.value;
    const found: Cursor = { node: isNode(value) ? value : null, key: pair.key, path };
    const before = entries.get(key);
    if (before === undefined) entries.set(key, found);
    else {
      report.problem(
        {
          code: 'key-twice',
          what: `The key ${quote(key)} stands twice in ${cursor.path === '' ? 'the study' : quote(cursor.path)}.`,
          mend: 'Keep one of the two.',
        },
        path,
        keyOffset(found),
      );
    }
  }
  return entries;
}

/** The items of a list, or null with a problem. */
export function itemsAt(cursor: Cursor, expected: string, mend: string, report: Report): Cursor[] | null {
  const { node } = cursor;
  if (reported(cursor)) return null;
  if (isSeq(node)) {
    return node.items.map((item, i) => ({
      node: isNode(item) ? item : null,
      key: null,
      path: `${cursor.path}[${i}]`,
    }));
  }
  report.problem(
    {
      code: node === null || (isScalar(node) && node.value === '') ? 'value-missing' : 'value-of-other-form',
      what: `${quote(cursor.path)} holds ${describeFound(cursor)}; ${expected} is expected.`,
      mend,
    },
    cursor.path,
    offsetAt(cursor),
  );
  return null;
}

/** Report every key that is not among `allowed`, with the nearest one that is. */
export function refuseOtherKeys(
  entries: Entries,
  allowed: readonly string[],
  section: string,
  report: Report,
): void {
  for (const [key, cursor] of entries) {
    if (allowed.includes(key)) continue;
    const near = nearestName(key, allowed);
    report.problem(
      {
        code: 'key-unknown',
        what: `${quote(key)} is not a key of ${section}.`,
        mend: `${near === null ? '' : `Did you mean ${near}? `}Allowed here: ${listNames(allowed)}.`,
      },
      cursor.path,
      keyOffset(cursor),
    );
  }
}

const outside = (value: number, range: Range): boolean =>
  (range.above !== undefined && value <= range.above) ||
  (range.from !== undefined && value < range.from) ||
  (range.upTo !== undefined && value > range.upTo) ||
  (range.below !== undefined && value >= range.below);

/** A value in plain text, read as one of `kinds` and held to `range`. */
export function quantityAt(
  cursor: Cursor,
  kinds: readonly QuantityKind[],
  range: Range,
  example: string,
  report: Report,
): (Quantity & { readonly kind: QuantityKind }) | null {
  const text = textAt(cursor, 'a value', `Write it like ${example}.`, report);
  if (text === null) return null;
  const parsed = parseQuantity(text, ...kinds);
  if (!parsed.ok) {
    report.problem(parsed.problem, cursor.path, offsetAt(cursor));
    return null;
  }
  const { value, plusMinus, spread, kind } = parsed.value;
  const ends = spread === null ? [] : [spread.low, spread.high];
  if ([value, ...ends].some((each) => outside(each, range))) {
    const percent = kind === 'share' && value > 1 && value <= 100 && !text.includes('%');
    report.problem(
      {
        code: 'value-out-of-range',
        what: `${quote(text)} is outside the range of ${quote(cursor.path)}: ${range.words}.`,
        mend: percent ? `Did you mean ${text.trim()} %?` : `Write a value in that range, e.g. ${example}.`,
        facts: { value },
      },
      cursor.path,
      offsetAt(cursor),
    );
    return null;
  }
  if (plusMinus !== null && (outside(value - plusMinus, range) || outside(value + plusMinus, range))) {
    report.warning(
      {
        code: 'uncertainty-beyond-range',
        what: `The ± of ${quote(text)} reaches outside the range of ${quote(cursor.path)}: ${range.words}.`,
        mend: 'Values outside that range are left out where the ± is taken into account.',
        facts: { value, plusMinus },
      },
      cursor.path,
      offsetAt(cursor),
    );
  }
  return {
    value,
    plusMinus,
    ...(spread && { spread }),
    text: text.trim(),
    path: cursor.path,
    byDefault: false,
    kind,
  };
}

export const fieldQuantityAt = (cursor: Cursor, field: QuantityField, report: Report) =>
  quantityAt(cursor, field.kinds, field.range, field.example, report);

/** The documented default of a field. */
export function defaultQuantity(field: QuantityField, path: string): Quantity {
  const text = field.byDefault ?? '';
  const parsed = parseQuantity(text, ...field.kinds);
  if (!parsed.ok) throw new Error(`default of ${path} cannot be read: ${text}`);
  return { value: parsed.value.value, plusMinus: parsed.value.plusMinus, text, path, byDefault: true };
}

/** One of a few words. */
export function choiceAt<T extends string>(
  cursor: Cursor,
  field: Omit<ChoiceField, 'options'> & { readonly options: readonly T[] },
  report: Report,
): T | null {
  const mend = `Allowed here: ${listNames(field.options)}.`;
  const text = textAt(cursor, 'a word', mend, report)?.trim();
  if (text === undefined) return null;
  const found = field.options.find((option: string): option is T => option === text);
  if (found !== undefined) return found;
  const near = nearestName(text, field.options);
  report.problem(
    {
      code: 'word-unknown',
      what: `${quote(text)} is not known for ${quote(cursor.path)}.`,
      mend: `${near === null ? '' : `Did you mean ${near}? `}${mend}`,
    },
    cursor.path,
    offsetAt(cursor),
  );
  return null;
}

/** `vacuum`, `sea level`, an altitude or a pressure. */
export function ambientAt(
  cursor: Cursor,
  altitudeRange: Range,
  pressureRange: Range,
  report: Report,
): Ambient | null {
  const mend = 'Write vacuum, sea level, an altitude such as 5 km, or a pressure such as 0.5 bar.';
  const text = textAt(cursor, 'a place', mend, report)?.trim();
  if (text === undefined) return null;
  const words = text.toLowerCase().replace(/[\s\u00a0_-]+/g, ' ');
  if (words === 'vacuum') return { kind: 'vacuum' };
  if (words === 'sea level') {
    const altitude = { value: 0, plusMinus: null, text, path: cursor.path, byDefault: false };
    return { kind: 'altitude', altitude };
  }
  const parsed = parseQuantity(text, 'length', 'pressure');
  if (!parsed.ok) {
    const near = /^[\p{L}\s-]+$/u.test(text) ? nearestName(text, ['vacuum', 'sea level']) : null;
    const problem =
      parsed.problem.code === 'number-unreadable'
        ? {
            code: 'place-unknown',
            what: `${quote(text)} is not a place where an engine works.`,
            mend: `${near === null ? '' : `Did you mean ${near}? `}${mend}`,
          }
        : parsed.problem;
    report.problem(problem, cursor.path, offsetAt(cursor));
    return null;
  }
  const range = parsed.value.kind === 'length' ? altitudeRange : pressureRange;
  const example = parsed.value.kind === 'length' ? '5 km' : '0.5 bar';
  const read = quantityAt(cursor, [parsed.value.kind], range, example, report);
  if (read === null) return null;
  const { kind, ...quantity } = read;
  return kind === 'length'
    ? { kind: 'altitude', altitude: quantity }
    : { kind: 'pressure', pressure: quantity };
}
