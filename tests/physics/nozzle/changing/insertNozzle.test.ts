import { describe, expect, test } from 'vitest';
import { aspirationLoss } from '../../../../src/physics/nozzle/changing/aspiration.ts';
import { insertStep } from '../../../../src/physics/nozzle/changing/insertShape.ts';
import { type ChamberShape, nozzleModel } from '../../../../src/physics/nozzle/index.ts';
import type { InsertSpec } from '../../../../src/physics/nozzle/model.ts';
import { problemCode } from '../../problemCode.ts';
import { perfectGas } from '../perfectGas.ts';

const gas = perfectGas({ gamma: 1.2, pressure: 1e7 });
const insert: InsertSpec = {
  kind: 'insert',
  areaRatio: 60,
  insertAreaRatio: 15,
  length: 0.8,
  insertLength: 0.8,
};
const chamber: ChamberShape = { contractionRatio: 3, characteristicLength: 1, convergingAngle: Math.PI / 6 };

test('insert gone is exactly the plain bell', () => {
  const model = nozzleModel(insert, gas);
  const plain = nozzleModel({ kind: 'bell', areaRatio: 60, length: 0.8 }, gas);
  for (const pressure of [0, 1000, 1e4]) {
    expect(model.at(pressure).thrustCoefficient).toBe(plain.at(pressure).thrustCoefficient);
    expect(model.at(pressure).mode).toBe('insert gone');
  }
});

describe('insert in place', () => {
  test('without losses is exactly the plain small bell', () => {
    const model = nozzleModel(insert, gas, 'none');
    const plain = nozzleModel({ kind: 'bell', areaRatio: 15, length: 0.8 }, gas, 'none');
    expect(model.at(101325).thrustCoefficient).toBe(plain.at(101325).thrustCoefficient);
    expect(model.at(101325).mode).toBe('insert in place');
  });

  // About 3 % in the sea-level mode of dual bells (Hagemann et al., from memory); the formula's own bound in thin air.
  test('costs 3 % of its thrust by the suction on the bell round it', () => {
    const lossy = nozzleModel(insert, gas).at(101325).thrustCoefficient!;
    const plain = nozzleModel({ kind: 'bell', areaRatio: 15, length: 0.8 }, gas).at(101325)
      .thrustCoefficient!;
    expect(lossy / plain).toBeCloseTo(0.97, 12);
    expect(aspirationLoss(1.6, 45, 0)).toBe(0);
    expect(aspirationLoss(1.6, 45, 1e-4)).toBeCloseTo(0.0045, 15);
  });

  test('leaves the propellant flow alone: one throat', () => {
    const { change, dischargeCoefficient } = nozzleModel(insert, gas);
    const small = nozzleModel({ kind: 'bell', areaRatio: 15, length: 0.8 }, gas);
    expect(dischargeCoefficient).toBeCloseTo(small.dischargeCoefficient, 6); // the gas tables end at different pressures
    expect(change!.thick.contour!(0.1, chamber).throatRadius).toBe(0.1);
  });

  test('has a step to the bell round it', () => {
    const { wall, bodies } = nozzleModel(insert, gas).change!.thick.contour!(0.1, chamber);
    const lip = wall.at(-1)!;
    const bell = bodies![0]!.outline;
    const beside = bell.find(({ axial }) => axial >= lip.axial)!;
    expect(beside.radius).toBeGreaterThan(lip.radius);
    expect(insertStep(insert)).toBeGreaterThan(0.3);
    expect(bell.at(-1)!.radius).toBeCloseTo(0.1 * Math.sqrt(60), 12);
  });
});

test.each([
  [{ insertAreaRatio: 60 }, 'insert-not-smaller'],
  [{ insertAreaRatio: 55, insertLength: 0.6 }, 'insert-does-not-fit'],
  [{ insertAreaRatio: 55, length: 0.6, insertLength: 1 }, 'insert-does-not-fit'],
] as const)('refuses %j', (wrong, code) => {
  expect(problemCode(() => nozzleModel({ ...insert, ...wrong }, gas))).toBe(code);
});
