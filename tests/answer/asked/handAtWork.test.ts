import { describe, expect, it, vi } from 'vitest';
import type { HandAnswer, HandOrder } from '../../../src/answer/asked/farHand.ts';
import { handAtWork } from '../../../src/answer/asked/handAtWork.ts';
import { openDataShelf } from '../../../src/faces/disk/data.ts';
import { studyOf } from '../solveText.ts';
import { askOf, enginesWith, PRESSURE, RATIO } from '../spread/fakeCrew.ts';

/** A hand whose next piece begins when the test says so. */
async function slowHand(): Promise<{
  readonly answers: HandAnswer[];
  take(this: void, order: HandOrder): void;
  goOn(this: void): void;
}> {
  const answers: HandAnswer[] = [];
  let goOn = (): void => undefined;
  const take = handAtWork({
    shelf: openDataShelf(),
    post: (answer) => answers.push(answer),
    letHear: () =>
      new Promise((resolve) => {
        goOn = resolve;
      }),
  });
  const study = await studyOf(enginesWith('3.5 ± 0.1', '90 bar to 110 bar', '100 bar'));
  take({ kind: 'study', study });
  take({ kind: 'asks', asks: 0, list: [askOf('a')] });
  return { answers, take, goOn: () => goOn() };
}

const work = (order: number, epoch = 1): HandOrder => ({
  kind: 'work',
  epoch,
  order,
  asks: 0,
  point: { [RATIO]: 3.5, [PRESSURE]: 1e7 },
});
const kinds = (answers: readonly HandAnswer[]): readonly string[] =>
  answers.map(({ order, kind }) => `${order} ${kind}`);

describe('a hand at work', () => {
  it('works in the order in which it is asked, one piece at a time', async () => {
    const { answers, take, goOn } = await slowHand();
    for (const order of [0, 1]) take(work(order));
    await vi.waitFor(() => expect(kinds(answers)).toEqual(['0 told']));
    goOn();
    await vi.waitFor(() => expect(kinds(answers)).toEqual(['0 told', '1 told']));
  });

  it('lets go of what is taken back before it has begun, and of nothing else', async () => {
    const { answers, take, goOn } = await slowHand();
    for (const order of [0, 1, 2]) take(work(order));
    await vi.waitFor(() => expect(kinds(answers)).toEqual(['0 told']));
    take({ kind: 'drop', epoch: 1, order: 0 });
    take({ kind: 'drop', epoch: 2, order: 2 });
    take({ kind: 'drop', epoch: 1, order: 1 });
    goOn();
    await vi.waitFor(() => expect(kinds(answers)).toEqual(['0 told', '1 dropped', '2 told']));
  });

  it('forgets what was asked of the study before', async () => {
    const { answers, take, goOn } = await slowHand();
    for (const order of [0, 1]) take(work(order));
    await vi.waitFor(() => expect(kinds(answers)).toEqual(['0 told']));
    take({ kind: 'study', study: await studyOf(enginesWith('3.5', '100 bar', '100 bar')) });
    take({ kind: 'asks', asks: 0, list: [askOf('a')] });
    take(work(5, 2));
    goOn();
    await vi.waitFor(() => expect(kinds(answers)).toEqual(['0 told', '5 told']));
  });

  it('tells of an order without its asks', async () => {
    const { answers, take } = await slowHand();
    take({ ...work(3), asks: 9 } as HandOrder);
    await vi.waitFor(() => expect(kinds(answers)).toEqual(['3 fault']));
  });
});
