import { describe, expect, test } from 'vitest';
import { shortBell } from '../../../../src/physics/nozzle/changing/skirtShape.ts';
import {
  type ChamberShape,
  chamberAndNozzleContour,
  nozzleModel,
} from '../../../../src/physics/nozzle/index.ts';
import type { ExtendableSkirtSpec } from '../../../../src/physics/nozzle/model.ts';
import { problemCode } from '../../problemCode.ts';
import { perfectGas } from '../perfectGas.ts';

const gas = perfectGas({ gamma: 1.2, pressure: 1e7 });
const skirt: ExtendableSkirtSpec = {
  kind: 'extendableSkirt',
  areaRatio: 60,
  shortAreaRatio: 20,
  length: 0.8,
};
const chamber: ChamberShape = { contractionRatio: 3, characteristicLength: 1, convergingAngle: Math.PI / 6 };

describe('skirt drawn up', () => {
  test('is exactly the plain bell of its own area ratio, length and angles', () => {
    const model = nozzleModel(skirt, gas);
    const plain = nozzleModel(shortBell(skirt), gas);
    for (const pressure of [2e4, 5e4, 101325]) {
      const drawnUp = model.change!.thick.at(pressure);
      expect(drawnUp.thrustCoefficient).toBe(plain.at(pressure).thrustCoefficient);
      expect(drawnUp.boundary).toBe(plain.at(pressure).boundary);
    }
    expect(model.change!.thick.wallStations()).toEqual(plain.wallStations());
  });

  test('has the front part of the whole wall as its own', () => {
    const short = chamberAndNozzleContour(shortBell(skirt), 0.1, chamber);
    const whole = chamberAndNozzleContour(skirt, 0.1, chamber);
    // Points of the short wall lie on the whole wall: chords of the whole leave it by 0.5 % of the throat radius at most.
    for (const { axial, radius } of short.wall.filter((point) => point.axial > 0)) {
      const next = whole.wall.findIndex((point) => point.axial >= axial);
      const [from, to] = [whole.wall[next - 1]!, whole.wall[next]!];
      const chord =
        from.radius + ((to.radius - from.radius) * (axial - from.axial)) / (to.axial - from.axial);
      expect(Math.abs(radius - chord)).toBeLessThan(0.005 * 0.1);
    }
    expect(short.exitRadius).toBeCloseTo(0.1 * Math.sqrt(20), 12);
  });

  test('is drawn with the skirt round it, which does not cross the wall', () => {
    const model = nozzleModel(skirt, gas);
    const { wall, bodies } = model.change!.thick.contour!(0.1, chamber);
    const lip = wall.at(-1)!;
    const outline = bodies![0]!.outline;
    expect(outline.at(-1)!.axial).toBeCloseTo(lip.axial, 12);
    expect(outline.at(-1)!.radius).toBeCloseTo(0.1 * Math.sqrt(60), 12);
    for (const { radius } of outline) expect(radius).toBeGreaterThanOrEqual(lip.radius * (1 - 1e-12));
  });
});

test('skirt out is exactly the plain bell', () => {
  const model = nozzleModel(skirt, gas);
  const plain = nozzleModel({ kind: 'bell', areaRatio: 60, length: 0.8 }, gas);
  for (const pressure of [0, 1000, 1e4]) {
    expect(model.at(pressure).thrustCoefficient).toBe(plain.at(pressure).thrustCoefficient);
    expect(model.at(pressure).mode).toBe('skirt out');
  }
  expect(model.wallStations()).toEqual(plain.wallStations());
});

describe('where it slides out', () => {
  test('unless stated, where both push alike', () => {
    const { change } = nozzleModel(skirt, gas);
    const { ambientPressure, thick, thin } = change!;
    const apart = thick.at(ambientPressure).thrustCoefficient! - thin.at(ambientPressure).thrustCoefficient!;
    expect(Math.abs(apart)).toBeLessThan(1e-9);
    // Straight lines in the ambient pressure: p_s/p0 = difference in vacuum over difference of area ratios.
    const inVacuum = thin.at(0).thrustCoefficient! - thick.at(0).thrustCoefficient!;
    expect(ambientPressure / 1e7).toBeCloseTo(inVacuum / 40, 9);
  });

  test('where the whole bell would not flow full there, at the highest pressure at which it does', () => {
    // A low chamber pressure does not move p_s/p0; a skirt so large that its flow leaves the wall first does.
    const large: ExtendableSkirtSpec = { ...skirt, areaRatio: 100, shortAreaRatio: 80 };
    const { change } = nozzleModel(large, gas);
    const { ambientPressure, thin, how } = change!;
    const isOn = (pressure: number) => thin.at(pressure).flow.state !== 'separated';
    expect(isOn(0.999 * ambientPressure)).toBe(true);
    if (how.startsWith('Where the gas')) expect(isOn(1.001 * ambientPressure)).toBe(false);
  });

  test('at a stated pressure, if that is stated', () => {
    const model = nozzleModel({ ...skirt, switchAmbient: 30_000 }, gas);
    expect(model.at(30_001).mode).toBe('skirt drawn up');
    expect(model.at(29_999).mode).toBe('skirt out');
  });
});

test.each([
  [{ shortAreaRatio: 60 }, 'skirt-cut-outside-bell'],
  [{ shortAreaRatio: 80 }, 'skirt-cut-outside-bell'],
  [{ shortAreaRatio: 1.05 }, 'skirt-cut-outside-bell'],
  [{ areaRatio: 0.5 }, 'area-ratio-outside-range'],
] as const)('refuses %j', (wrong, code) => {
  expect(problemCode(() => nozzleModel({ ...skirt, ...wrong }, gas))).toBe(code);
});
