import { describe, expect, it } from 'vitest';
import type { Hand } from '../../../src/answer/asked/crewOf.ts';
import type { Ask, Told } from '../../../src/answer/asked/model.ts';
import { steadyCrewOf } from '../../../src/answer/asked/steadyCrewOf.ts';
import { randomStream } from '../../../src/numerics/randomStream.ts';

const ask = (areaRatio: number | null = null): Ask => ({
  engine: 'bell',
  quantity: 'massFlow',
  ambient: null,
  throttle: null,
  station: null,
  inputs: areaRatio === null ? [] : [{ input: 'nozzle.areaRatio', value: areaRatio }],
});
const told = (value: number): Told => ({ ok: true, value, scatter: [], alternatives: [] });

/** Writes down what it is asked, and takes its time, another each time. */
function slowHand(log: string[], seed: number): Hand {
  const chance = randomStream(seed);
  return {
    async work(asks, point) {
      log.push(`${JSON.stringify(point)} ${asks.map(({ inputs }) => inputs[0]?.value ?? '').join(' ')}`);
      await new Promise((resolve) => setTimeout(resolve, 4 * chance()));
      return asks.map(() => told(point.x ?? 0));
    },
  };
}

const points = Array.from({ length: 7 }, (_, x) => ({ x }));

/** Questions side by side, one of them with a second one that waits for its answer, as sweeps and needs ask. */
async function logsWith(seed: number): Promise<readonly (readonly string[])[]> {
  const logs: string[][] = [[], []];
  const crew = steadyCrewOf(logs.map((log, i) => slowHand(log, 2 * seed + i + 1)));
  await Promise.all(
    [10, 20, 30].map(async (ratio) => {
      await crew.tell([ask(ratio)], [{}]);
      await crew.tell([ask(ratio + 1)], [{}, { x: ratio }]);
    }),
  );
  await crew.tell([ask()], points);
  await crew.tell([ask()], [...points].reverse());
  return logs;
}

describe('a steady crew', () => {
  it('gives every hand the same work in the same order, however long each piece takes', async () => {
    const first = await logsWith(1);
    for (let seed = 2; seed <= 12; seed++) expect(await logsWith(seed)).toEqual(first);
  });

  it('gives what was at a point to the same hand again, and shares new points out evenly', async () => {
    const logs = await logsWith(5);
    const hands = points.map(({ x }) =>
      logs.map((log) => log.filter((line) => line === `{"x":${x}} `).length),
    );
    expect(new Set(hands.map(String))).toEqual(new Set(['2,0', '0,2']));
    const [one, two] = [0, 1].map((hand) => hands.filter((counts) => counts[hand] === 2).length);
    expect(Math.abs(one! - two!)).toBeLessThanOrEqual(1);
  });

  it('keeps points in their order', async () => {
    const crew = steadyCrewOf([slowHand([], 1), slowHand([], 2)]);
    const rows = await crew.tell([ask(), ask(3)], points);
    expect(rows.map((row) => row.map((one) => one.ok && one.value))).toEqual(points.map(({ x }) => [x, x]));
  });

  it('hands on what a hand throws, stops when told, and works for the next who asks', async () => {
    const failing: Hand = { work: () => Promise.reject(new Error('hurt')) };
    const hurt = steadyCrewOf([failing, slowHand([], 1)]);
    await expect(hurt.tell([ask()], points)).rejects.toThrow('hurt');

    const log: string[] = [];
    const crew = steadyCrewOf([slowHand(log, 1)]);
    const stop = new AbortController();
    const work = crew.tell([ask()], points, {
      signal: stop.signal,
      onPoint: () => stop.abort(new Error('enough')),
    });
    await expect(work).rejects.toThrow('enough');
    expect(log).toHaveLength(1);
    await expect(crew.tell([ask()], points.slice(0, 2))).resolves.toHaveLength(2);
    expect(() => steadyCrewOf([])).toThrow(RangeError);
  });
});
