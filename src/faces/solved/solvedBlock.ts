/**
 * A solved study as one block of bytes, for the page's first answer: the server works it out while the browser is still starting.
 * Length of the text [uint32, little-endian], the text as JSON filled up with blanks to whole words, then the numbers of all fields.
 */

import type { Ladder, SolvedStudy } from './solvedStudy.ts';

interface WrittenLadder extends Omit<Ladder, 'numbers'> {
  /** How many of the numbers are its own; they stand in the order of the ladders. */ readonly count: number;
}
type Written = Omit<SolvedStudy, 'ladders'> & { readonly ladders: Readonly<Record<string, WrittenLadder>> };

const wordLength = 4;

/** @throws where a number is none: JSON would make nothing of it */
export function writtenSolved(solved: SolvedStudy): Uint8Array<ArrayBuffer> {
  const ladders = Object.entries(solved.ladders);
  const written: Written = {
    ...solved,
    ladders: Object.fromEntries(
      ladders.map(([id, { numbers, ...ladder }]) => [id, { ...ladder, count: numbers.length }]),
    ),
  };
  const text = JSON.stringify(written, (key, value: unknown) => {
    if (typeof value !== 'number' || Number.isFinite(value)) return value;
    throw new Error(`The first answer has no number at ${key}`);
  });
  const bytes = new TextEncoder().encode(text);
  const end = wordLength * Math.ceil((wordLength + bytes.length) / wordLength);
  const count = ladders.reduce((sum, [, { numbers }]) => sum + numbers.length, 0);
  const block = new Uint8Array(end + wordLength * count).fill(0x20, 0, end);
  new DataView(block.buffer).setUint32(0, end - wordLength, true);
  block.set(bytes, wordLength);
  let at = end / wordLength;
  for (const [, { numbers }] of ladders) {
    new Float32Array(block.buffer).set(numbers, at);
    at += numbers.length;
  }
  return block;
}

/** Server and browser are one machine: both keep numbers in the same order of bytes. */
export function readSolved(block: ArrayBuffer): SolvedStudy {
  const length = new DataView(block).getUint32(0, true);
  const { ladders, ...rest } = JSON.parse(
    new TextDecoder().decode(new Uint8Array(block, wordLength, length)),
  ) as Written;
  let at = wordLength + length;
  return {
    ...rest,
    ladders: Object.fromEntries(
      Object.entries(ladders).map(([id, { count, ...ladder }]) => {
        const numbers = new Float32Array(block, at, count);
        at += wordLength * count;
        return [id, { ...ladder, numbers }];
      }),
    ),
  };
}
