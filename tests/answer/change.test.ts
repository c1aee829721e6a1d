import { expect, test } from 'vitest';
import { findQuantity, quantityNameAt } from '../../src/answer/catalogue.ts';
import { changeWords } from '../../src/answer/changeWords.ts';
import { solveText } from './solveText.ts';

const study = `
bell: { name: Bell, propellants: { oxidiser: oxygen, fuel: methane, ratio: 3.5 }, chamber: { pressure: 100 bar, efficiency: 97 % }, size: { throat: 200 mm }, nozzle: { kind: bell, areaRatio: 60 } }
skirt: { name: Skirt, like: bell, nozzle: { kind: extendableSkirt, areaRatio: 60, shortAreaRatio: 20 } }
dual: { name: Dual, like: bell, nozzle: { kind: dualBell, areaRatio: 60, baseAreaRatio: 20 } }
deflected: { name: Deflected, like: bell, nozzle: { kind: expansionDeflection, areaRatio: 60 } }
stated: { name: Stated, like: bell, nozzle: { kind: insert, areaRatio: 60, insertAreaRatio: 15, switchAt: 9 km } }`;

const solved = solveText(study);

test('a skirt slides out where its curve meets that of the short bell, and the answer has both curves', async () => {
  const { answer } = await solved;
  const { change, altitudes, positions, massFlow } = answer.engines.skirt!;
  expect(change).toMatchObject({ thick: 'skirt drawn up', thin: 'skirt out' });
  expect(positions.map(({ mode }) => mode)).toEqual(['skirt drawn up', 'skirt out']);
  expect(massFlow).toBeCloseTo(answer.engines.bell!.massFlow, 9);
  for (const row of altitudes) {
    expect(row.mode).toBe(row.altitude! <= change!.altitude! ? 'skirt drawn up' : 'skirt out');
    expect(row.modes!.find(({ mode }) => mode === row.mode)!.thrust).toBe(row.thrust);
  }
  // Two rows stand either side of the change, where the two push alike.
  const beside = altitudes.filter((row) => Math.abs(row.altitude! - change!.altitude!) < 2);
  expect(beside.map(({ mode }) => mode)).toEqual(['skirt drawn up', 'skirt out']);
  expect(beside[0]!.thrust! / beside[1]!.thrust!).toBeCloseTo(1, 4);
});

test('a stated altitude is where it changes', async () => {
  const { answer } = await solved;
  const { change } = answer.engines.stated!;
  expect(change!.altitude).toBeCloseTo(9000, 3);
  expect(changeWords(change!)).toMatch(
    /^Insert in place in air of 0\.31 bar \(9\.0 km\) and denser, insert gone in thinner air/,
  );
});

test('every number of such an answer is in the catalogue', async () => {
  const { answer } = await solved;
  const numbers = (value: unknown, path: string): string[] =>
    typeof value === 'number'
      ? [path]
      : typeof value === 'object' && value !== null
        ? Object.entries(value).flatMap(([key, inner]) =>
            numbers(inner, Array.isArray(value) ? `${path}[${key}]` : `${path}.${key}`),
          )
        : [];
  const unknown = Object.keys(answer.engines)
    .flatMap((id) => numbers(answer.engines[id], `engines.${id}`))
    .filter((path) => {
      const name = quantityNameAt(path);
      return name === undefined || findQuantity(name) === undefined;
    });
  expect([...new Set(unknown.map((path) => path.replace(/\[\d+\]/g, '')))]).toEqual([]);
});

test('a dual bell goes over by the criteria, and its hysteresis is told', async () => {
  const { answer } = await solved;
  const { change, altitudes, contour, positions } = answer.engines.dual!;
  expect(change!.estimates.length).toBeGreaterThanOrEqual(3);
  expect(change!.band!.low.ambientPressure).toBeLessThanOrEqual(change!.ambientPressure);
  expect(change!.band!.high.ambientPressure).toBeGreaterThanOrEqual(change!.ambientPressure);
  expect(changeWords(change!)).toContain('On the way back it changes between');
  // The thrust jumps there: the row on either side is of either mode.
  const beside = altitudes.filter((row) => Math.abs(row.altitude! - change!.altitude!) < 2);
  expect(beside.map(({ mode }) => mode)).toEqual(['sea-level mode', 'altitude mode']);
  expect(beside[1]!.thrust!).toBeLessThan(beside[0]!.thrust!);
  expect(positions[0]!.contour.exitRadius).toBeLessThan(contour.exitRadius);
});

test('an expansion–deflection nozzle closes its wake on the way up', async () => {
  const { answer } = await solved;
  const { change, altitudes, wall, contour, positions, vacuum } = answer.engines.deflected!;
  expect(change).toMatchObject({ thick: 'open wake', thin: 'closed wake' });
  expect(change!.band!.high.ambientPressure).toBe(change!.ambientPressure);
  for (const row of altitudes) expect(row.thrust).not.toBeNull();
  expect(vacuum.thrust).toBeGreaterThan(altitudes[0]!.thrust!);
  // The wall's own pressure from the chamber down to the lip, never above the chamber's.
  expect(wall.length).toBe(contour.wall.length);
  expect(wall[0]!.pressure).toBeGreaterThan(0.9 * answer.engines.deflected!.chamber.pressure);
  expect(Math.max(...wall.map((point) => point.pressure))).toBeLessThanOrEqual(
    answer.engines.deflected!.chamber.pressure,
  );
  expect(positions[0]!.contour.bodies!.map(({ name }) => name)).toEqual(['pintle', 'wake']);
});

test('the thrust is the sum of its parts and that by the boundary, in every mode in use', async () => {
  const { answer } = await solved;
  for (const id of ['skirt', 'stated', 'dual', 'deflected']) {
    const { thrustParts, vacuum } = answer.engines[id]!;
    const sum = thrustParts.vacuum.sum!;
    const { boundary } = thrustParts.vacuum;
    expect(Math.abs(sum / boundary! - 1), id).toBeLessThan(3e-3);
    // What is lost on the way (friction, kinetics) comes off the sum.
    expect(vacuum.thrust! / sum, id).toBeGreaterThan(0.96);
    expect(vacuum.thrust! / sum, id).toBeLessThan(1.0001);
  }
});
