import { describe, expect, test } from 'vitest';
import { separationPlaceWords } from '../../src/answer/separationWords.ts';
import { solveOne, solveText } from './solveText.ts';

const perfect =
  'propellants: { gamma: 1.2, molarMass: 22 g/mol, temperature: 3500 K }, chamber: { pressure: 60 bar }, size: { throat: 100 mm }';

describe('separation in the answer', () => {
  test('gives every criterion at sea level with its range, and why those that do not count do not', async () => {
    const { separation } = await solveOne(`{ ${perfect}, nozzle: { kind: bell, areaRatio: 60 } }`);
    const { criteria, seaLevel, deciding } = separation!;
    expect(new Set(criteria.map(({ id }) => id)).size).toBe(7);
    expect(criteria.filter(({ counts }) => counts).length).toBeGreaterThanOrEqual(5);
    expect(seaLevel.counted).toBe(criteria.filter(({ counts }) => counts).length);
    for (const { counts, why, range, source } of criteria) {
      expect(why === undefined).toBe(counts);
      expect(range.length).toBeGreaterThan(0);
      expect(source.length).toBeGreaterThan(0);
    }
    expect(deciding).toBe('Schmucker 1973');
    expect(seaLevel.case).toBe('separated');
    expect(seaLevel.earliest.axial).toBeLessThan(seaLevel.place.axial);
    expect(seaLevel.latest.axial).toBeGreaterThan(seaLevel.place.axial);
    expect(seaLevel.sideLoads).toContain('restricted shock separation');
    expect(separationPlaceWords(seaLevel)).toMatch(
      /^at area ratio \d\S* \(\d\S* to \d\S*; by \d of \d published rules it lets go\)$/,
    );
  });

  test('places are in metres on the wall of the contour', async () => {
    const { separation, contour } = await solveOne(`{ ${perfect}, nozzle: { kind: bell, areaRatio: 60 } }`);
    const { axial, areaRatio } = separation!.seaLevel.place;
    const next = contour.wall.findIndex((point) => point.axial >= axial);
    const [from, to] = [contour.wall[next - 1]!, contour.wall[next]!];
    const radius = contour.throatRadius * Math.sqrt(areaRatio);
    expect(radius).toBeGreaterThan(from.radius * 0.999);
    expect(radius).toBeLessThan(to.radius * 1.001);
  });

  test('the sea-level row, the engine’s own and the bands say the same', async () => {
    const { separation, altitudes, bands, seaLevel } = await solveOne(
      `{ ${perfect}, nozzle: { kind: bell, areaRatio: 60 } }`,
    );
    const row = altitudes.find(({ altitude }) => altitude === 0)!;
    expect(row.separation).toEqual(separation!.seaLevel);
    // The span of the criteria, wider by the scatter of the friction at either end.
    const band = bands['seaLevel.thrust']!;
    const friction = row.separation!.thrust!.low - band.low;
    expect(friction).toBeGreaterThan(0);
    expect(band.high - friction).toBeCloseTo(row.separation!.thrust!.high, 6);
    expect(seaLevel.specificImpulse).toBeGreaterThan(bands['seaLevel.specificImpulse']!.low);
    expect(seaLevel.specificImpulse).toBeLessThan(bands['seaLevel.specificImpulse']!.high);
  });

  test('unchoked, the specific impulse is over the mass flow that passes', async () => {
    const { ambients, massFlow } = await solveOne(`{ ${perfect}, nozzle: { kind: cone, areaRatio: 10 } }`, {
      ambients: [5e6, 59e5, 61e5],
    });
    const [unchoked, nearly, none] = ambients;
    for (const row of [unchoked!, nearly!]) {
      expect(row.flow.state).toBe('unchoked');
      expect(row.separation!.massFlow).toBeLessThan(massFlow);
      expect(row.specificImpulse! * 9.80665 * row.separation!.massFlow).toBeCloseTo(row.thrust!, 6);
      expect(row.separation!.note).toContain('one-dimensional');
    }
    expect(none!.separation!.case).toBe('no outflow');
    expect(none!.thrust).toBeNull();
  });

  test('a bound has no wall to leave', async () => {
    const { separation, altitudes } = await solveOne(
      `{ ${perfect}, nozzle: { kind: adapting, areaRatio: 60 } }`,
    );
    expect(separation).toBeUndefined();
    expect(altitudes[0]!.separation).toBeUndefined();
  });
});

/** Two roads: the gas scaled from 100 bar, and the whole engine solved again at the lower chamber pressure. */
describe('the scaled gas against the recomputed', () => {
  test.each([
    ['methane', 3.5, 0.4, 0.02],
    ['methane', 3.5, 0.1, 0.03],
    ['hydrogen', 6, 0.4, 0.015],
    ['hydrogen', 6, 0.1, 0.045],
  ])(
    'oxygen and %s %d at %d of the chamber pressure: area ratio of the place within %d',
    async (fuel, ratio, share, within) => {
      const engine = (pressure: number) =>
        `{ propellants: { oxidiser: oxygen, fuel: ${fuel}, ratio: ${ratio} }, chamber: { pressure: ${pressure} bar }, size: { throat: 200 mm }, nozzle: { kind: bell, areaRatio: 40 } }`;
      const { answer } = await solveText(`full: ${engine(100)}\nlow: ${engine(100 * share)}`);
      const scaled = answer.engines.full!.separation!.throttle.find((row) => row.share === share)!;
      const again = answer.engines.low!.separation!.seaLevel;
      expect(scaled.case).toBe(again.case);
      expect(Math.abs(scaled.falling.areaRatio / again.place.areaRatio - 1)).toBeLessThan(within);
    },
  );
});

test('the best thrust lies inside its span, losses taken off both', async () => {
  const { altitudes } = await solveOne(
    '{ propellants: { oxidiser: oxygen, fuel: kerosene, ratio: 2.5 }, chamber: { pressure: 80 bar, efficiency: 96 % }, size: { throat: 200 mm }, nozzle: { kind: bell, areaRatio: 40 } }',
  );
  const [pad] = altitudes;
  expect(pad!.flow.state).toBe('separated');
  expect(pad!.thrust).toBeGreaterThanOrEqual(pad!.separation!.thrust!.low);
  expect(pad!.thrust).toBeLessThanOrEqual(pad!.separation!.thrust!.high);
  expect(pad!.specificImpulse).toBeGreaterThanOrEqual(pad!.separation!.specificImpulse!.low);
  expect(pad!.specificImpulse).toBeLessThanOrEqual(pad!.separation!.specificImpulse!.high);
  for (const { separation, thrust, flow } of altitudes.filter((row) => row.flow.state === 'full')) {
    expect(flow.state).toBe('full');
    expect(separation!.thrust!.low).toBeCloseTo(thrust!, 6);
    expect(separation!.thrust!.high).toBeCloseTo(thrust!, 6);
  }
});
