import { describe, expect, test } from 'vitest';
import { compiled, holds, refused } from './alderScope.ts';

/** Each form with a value just inside and one just outside; ε is far above rounding. */
describe('both sides of every comparison', () => {
  test.each([
    ['x > 10', 10.001, 10],
    ['x >= 10', 10, 9.999],
    ['x < 10', 9.999, 10],
    ['x <= 10', 10, 10.001],
    ['x ≥ 10', 10, 9.999],
    ['x ≤ 10', 10, 10.001],
    ['10 < x', 10.001, 10],
    ['5 < x < 10', 9.999, 10],
    ['5 < x < 10', 5.001, 5],
    ['x is more than 10', 10.001, 10],
    ['x is greater than 10', 10.001, 10],
    ['x is higher than 10', 10.001, 10],
    ['x is above 10', 10.001, 10],
    ['x stays over 10', 10.001, 10],
    ['x exceeds 10', 10.001, 10],
    ['x is less than 10', 9.999, 10],
    ['x is lower than 10', 9.999, 10],
    ['x is below 10', 9.999, 10],
    ['x remains under 10', 9.999, 10],
    ['x is at least 10', 10, 9.999],
    ['x is no less than 10', 10, 9.999],
    ['x is at most 10', 10, 10.001],
    ['x is no more than 10', 10, 10.001],
    ['x is not more than 10', 10, 10.001],
    ['x is about 10', 10.499, 10.501],
    ['x is about 10', 9.501, 9.499],
    ['x is around 10', 9.501, 9.499],
    ['x ≈ 10', 10.499, 10.501],
    ['x ~ 10', 9.501, 9.499],
    ['x is about 10 within 1 %', 10.099, 10.101],
    ['x is roughly 10', 11.999, 12.001],
    ['x is roughly 10', 8.001, 7.999],
    ['x is 10 within 2 %', 10.199, 10.201],
    ['x = 10 within 2 %', 9.801, 9.799],
    ['x is 10 within 3', 12.999, 13.001],
    ['x is equal to 10 within 2 %', 10.199, 10.201],
    ['x is the same as 10 within 2 %', 10.199, 10.201],
    ['x is within 2 % of 10', 10.199, 10.201],
    ['x is between 5 and 10', 10, 10.001],
    ['x is between 5 and 10', 5, 4.999],
    ['x is not between 5 and 10', 10.001, 10],
    ['x is more than twice 5', 10.001, 10],
    ['x is at least half of 20', 10, 9.999],
    ['x is 3 % more than 10 within 1 %', 10.4, 10.41],
    ['x is at least 3 % more than 10', 10.3, 10.299],
    ['x is at most 3 % less than 10', 9.7, 9.701],
    ['x is at least 3 more than 10', 13, 12.999],
    ['x > 3 less than 10', 7.001, 7],
    ['x differs from 10 by less than 2 %', 10.199, 10.201],
    ['x differs from 10 by at most 2', 12, 12.001],
    ['x differs from 10 by more than 2', 12.001, 12],
    ['x differs from 10 by at least 2', 8, 8.001],
    ['not x > 10', 10, 10.001],
    ['x > 10 and x < 20', 19.999, 20],
    ['x < 10 or x > 20', 20.001, 20],
    ['not (x < 10 or x > 20)', 20, 20.001],
    ['x > 30 or x > 10 and x < 20', 15, 25],
    ['(x > 30 or x > 10) and x < 20', 15, 35],
  ])('%s: %d holds, %d does not', (form, inside, outside) => {
    const decided = compiled(form.replace(/\bx\b/g, 'bell.areaRatio'));
    const [yes, no] = [decided.decide([inside]), decided.decide([outside])];
    expect([yes.holds, no.holds]).toEqual([true, false]);
    expect(yes.margin!).toBeGreaterThanOrEqual(0);
    expect(no.margin!).toBeLessThanOrEqual(0);
    expect([decided.holds([inside]), decided.holds([outside])]).toEqual([true, false]);
    expect([decided.margin([inside]), decided.margin([outside])]).toEqual([yes.margin, no.margin]);
  });
});

test('an unknown value is absent, unless the rest decides', () => {
  const both = compiled('bell.areaRatio > 10 and plug.areaRatio > 10');
  expect(both.decide([null, 5])).toMatchObject({ holds: false, absent: null });
  expect(both.decide([null, 15])).toMatchObject({ holds: null, margin: null, absent: { ask: 0 } });
  const either = compiled('bell.areaRatio > 10 or plug.areaRatio > 10');
  expect(either.decide([null, 15])).toMatchObject({ holds: true, absent: null });
  expect(either.decide([15, null]).margin).toBeGreaterThan(0);
  expect(either.decide([null, 5])).toMatchObject({
    holds: null,
    absent: { ask: 0, expression: 'bell.areaRatio' },
  });
  expect(compiled('not bell.areaRatio > 10').decide([null]).holds).toBeNull();
});

