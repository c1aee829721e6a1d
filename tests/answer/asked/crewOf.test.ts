import { describe, expect, it, vi } from 'vitest';
import type { Point } from '../../../src/answer/asked/crew.ts';
import { crewOf, type Hand } from '../../../src/answer/asked/crewOf.ts';
import { farHand, type HandAnswer, type HandOrder } from '../../../src/answer/asked/farHand.ts';
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

  it('gives a hand its next piece before it is done with the one at work, but the last ones to hands that stand idle', async () => {
    const given: { hand: string; doing: number }[] = [];
    const eager = (name: string): Hand => {
      let doing = 0;
      return {
        ahead: 1,
        async work(list, _point) {
          given.push({ hand: name, doing: doing++ });
          await new Promise((resolve) => setTimeout(resolve, 2));
          doing -= 1;
          return list.map(() => told(1));
        },
      };
    };
    await crewOf([eager('a'), eager('b')]).tell(asks, points);
    expect(given.slice(0, 4).map(({ hand: name }) => name)).toEqual(['a', 'b', 'a', 'b']);
    expect(given.slice(2, 4).map(({ doing }) => doing)).toEqual([1, 1]);
    expect(Math.max(...given.map(({ doing }) => doing))).toBe(1);
    expect(given.slice(-2).map(({ doing }) => doing)).toEqual([0, 0]);
  });

  it('takes back what has not begun when it is stopped', async () => {
    const posted: HandOrder[] = [];
    const far = farHand({ engines: [] } as unknown as Study, (order) => posted.push(order), 1);
    const stop = new AbortController();
    const work = crewOf([far]).tell(asks, points, { signal: stop.signal });
    await vi.waitFor(() => expect(posted.filter(({ kind }) => kind === 'work')).toHaveLength(2));
    stop.abort(new Error('enough'));
    await expect(work).rejects.toThrow('enough');
    expect(posted.filter(({ kind }) => kind === 'drop')).toHaveLength(2);
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
