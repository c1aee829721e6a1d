/** The published figures of one engine: rows of quantity, value, place and source, and what they shall settle. */
import { isMap, isSeq } from 'yaml';
import { STANDARD_GRAVITY } from '../physics/constants.ts';
import {
  ambientAt,
  type Cursor,
  choiceAt,
  type Entries,
  entriesAt,
  itemsAt,
  keyOffset,
  offsetAt,
  quantityAt,
  refuseOtherKeys,
  textAt,
} from './cursor.ts';
import { altitudeRange, ambientPressureRange } from './form.ts';
import { roundingOf } from './givenDigits.ts';
import type { Ambient, PublishedRow, Quantity, SolveFor } from './model.ts';
import { nearestName } from './nearest.ts';
import { quantityOver } from './plainQuantity.ts';
import {
  type NamedKind,
  publishedKindOf,
  publishedNames,
  publishedRange,
  publishedRowKeys,
  solveForField,
} from './publishedForm.ts';
import { listNames, quote, type Report } from './report.ts';
import { tradeNameOf } from './tradeNames.ts';
import { parseQuantity } from './units.ts';

const MOST_ROWS = 60;
const rowMend = 'Write { quantity: thrust, value: 800 ± 5 kN, at: vacuum, source: where it was published }.';

/** As read; whether the solved input is stated elsewhere is known only when the whole engine is. */
export interface PublishedDraft {
  readonly rows: readonly PublishedRow[];
  readonly solveFor: Omit<SolveFor, 'stated'> | null;
}

/** A list of rows, or `{ rows, solveFor }`; null where the engine has none or it could not be read. */
export function readPublished(
  cursor: Cursor | undefined,
  sourceIds: readonly string[],
  report: Report,
): PublishedDraft | null {
  if (cursor === undefined) return null;
  if (isSeq(cursor.node)) return { rows: rowsAt(cursor, sourceIds, report), solveFor: null };
  const mend = 'Write a list of rows, or { solveFor: areaRatio, rows: [ … ] }.';
  const entries = entriesAt(cursor, 'a list of published figures', mend, report);
  if (entries === null) return null;
  refuseOtherKeys(entries, ['rows', 'solveFor'], 'published figures', report);
  const rowsCursor = entries.get('rows');
  if (rowsCursor === undefined) {
    missing(cursor, 'rows', `Add rows: [ … ]. ${rowMend}`, report);
    return null;
  }
  const rows = rowsAt(rowsCursor, sourceIds, report);
  const solveAt = entries.get('solveFor');
  const input = solveAt === undefined ? null : choiceAt(solveAt, solveForField, report);
  return { rows, solveFor: input === null ? null : { input, path: solveAt!.path } };
}

function missing(cursor: Cursor, key: string, mend: string, report: Report): void {
  report.problem(
    { code: 'key-missing', what: `${quote(cursor.path)} has no ${key}.`, mend },
    `${cursor.path}.${key}`,
    keyOffset(cursor),
  );
}

function rowsAt(cursor: Cursor, sourceIds: readonly string[], report: Report): readonly PublishedRow[] {
  const items = itemsAt(cursor, 'a list of published figures', `Begin each with a dash. ${rowMend}`, report);
  if (items === null) return [];
  if (items.length === 0 || items.length > MOST_ROWS) {
    const none = items.length === 0;
    report.problem(
      {
        code: none ? 'value-missing' : 'too-many-values',
        what: `${quote(cursor.path)} lists ${none ? 'no' : items.length} published figures; 1 to ${MOST_ROWS} are read.`,
        mend: none ? rowMend : 'Keep those that matter.',
      },
      cursor.path,
      offsetAt(cursor),
    );
    return [];
  }
  return items.flatMap((item) => {
    const entries = entriesAt(item, 'a published figure', rowMend, report);
    return entries === null ? [] : (rowOf(item, entries, sourceIds, report) ?? []);
  });
}

function rowOf(
  item: Cursor,
  entries: Entries,
  sourceIds: readonly string[],
  report: Report,
): PublishedRow | null {
  refuseOtherKeys(entries, publishedRowKeys, 'a published figure', report);
  const needed = (key: string, mend: string): Cursor | null => {
    const at = entries.get(key);
    if (at === undefined) missing(item, key, mend, report);
    return at ?? null;
  };
  const nameAt = needed('quantity', 'Name what is published, e.g. quantity: thrust.');
  const valueAt = needed('value', 'Add the figure with its unit, e.g. value: 800 ± 5 kN.');
  const sourceAt = needed(
    'source',
    'Say where it was published: a key of the study’s sources, or the citation in words.',
  );
  const named = nameAt && kindAt(nameAt, report);
  const source = sourceAt && sourceOf(sourceAt, sourceIds, report);
  if (named === null) return null;
  const read = valueAt && figureOf(valueAt, named, report);
  const place = placeOf(item, entries.get('at'), named, report);
  if (read === null || place === null || source === null) return null;
  return { quantity: named.kind.quantity, ...read, at: place.at, source, path: item.path };
}

