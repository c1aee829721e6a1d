import { describe, expect, it } from 'vitest';
import type { Point } from '../../../src/answer/asked/crew.ts';
import { crewOf, type Hand } from '../../../src/answer/asked/crewOf.ts';
import { farHand, type HandAnswer } from '../../../src/answer/asked/farHand.ts';
import type { Ask, Told } from '../../../src/answer/asked/model.ts';
import type { Study } from '../../../src/study/model.ts';

const ask = (engine: string, quantity = 'massFlow'): Ask => ({
  engine,
  quantity,
  ambient: null,
  throttle: null,
  station: null,
  inputs: [],
});
const told = (value: number): Told => ({ ok: true, value, scatter: [], alternatives: [] });

/** Tells the point's `x` times the number in the engine's name. */
function hand(log: string[] = [], name = 'a'): Hand {
  return {
    async work(asks, point) {
      log.push(name);
      await new Promise((resolve) => setTimeout(resolve, 1));
      return asks.map(({ engine }) => told(Number(engine) * (point.x ?? 0)));
    },
  };
}

describe('a crew', () => {
  const asks = [ask('2'), ask('3'), ask('2', 'areaRatio')];
  const points: readonly Point[] = Array.from({ length: 9 }, (_, x) => ({ x }));

  it.each([1, 2, 3])('of %i hands keeps points and asks in their order', async (size) => {
    const crew = crewOf(Array.from({ length: size }, () => hand()));
    const result = await crew.tell(asks, points);
    expect(result.map((row) => row.map((one) => one.ok && one.value))).toEqual(
      points.map(({ x = 0 }) => [2 * x, 3 * x, 2 * x]),
    );
  });

  it('gives every hand something to do, and tells each point once, whole', async () => {
    const log: string[] = [];
    const seen: number[] = [];
    const crew = crewOf([hand(log, 'a'), hand(log, 'b')]);
    await crew.tell(asks, points.slice(0, 1), {
      onPoint: (index, row) => {
        seen.push(index);
        expect(row).toHaveLength(3);
      },
    });
    expect(new Set(log)).toEqual(new Set(['a', 'b']));
    expect(seen).toEqual([0]);
  });

  it('stops at once when told, and works for the next who asks', async () => {
    const crew = crewOf([hand()]);
    const stop = new AbortController();
    const work = crew.tell(asks, points, {
      signal: stop.signal,
      onPoint: () => stop.abort(new Error('enough')),
    });
    await expect(work).rejects.toThrow('enough');
    await expect(crew.tell(asks, points.slice(0, 2))).resolves.toHaveLength(2);
    await expect(crew.tell(asks, points, { signal: stop.signal })).rejects.toThrow('enough');
  });

  it('hands on what a hand throws', async () => {
    const crew = crewOf([{ work: () => Promise.reject(new Error('hurt')) }, hand()]);
    await expect(crew.tell(asks, points)).rejects.toThrow('hurt');
  });
});

describe('a hand far away', () => {
  const study = { engines: [] } as unknown as Study;

  it('sends asks once, and answers by their orders in any sequence', async () => {
    const posted: { kind: string; order?: number }[] = [];
    const far = farHand(study, (order) => posted.push(order), 7);
    const asks = [ask('1')];
    const first = far.work(asks, {});
    const second = far.work(asks, {});
    expect(posted.map(({ kind }) => kind)).toEqual(['study', 'asks', 'work', 'work']);
    const answer = (order: number, value: number, epoch = 7): HandAnswer => ({
      epoch,
      order,
      kind: 'told',
      told: [told(value)],
    });
    far.hear(answer(0, 99, 6));
    far.hear(answer(1, 2));
    far.hear(answer(0, 1));
    await expect(first).resolves.toEqual([told(1)]);
    await expect(second).resolves.toEqual([told(2)]);
  });

  it('ends what is waited for when its thread dies', async () => {
    const far = farHand(study, () => undefined);
    const work = far.work([ask('1')], {});
    far.fail(new Error('gone'));
    await expect(work).rejects.toThrow('gone');
  });
});
