import { describe, expect, it } from 'vitest';
import type { Told } from '../../../src/answer/asked/model.ts';
import { type Drawn, drawAsks, mattersMost, shareOf, spanOf } from '../../../src/answer/spread/index.ts';
import { normalQuantile } from '../../../src/numerics/normalQuantile.ts';
import { studyOf } from '../solveText.ts';
import { askOf, enginesWith, fakeCrew, OTHER, PRESSURE, RATIO } from './fakeCrew.ts';

const exact = await studyOf(enginesWith('3.5', '100 bar', '90 bar'));
const spreadOut = await studyOf(
  enginesWith('3.5 ± 0.2', '90 to 110 bar', '80 to 100 bar most likely 95 bar'),
);
const [a, b] = [askOf('a'), askOf('b')];

function momentsOf({ asks }: Drawn, which = 0): { readonly mean: number; readonly deviation: number } {
  const { values } = asks[which]!;
  const mean = values.reduce((sum, x) => sum + x, 0) / values.length;
  const square = values.reduce((sum, x) => sum + (x - mean) ** 2, 0) / values.length;
  return { mean, deviation: Math.sqrt(square) };
}

describe('inputs as stated', () => {
  it('are drawn as stated: normal with two deviations a ±, even, triangular', async () => {
    const crew = fakeCrew(({ quantity }, point) => point[quantity] ?? Number.NaN);
    const asks = [RATIO, PRESSURE, OTHER].map((path, i) => askOf(i === 2 ? 'b' : 'a', path));
    const told = fakeCrew(
      ({ quantity }, point) =>
        point[quantity] ?? { [RATIO]: 3.5, [PRESSURE]: 1e7, [OTHER]: 9.5e6 }[quantity]!,
    );
    expect(crew.size).toBe(1);
    const drawn = await drawAsks(spreadOut, asks, told);
    // Normal cut at three deviations: its deviation is 0.9866 of the uncut one's.
    expect(momentsOf(drawn, 0).mean).toBeCloseTo(3.5, 3);
    expect(momentsOf(drawn, 0).deviation).toBeCloseTo(0.1 * 0.9866, 3);
    expect(momentsOf(drawn, 1).mean / 1e7).toBeCloseTo(1, 3);
    expect(momentsOf(drawn, 1).deviation / (2e6 / Math.sqrt(12))).toBeCloseTo(1, 2);
    // Triangle of 80, 95, 100: mean 91.667, variance (a² + b² + c² − ab − ac − bc)/18.
    expect(momentsOf(drawn, 2).mean / 1e5).toBeCloseTo(275 / 3, 1);
    const variance = (80 ** 2 + 95 ** 2 + 100 ** 2 - 80 * 95 - 80 * 100 - 95 * 100) / 18;
    expect(momentsOf(drawn, 2).deviation / 1e5).toBeCloseTo(Math.sqrt(variance), 1);
  });

  it('that are exact leave one number, and no surface', async () => {
    const drawn = await drawAsks(
      exact,
      [a],
      fakeCrew(() => 7),
    );
    expect(drawn).toMatchObject({ method: 'exact', solved: 1, provisional: false, unknowns: [] });
    expect(new Set(drawn.asks[0]!.values)).toEqual(new Set([7]));
  });

  it('that two engines share cancel in their difference', async () => {
    const crew = fakeCrew(({ engine }, { [RATIO]: ratio = 3.5 }) => 100 * ratio + (engine === 'b' ? 1 : 0));
    const drawn = await drawAsks(spreadOut, [a, b], crew);
    const [least, most] = spanOf(drawn, drawn.asks, ([x, y]) => y! - x!, [0, 1])!;
    expect(least).toBeCloseTo(1, 8);
    expect(most).toBeCloseTo(1, 8);
    expect(momentsOf(drawn).deviation).toBeGreaterThan(5);
  });

  it('are one unknown where they are inherited, and none where no asked engine hangs on them', async () => {
    const drawn = await drawAsks(
      spreadOut,
      [a],
      fakeCrew(() => 1),
    );
    expect(drawn.unknowns.map((each) => each.kind === 'input' && each.path)).toEqual([RATIO, PRESSURE]);
  });
});