function kindAt(cursor: Cursor, report: Report): NamedKind | null {
  const names = `Names: ${listNames(publishedNames)}.`;
  const text = textAt(cursor, 'the name of a quantity', names, report)?.trim();
  if (text === undefined) return null;
  const named = publishedKindOf(text);
  if (named !== null) return named;
  const near = tradeNameOf(text) ?? nearestName(text, publishedNames);
  report.problem(
    {
      code: 'published-quantity-unknown',
      what: `${quote(text)} is not a quantity that published figures are compared with.`,
      mend: `${near === null ? '' : `Did you mean ${near}? `}${names}`,
    },
    cursor.path,
    offsetAt(cursor),
  );
  return null;
}

function figureOf(
  cursor: Cursor,
  { kind }: NamedKind,
  report: Report,
): { readonly value: Quantity; readonly rounding: number } | null {
  const read = quantityAt(cursor, kind.kinds, publishedRange, kind.example, report);
  if (read === null) return null;
  const { kind: found, ...quantity } = read;
  const parsed = parseQuantity(quantity.text, found);
  const rounding = roundingOf(quantity.text, parsed.ok ? parsed.value.unit : '');
  if (found !== 'speed' || kind.quantity !== 'specificImpulse') return { value: quantity, rounding };
  // Thrust per mass flow, in m/s or N·s/kg: I_sp = c / g₀.
  return { value: quantityOver(quantity, STANDARD_GRAVITY), rounding: rounding / STANDARD_GRAVITY };
}

/** The place of a row; null with a problem where it lacks one, or has one that means nothing. */
function placeOf(
  item: Cursor,
  at: Cursor | undefined,
  { name, kind, place }: NamedKind,
  report: Report,
): { readonly at: Ambient | null } | null {
  if (at !== undefined && (place !== null || !kind.placed)) {
    report.problem(
      {
        code: 'published-place-without-meaning',
        what:
          place === null
            ? `“at” has no meaning beside ${name}, which is the same everywhere.`
            : `The name says ${place} already, so “at” would say it twice.`,
        mend: place === null ? 'Delete it.' : `Delete it, or write quantity: ${name}.`,
      },
      at.path,
      keyOffset(at),
    );
    return null;
  }
  if (place === 'vacuum') return { at: { kind: 'vacuum' } };
  if (place === 'sea level') {
    const altitude = { value: 0, plusMinus: null, text: 'sea level', path: item.path, byDefault: false };
    return { at: { kind: 'altitude', altitude } };
  }
  if (!kind.placed) return { at: null };
  if (at === undefined) {
    missing(
      item,
      'at',
      'Say where the figure holds: vacuum, sea level, an altitude such as 5 km, or a pressure such as 0.5 bar.',
      report,
    );
    return null;
  }
  const ambient = ambientAt(at, altitudeRange, ambientPressureRange, report);
  return ambient === null ? null : { at: ambient };
}

/** A key of the study's sources; anything of two words or more is the citation itself. */
function sourceOf(
  cursor: Cursor,
  sourceIds: readonly string[],
  report: Report,
): PublishedRow['source'] | null {
  const mend = 'Write a key of the study’s sources, or the citation in words.';
  const text = isMap(cursor.node) ? null : textAt(cursor, 'a source', mend, report)?.trim();
  if (text === undefined) return null;
  if (text !== null && sourceIds.includes(text)) return { key: text };
  if (text !== null && /\s/.test(text) && text.length <= 500) return { words: text };
  const near = text === null ? null : nearestName(text, sourceIds);
  report.problem(
    {
      code: 'source-unknown',
      what:
        text !== null && text.length > 500
          ? `The citation in ${quote(cursor.path)} has ${text.length} signs; up to 500 are allowed.`
          : `${quote(text ?? 'a map of keys')} is not among the sources of this study, and too short to be a citation in words.`,
      mend: `${near === null ? '' : `Did you mean ${near}? `}Sources of this study: ${listNames(sourceIds)}. ${mend}`,
    },
    cursor.path,
    offsetAt(cursor),
  );
  return null;
}
