import { expect, test } from 'vitest';
import { compileTest } from '../../../src/answer/expression/index.ts';
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

test('every input of an engine can be set in the brackets', () => {
  for (const { name, current, lowest } of alderScope.inputs('bell')) {
    const value = current ?? (lowest ?? 0) + 1;
    const unit = alderScope.inputs('bell').find((one) => one.name === name)!.dimension;
    const written = `${value}${['', ' kg', ' m', ' s', ' K', ' mol', ' rad'][unit.findIndex((e) => e === 1) + 1]}`;
    if (unit.filter((e) => e !== 0).length > 1) continue;
    expect(compiled(`bell.massFlow(${name} = ${written}) > 1 kg/s`).asks[0]!.inputs).toEqual([
      { input: name, value: expect.closeTo(value, 9) },
    ]);
  }
  expect(compiled('bell.massFlow(chamber.pressure = 80 bar) > 1 kg/s').asks[0]!.inputs).toEqual([
    { input: 'chamber.pressure', value: 8e6 },
  ]);
});

test('what can never be told is refused before anything runs', () => {
  expect(refused('bell.exit.mach(10 km) > 2').code).toBe('ambient-not-expected');
  expect(refused('bell.thrust > 2 N').code).toBe('ambient-missing');
  expect(refused('bell.wall.pressure > 2 bar').code).toBe('station-missing');
  expect(refused('air.pressure(vacuum) > 2 bar').code).toBe('ambient-not-air');
});
