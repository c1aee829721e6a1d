/**
 * Published rows held against each other, on figures of historic engines:
 * RS-25D and F-1 thrust and specific impulse as encyclopaedia pages list them (secondary); the exit diameter of the
 * F-1 of 143.5 in and 1 522 000 lbf on a sign at the Stennis Space Center; the F-1's flows of 1789 and 788 kg/s and the
 * SSME row (P. Fortescue et al., Spacecraft Systems Engineering, table 6.2) as printed there.
 * Expected values are recomputed from those figures by hand.
 */
import { describe, expect, test } from 'vitest';
import type { PublishedCheck } from '../../../src/answer/model.ts';
import { publishedChecks } from '../../../src/answer/published/checks.ts';
import { studyOf } from '../solveText.ts';

const POUND_FORCE = 4.4482216152605;

async function checksOf(
  rows: string,
  size = '{ thrust: 1 kN, at: vacuum }',
): Promise<readonly PublishedCheck[]> {
  const published = rows
    .trim()
    .split('\n')
    .map((row) => `- { ${row.trim()}, source: as listed }`)
    .join('\n    ');
  const study = await studyOf(
    `one:\n  propellants: { gamma: 1.2, molarMass: 22 g/mol, temperature: 3500 K }\n  chamber: { pressure: 100 bar }\n  size: ${size}\n  nozzle: { kind: ideal, areaRatio: 16 }\n  published:\n    ${published}`,
  );
  return publishedChecks(study.engines[0]!);
}

const of = (checks: readonly PublishedCheck[], quantity: string) =>
  checks.filter((check) => check.quantity === quantity);

describe('exit area from vacuum minus sea-level thrust', () => {
  test('RS-25D: 4.140 m², 2.296 m across, as the published 2.30 m', async () => {
    const checks = await checksOf(`
      quantity: thrust, value: 418000 lbf, at: sea level
      quantity: thrust, value: 512300 lbf, at: vacuum
      quantity: exitDiameter, value: 2.30 m`);
    const [area] = of(checks, 'exit.area');
    expect(area!.one.value).toBeCloseTo((94_300 * POUND_FORCE) / 101_325, 6);
    expect(area!.one.value).toBeCloseTo(4.14, 3);
    expect(area!.agrees).toBe(true);
    expect(area!.words).toContain('2296 mm across');
  });

  test('F-1: 9.834 m² against the 143.5 in of the sign is flagged', async () => {
    const checks = await checksOf(`
      quantity: thrust, value: 1522000 lbf, at: sea level
      quantity: thrust, value: 1746000 lbf, at: vacuum
      quantity: exitDiameter, value: 143.5 in`);
    const [area] = of(checks, 'exit.area');
    expect(area!.agrees).toBe(false);
    expect(area!.one.value).toBeCloseTo(9.834, 3);
    // Half of a thousand pounds of each thrust.
    expect(area!.one.high - area!.one.value).toBeCloseTo((1000 * POUND_FORCE) / 101_325, 6);
    expect(area!.other.value).toBeCloseTo((Math.PI / 4) * 3.6449 ** 2, 3);
    expect(area!.share).toBeCloseTo(10.4345 / 9.8337 - 1, 3);
    expect(area!.beyond).toBeGreaterThan(0.5);
    expect(area!.one.rows).toEqual(['published[1]', 'published[0]']);
    expect(area!.other.rows).toEqual(['published[2]']);
  });

  test('a stated ± that reaches so far takes the flag away', async () => {
    const checks = await checksOf(`
      quantity: thrust, value: 1522000 ± 40000 lbf, at: sea level
      quantity: thrust, value: 1746000 lbf, at: vacuum
      quantity: exitDiameter, value: 143.5 in`);
    expect(of(checks, 'exit.area').map(({ agrees }) => agrees)).toEqual([true]);
  });

  test('area ratio and throat stand for it, from rows or from the study', async () => {
    const thrusts = `
      quantity: thrust, value: 900 kN, at: sea level
      quantity: thrust, value: 1000 kN, at: vacuum`;
    // 100 kN over 101325 Pa is 0.987 m²; 16 times the circle of 250 mm is 0.785 m².
    for (const checks of [
      await checksOf(`${thrusts}\n quantity: areaRatio, value: 16\n quantity: throatDiameter, value: 250 mm`),
      await checksOf(thrusts, '{ throat: 250 mm }'),
    ]) {
      const [area] = of(checks, 'exit.area');
      expect(area!.one.value).toBeCloseTo(0.98692, 4);
      expect(area!.other.value).toBeCloseTo(0.7854, 4);
    }
    const [own] = of(await checksOf(thrusts, '{ throat: 250 mm }'), 'exit.area');
    expect(own!.other.rows).toEqual(['engines.one.nozzle.areaRatio', 'engines.one.size.throat']);
  });

  test('thrust that grows towards the pad gives a negative area, which nothing agrees with', async () => {
    const checks = await checksOf(`
      quantity: thrust, value: 1100 kN, at: sea level
      quantity: thrust, value: 1000 kN, at: vacuum
      quantity: exitDiameter, value: 1 m`);
    expect(checks[0]!.one.value).toBeLessThan(0);
    expect(checks[0]!.agrees).toBe(false);
  });
});

