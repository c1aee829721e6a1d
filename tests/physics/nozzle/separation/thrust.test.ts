import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type FlowCase,
  type NozzleSpec,
  nozzleModel,
  thrustCoefficientOf,
  type WallStation,
  wallSeparation,
} from '../../../../src/physics/nozzle/index.ts';
import { degrees, perfectGas } from '../perfectGas.ts';

const gas = perfectGas({ gamma: 1.2, pressure: 1e7 });
const WALLED: readonly NozzleSpec[] = [
  { kind: 'cone', areaRatio: 20, halfAngle: degrees(15) },
  { kind: 'bell', areaRatio: 35, length: 0.8 },
  { kind: 'bell', areaRatio: 90, length: 0.8 },
];
/** From well below any lip pressure to the chamber's own, evenly in ln p. */
const AMBIENTS = Array.from({ length: 400 }, (_, i) => 1e3 * 1e4 ** (i / 400));

describe('thrust of separated flow', () => {
  test('is that of the nozzle cut off at the place, less the suction of the dead air: one-dimensional identity', () => {
    // ∫ p dε along a one-dimensional wall is the change of (p + ρu²) ε (momentum theorem), so two roads meet.
    const stations = Array.from({ length: 4000 }, (_, i): WallStation => {
      const { mach, pressure, temperature, areaRatio } = gas.atMach(1 + (3.2 * i) / 3999);
      return { axial: i, radius: Math.sqrt(Math.max(areaRatio, 1)), pressure, mach, temperature };
    });
    const exit = gas.atMach(4.2);
    const wall = wallSeparation({
      expansion: gas,
      stations,
      form: 'ideal',
      meanExitPressure: exit.pressure,
      from: 'field',
    });
    for (const ambient of [2e5, 5e5, 1e6]) {
      const full = thrustCoefficientOf(gas, exit, exit.areaRatio, 1, ambient);
      const { coefficient, separation } = wall.at(ambient, full);
      const { mach, areaRatio } = separation.place;
      const cut = thrustCoefficientOf(gas, gas.atMach(mach!), areaRatio, 1, ambient);
      const suction = (0.025 * ambient * (Math.min(2 * areaRatio, exit.areaRatio) - areaRatio)) / 1e7;
      // The wall is summed by trapezia over cells of 0.0008 in Mach number.
      expect(Math.abs(coefficient! - (cut - suction))).toBeLessThan(2e-5);
    }
  });

  test.each(WALLED)(
    '$kind $areaRatio: more than attached, inside its span, falling and without a jump',
    (spec) => {
      const nozzle = nozzleModel(spec, gas);
      let last: number | null = null;
      let least = Number.POSITIVE_INFINITY;
      for (const ambient of AMBIENTS) {
        const { thrustCoefficient, thrustCoefficientIfFull, separation } = nozzle.at(ambient);
        expect(thrustCoefficient).toBeGreaterThanOrEqual(thrustCoefficientIfFull);
        const { low, high } = separation!.thrustCoefficient!;
        expect(thrustCoefficient).toBeGreaterThanOrEqual(low);
        expect(thrustCoefficient).toBeLessThanOrEqual(high);
        // Where the wall pressure stands still or rises a little (behind the throat's arc, behind a cone's reflected wave) the ring
        // runs or jumps and frees more wall than the surroundings take: the thrust may rise again, by less than 3 %.
        expect(thrustCoefficient! / least, `at ${ambient} Pa`).toBeLessThan(1.03);
        // 2.3 % of ambient a step: p_a ε changes by at most that share of itself, and near p0 the jet dies within steps.
        if (last !== null) expect(Math.abs(thrustCoefficient! - last), `at ${ambient} Pa`).toBeLessThan(0.05);
        least = Math.min(least, thrustCoefficient!);
        last = thrustCoefficient;
      }
    },
  );

  test.each(WALLED)(
    '$kind $areaRatio: joins full flow where the gas lets go, and the bare throat where it unchokes',
    (spec) => {
      const nozzle = nozzleModel(spec, gas);
      const atLip = nozzle.separation!()!
        .criteria(1e5)
        .find(({ id }) => id === 'schmucker')!.limitAmbient!;
      for (const edge of [atLip, gas.throat.pressure]) {
        const before = nozzle.at(edge * (1 - 1e-9)).thrustCoefficient!;
        const after = nozzle.at(edge * (1 + 1e-9)).thrustCoefficient!;
        expect(Math.abs(after - before)).toBeLessThan(1e-6);
      }
    },
  );

  test('an ideal nozzle keeps the gas on its wall by definition: only the verdict tells', () => {
    const nozzle = nozzleModel({ kind: 'ideal', areaRatio: 40 }, gas);
    const at = nozzle.at(4e5);
    expect(at.flow.state).toBe('separated');
    expect(at.thrustCoefficient).toBe(at.thrustCoefficientIfFull);
    expect(at.separation!.place.areaRatio).toBeLessThan(20);
    expect(nozzle.omitted.join(' ')).toContain('leaves the wall');
    expect(nozzle.at(9e6).thrustCoefficient).toBeNull();
    expect(nozzle.at(9e6).absent).toMatch(/chamber pressure/);
  });
});

