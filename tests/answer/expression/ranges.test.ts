import { describe, expect, test } from 'vitest';
import type { Ask } from '../../../src/answer/asked/model.ts';
import type { CompiledTest } from '../../../src/answer/expression/index.ts';
import { alderScope, compiled, expressed, refused } from './alderScope.ts';

/** Altitude of an ask [km]; vacuum counts as 1000. */
const height = ({ ambient }: Ask): number => (ambient?.kind === 'altitude' ? ambient.altitude / 1000 : 1000);

const decide = (test: CompiledTest, tell: (ask: Ask) => number | null) => test.decide(test.asks.map(tell));

test('a range up to vacuum looks at 32 altitudes up to 100 km, closer below, and at vacuum itself', () => {
  const { asks, ranges } = compiled('for every z from 0 km to vacuum: bell.thrust(z) > 1 N');
  expect(asks).toHaveLength(33);
  expect(asks[0]!.ambient).toEqual({ kind: 'altitude', altitude: 0 });
  expect(asks[31]!.ambient).toEqual({ kind: 'altitude', altitude: 100_000 });
  expect(asks[32]!.ambient).toEqual({ kind: 'vacuum' });
  const heights = asks.slice(0, 32).map(height);
  const steps = heights.slice(1).map((h, i) => h - heights[i]!);
  expect(steps.every((step, i) => i === 0 || step > steps[i - 1]!)).toBe(true);
  expect(ranges).toMatchObject([
    {
      variable: 'z',
      kind: 'every',
      of: 'altitude',
      from: 0,
      to: 'vacuum',
      spacing: 'closer at the low end',
      words: 'tested at 33 altitudes from the pad to vacuum',
    },
  ]);
});

describe('the points fit what moves', () => {
  test.each([
    [
      'for every z from pad to 40 km: bell.thrust(z) > 1 N',
      33,
      'altitude',
      'tested at 33 altitudes from the pad to 40 km',
    ],
    [
      'for every z from vacuum to sea level: bell.thrust(z) > 1 N',
      33,
      'altitude',
      'tested at 33 altitudes from vacuum to the pad',
    ],
    [
      'for every p from 1 bar to vacuum: bell.thrust(p) > 1 N',
      33,
      'pressure',
      'tested at 33 outside pressures from 1 bar to vacuum',
    ],
    [
      'for every p from 0.01 bar to 1 bar: bell.thrust(p) > 1 N',
      33,
      'pressure',
      'tested at 33 outside pressures from 0.01 bar to 1 bar',
    ],
    [
      'for every t from 40 % to 100 %: bell.thrust(pad, throttle = t) > 1 N',
      33,
      'throttle',
      'tested at 33 throttles from 40 % to 100 %',
    ],
    [
      'for every r from 2 to 4: bell.massFlow(propellants.ratio = r) > 1 kg/s',
      17,
      'input',
      'tested at 17 values of propellants.ratio from 2 to 4',
    ],
    [
      'for every e from 1 to 25: bell.wall.pressure(areaRatio e) < 70 bar',
      33,
      'areaRatio',
      'tested at 33 area ratios from 1 to 25',
    ],
    [
      'for every x from 0 m to 1 m: bell.wall.pressure(x behind throat) < 70 bar',
      33,
      'distance',
      'tested at 33 distances from the throat from 0 m to 1 m',
    ],
    [
      'for every z from 0 km to vacuum at 65 points: bell.thrust(z) > 1 N',
      65,
      'altitude',
      'tested at 65 altitudes from the pad to vacuum',
    ],
  ])('%s', (text, count, of, words) => {
    const { asks, ranges } = compiled(text);
    expect(asks).toHaveLength(count);
    expect(ranges[0]).toMatchObject({ of, words });
    expect(ranges[0]!.points).toHaveLength(count);
  });

  test('wide ranges go in equal ratios, pressures down to nothing end in vacuum', () => {
    const { ranges } = compiled('for every p from 0.01 bar to 1 bar: bell.thrust(p) > 1 N');
    const points = ranges[0]!.points as number[];
    expect(ranges[0]!.spacing).toBe('in equal ratios');
    expect(points[1]! / points[0]!).toBeCloseTo(points[32]! / points[31]!, 9);
    expect(compiled('for every p from 1 bar to vacuum: bell.thrust(p) > 1 N').asks[32]!.ambient).toEqual({
      kind: 'vacuum',
    });
  });

  test('a number of pieces moves in whole steps', () => {
    const plug = { ...alderScope.inputs('plug').find(({ name }) => name === 'nozzle.modules')! };
    expect(plug.whole).toBe(true);
    const { ranges } = compiled('for every n from 4 to 60: plug.thrust(vacuum, nozzle.modules = n) > 1 N');
    expect(ranges[0]!.points.every(Number.isInteger)).toBe(true);
    expect(
      compiled('for every n from 4 to 8: plug.thrust(vacuum, nozzle.modules = n) > 1 N').asks,
    ).toHaveLength(5);
  });
});

