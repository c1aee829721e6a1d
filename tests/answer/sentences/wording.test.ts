import { describe, expect, test } from 'vitest';
import { UNIT } from '../../../src/answer/catalogue/entry.ts';
import { compileTest, scopeOf } from '../../../src/answer/expression/index.ts';
import { moreWords, timesWords } from '../../../src/answer/sentences/ratioWords.ts';
import { spanWords } from '../../../src/answer/sentences/spanWords.ts';
import { randomFrom } from '../../campaigns/random.ts';
import { studyOf } from '../solveText.ts';
import { enginesWith } from '../spread/fakeCrew.ts';
import { checkOne, isOf, z } from './closedForms.ts';

const said = (text: string): string => text.replaceAll('\u00a0', ' ');

describe('spans', () => {
  test.each([
    [0.031, 0.0485, UNIT.percent, 'between 3 and 5 %'],
    [0.6372, 3.8389, UNIT.second, 'between 0.5 and 4 s'],
    [349, 351, UNIT.second, 'about 350 s'],
    [47e5, 48e5, UNIT.bar, 'between 47 and 48 bar'],
    [-3.2, -2.1, UNIT.second, 'between −3.5 and −2 s'],
    [12, 12, UNIT.second, '12 s'],
    [0, 0, UNIT.second, '0 s'],
    [0.0012, 0.0041, UNIT.one, 'between 0.001 and 0.005'],
    // What is not the whole is not told as the whole.
    [0.995, 0.995, UNIT.percent, '99.5 %'],
    [0.992, 0.998, UNIT.percent, 'about 99.5 %'],
    [0.9997, 0.9998, UNIT.percent, 'about 100 %'],
    [0.996, 1.004, UNIT.percent, 'about 100 %'],
    [1.004, 1.004, UNIT.percent, '100.4 %'],
    [1.2285, 1.2405, UNIT.percent, 'between 122.8 and 124.2 %'],
  ] as const)('%f to %f', (low, high, unit, words) => {
    expect(said(spanWords(low, high, unit).words)).toBe(words);
  });

  test.each([
    [Number.NaN, 1],
    [1, Number.NaN],
    [1, Number.POSITIVE_INFINITY],
    [2, 1],
  ])('from %f to %f are none', (low, high) => {
    expect(() => spanWords(low, high, UNIT.second)).toThrow(RangeError);
  });

  test('are never narrower than the truth, keep a sure sign, and are at most half as wide again', () => {
    const random = randomFrom(7);
    for (let i = 0; i < 3000; i++) {
      const size = 10 ** random.between(-4, 4);
      const middle = random.between(-10, 10) * size;
      const [low, high] = [middle - random.between(0, 1) * size, middle + random.between(0, 1) * size];
      const span = spanWords(low, high, UNIT.one);
      const slack = 1e-9 * Math.max(Math.abs(low), Math.abs(high));
      expect(span.low).toBeLessThanOrEqual(low + slack);
      expect(span.high).toBeGreaterThanOrEqual(high - slack);
      if (low > 0) expect(span.low).toBeGreaterThan(0);
      if (high < 0) expect(span.high).toBeLessThan(0);
      const about = span.words.startsWith('about');
      if (!about) expect(span.high - span.low).toBeLessThanOrEqual(1.5 * (high - low) + slack);
    }
  });
});

describe('parts and multiples', () => {
  test.each([
    [0.32, 0.35, 'about a third of'],
    [0.48, 0.51, 'about half'],
    [2.02, 2.1, 'a little more than twice'],
    [1.95, 1.99, 'a little less than twice'],
    [2.9, 3.1, 'about three times'],
    [0.5, 0.5, 'half'],
    [1.41, 1.59, 'between 1.4 and 1.6 times'],
  ])('%f to %f times', (low, high, words) => {
    const span = timesWords(low, high);
    expect(span.words).toBe(words);
    expect(span.low).toBeLessThanOrEqual(low + 1e-6);
    expect(span.high).toBeGreaterThanOrEqual(high - 1e-6);
  });
  test.each([
    [0.031, 0.049, 'between 3 and 5 % more than'],
    [-0.049, -0.031, 'between 3 and 5 % less than'],
    [0.32, 0.34, 'about a third more than'],
    [-0.51, -0.49, 'between 49 and 51 % less than'],
    [0.51, 0.53, 'between 51 and 53 % more than'],
    [0.335, 0.345, 'about 34 % more than'],
    [-0.475, -0.465, 'about 47 % less than'],
    [1.02, 1.05, 'a little more than twice'],
    [-0.012, 0.034, 'anything from 1.2 % less to 4 % more than'],
  ])('%f to %f more', (low, high, words) => {
    const span = moreWords(low, high);
    expect(said(span.words)).toBe(words);
    expect(span.low).toBeLessThanOrEqual(low + 1e-6);
    expect(span.high).toBeGreaterThanOrEqual(high - 1e-6);
  });
});

