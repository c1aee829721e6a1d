/** One text is worked out once, however many ask for it. */

import { expect, test, vi } from 'vitest';
import { firstAnswerFor } from '../../../src/faces/server/firstAnswer.ts';
import type { StudyFile } from '../../../src/faces/server/studyFile.ts';
import type { FirstPieces } from '../../../src/faces/solved/solveFirst.ts';

const flown = vi.hoisted((): { let: () => void } => ({ let: () => undefined }));
vi.mock('../../../src/faces/solved/solveFirst.ts', () => ({
  async solveFirst(_text: string, _shelf: unknown, tell: FirstPieces) {
    tell.engines(new Uint8Array([1]));
    await new Promise<void>((resolve) => {
      flown.let = resolve;
    });
    tell.flights([]);
  },
}));

test('of two that ask at once neither waits until the other has its flights', async () => {
  const first = firstAnswerFor({
    read: async () => ({ text: 'a study', hash: 'abc', name: 'study' }),
  } as Partial<StudyFile> as StudyFile);
  const told: string[] = [];
  const asked = [0, 1].map(async () => {
    await first.engines('abc');
    told.push('engines');
  });
  await expect.poll(() => told.length).toBe(2);
  const flights = first.flights('abc').then((found) => told.push(found === null ? 'none' : 'flights'));
  flown.let();
  await Promise.all([...asked, flights]);
  expect(told).toEqual(['engines', 'engines', 'flights']);
  await first.close();
});