describe('the share in which a test holds', () => {
  const linear = fakeCrew((_, { [RATIO]: ratio = 3.5 }) => 10 * ratio);

  it.each([-2, -1, 0, 0.5, 1.645, 2])('is that of the normal law %f deviations off', async (deviations) => {
    const drawn = await drawAsks(spreadOut, [a], linear);
    const limit = 10 * (3.5 + 0.1 * deviations);
    const { share, error } = shareOf(drawn, drawn.asks, ([x]) => x! > limit);
    // Share of a normal law cut at three deviations that lies above.
    const cut = chanceBelow(3) - chanceBelow(-3);
    const expected = (chanceBelow(3) - chanceBelow(deviations)) / cut;
    expect(Math.abs(share! - expected)).toBeLessThan(4 * error + 2e-3);
    expect(error).toBeLessThan(0.01);
  });

  it('has an error that is honest: over many seeds the misses are of its size', async () => {
    const product = fakeCrew((_, { [RATIO]: r = 3.5, [PRESSURE]: p = 1e7 }) => r * p);
    const shares: number[] = [];
    const errors: number[] = [];
    for (let seed = 1; seed <= 24; seed++) {
      const drawn = await drawAsks(spreadOut, [a], product, { seed });
      const { share, error } = shareOf(drawn, drawn.asks, ([x]) => x! > 3.6e7);
      shares.push(share!);
      errors.push(error);
    }
    const mean = shares.reduce((sum, x) => sum + x, 0) / shares.length;
    const scatter = Math.sqrt(shares.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (shares.length - 1));
    const told = Math.sqrt(errors.reduce((sum, x) => sum + x * x, 0) / errors.length);
    expect(scatter).toBeLessThan(2 * told);
    expect(scatter).toBeGreaterThan(0.3 * told);
  });

  it('counts only where it can be decided', async () => {
    const partly = fakeCrew((_, { [RATIO]: r = 3.5 }): Told | number =>
      r > 3.5 ? { ok: false, problem: { code: 'x', what: 'none here', mend: 'none' } } : r,
    );
    const drawn = await drawAsks(spreadOut, [a], partly);
    const { share, undecided } = shareOf(drawn, drawn.asks, ([x]) => (x === null ? null : x! > 0));
    expect(share).toBe(1);
    expect(undecided).toBeGreaterThan(0.3);
    expect(undecided).toBeLessThan(0.7);
  });
});

describe('errors of models', () => {
  const scattered = (value: number, name: string, half: number): Told => ({
    ok: true,
    value,
    scatter: [{ name, low: value - half, high: value + half, source: 'invented' }],
    alternatives: [],
  });

  it('hold 95 % within their band, and are drawn once for all numbers that share their name', async () => {
    const crew = fakeCrew(({ engine }) => scattered(engine === 'a' ? 100 : 130, 'friction', 10));
    const drawn = await drawAsks(exact, [a, b], crew);
    const [low, high] = spanOf(drawn, drawn.asks, ([x]) => x!)!;
    expect(low).toBeGreaterThan(89.8);
    expect(low).toBeLessThan(90.8);
    expect(high).toBeCloseTo(200 - low!, 0);
    const [least, most] = spanOf(drawn, drawn.asks, ([x, y]) => y! - x!, [0, 1])!;
    expect(least).toBeCloseTo(30, 10);
    expect(most).toBeCloseTo(30, 10);
  });

  it('are independent where their names differ', async () => {
    const crew = fakeCrew(({ engine }) => scattered(100, engine!, 10));
    const drawn = await drawAsks(exact, [a, b], crew);
    const { share } = shareOf(drawn, drawn.asks, ([x, y]) => x! > y!);
    expect(share).toBeCloseTo(0.5, 1);
  });

  it('matter by the squares of what they move', async () => {
    const crew = fakeCrew(({ engine }, { [RATIO]: r = 3.5 }) => scattered(10 * r, `of ${engine}`, 4));
    const drawn = await drawAsks(spreadOut, [a], crew);
    // The ± moves it by 2 and the model by 4 at two deviations: 4 and 16 of 20.
    const [first, second] = mattersMost(drawn, [0], ([x]) => x!);
    expect(first!.unknown).toMatchObject({ kind: 'model', name: 'of a' });
    expect(Math.abs(first!.share - 0.8)).toBeLessThan(4 * first!.error);
    expect(Math.abs(second!.share - 0.2)).toBeLessThan(4 * second!.error);
    expect(first!.error).toBeLessThan(0.05);
  });
});