describe('from vacuum to above the chamber’s pressure', () => {
  test('each case is named, in its order, and has a number or a reason', () => {
    const nozzle = nozzleModel({ kind: 'bell', areaRatio: 35, length: 0.8 }, gas);
    const seen: FlowCase[] = [];
    const ends = [nozzle.matchedAmbient, 5.55e6, 9.9999e6, 9.999999e6, 1e7, 1e8];
    for (const ambient of [0, ...AMBIENTS, ...ends].sort((a, b) => a - b)) {
      const at = nozzle.at(ambient);
      const found = at.separation!.case;
      if (seen.at(-1) !== found) seen.push(found);
      expect(at.thrustCoefficient === null).toBe(at.absent !== null);
      expect(at.thrustCoefficient === null || Number.isFinite(at.thrustCoefficient)).toBe(true);
      expect(at.parts.length === 0).toBe(at.partsAbsent !== null);
    }
    expect(seen).toEqual([
      'underexpanded',
      'matched',
      'overexpanded',
      'near the limit',
      'separated',
      'shock in the throat',
      'unchoked',
      'subsonic jet',
      'no outflow',
    ]);
  });

  test('no nozzle and no surroundings make it throw', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('cone', 'bell', 'ideal'),
        fc.double({ min: 1.02, max: 120, noNaN: true }),
        fc.double({ min: 0, max: 9, noNaN: true }),
        fc.double({ min: 1.1, max: 1.6, noNaN: true }),
        (kind, areaRatio, decades, gamma) => {
          const expansion = perfectGas({ gamma, pressure: 1e7 });
          const spec: NozzleSpec =
            kind === 'cone'
              ? { kind, areaRatio, halfAngle: degrees(15) }
              : kind === 'bell'
                ? { kind, areaRatio, length: 0.8, throatAngle: degrees(30), lipAngle: degrees(1) }
                : { kind: 'ideal', areaRatio };
          const nozzle = areaRatio < 2 && kind === 'bell' ? null : nozzleModel(spec, expansion);
          if (nozzle === null) return;
          const { thrustCoefficient, absent, separation } = nozzle.at(10 ** decades);
          expect(thrustCoefficient === null).toBe(absent !== null);
          expect(separation!.massFlowShare).toBeGreaterThanOrEqual(0);
          expect(separation!.massFlowShare).toBeLessThanOrEqual(1 + 1e-12);
        },
      ),
      { numRuns: 60, seed: 20_251 },
    );
  });

  test('unchoked, the bare throat passes what the isentropic tables say: NACA Report 1135, M = 0.5, A/A* = 1.33984', () => {
    const air = perfectGas({ gamma: 1.4, pressure: 1e6 });
    const nozzle = nozzleModel({ kind: 'cone', areaRatio: 4, halfAngle: degrees(15) }, air);
    const { separation, flow } = nozzle.at(0.84302e6);
    expect(flow.state).toBe('unchoked');
    expect(separation!.massFlowShare).toBeCloseTo(1 / 1.33984, 4);
    // Held by the wall to A/A* = 4 the throat still chokes: M = 0.1465 at the lip has p/p0 = 0.98511 only.
    expect(separation!.massFlowShares.high).toBe(1);
    expect(nozzle.at(0.99e6).separation!.massFlowShares.high).toBeLessThan(1);
  });
});

describe('sideways forces', () => {
  test('are warned of whenever a criterion lets the gas go, and not before', () => {
    const bell = nozzleModel({ kind: 'bell', areaRatio: 35, length: 0.8 }, gas);
    for (const ambient of [0, 1e4, 1.15e5, 2e5, 5e6]) {
      const { sideLoads, lettingGo } = bell.at(ambient).separation!;
      expect(sideLoads !== null).toBe(lettingGo > 0);
    }
    expect(bell.at(2e5).separation!.sideLoads).toContain('restricted shock separation');
    const cone = nozzleModel({ kind: 'cone', areaRatio: 35, halfAngle: degrees(15) }, gas);
    expect(cone.at(4e5).separation!.sideLoads).not.toContain('restricted');
    expect(cone.at(4e5).separation!.sideLoads).toContain('free shock separation');
  });
});