describe('what may be said', () => {
  test('a value with its band', async () => {
    const found = await checkOne({ holds: 'a.massFlow > 90 kg/s' }, (_, point) => 100 + 3 * z(point));
    // 95 % of a normal law with σ = 3 lie within ± 5.88.
    expect(said(found.wording!)).toMatch(/^The propellant flow of a is between 9[34] and 10[67] kg\/s\.$/);
    expect(found.numbers[0]).toMatchObject({ expression: 'a.massFlow', quantity: 'massFlow', value: 100 });
    expect(found.numbers[0]!.low).toBeCloseTo(94.1, 0);
    expect(found.numbers[0]!.high).toBeCloseTo(105.9, 0);
  });

  test('a comparison tells by how much; what fails, what is true instead', async () => {
    const fake = (ask: Parameters<typeof isOf>[0], point: Readonly<Record<string, number>>): number =>
      isOf(ask, 'a') ? 100 : 110 + z(point);
    const holds = await checkOne({ holds: 'b.massFlow > a.massFlow' }, fake);
    expect(said(holds.wording!)).toBe('The propellant flow of b is between 8 and 12 % more than that of a.');
    const fails = await checkOne({ holds: 'a.massFlow > b.massFlow' }, fake);
    expect(fails).toMatchObject({ verdict: 'don’t say', wording: null });
    expect(said(fails.instead!)).toMatch(
      /^The propellant flow of a is between \d+\.?\d* and \d+\.?\d* % less than that of b\.$/,
    );
  });

  test('an amount put off the other side is the claim; how far they are apart is told', async () => {
    const found = await checkOne({ holds: 'a.massFlow > b.massFlow - 30 kg/s' }, (ask, point) =>
      isOf(ask, 'a') ? 100 : 110 + z(point),
    );
    expect(said(found.wording!)).toBe(
      'The propellant flow of a is between 8 and 12 kg/s less than that of b.',
    );
  });

  test('is itself a test that holds over 95 % of the draws', async () => {
    const study = await studyOf(enginesWith('3.5 ± 0.1', '100 bar', '100 bar'));
    for (const holds of [
      'a.massFlow > 97 kg/s',
      'a.massFlow > b.massFlow',
      'a.massFlow - b.massFlow > 5 kg/s',
      'a.massFlow > twice b.massFlow',
      'a.massFlow / b.massFlow < 1.1',
      'a.massFlow - b.massFlow > b.massFlow / 4',
    ]) {
      const values = (point: number): number[] => [100 + 3 * point, 80 - point];
      const found = await checkOne({ holds }, (ask, point) => values(z(point))[isOf(ask, 'a') ? 0 : 1]!);
      const compiled = compileTest(found.wordingHolds ?? '', scopeOf(study));
      if (!compiled.ok) throw new Error(`${found.wordingHolds}: ${compiled.problem.what}`);
      const order = compiled.value.asks.map(({ engine }) => (engine === 'a' ? 0 : 1));
      // Quantiles of the normal law: of 399 steps through it, 95 % must hold.
      const inside = Array.from({ length: 399 }, (_, i) => quantile((i + 1) / 400)).filter(
        (x) => compiled.value.holds(order.map((which) => values(x)[which]!)) === true,
      );
      expect(inside.length / 399, `${holds}: ${found.wordingHolds}`).toBeGreaterThan(0.945);
    }
  });

  test('over a range: where it comes closest, where it fails, what it does there', async () => {
    const over = (ask: Parameters<typeof isOf>[0]): number => {
      const { ambient } = ask;
      const km = ambient?.kind === 'altitude' ? ambient.altitude / 1000 : 120;
      return isOf(ask, 'a', 'thrust') ? 1e5 * (1 + ((km - 20) / 100) ** 2) : 1.1e5;
    };
    const falls = await checkOne(
      { holds: 'a.thrust(z) rises for z from 0 km to vacuum' },
      over,
      { flips: false },
      '3.5',
    );
    expect(said(falls.instead!)).toMatch(/^The thrust of a falls from the pad to \d+ km\.$/);
    const every = await checkOne(
      { holds: 'for every z from 0 km to 40 km: a.thrust(z) < b.thrust(z)' },
      over,
      { flips: false },
      '3.5',
    );
    expect(every.verdict).toBe('safe to say');
    expect(said(every.wording!)).toMatch(
      /The closest call is at (the pad|40 km): there the thrust of a is .* % less than that of b/,
    );
    const not = await checkOne(
      { holds: 'for every z from 0 km to 100 km: a.thrust(z) < b.thrust(z)' },
      over,
      { flips: false },
      '3.5',
    );
    // 1 + ((z − 20)/100)² > 1.1 from z = 51.6 km on
    expect(said(not.instead!)).toMatch(/^It is not so from 5\d km to 100 km; at the worst, at 100 km,/);
  });
});

/** Of the standard normal law, by bisection of its integral. */
function quantile(p: number): number {
  let [low, high] = [-4, 4];
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2;
    if (cumulative(middle) < p) low = middle;
    else high = middle;
  }
  return low;
}

function cumulative(x: number): number {
  const steps = 400;
  const h = (x + 8) / steps;
  let sum = 0;
  for (let i = 0; i < steps; i++) sum += Math.exp(-0.5 * (-8 + (i + 0.5) * h) ** 2);
  return (sum * h) / Math.sqrt(2 * Math.PI);
}
