/** The numbers of a script as they were last recorded, beside the study: what has moved since. */

import type { NumberPiece } from '../../study/script/model.ts';
import type { ResolvedNumber, ResolvedScript } from './model.ts';
import { linesOf, resolvedNumbersIn } from './resolveScript.ts';

export const RECORD_FORMAT = 'plumeline script numbers 1';

export interface RecordedNumber {
  /** Id of the line. */ readonly line: string;
  readonly expression: string;
  /** Which of the line's numbers with that expression, from 1. */ readonly nth: number;
  /** As it stood in the words. */ readonly text: string;
  /** How it was asked to be told: unit and options. */ readonly form: string;
  readonly unit: string;
  /** [SI], six digits */ readonly value: number;
}

export interface NumbersRecord {
  readonly format: typeof RECORD_FORMAT;
  readonly numbers: readonly RecordedNumber[];
}

export interface MovedNumber {
  readonly line: string;
  readonly expression: string;
  readonly before: string;
  readonly after: string;
  /** Characters of the file. */ readonly from: number;
  readonly to: number;
}

const RECORDED_DIGITS = 6;

/** Only those that have a value. */
export function recordOf(script: ResolvedScript): NumbersRecord {
  const numbers = placedNumbers(script).flatMap(
    ({ key: _key, number: { piece, text, unit, value }, ...place }) =>
      value === null
        ? []
        : [{ ...place, text, form: formOf(piece), unit, value: Number(value.toPrecision(RECORDED_DIGITS)) }],
  );
  return { format: RECORD_FORMAT, numbers };
}

/**
 * Numbers that read otherwise than when they were recorded. Where the line is new, what was recorded of the same expression
 * counts; where a number is told in another way now, it has moved if its value would read otherwise with the digits that it has.
 */
export function movedSince(record: NumbersRecord, script: ResolvedScript): readonly MovedNumber[] {
  const before = new Map(record.numbers.map((one) => [keyOf(one), one]));
  const ofExpression = new Map(record.numbers.map((one) => [one.expression, one]));
  return placedNumbers(script).flatMap(({ key, line, expression, number }) => {
    const known = before.get(key) ?? ofExpression.get(expression);
    if (known === undefined || number.value === null || known.text === number.text) return [];
    if (isSame(known, number, number.value)) return [];
    const { from, to } = number.piece;
    return [{ line, expression, before: known.text, after: number.text, from, to }];
  });
}

function isSame(known: RecordedNumber, { piece, unit, digits }: ResolvedNumber, value: number): boolean {
  const isToldAlike = known.form === formOf(piece) && known.unit === unit;
  const within = isToldAlike ? RECORDED_DIGITS : Math.min(RECORDED_DIGITS, Math.max(1, digits));
  return Number(value.toPrecision(within)) === Number(known.value.toPrecision(within));
}

const formOf = ({ unit, about, spoken, span, bare, digits }: NumberPiece): string =>
  [
    unit === undefined ? '' : `in ${unit}`,
    about ? 'about' : '',
    spoken ? 'spoken' : '',
    span ? 'span' : '',
    bare ? 'bare' : '',
    digits === undefined ? '' : `${digits} digits`,
  ]
    .filter((word) => word !== '')
    .join(', ');

function placedNumbers(script: ResolvedScript) {
  return linesOf(script).flatMap((resolved) => {
    const met = new Map<string, number>();
    return resolvedNumbersIn(resolved).map((number) => {
      const { expression } = number.piece;
      const nth = (met.get(expression) ?? 0) + 1;
      met.set(expression, nth);
      const place = { line: resolved.line.id, expression, nth };
      return { ...place, key: keyOf(place), number };
    });
  });
}

const keyOf = ({ line, expression, nth }: Pick<RecordedNumber, 'line' | 'expression' | 'nth'>): string =>
  JSON.stringify([line, expression, nth]);

/** Null where it is no record that this version reads. */
export function readRecord(text: string): NumbersRecord | null {
  let found: unknown;
  try {
    found = JSON.parse(text);
  } catch {
    return null;
  }
  if (typeof found !== 'object' || found === null || !('format' in found) || !('numbers' in found))
    return null;
  const { format, numbers } = found;
  if (format !== RECORD_FORMAT || !Array.isArray(numbers) || !numbers.every(isRecorded)) return null;
  return { format, numbers };
}

function isRecorded(one: unknown): one is RecordedNumber {
  if (typeof one !== 'object' || one === null) return false;
  const { line, expression, nth, text, form, unit, value } = one as Readonly<Record<string, unknown>>;
  const words = [line, expression, text, form, unit].every((word) => typeof word === 'string');
  return words && Number.isInteger(nth) && typeof value === 'number' && Number.isFinite(value);
}
