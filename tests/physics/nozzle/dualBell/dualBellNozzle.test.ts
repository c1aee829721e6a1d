import { describe, expect, test } from 'vitest';
import { tableStateAt } from '../../../../src/physics/flow/gasTable.ts';
import { marchAlongWall } from '../../../../src/physics/flow/wallMarch.ts';
import { dualBellField } from '../../../../src/physics/nozzle/dualBell/dualBellField.ts';
import { HYSTERESIS, transitionOf } from '../../../../src/physics/nozzle/dualBell/transition.ts';
import { type ChamberShape, nozzleModel, referenceConeLength } from '../../../../src/physics/nozzle/index.ts';
import type { DualBellSpec } from '../../../../src/physics/nozzle/model.ts';
import { problemCode } from '../../problemCode.ts';
import { degrees, perfectGas } from '../perfectGas.ts';

const gas = perfectGas({ gamma: 1.2, pressure: 1e7 });
const dual: DualBellSpec = {
  kind: 'dualBell',
  areaRatio: 60,
  baseAreaRatio: 20,
  baseLength: 0.8,
  shape: { extensionLength: 0.8 },
  pressureRise: 0,
};
const chamber: ChamberShape = { contractionRatio: 3, characteristicLength: 1, convergingAngle: Math.PI / 6 };
const fieldOf = (spec: DualBellSpec) =>
  dualBellField(spec, gas, gas.atAreaRatio(spec.areaRatio, 'supersonic'));

describe('contour', () => {
  const field = fieldOf(dual);

  test('ends at the area ratio and the length asked for', () => {
    const lip = field.stations.at(-1)!;
    expect(lip.radius).toBeCloseTo(Math.sqrt(60), 6);
    const base = 0.8 * referenceConeLength(20);
    const cone = (Math.sqrt(60) - Math.sqrt(20)) / Math.tan(degrees(15));
    expect((lip.axial - base) / (0.8 * cone)).toBeCloseTo(1, 3);
  });

  test('has one pressure along the extension, and a rising one where that is asked', () => {
    const along = field.stations.slice(field.behindKink).map(({ pressure }) => pressure);
    for (const pressure of along) expect(pressure / along[0]!).toBeCloseTo(1, 9);
    const rising = fieldOf({ ...dual, pressureRise: 0.3 });
    const last = rising.stations.at(-1)!.pressure;
    expect(last / rising.stations[rising.behindKink]!.pressure).toBeCloseTo(1.3, 6);
  });

  test('turns at the inflection by the angle that raises ν there (Prandtl–Meyer)', () => {
    const [before, behind] = [field.stations[field.behindKink - 1]!, field.stations[field.behindKink]!];
    expect(behind.axial).toBeCloseTo(before.axial, 12);
    // ν of a perfect gas, NACA Report 1135, eq. 171c.
    const nu = (mach: number): number => {
      const k = Math.sqrt(2.2 / 0.2);
      const beta = Math.sqrt(mach * mach - 1);
      return k * Math.atan(beta / k) - Math.atan(beta);
    };
    expect(nu(behind.mach!) - nu(before.mach!)).toBeCloseTo(field.kink, 5);
  });

  test('taken as a given wall behind the inflection has the pressure that shaped it', () => {
    const { net, base, kinkLine, stations, angles, behindKink } = field;
    // The last ray at the inflection: the line before the first whose wall node lies further down.
    const inflection = net.nodes[net.offset(kinkLine, 0)]!;
    let ray = kinkLine;
    while (net.nodes[net.offset(ray + 1, 0)] === inflection) ray++;
    const start = net.nodes.slice(net.offset(ray, 0), net.offset(ray, net.lineLength(ray)));
    const given = stations
      .slice(behindKink + 1)
      .map(({ axial, radius }, i) => ({ axial, radius, angle: angles[i + 1]! }));
    const marched = marchAlongWall(base.table, 'axisymmetric', start, given).net;
    for (let line = 0; line < marched.lineCount; line++) {
      const { pressure } = tableStateAt(base.table, marched.nodes[marched.offset(line, 0) + 3]!);
      expect(pressure / stations[behindKink + line]!.pressure).toBeCloseTo(1, 6);
    }
  });

  test('is drawn whole, and in sea-level mode as base and extension', () => {
    const model = nozzleModel(dual, gas);
    const whole = model.contour!(0.1, chamber);
    expect(whole.exitRadius).toBeCloseTo(0.1 * Math.sqrt(60), 7);
    expect(whole.nozzleLength).toBeCloseTo(0.1 * field.stations.at(-1)!.axial, 9);
    const sea = model.change!.thick.contour!(0.1, chamber);
    const extension = sea.bodies![0]!.outline;
    expect(sea.exitRadius).toBeCloseTo(0.1 * Math.sqrt(20), 12);
    expect(extension[0]!.radius).toBeCloseTo(sea.exitRadius, 9);
    expect(extension[0]!.axial).toBeCloseTo(sea.nozzleLength, 9);
    expect(extension.at(-1)!.radius).toBeCloseTo(whole.exitRadius, 9);
  });
});