describe('for every, for some, for no', () => {
  test('one counterexample is enough, and is named', () => {
    const every = compiled('for every z from 0 km to vacuum: plug.thrust(z) > bell.thrust(z)');
    const dip = (at: number) => (ask: Ask) =>
      ask.engine === 'plug' ? (Math.abs(height(ask) - at) < 2 ? 9 : 11) : 10;
    expect(decide(every, dip(-100))).toMatchObject({ holds: true, witnesses: [{ is: 'closest call' }] });
    const fails = decide(every, dip(20));
    expect(fails).toMatchObject({
      holds: false,
      sides: [{ left: 9, right: 10 }],
      witnesses: [{ is: 'counterexample' }],
    });
    expect(Math.abs((fails.witnesses[0]!.place as number) / 1000 - 20)).toBeLessThan(2);
    expect(fails.margin).toBeLessThan(0);
    expect(
      decide(every, (ask) => (height(ask) === 1000 && ask.engine === 'plug' ? 9 : dip(-100)(ask)))
        .witnesses[0]!.place,
    ).toBe('vacuum');
  });

  test('one example is enough', () => {
    for (const text of [
      'for some z from 0 km to 40 km: plug.thrust(z) > bell.thrust(z)',
      'for some z from 0 km to 40 km, plug.thrust(z) > bell.thrust(z)',
      'there is z from 0 km to 40 km: plug.thrust(z) > bell.thrust(z)',
      'there is an altitude z from 0 km to 40 km where plug.thrust(z) > bell.thrust(z)',
      'there is a height z from 0 km to 40 km at which plug.thrust(z) > bell.thrust(z)',
    ]) {
      const some = compiled(text);
      const above = (from: number) => (ask: Ask) =>
        ask.engine === 'plug' ? (height(ask) > from ? 11 : 9) : 10;
      expect(decide(some, above(30))).toMatchObject({ holds: true, witnesses: [{ is: 'example' }] });
      expect(decide(some, above(50))).toMatchObject({ holds: false, witnesses: [{ is: 'closest call' }] });
    }
    const none = compiled('for no z from 0 km to 40 km: plug.thrust(z) > bell.thrust(z)');
    expect(decide(none, () => 10).holds).toBe(true);
    expect(decide(none, (ask) => (ask.engine === 'plug' ? 11 : 10))).toMatchObject({
      holds: false,
      witnesses: [{ is: 'counterexample' }],
    });
  });

  test('a hole in the range leaves it open, unless another point decides', () => {
    const every = compiled('for every z from 0 km to vacuum: bell.thrust(z) > 10 N');
    const hole = (rest: number) => (ask: Ask) => (height(ask) < 1 ? null : rest);
    expect(decide(every, hole(11))).toMatchObject({
      holds: null,
      margin: null,
      absent: { expression: 'bell.thrust(z)' },
    });
    expect(decide(every, hole(9))).toMatchObject({ holds: false, absent: null });
  });

  test('ranges within ranges', () => {
    const nested = compiled(
      'for every z from 0 km to 40 km at 5 points: for some t from 40 % to 100 % at 4 points: bell.thrust(z, throttle = t) > 10 N',
    );
    expect(nested.asks).toHaveLength(20);
    expect(nested.ranges.map(({ kind }) => kind)).toEqual(['every', 'some']);
    expect(decide(nested, ({ throttle }) => (throttle === 1 ? 11 : 9)).holds).toBe(true);
    const fails = decide(nested, (ask) => (ask.throttle === 1 && height(ask) > 0 ? 11 : 9));
    expect(fails.witnesses.map(({ variable, is }) => [variable, is])).toEqual([
      ['z', 'counterexample'],
      ['t', 'closest call'],
    ]);
  });
});