describe('what matters most', () => {
  it('is not told of a number that has no value at some points, and is of one beside it', async () => {
    const none = { ok: false, problem: { code: 'no-value', what: 'None here.', mend: 'None.' } } as const;
    const crew = fakeCrew(({ engine }, { [RATIO]: r = 3.5 }) => (engine === 'b' && r > 3.55 ? none : 10 * r));
    const drawn = await drawAsks(spreadOut, [a, b], crew);
    expect(mattersMost(drawn, [1], ([x]) => x!)).toEqual([]);
    // One that is there in any case, by another number, would hang on where the first ends.
    expect(mattersMost(drawn, [0, 1], ([x, y]) => y ?? 2 * x!)).toEqual([]);
    expect(drawn.at(drawn.placeOf([0.5, 0.5, 0.5]), [1])).toEqual([null]);
    expect(mattersMost(drawn, [0], ([x]) => x!)[0]!.unknown).toMatchObject({ kind: 'input' });
  });

  it('leaves out a number that has no value anywhere', async () => {
    const none = { ok: false, problem: { code: 'no-value', what: 'None.', mend: 'None.' } } as const;
    const crew = fakeCrew(({ engine }, { [RATIO]: r = 3.5 }) => (engine === 'b' ? none : 10 * r));
    const drawn = await drawAsks(spreadOut, [a, b], crew);
    expect(mattersMost(drawn, [0, 1], ([x, y]) => y ?? x!)[0]!.share).toBeCloseTo(1, 1);
  });
});

describe('alternatives', () => {
  it('are drawn beside each other, each under its own name', async () => {
    const crew = fakeCrew(({ engine }): Told | number =>
      engine === 'b'
        ? 5
        : {
            ok: true,
            value: 1,
            scatter: [],
            alternatives: [
              { of: 'criterion', by: 'one', value: 1 },
              { of: 'criterion', by: 'other', value: 9 },
            ],
          },
    );
    const drawn = await drawAsks(exact, [a, b], crew);
    expect(drawn.alternatives.map(({ by, asks }) => [by, asks[0]!.values[3], asks[1]!.values[3]])).toEqual([
      ['one', 1, 5],
      ['other', 9, 5],
    ]);
    expect(drawn.alternatives[0]!.asks[1]).toBe(drawn.asks[1]);
  });
});

