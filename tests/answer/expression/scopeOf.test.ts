import { expect, test } from 'vitest';
import { compileTest } from '../../../src/answer/expression/index.ts';
import { settableInputs } from '../../../src/answer/inputs/index.ts';
import { alder, alderScope, compiled, refused } from './alderScope.ts';

test('every test of the example study compiles', () => {
  const tests = alder.sentences.flatMap(({ holds }) => (holds === null ? [] : [holds]));
  expect(tests.length).toBeGreaterThanOrEqual(5);
  for (const text of tests) expect(compileTest(text, alderScope)).toMatchObject({ ok: true });
});

test('a name may mean another quantity where no place is named', () => {
  const { asks } = compiled('bell.exitPressure > bell.separationPressure(0 km)');
  expect(asks.map(({ quantity }) => quantity)).toEqual(['exit.pressure', 'flow.separationPressure']);
  expect(asks.map(({ ambient }) => ambient)).toEqual([null, { kind: 'altitude', altitude: 0 }]);
});

const UNITS = ['', 'kg', 'm', 's', 'K', 'mol', 'rad'];
/** The kinds of inputs that a bell has: pressures, forces, and single base units. */
const siUnit = (exponents: readonly number[]): string =>
  exponents.filter((e) => e !== 0).length > 1
    ? exponents[1] === -1
      ? 'Pa'
      : 'N'
    : UNITS[exponents.indexOf(1) + 1]!;

test('every input of an engine can be set in the brackets', () => {
  const entries = settableInputs(alder.engines[0]!);
  expect(entries.length).toBeGreaterThan(8);
  for (const { name, current, lowest, dimension } of entries) {
    const value = current ?? (lowest ?? 0) + 1;
    const text = `bell.massFlow(${name} = ${value} ${siUnit(dimension)}) > 1 kg/s`;
    expect(compiled(text).asks[0]!.inputs).toEqual([{ input: name, value: expect.closeTo(value, 9) }]);
  }
  expect(compiled('bell.massFlow(chamber.pressure = 80 bar) > 1 kg/s').asks[0]!.inputs).toEqual([
    { input: 'chamber.pressure', value: 8e6 },
  ]);
});

test('what can never be told is refused before anything runs', () => {
  expect(refused('bell.exit.mach(10 km) > 2').code).toBe('ambient-not-expected');
  expect(refused('bell.thrust > 2 N').code).toBe('ambient-missing');
  expect(refused('bell.wall.pressure > 2 bar').code).toBe('station-missing');
  expect(refused('air.temperature(vacuum) > 2 K').code).toBe('ambient-not-air');
});

test('where there is no air, its pressure and density are nothing', () => {
  expect(compiled('air.pressure(vacuum) < 1 Pa and air.density(vacuum) < 1 kg/m³').decide([]).holds).toBe(
    true,
  );
  const lets = compiled('for some z from pad to vacuum, bell.exitPressure > air.pressure(z)');
  expect(lets.asks).toHaveLength(33);
  expect(lets.decide(lets.asks.map(({ engine }) => (engine === null ? 2 : 1)))).toMatchObject({
    holds: true,
    witnesses: [{ place: 'vacuum' }],
  });
});
