import { expect, test } from 'vitest';
import { partsOf } from '../../../../src/physics/euler/kernel/share.ts';

const blocks = [
  { words: 1, ni: 64, nj: 16 },
  { words: 2, ni: 100, nj: 40 },
  { words: 3, ni: 8, nj: 5 },
];

test.each([1, 2, 3, 7])('each row of each block is one of %i threads’ alone', (threads) => {
  const owners = blocks.map(({ nj }) => Array.from({ length: nj }, () => 0));
  for (let hand = 0; hand < threads; hand++)
    for (const { block, words, from, to } of partsOf(blocks, { blocks: [0, 1, 2], threads }, hand)) {
      expect(words).toBe(blocks[block]!.words);
      for (let j = from; j < to; j++) owners[block]![j] = owners[block]![j]! + 1;
    }
  expect(owners.flat().every((count) => count === 1)).toBe(true);
});

test.each([2, 3, 7])('%i threads have the same number of cells but for a row', (threads) => {
  const all = blocks.reduce((sum, { ni, nj }) => sum + ni * nj, 0);
  for (let hand = 0; hand < threads; hand++) {
    const own = partsOf(blocks, { blocks: [0, 1, 2], threads }, hand).reduce(
      (sum, { block, from, to }) => sum + (to - from) * blocks[block]!.ni,
      0,
    );
    expect(Math.abs(own - all / threads)).toBeLessThanOrEqual(100);
  }
});
