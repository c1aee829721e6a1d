import { describe, expect, test } from 'vitest';
import { findQuantity, quantityNameAt } from '../../src/answer/catalogue.ts';
import type { EngineAnswer } from '../../src/answer/model.ts';
import { solveOne, solveText, studyOf } from './solveText.ts';

const engine = (nozzle: string): string =>
  `{ propellants: { gamma: 1.2, molarMass: 22 g/mol, temperature: 3500 K }, chamber: { pressure: 100 bar }, size: { throat: 200 mm }, nozzle: { kind: plug, areaRatio: 60, ${nozzle} } }`;

function numbersIn(value: unknown, path: string): readonly string[] {
  if (typeof value === 'number') return [path];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) =>
    numbersIn(inner, Array.isArray(value) ? `${path}[${key}]` : `${path}.${key}`),
  );
}

describe('the answer of a plug', () => {
  test('has its wall along the plug, from the injector face to the cut, at the design', async () => {
    const one = await solveOne(engine('kept: 30 %'));
    const { plug } = one.contour;
    expect(one.wall.map(({ axial, radius }) => [axial, radius])).toEqual(
      plug!.wall.map(({ axial, radius }) => [axial, radius]),
    );
    const end = one.wall.at(-1)!;
    expect(end.radius).toBeCloseTo(plug!.baseRadius, 9);
    // Frozen wall: nowhere below the design exit pressure, which the tip alone would feel.
    for (const { pressure } of one.wall) expect(pressure).toBeGreaterThanOrEqual(one.exit.pressure * 0.999);
    // The chamber ahead of the throat is at chamber pressure, the throat at Mach 1.
    expect(one.wall[0]!.pressure / 1e7).toBeGreaterThan(0.95);
    expect(Math.min(...one.wall.filter(({ axial }) => axial < 0).map(({ mach }) => mach!))).toBeLessThan(0.3);
  });

  test('every number of it is in the catalogue', async () => {
    const cases = [
      'kept: 30 %, machOne: 9 km, modules: 24',
      'form: linear, kept: 20 %, aspectRatio: 3',
      'kept: 100 %',
    ];
    for (const nozzle of cases) {
      const one = await solveOne(engine(nozzle));
      const unknown = numbersIn(one, 'engines.one').filter((path) => {
        const name = quantityNameAt(path);
        return name === undefined || findQuantity(name) === undefined;
      });
      expect(unknown).toEqual([]);
    }
  });

  test('its base, wall and recompression stand in every row, and nothing that does not apply', async () => {
    const one = await solveOne(engine('kept: 30 %'));
    const row = (altitude: number) => one.altitudes.find((each) => each.altitude === altitude)!;
    expect(row(0).plug!.base!.wake).toBe('open');
    expect(row(0).plug!.base!.pressure).toBeCloseTo(row(0).ambientPressure, 6);
    expect(row(0).plug!.leastWall).toBeGreaterThan(0.5);
    expect(row(0).plug!.recompression!.pressureRatio).toBeGreaterThan(1.03);
    expect(row(100_000).plug!.base!.wake).toBe('closed');
    expect(row(100_000).plug!.recompression).toBeUndefined();
    expect(row(0).plug!.flight).toBeUndefined();
    const whole = await solveOne(engine('kept: 100 %'));
    expect(whole.altitudes[0]!.plug!.base).toBeUndefined();
    expect(whole.plug!.wakeClosesAt).toBeUndefined();
  });

  test('its thrust stands within the band that base pressure and modules leave', async () => {
    for (const nozzle of ['kept: 20 %', 'kept: 20 %, modules: 24, moduleShape: round']) {
      const one = await solveOne(engine(nozzle));
      for (const place of ['vacuum', 'seaLevel'] as const) {
        const { low, high } = one.bands[`${place}.thrust`]!;
        expect(low).toBeLessThan(one[place].thrust!);
        expect(high).toBeGreaterThanOrEqual(one[place].thrust!);
        // The base of a plug kept to a fifth: some percent of the thrust between the models.
        expect((high - low) / one[place].thrust!).toBeLessThan(0.06);
      }
    }
    // What is whole has no base: friction alone is left, ±20 % of less than 2 % of the thrust.
    const whole = await solveOne(engine('kept: 100 %'));
    const { low, high, from } = whole.bands['vacuum.thrust']!;
    expect(from).not.toMatch(/base|modules/);
    expect((high - low) / whole.vacuum.thrust!).toBeLessThan(0.008);
  });

  test('the gas for drawing is left out of what is printed', async () => {
    const one = await solveOne(engine('kept: 30 %'));
    for (const row of [...one.altitudes, ...one.ambients]) expect('field' in row).toBe(false);
  });

  test('in flight the slipstream takes some of the thrust near Mach 1, none at the pad and none in vacuum', async () => {
    const { answer } = await solveText(
      `rest: ${engine('kept: 30 %')}\nflying: { like: rest, nozzle: { kind: plug, machOne: 10 km } }`,
    );
    const [rest, flying] = [answer.engines.rest!, answer.engines.flying!] as [EngineAnswer, EngineAnswer];
    const at = (one: EngineAnswer, altitude: number) =>
      one.altitudes.find((row) => row.altitude === altitude)!;
    expect(at(flying, 0).thrust).toBe(at(rest, 0).thrust);
    expect(flying.vacuum.thrust).toBe(rest.vacuum.thrust);
    const middle = at(flying, 10_000);
    expect(middle.plug!.flight!.mach).toBeCloseTo(1, 9);
    expect(middle.plug!.flight!.pressure).toBeLessThan(middle.ambientPressure);
    expect(middle.thrust!).toBeLessThan(at(rest, 10_000).thrust!);
  });

  test('the same throat as a bell has the same propellant flow, but for the discharge of the bell’s rounded throat and the layers on the walls of the ring', async () => {
    const { answer } = await solveText(
      `plug: ${engine('kept: 30 %')}\nbell: { like: plug, size: { same: throat, as: plug }, nozzle: { kind: bell, areaRatio: 25 } }`,
    );
    const { bell, plug } = answer.engines;
    // 0.5 %: the published discharge of a throat arc of 1.5 radii; the plug's throat is one-dimensional by definition.
    expect(plug!.dischargeCoefficient).toBe(1);
    expect(bell!.dischargeCoefficient).toBeLessThan(0.998);
    expect(bell!.dischargeCoefficient).toBeGreaterThan(0.99);
    // What is left is by the layers: those on the two walls of the plug's narrow throat take more of it.
    const byLayers = bell!.massFlow / bell!.dischargeCoefficient / plug!.massFlow;
    expect(byLayers).toBeGreaterThan(1.001);
    expect(byLayers).toBeLessThan(1.01);
  });

  test('a lip that would have to turn the flow past 90° fails with the inner Mach number that would do', async () => {
    const { answer } = await solveText(`one: ${engine('innerMach: 1')}`);
    expect(answer.failed.one!.code).toBe('plug-turn-too-large');
    expect(answer.failed.one!.mend).toMatch(/innerMach above 1\.\d\d would do/);
  });
});

describe('a plug in the study file', () => {
  test('is annular, cut to 30 %, its inner Mach number open, unless it says otherwise', async () => {
    const { engines } = await studyOf(`one: ${engine('').replace(', }', ' }')}`);
    expect(engines[0]!.nozzle).toMatchObject({
      form: 'annular',
      kept: { value: 0.3, byDefault: true },
      innerMach: null,
      aspectRatio: null,
      modules: null,
      machOne: null,
    });
  });

  test.each([
    ['aspectRatio: 3', /annular plug has no aspect ratio.*form: linear/s],
    ['moduleShape: round', /moduleShape is given without modules/],
    ['modules: 2.5', /2\.5 modules are no whole number/],
    ['form: round', /not known.*annular or linear/s],
    ['kept: 120 %', /0 % to 100 %/],
    ['innerMach: 0.8', /1 to 20/],
    ['halfAngle: 15 deg', /halfAngle/],
  ])('%s is refused', async (nozzle, words) => {
    await expect(studyOf(`one: ${engine(nozzle)}`)).rejects.toThrow(words);
  });
});