describe('rises, falls, constant', () => {
  const rising = (ask: Ask): number => 100 - 50 * Math.exp(-height(ask) / 7);
  test.each([
    ['rises', true],
    ['grows', true],
    ['increases', true],
    ['falls', false],
    ['drops', false],
    ['decreases', false],
    ['does not fall', true],
    ['never falls', true],
    ['does not rise', false],
    ['never increases', false],
  ])('what climbs towards vacuum %s: %s', (word, expected) => {
    const one = compiled(`bell.thrust(z) ${word} for z from pad to vacuum`);
    const other = compiled(`bell.thrust(z) ${word} for z from vacuum to pad`);
    expect(decide(one, rising).holds).toBe(expected);
    expect(decide(other, rising).holds).toBe(!expected);
  });

  test('a small dip is found and named, rounding is not', () => {
    const rises = compiled('bell.thrust(z) rises for z from pad to vacuum');
    const dips = decide(rises, (ask) => rising(ask) - (Math.abs(height(ask) - 30) < 2 ? 1 : 0));
    expect(dips.holds).toBe(false);
    expect(Math.abs((dips.witnesses[0]!.place as number) / 1000 - 30)).toBeLessThan(4);
    expect(decide(rises, (ask) => rising(ask) - (Math.abs(height(ask) - 60) < 3 ? 1e-7 : 0)).holds).toBe(
      true,
    );
  });

  test('a constant neither rises nor falls, but does not fall', () => {
    for (const [word, expected] of [
      ['rises', false],
      ['falls', false],
      ['does not fall', true],
      ['does not rise', true],
      ['is constant', true],
    ] as const) {
      expect(decide(compiled(`bell.thrust(z) ${word} for z from pad to vacuum`), () => 5).holds, word).toBe(
        expected,
      );
    }
  });

  test.each([
    ['is constant for z from pad to 40 km', 1.0099, 1.0101],
    ['is constant within 2 % for z from pad to 40 km', 1.0199, 1.0201],
    ['is constant for z from pad to 40 km within 2 %', 1.0199, 1.0201],
    ['stays constant within 3 N for z from pad to 40 km', 1.02999, 1.03001],
  ])('%s', (words, inside, outside) => {
    const constant = compiled(`bell.thrust(z) ${words}`);
    // From 100 N × (2 − s) to 100 N × s: the middle is 100 N.
    const swing = (s: number) => (ask: Ask) => 100 + 100 * (s - 1) * Math.cos(height(ask) / (40 / Math.PI));
    expect(decide(constant, swing(inside)).holds).toBe(true);
    expect(decide(constant, swing(outside)).holds).toBe(false);
  });
});

