/** Multiples in words: `twice`, `half of`, `a third of`, `two thirds of`, `three times`, `2.5 times`, `22 % of`. */

import { peek, type Reader, takeOneOf, takeWords, wordAt } from './reader.ts';

const COUNTS: readonly (readonly [string, number])[] = (
  [
    'two',
    'three',
    'four',
    'five',
    'six',
    'seven',
    'eight',
    'nine',
    'ten',
    'eleven',
    'twelve',
    'twenty',
    'hundred',
  ] as const
).map((word, i) => [word, i < 11 ? i + 2 : i === 11 ? 20 : 100]);

const PARTS: readonly (readonly [string, number])[] = [
  ['half', 2],
  ['third', 3],
  ['quarter', 4],
  ['fifth', 5],
  ['sixth', 6],
  ['seventh', 7],
  ['eighth', 8],
  ['ninth', 9],
  ['tenth', 10],
  ['hundredth', 100],
];

const SINGLE: readonly (readonly [string, number])[] = [
  ['twice', 2],
  ['double', 2],
  ['thrice', 3],
  ...PARTS.flatMap(([part, over]) => [
    [`one ${part}`, 1 / over] as const,
    [`a ${part}`, 1 / over] as const,
    [`an ${part}`, 1 / over] as const,
  ]),
  ['half', 0.5],
  ['a hundred times', 100],
  ...COUNTS.flatMap(([count, n]) => [
    [`${count} times`, n] as const,
    ...PARTS.map(([part, over]) => [`${count} ${part}s`, n / over] as const),
  ]),
];

/** Takes a multiple in words with what ties it to the next thing (`of`, `as much as`); null where none stands here. */
export function multipleAt(reader: Reader): number | null {
  const share = shareAt(reader);
  if (share !== null) return share;
  const multiple = takeOneOf(reader, SINGLE) ?? numberOfTimes(reader);
  if (multiple === null) return null;
  if (takeWords(reader, 'of')) return multiple;
  if (wordAt(reader) === 'as' && wordAt(reader, 2) === 'as') reader.at += 3;
  return multiple;
}

/** `2.5 times` */
function numberOfTimes(reader: Reader): number | null {
  const token = peek(reader);
  if (token.is !== 'number' || token.unit !== null || wordAt(reader, 1) !== 'times') return null;
  reader.at += 2;
  return token.value;
}

/** `22 % of` */
export function shareStands(reader: Reader): boolean {
  const token = peek(reader);
  return token.is === 'number' && token.percent && wordAt(reader, 1) === 'of';
}

function shareAt(reader: Reader): number | null {
  const token = peek(reader);
  if (!shareStands(reader) || token.is !== 'number') return null;
  reader.at += 2;
  return token.value / 100;
}
