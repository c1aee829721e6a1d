import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type NozzleSpec, nozzleModel, throatAreaFor } from '../../../src/physics/nozzle/index.ts';
import { problemCode } from '../problemCode.ts';
import { degrees, perfectGas } from './perfectGas.ts';

const gas = perfectGas({ gamma: 1.2, pressure: 8e6 });
const SPECS: readonly NozzleSpec[] = [
  { kind: 'ideal', areaRatio: 20 },
  { kind: 'cone', areaRatio: 20, halfAngle: degrees(15) },
  { kind: 'bell', areaRatio: 20, length: 0.8 },
  { kind: 'adapting', areaRatio: 60 },
];

describe('size', () => {
  test.each(SPECS)('$kind: the throat sized by a thrust gives back that thrust', (spec) => {
    const nozzle = nozzleModel(spec, gas);
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 1e7, noNaN: true }),
        fc.double({ min: 0, max: 1e5, noNaN: true }),
        (thrust, ambientPressure) => {
          const area = throatAreaFor({ by: 'thrust', thrust, ambientPressure }, nozzle);
          const back = nozzle.at(ambientPressure).thrustCoefficient! * 8e6 * area;
          expect(Math.abs(back / thrust - 1)).toBeLessThan(1e-12);
        },
      ),
      { numRuns: 50 },
    );
  });

  test('by throat and by exit: the same engine, d_e = d_t √ε', () => {
    const nozzle = nozzleModel({ kind: 'ideal', areaRatio: 20 }, gas);
    const byThroat = throatAreaFor({ by: 'throat', diameter: 0.1 }, nozzle);
    const byExit = throatAreaFor({ by: 'exit', diameter: 0.1 * Math.sqrt(20) }, nozzle);
    expect(byThroat).toBeCloseTo(Math.PI * 0.0025, 12);
    expect(byExit).toBeCloseTo(byThroat, 12);
  });

  test('a nozzle without outflow cannot be sized by its thrust', () => {
    const nozzle = nozzleModel({ kind: 'bell', areaRatio: 80, length: 0.8 }, gas);
    expect(nozzle.at(8e6).thrustCoefficient).toBeNull();
    expect(
      problemCode(() => throatAreaFor({ by: 'thrust', thrust: 1e5, ambientPressure: 8e6 }, nozzle)),
    ).toBe('no-thrust-to-size-by');
  });

  test('nor one whose full flow would pull', () => {
    const nozzle = nozzleModel({ kind: 'ideal', areaRatio: 500 }, gas);
    expect(nozzle.at(101_325).thrustCoefficient).toBeLessThan(0);
    expect(
      problemCode(() => throatAreaFor({ by: 'thrust', thrust: 1e5, ambientPressure: 101_325 }, nozzle)),
    ).toBe('no-thrust-to-size-by');
  });

  test.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])('refuses %d', (value) => {
    const nozzle = nozzleModel({ kind: 'ideal', areaRatio: 20 }, gas);
    for (const size of [
      { by: 'throat', diameter: value },
      { by: 'exit', diameter: value },
      { by: 'thrust', thrust: value, ambientPressure: 0 },
    ] as const) {
      expect(problemCode(() => throatAreaFor(size, nozzle))).toBe('size-not-positive');
    }
  });
});