test('the margin is continuous across the edge and its sign decides', () => {
  const { margin, holds: verdict } = compiled(
    'plug.specificImpulse(0 km) - bell.specificImpulse(0 km) > 2 s',
  );
  const at = (gain: number): number => margin([300 + gain, 300])!;
  expect(at(2)).toBe(0);
  expect(Math.abs(at(2.001) - at(1.999))).toBeLessThan(1e-5);
  for (let gain = -10; gain <= 10; gain += 0.37) expect(at(gain) > 0).toBe(verdict([300 + gain, 300]));
  const zero = compiled('bell.matched.altitude > 0').margin;
  expect(Math.abs(zero([1e-3])! - zero([-1e-3])!)).toBeLessThan(0.01);
});

test('the sides are told in the order of the text', () => {
  const { sides } = compiled(
    'bell.areaRatio > 10 and plug.areaRatio is about bell.areaRatio within 1 %',
  ).decide([20, 30]);
  expect(sides).toMatchObject([
    { text: 'bell.areaRatio > 10', left: 20, right: 10, operator: '>' },
    { left: 30, right: 20, operator: 'about', tolerance: 0.2 },
  ]);
});

test('the numbers of a test are its composed sides and every number asked for, each once', () => {
  const { numbers } = compiled('plug.thrust(0 km) - bell.thrust(0 km) > 1 kN and bell.thrust(0 km) < 800 kN');
  expect(numbers.map(({ expression, quantity }) => [expression, quantity])).toEqual([
    ['plug.thrust(0 km) - bell.thrust(0 km)', null],
    ['plug.thrust(0 km)', 'thrust'],
    ['bell.thrust(0 km)', 'thrust'],
  ]);
  expect(numbers.map((number) => number.evaluate([5, 3]))).toEqual([2, 5, 3]);
  expect(numbers.map((number) => number.evaluate([null, 3]))).toEqual([null, null, 3]);
});

test('asks are made once, however they are spelled', () => {
  const text =
    'bell.thrust(0 km) > 1 N and bell.thrust(pad) > 1 N and bell.thrust(sea level) > 1 N and bell.thrust(0 m) > 1 N and bell.thrust(vacuum) > bell.thrust(0 bar)';
  expect(compiled(text).asks.map(({ ambient }) => ambient)).toEqual([
    { kind: 'altitude', altitude: 0 },
    { kind: 'vacuum' },
  ]);
});

test('places, throttles, parts and changed inputs', () => {
  const ask = (quantity: string) => compiled(`${quantity} > 0`).asks[0]!;
  expect(ask('bell.thrust(12 km, throttle = 60 %)')).toMatchObject({
    ambient: { kind: 'altitude', altitude: 12000 },
    throttle: 0.6,
  });
  expect(ask('bell.thrust(throttle = 60 %, 0.5 bar)')).toMatchObject({
    ambient: { kind: 'pressure', pressure: 5e4 },
    throttle: 0.6,
  });
  expect(ask('bell.wall.pressure(lip)').station).toEqual({ kind: 'lip' });
  expect(ask('bell.wall.pressure(the throat)').station).toEqual({ kind: 'throat' });
  expect(ask('bell.wall.pressure(injector)').station).toEqual({ kind: 'injector' });
  expect(ask('bell.wall.pressure(areaRatio 5)').station).toEqual({ kind: 'areaRatio', areaRatio: 5 });
  expect(ask('bell.wall.pressure(area ratio 5)').station).toEqual({ kind: 'areaRatio', areaRatio: 5 });
  expect(ask('bell.wall.pressure(areaRatio = 5)').station).toEqual({ kind: 'areaRatio', areaRatio: 5 });
  expect(ask('bell.wall.temperature(0.3 m behind throat)').station).toEqual({
    kind: 'distance',
    distance: 0.3,
  });
  expect(ask('bell.wall.temperature(50 mm ahead of the throat)').station).toEqual({
    kind: 'distance',
    distance: -0.05,
  });
  expect(ask('bell.chamber.composition(species H2O)').part).toBe('H2O');
  expect(ask('bell.chamber.composition(species "H2O(L)")').part).toBe('H2O(L)');
  expect(ask('bell.thrustParts.force(vacuum, surface nozzle wall)')).toMatchObject({
    ambient: { kind: 'vacuum' },
    part: 'nozzle wall',
  });
  expect(
    ask('bell.specificImpulse(vacuum, nozzle.areaRatio = 60, chamber.pressure = 70 bar)').inputs,
  ).toEqual([
    { input: 'nozzle.areaRatio', value: 60 },
    { input: 'chamber.pressure', value: 7e6 },
  ]);
  expect(ask('air.pressure(10 km)')).toMatchObject({ engine: null, quantity: 'air.pressure' });
});

test('numbers alone need no engine', () => {
  expect(holds('2 km > 1 mi')).toBe(true);
  expect(holds('1 atm is 14.696 psi within 0.01 %')).toBe(true);
  expect(refused('2 km').code).toBe('no-comparison');
});
