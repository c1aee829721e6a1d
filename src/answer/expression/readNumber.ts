/** Reads a number with its unit. */

import { nearestName } from '../../study/nearest.ts';
import { quote } from '../../study/report.ts';
import { unitSpellings, unitTable } from '../../study/unitTable.ts';
import { NUMBER } from './dimensions.ts';
import { found, peek, type Reader, take } from './reader.ts';
import type { NumberNode, Span } from './tree.ts';
import { refuse } from './trouble.ts';
import { isKeyword } from './vocabulary.ts';

export const plainNumber = (value: number, span: Span, percent = false): NumberNode => ({
  is: 'number',
  value,
  asDifference: value,
  dimension: NUMBER,
  degrees: false,
  percent,
  bare: !percent,
  start: span.start,
  end: span.end,
});

export function readNumber(reader: Reader): NumberNode {
  const token = take(reader);
  if (token.is !== 'number') throw new Error('asked for a number where none stands');
  refuseWhatFollows(reader, token);
  const { value, unit, percent, start, end } = token;
  if (unit === null) return plainNumber(value, token);
  const asDifference = (value * unit.times) / unit.over;
  return {
    is: 'number',
    value: asDifference + (unit.zero ?? 0),
    asDifference,
    dimension: unit.dimension,
    degrees: unit.zero !== undefined,
    percent,
    bare: false,
    start,
    end,
  };
}

/** Digits in groups, a unit nobody knows, a gauge pressure: told as such, not as a missing sign. */
function refuseWhatFollows(reader: Reader, number: Span): void {
  const next = peek(reader);
  if (next.is === 'number') {
    refuse(
      { start: number.start, end: next.end },
      'number-unreadable',
      `${quote(reader.text.slice(number.start, next.end))} is two numbers without a sign between them.`,
      'Write 1450, a point for decimals and nothing between thousands, or put a sign between the two.',
    );
  }
  if (next.is !== 'word' || isKeyword(next.text)) return;
  if (/^(?:bar|psi|kPa|MPa|mbar|Pa)(?:g|gage|gauge)$|^(?:gauge|gage)$/.test(next.text)) {
    refuse(
      next,
      'pressure-gauge',
      `${quote(reader.text.slice(number.start, next.end))} is a gauge pressure, measured above the ambient.`,
      'Pressures are absolute here: add the ambient pressure of the gauge and write bar, MPa or psi.',
    );
  }
  const near = nearestName(next.text, [...unitTable.keys(), ...unitSpellings.keys()]);
  refuse(
    next,
    'unit-unknown',
    `${found(reader)} behind a number is not a known unit.`,
    `${near === null ? '' : `Did you mean ${near}? `}Write a unit such as s, bar, kN or %, or put a sign between the number and what follows.`,
  );
}