describe('the response surface', () => {
  it('of a smooth function misses fresh points by about what it says', async () => {
    const f = (r: number, p: number): number => Math.exp(0.8 * r) * Math.sqrt(p / 1e7);
    const crew = fakeCrew((_, { [RATIO]: r = 3.5, [PRESSURE]: p = 1e7 }) => f(r, p));
    const drawn = await drawAsks(spreadOut, [a], crew);
    const { surfaceError } = drawn.asks[0]!;
    expect(surfaceError).toBeGreaterThan(0);
    expect(surfaceError).toBeLessThan(0.03 * momentsOf(drawn).deviation);
    let worst = 0;
    for (const [u, v] of [
      [0.2, 0.3],
      [0.7, 0.9],
      [0.5, 0.1],
      [0.9, 0.6],
    ] as const) {
      const value = drawn.at(drawn.placeOf([u, v]), [0])[0]!;
      const chance = chanceBelow(-3) + u * (chanceBelow(3) - chanceBelow(-3));
      worst = Math.max(worst, Math.abs(value - f(3.5 + 0.1 * normalQuantile(chance), 9e6 + v * 2e6)));
    }
    expect(worst).toBeLessThan(4 * surfaceError);
  });

  it('misses alike what two engines have in common: it cancels in their difference', async () => {
    // No polynomial follows the kink, and both engines have it; half of one misses half as much.
    const kink = (r: number): number => Math.abs(r - 3.47);
    const crew = fakeCrew(
      ({ engine }, { [RATIO]: r = 3.5 }) => (engine === 'a' ? 1 : 0.5) * kink(r) + (engine === 'a' ? 0 : 7),
    );
    const drawn = await drawAsks(spreadOut, [a, b], crew);
    expect(drawn.asks[0]!.surfaceError).toBeGreaterThan(1e-3);
    expect(drawn.asks[1]!.surfaceError / drawn.asks[0]!.surfaceError).toBeCloseTo(0.5, 6);
    const [least, most] = spanOf(drawn, drawn.asks, ([x, y]) => y! - 0.5 * x!, [0, 1])!;
    expect(least).toBeCloseTo(7, 9);
    expect(most).toBeCloseTo(7, 9);
  });

  it('of a step says that it misses it', async () => {
    const crew = fakeCrew((_, { [RATIO]: r = 3.5, [PRESSURE]: p = 1e7 }) => (r + p / 1e8 > 3.63 ? 1 : 0));
    const drawn = await drawAsks(spreadOut, [a], crew);
    expect(drawn.asks[0]!.surfaceError).toBeGreaterThan(0.1);
  });

  it('gives way to engines solved in every draw where it misses and the limit allows', async () => {
    const jump = (r: number, p: number): number => (r + p / 1e8 > 3.63 ? 1 : 0);
    const crew = fakeCrew((_, { [RATIO]: r = 3.5, [PRESSURE]: p = 1e7 }): Told | number =>
      p > 1.09e7 ? { ok: false, problem: { code: 'x', what: 'none here', mend: 'none' } } : jump(r, p),
    );
    const drawn = await drawAsks(spreadOut, [a], crew, { mostSolved: 1024 });
    expect(drawn).toMatchObject({ method: 'exact', provisional: false });
    const { values, absent, surfaceError } = drawn.asks[0]!;
    expect(surfaceError).toBe(0);
    expect(new Set(values)).toEqual(new Set([0, 1]));
    // One twentieth of the pressures has no value; a block of 128 has one draw in each 128th of them.
    expect(Math.abs(absent!.reduce((sum, one) => sum + one, 0) / 1024 - 0.05)).toBeLessThan(1 / 128);
    // r > 3.63 − p/1e8, the pressure even from 90 to 109 bar, r normal about 3.5 by 0.1, cut at three deviations.
    let expected = 0;
    for (let i = 0; i < 400; i++) {
      const deviations = (0.13 - (0.09 + (0.019 * (i + 0.5)) / 400)) / 0.1;
      expected += (chanceBelow(3) - chanceBelow(deviations)) / (chanceBelow(3) - chanceBelow(-3)) / 400;
    }
    const { share, error } = shareOf(drawn, drawn.asks, ([x]) => (x === null ? null : x! > 0.5));
    expect(Math.abs(share! - expected)).toBeLessThan(4 * error + 1e-3);
    expect(error).toBeLessThan(0.01);
  });

  it('comes after a provisional answer, and stops when told', async () => {
    const seen: boolean[] = [];
    const crew = fakeCrew((_, { [RATIO]: r = 3.5 }) => r);
    const last = await drawAsks(spreadOut, [a], crew, {
      onProvisional: ({ provisional }) => seen.push(provisional),
    });
    expect(seen[0]).toBe(true);
    expect(last.provisional).toBe(false);
    const stop = new AbortController();
    await expect(
      drawAsks(spreadOut, [a], crew, {
        signal: stop.signal,
        onProvisional: () => stop.abort(new Error('enough')),
      }),
    ).rejects.toThrow('enough');
  });
});

/** Φ by Simpson's rule: another road than the quantile's. */
function chanceBelow(z: number): number {
  const steps = 2000;
  const from = -10;
  const h = (z - from) / steps;
  const density = (x: number): number => Math.exp(-0.5 * x * x) / Math.sqrt(2 * Math.PI);
  let sum = density(from) + density(z);
  for (let i = 1; i < steps; i++) sum += (i % 2 === 1 ? 4 : 2) * density(from + i * h);
  return (sum * h) / 3;
}