describe('highest and lowest', () => {
  const ratio = ({ inputs }: Ask): number => inputs[0]!.value;
  const peakAt = (best: number) => (ask: Ask) => 340 - 8 * (ratio(ask) - best) ** 2;
  const body = 'bell.specificImpulse(vacuum, propellants.ratio = r)';

  test.each([
    [`${body} is highest for r from 2 to 4.5 between 3.2 and 3.6`, [3.21, 3.59], [3.19, 3.61, 2, 4.5]],
    [`${body} is greatest for r from 2 to 4.5 above 3.2`, [3.21, 4.5], [3.19]],
    [`${body} has its highest value for r from 2 to 4.5 below 3.2`, [3.19], [3.21]],
    [`${body} is largest for r from 2 to 4.5 about 3.2`, [3.05, 3.35], [3.03, 3.37]],
  ])('%s', (text, inside, outside) => {
    const place = compiled(text);
    for (const best of inside) expect(decide(place, peakAt(best)).holds, `${best}`).toBe(true);
    for (const best of outside) expect(decide(place, peakAt(best)).holds, `${best}`).toBe(false);
  });

  test('the place lies between the points: a parabola is found exactly', () => {
    const place = expressed(`placeOfHighest(${body} for r from 2 to 4.5)`);
    const value = expressed(`highest(${body} for r from 2 to 4.5)`);
    const lowest = expressed(`lowest(0 - ${body} for r from 2 to 4.5)`);
    for (const best of [2.3, 3.1234, 3.777]) {
      expect(place.evaluate(place.asks.map(peakAt(best)))).toBeCloseTo(best, 9);
      expect(value.evaluate(value.asks.map(peakAt(best)))).toBeCloseTo(340, 9);
      expect(lowest.evaluate(lowest.asks.map(peakAt(best)))).toBeCloseTo(-340, 9);
    }
    expect(place.dimension).toEqual([0, 0, 0, 0, 0, 0]);
    expect(value.dimension).toEqual([0, 0, 1, 0, 0, 0]);
  });

  test('the witness is the place; in vacuum it is vacuum', () => {
    const text = 'bell.thrust(z) is highest for z from pad to vacuum above 90 km';
    expect(decide(compiled(text), height)).toMatchObject({ holds: true, witnesses: [{ place: 'vacuum' }] });
    expect(decide(compiled(text), (ask) => -height(ask))).toMatchObject({
      holds: false,
      witnesses: [{ place: 0 }],
    });
    expect(decide(compiled(text), (ask) => (height(ask) === 1000 ? null : 1)).holds).toBeNull();
    const place = expressed('placeOfHighest(bell.thrust(z) for z from pad to vacuum)');
    expect(place.evaluate(place.asks.map(height))).toBeNull();
    expect(place.absent(place.asks.map(height))?.why).toContain('vacuum');
  });

  test('lowest', () => {
    const text = `${body} is lowest for r from 2 to 4.5 between 3.2 and 3.6`;
    expect(decide(compiled(text), (ask) => -peakAt(3.4)(ask)).holds).toBe(true);
    expect(decide(compiled(text), peakAt(3.4)).holds).toBe(false);
  });

  test('the margin moves steadily with the place', () => {
    const { margin, asks } = compiled(`${body} is highest for r from 2 to 4.5 between 3.2 and 3.6`);
    const at = (best: number): number => margin(asks.map(peakAt(best)))!;
    expect(at(3.2)).toBeCloseTo(0, 9);
    expect(at(3.3)).toBeCloseTo(0.1 / 2.5, 6);
    expect(at(3.7)).toBeCloseTo(-0.1 / 2.5, 6);
  });
});

describe('ranges that cannot be', () => {
  test.each([
    ['for every z from 0 km to 2 bar: bell.thrust(z) > 1 N', 'range-unlike'],
    ['for every z from 2 to vacuum: bell.thrust(z) > 1 N', 'range-unlike'],
    ['for every z from 3 km to 3 km: bell.thrust(z) > 1 N', 'range-empty'],
    ['for every z from vacuum to vacuum: bell.thrust(z) > 1 N', 'range-empty'],
    ['for every z from 150 km to vacuum: bell.thrust(z) > 1 N', 'range-empty'],
    ['for every z from 0 km to bell.matched.altitude: bell.thrust(z) > 1 N', 'range-not-fixed'],
    ['for every z from 0 km to 3 km: bell.thrust(pad) > 1 N', 'variable-unused'],
    ['for every bell from 0 km to 3 km: bell.thrust(bell) > 1 N', 'name-taken'],
    ['for every min from 0 km to 3 km: bell.thrust(min) > 1 N', 'name-taken'],
    ['for every z from 0 km to 3 km: for some z from 0 km to 1 km: bell.thrust(z) > 1 N', 'name-taken'],
    ['for every z from 0 km to vacuum: z > 3 km or bell.thrust(z) > 1 N', 'vacuum-as-number'],
    ['for every z from 0 km to 3 km at 2 points: bell.thrust(z) > 1 N', 'points-unreadable'],
    ['for every z from 0 km to 3 km at 3000 points: bell.thrust(z) > 1 N', 'points-unreadable'],
    ['for every t from 40 % to 300 %: bell.thrust(pad, throttle = t) > 1 N', 'throttle-out-of-range'],
    ['for every k from 10 % to 130 %: plug.thrust(pad, nozzle.kept = k) > 1 N', 'input-out-of-range'],
  ])('%s', (text, code) => {
    expect(refused(text).code).toBe(code);
  });

  test('what moves may be reckoned with where it is a number', () => {
    const text = compiled('for every z from 0 km to 30 km: z > 10 km or bell.thrust(z + 1 km) > 1 N');
    expect(text.asks.map(height)[0]).toBe(1);
    expect(decide(text, () => 0)).toMatchObject({ holds: false });
  });

  test('more numbers than one sentence may ask for', () => {
    const text =
      'for every z from 0 km to 90 km at 50 points: for every p from 50 bar to 100 bar at 50 points: bell.thrust(z, chamber.pressure = p) > 1 N';
    expect(refused(text).code).toBe('too-many-asks');
  });
});