describe('flow from thrust over specific impulse', () => {
  test('F-1: 2625 kg/s against 1789 + 788 listed is flagged', async () => {
    const checks = await checksOf(`
      quantity: thrust, value: 1522000 lbf, at: sea level
      quantity: specificImpulse, value: 263 s, at: sea level
      quantity: massFlow, value: 2577 kg/s`);
    const [flow] = of(checks, 'massFlow');
    expect(flow!.other.value).toBeCloseTo((1_522_000 * POUND_FORCE) / (263 * 9.80665), 6);
    expect(flow!.other.value).toBeCloseTo(2625, 0);
    expect(flow!.agrees).toBe(false);
    expect(flow!.share).toBeCloseTo(0.0186, 3);
  });

  test('SSME: 468.4 kg/s in vacuum agrees with 468, the sea-level pair does not', async () => {
    const checks = await checksOf(`
      quantity: thrust, value: 2090 kN, at: vacuum
      quantity: specificImpulse, value: 455 s, at: vacuum
      quantity: thrust, value: 1700 kN, at: sea level
      quantity: specificImpulse, value: 363 s, at: sea level
      quantity: massFlow, value: 468 kg/s`);
    const flows = of(checks, 'massFlow');
    const vacuum = flows.find(({ one, other }) => one.value === 468 && other.by.includes('vacuum'));
    expect(vacuum!.other.value).toBeCloseTo(468.4, 1);
    expect(vacuum!.agrees).toBe(true);
    const pad = flows.find(({ one, other }) => one.value === 468 && other.by.includes('sea level'));
    expect(pad!.other.value).toBeCloseTo(477.6, 1);
    expect(pad!.agrees).toBe(false);
  });

  test('the textbook chain: p₀ A_t/c* is the flow, C_F p₀ A_t the thrust', async () => {
    // NASA SP-125 sample booster engine (from memory): 1000 psia, c* 5660 ft/s, A_t 487 in², C_F 1.531, 747 000 lbf,
    // 2768 lb/s.
    const checks = await checksOf(`
      quantity: chamberPressure, value: 1000 psi
      quantity: throatArea, value: 487 in²
      quantity: characteristicVelocity, value: 5660 ft/s
      quantity: massFlow, value: 2768 lb/s
      quantity: thrustCoefficient, value: 1.531, at: sea level
      quantity: thrust, value: 747000 lbf, at: sea level`);
    expect(of(checks, 'massFlow').map(({ agrees }) => agrees)).toEqual([true]);
    expect(of(checks, 'thrust').map(({ agrees }) => agrees)).toEqual([true]);
    expect(Math.abs(of(checks, 'thrust')[0]!.share)).toBeLessThan(0.005);
  });
});

describe('two rows for one thing', () => {
  test('a chamber pressure of 70 bar on one page and 965 psi on another (F-1) contradict each other', async () => {
    const checks = await checksOf(`
      quantity: chamberPressure, value: 70 bar
      quantity: chamberPressure, value: 965 psi`);
    expect(checks).toHaveLength(1);
    expect(checks[0]!.agrees).toBe(false);
    expect(checks[0]!.share).toBeCloseTo((965 * 6894.757293168) / 7e6 - 1, 9);
  });

  test('the same figure in two units agrees', async () => {
    const checks = await checksOf(`
      quantity: thrust, value: 1000 kN, at: vacuum
      quantity: vacuum.thrust, value: 224800 lbf`);
    expect(checks.map(({ agrees }) => agrees)).toEqual([true]);
  });
});
