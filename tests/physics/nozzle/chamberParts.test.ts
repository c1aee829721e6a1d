import { describe, expect, test } from 'vitest';
import {
  chamberAndNozzleContour,
  chamberParts,
  chamberPush,
  nozzleModel,
} from '../../../src/physics/nozzle/index.ts';
import { degrees, perfectGas } from './perfectGas.ts';

const cases = [
  { gamma: 1.15, angle: 30, contraction: 2.5 },
  { gamma: 1.2, angle: 20, contraction: 2 },
  { gamma: 1.25, angle: 30, contraction: 4 },
  { gamma: 1.4, angle: 45, contraction: 6 },
] as const;

describe.each(cases)(
  'γ $gamma, converging at $angle°, contraction $contraction',
  ({ gamma, angle, contraction }) => {
    const gas = perfectGas({ gamma, pressure: 1e7 });
    const shape = { contractionRatio: contraction, characteristicLength: 2, convergingAngle: degrees(angle) };

    // Two roads to one force: pressure on face and wall, and the momentum that the transonic series carries through the throat.
    test.each([0, 3e4])('bell at %d Pa: every surface together against the exit, within 0.3 %', (ambient) => {
      const spec = { kind: 'bell', areaRatio: 25, length: 0.8 } as const;
      const model = nozzleModel(spec, gas);
      const at = model.at(ambient);
      const contour = chamberAndNozzleContour(spec, 0.1, shape);
      const parts = chamberParts(
        at.parts,
        chamberPush(contour, gas, model.dischargeCoefficient),
        gas,
        ambient,
        false,
      );
      expect(parts.map(({ surface }) => surface)).toEqual([
        'injector face',
        'converging wall',
        'nozzle wall',
      ]);
      const sum = parts.reduce((total, { coefficient }) => total + coefficient, 0);
      expect(Math.abs(sum / at.boundary! - 1)).toBeLessThan(3e-3);
      expect(parts[0]!.coefficient).toBeGreaterThan(0);
      expect(parts[1]!.coefficient).toBeLessThan(0);
      expect(parts[2]!.coefficient).toBeGreaterThan(0);
    });

    test('one-dimensional: the parts add up to the thrust coefficient exactly', () => {
      const spec = { kind: 'ideal', areaRatio: 25 } as const;
      const at = nozzleModel(spec, gas).at(2e4);
      const contour = chamberAndNozzleContour(spec, 0.1, shape);
      const parts = chamberParts(at.parts, chamberPush(contour, gas, 1), gas, 2e4, true);
      expect(parts.length).toBe(3);
      const sum = parts.reduce((total, { coefficient }) => total + coefficient, 0);
      expect(Math.abs(sum - at.thrustCoefficient!)).toBeLessThan(1e-8);
    });
  },
);