describe('thrust', () => {
  test.each([
    [60, 20, 0.8],
    [60, 20, 0.65],
    [30, 10, 0.8],
    [100, 40, 0.8],
  ])(
    'by surfaces and by the last front agree within 0.3 %% (ε %d on %d, extension length %d)',
    (areaRatio, baseAreaRatio, length) => {
      const model = nozzleModel(
        { ...dual, areaRatio, baseAreaRatio, shape: { extensionLength: length } },
        gas,
      );
      const { change } = model;
      for (const at of [change!.thin.at(0), change!.thick.at(change!.ambientPressure)]) {
        const sum = at.parts.reduce((total, { coefficient }) => total + coefficient, 0);
        expect(sum).toBeCloseTo(at.thrustCoefficient!, 12);
        expect(Math.abs(at.thrustCoefficient! / at.boundary! - 1)).toBeLessThan(3e-3);
      }
      expect(Math.abs(model.balance()!.mass)).toBeLessThan(5e-4);
    },
  );

  test('in sea-level mode without suction is exactly that of the base as a bell of its own', () => {
    const base = nozzleModel({ kind: 'bell', areaRatio: 20, length: 0.8 }, gas);
    const at = nozzleModel(dual, gas).change!.thick.at(101325);
    const suction = at.parts.find(({ surface }) => surface === 'extension')!.coefficient;
    expect(at.thrustCoefficient! - suction).toBeCloseTo(base.at(101325).thrustCoefficient!, 14);
    expect(nozzleModel(dual, gas).dischargeCoefficient).toBe(base.dischargeCoefficient);
  });

  test('in altitude mode is straight in the ambient pressure, with the whole exit area', () => {
    const { thin } = nozzleModel(dual, gas).change!;
    const fall = (thin.at(0).thrustCoefficient! - thin.at(1e4).thrustCoefficient!) / (1e4 / 1e7);
    expect(fall).toBeCloseTo(60, 9);
  });

  // About 3 % of the thrust in sea-level mode, Hagemann et al. (from memory).
  test('in sea-level mode is the base’s less 3 %', () => {
    const lossy = nozzleModel(dual, gas).at(101325).thrustCoefficient!;
    const { parts } = nozzleModel(dual, gas).at(101325);
    const suction = parts.find(({ surface }) => surface === 'extension')!.coefficient;
    expect(-suction / (lossy - suction)).toBeCloseTo(0.03, 12);
  });

  test('without the losses of the nozzle is that of parallel flow in either mode', () => {
    const model = nozzleModel(dual, gas, 'none');
    const ideal = (areaRatio: number, pressure: number) =>
      nozzleModel({ kind: 'ideal', areaRatio }, gas).at(pressure).thrustCoefficient;
    expect(model.at(0).thrustCoefficient).toBeCloseTo(ideal(60, 0)!, 12);
    expect(model.at(101325).thrustCoefficient).toBeCloseTo(ideal(20, 101325)!, 12);
  });
});

describe('transition', () => {
  const behind = { pressure: 1e4, mach: 4, angle: degrees(25), chamberPressure: 1e7, gamma: 1.2 };

  test('is where the wall pressure behind the inflection meets each criterion', () => {
    // p_sep/p_a at M 4, recomputed: Schmucker 0.3012, Stark 0.2618, Zukoski 0.3333; Summerfield 0.4.
    const { estimates, ambientPressure, band } = transitionOf(behind);
    const by = new Map(estimates.map((each) => [each.by.split(' ')[0], 1e4 / each.ambientPressure]));
    expect(by.get('Schmucker')).toBeCloseTo(0.3012, 4);
    expect(by.get('Stark')).toBeCloseTo(0.2618, 4);
    expect(by.get('Zukoski')).toBeCloseTo(0.3333, 4);
    expect(by.get('Summerfield')).toBeCloseTo(0.4, 12);
    expect(1e4 / ambientPressure).toBeCloseTo(0.3012, 4);
    expect(band!.low).toBeCloseTo(25_000, 6);
    // Schilling at p_c/p_a 200: 0.2075 (recomputed); here p_c/p_a is 206.
    expect(1e4 / band!.high).toBeCloseTo(0.2075, 2);
  });

  test('goes back at a pressure ratio lower by up to a fifth (Reijasse et al. 2011)', () => {
    const { back, ambientPressure } = transitionOf(behind);
    expect(HYSTERESIS).toBe(0.2);
    expect(1e7 / back!.high / (1e7 / ambientPressure)).toBeCloseTo(0.8, 12);
    expect(back!.low).toBe(ambientPressure);
  });

  // Reijasse et al. 2011: the whole out-pushes the base alone only at pressure ratios far above transition.
  test('comes before the whole pushes harder than the base alone', () => {
    const { change } = nozzleModel(dual, gas);
    const { thick, thin, ambientPressure } = change!;
    const justAfter = thin.at(0.999 * ambientPressure).thrustCoefficient!;
    expect(justAfter).toBeLessThan(thick.at(0.999 * ambientPressure).thrustCoefficient!);
    expect(thin.at(0).thrustCoefficient).toBeGreaterThan(thick.at(0).thrustCoefficient!);
  });
});

test.each([
  [{ baseAreaRatio: 60 }, 'dual-bell-base-not-smaller'],
  [{ pressureRise: -0.1 }, 'dual-bell-rise-outside-range'],
  [{ shape: { kink: degrees(2) } }, 'dual-bell-kink-too-flat'],
  [{ shape: { extensionLength: 0.05 } }, 'dual-bell-length-out-of-reach'],
  [{ shape: { extensionLength: 3 } }, 'dual-bell-too-long'],
  [{ baseLength: 0.3 }, 'bell-length-outside-range'],
] as const)('refuses %j', (wrong, code) => {
  expect(problemCode(() => nozzleModel({ ...dual, ...wrong }, gas))).toBe(code);
});
