import { expect, test } from 'vitest';
import { saidOnce } from '../../src/telling/page/saidOnce.ts';

test('only what every list says is common; an empty list says nothing against it', () => {
  const { common, rest } = saidOnce([['a', 'b'], [], ['b', 'c']]);
  expect(common).toEqual(['b']);
  expect(rest(['b', 'c'])).toEqual(['c']);
});

test('a single list says all itself', () => {
  expect(saidOnce([['a', 'b'], []]).common).toEqual([]);
});
