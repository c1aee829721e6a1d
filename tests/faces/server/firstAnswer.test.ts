/** One text is worked out once, however many ask for it. */

import { expect, test, vi } from 'vitest';
import { firstAnswerFor } from '../../../src/faces/server/firstAnswer.ts';
import type { StudyFile } from '../../../src/faces/server/studyFile.ts';
import type { FirstPieces } from '../../../src/faces/solved/solveFirst.ts';

const flown = vi.hoisted((): { let: () => void } => ({ let: () => undefined }));
vi.mock('../../../src/faces/solved/solveFirst.ts', () => ({
  async solveFirst(_text: string, _shelf: unknown, tell: FirstPieces) {
    tell.piece(new Uint8Array([1]));
    tell.piece(new Uint8Array([2]));
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
    for (const which of [0, 1]) told.push(`${(await first.piece('abc', which))?.[0]}`);
  });
  await expect.poll(() => told.length).toBe(4);
  const flights = first.flights('abc').then((found) => told.push(found === null ? 'none' : 'flights'));
  const none = first.piece('abc', 2).then((piece) => told.push(piece === null ? 'no more' : 'more'));
  flown.let();
  await Promise.all([...asked, flights, none]);
  expect([...told].sort()).toEqual(['1', '1', '2', '2', 'flights', 'no more']);
  await first.close();
});
