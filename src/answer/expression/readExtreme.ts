/** Reads where a highest or lowest value should lie: `for r from 2 to 4.5 between 3.2 and 3.6`. */

import { ABOUT } from './comparatives.ts';
import {
  expectWords,
  type Reader,
  refuseHere,
  spanFrom,
  standsHere,
  takeOneOf,
  takeWords,
  wordAt,
} from './reader.ts';
import { plainNumber } from './readNumber.ts';
import { readRange } from './readRange.ts';
import type { Expression, Test } from './tree.ts';

export const EXTREMES = [
  ...['highest', 'greatest', 'largest'].map((word) => [word, 'highest'] as const),
  ...['lowest', 'least', 'smallest'].map((word) => [word, 'lowest'] as const),
];

export function extremeHere(reader: Reader): 'highest' | 'lowest' {
  const kind = takeOneOf(reader, EXTREMES);
  if (kind !== null) return kind;
  return refuseHere(
    reader,
    `“highest” or “lowest” is expected here, but ${standsHere(reader)}.`,
    'Write it like has its highest value for r from 2 to 4.5 between 3.2 and 3.6.',
  );
}

/** `for r from 2 to 4.5 between 3.2 and 3.6`, `… above 3.2`, `… below 3.6`, `… about 3.4`. */
export function readPlace(
  reader: Reader,
  kind: 'highest' | 'lowest',
  body: Expression,
  sum: () => Expression,
): Test {
  const range = readRange(reader, sum);
  const limits = readLimits(reader, sum);
  return { is: 'extremePlace', kind, body, range, ...limits, ...spanFrom(reader, body.start) };
}

type Limit = Expression | 'vacuum' | null;

function readLimits(reader: Reader, sum: () => Expression): { readonly low: Limit; readonly high: Limit } {
  const limit = (): Expression | 'vacuum' => (takeWords(reader, 'vacuum') ? 'vacuum' : sum());
  if (takeWords(reader, 'between')) {
    const low = limit();
    expectWords(reader, ['and'], 'between the two limits', 'between 3.2 and 3.6');
    return { low, high: limit() };
  }
  if (takeWords(reader, 'above')) return { low: limit(), high: null };
  if (takeWords(reader, 'below')) return { low: null, high: limit() };
  const share = takeWords(reader, 'about') || takeWords(reader, 'around') ? ABOUT : null;
  if (share !== null) return aroundPlace(sum(), share);
  return refuseHere(
    reader,
    `Behind the range is expected where the ${wordAt(reader) === null ? 'value' : 'place'} should lie, but ${standsHere(reader)}.`,
    'Write it like … is highest for r from 2 to 4.5 between 3.2 and 3.6; above, below and about are known too.',
  );
}

function aroundPlace(middle: Expression, share: number): { readonly low: Limit; readonly high: Limit } {
  const times = (factor: number): Expression => ({
    is: 'binary',
    operator: '*',
    left: plainNumber(factor, middle),
    right: middle,
    start: middle.start,
    end: middle.end,
  });
  return { low: times(1 - share), high: times(1 + share) };
}
