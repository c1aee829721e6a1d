import { describe, expect, it } from 'vitest';
import { STANDARD_GRAVITY } from '../../../src/physics/constants.ts';
import {
  type DragModel,
  EARTH,
  EARTH_ROTATION,
  flyAscent,
  perigeeSpeed,
  type Site,
  type Stage,
  type StagePropulsion,
  type Steering,
  slenderDrag,
  type Vehicle,
} from '../../../src/physics/flight/index.ts';

const g = STANDARD_GRAVITY;
const degrees = (angle: number): number => (angle * Math.PI) / 180;
/** So large that it is flat, with g everywhere: for closed forms. Heights are kept to a tenth of a millimetre. */
const FLAT_RADIUS = 1e12;
const flat: Site = {
  earth: { radius: FLAT_RADIUS, gravitationalParameter: g * FLAT_RADIUS ** 2 },
  altitude: 0,
  rotation: 0,
};
const noDrag: DragModel = { body: () => 0, base: () => 0 };

const constantThrust = (thrust: number, massFlow: number): StagePropulsion => ({
  thrust: () => thrust,
  massFlow,
  vacuumThrust: thrust,
  lowestThrottle: 1,
  exitArea: 0,
});
const stage = (propulsion: StagePropulsion, dryMass: number, propellantMass: number): Stage => ({
  propulsion,
  dryMass,
  propellantMass,
  coastBefore: 0,
});
const straightUp: Steering = { kickSpeed: 1e9, kickAngle: 0, upper: { start: 0, rate: 0 } };

describe('a vertical climb with constant thrust, flow and gravity, without drag', () => {
  // v = v_e ln MR − g t, h = v_e t_b [1 − ln MR/(MR − 1)] − g t_b²/2 (K. E. Tsiolkovsky; recomputed with g = 9.80665).
  it.each([
    { exhaust: 3000, massRatio: 4, time: 100, speed: 3178.218, height: 112337.3 },
    { exhaust: 2600, massRatio: 3.5, time: 140, speed: 1884.254, height: 85492.5 },
  ])('reaches $speed m/s at $height m', ({ exhaust, massRatio, time, speed, height }) => {
    const start = 10_000;
    const propellant = start * (1 - 1 / massRatio);
    const flow = propellant / time;
    const vehicle: Vehicle = {
      stages: [stage(constantThrust(flow * exhaust, flow), start - propellant, propellant)],
      referenceArea: 0,
      drag: noDrag,
    };
    const { end, budget } = flyAscent(vehicle, 0, flat, straightUp);
    expect(end.time).toBeCloseTo(time, 6);
    expect(Math.abs(end.speed - (exhaust * Math.log(massRatio) - g * time))).toBeLessThan(5e-4);
    expect(Math.abs(end.speed - speed)).toBeLessThan(2e-3);
    expect(Math.abs(end.altitude - height)).toBeLessThan(0.06);
    expect(budget.ideal).toBeCloseTo(exhaust * Math.log(massRatio), 6);
    expect(budget.gravity).toBeCloseTo(g * time, 3);
  });
});

describe('a gravity turn over flat ground with constant thrust over weight', () => {
  /*
   * z = tan(β/2), β from the vertical: v = C z^(n−1)(1 + z²), t = (C/g)[z^(n−1)/(n−1) + z^(n+1)/(n+1)]:
   * G. Culler, B. Fried, J. Appl. Phys. 28 (1957) 672 (from memory; re-derived from v′ = g(n − cos β), v β′ = g sin β).
   */
  it.each([
    { n: 2, kick: 2, from: 50, to: 60, speed: 2204.42, time: 182.226, loss: 1419.63 },
    { n: 1.3, kick: 1, from: 60, to: 45, speed: 223.77, time: 45.981, loss: 422.43 },
  ])('of $n g turns from $kick° to $to° at $speed m/s', ({ n, kick, from, to, speed, time, loss }) => {
    const mass = 1000;
    const z0 = Math.tan(degrees(kick) / 2);
    const constant = from / (z0 ** (n - 1) * (1 + z0 * z0));
    const clock = (z: number): number => (constant / g) * (z ** (n - 1) / (n - 1) + z ** (n + 1) / (n + 1));
    const duration = clock(Math.tan(degrees(to) / 2)) - clock(z0);
    expect(Math.abs(duration - time)).toBeLessThan(1e-3);

    const burnt = 1e-9 * (time + 60);
    // The flight starts with the climb to the kick; what follows it is the turn. Mass is lost too slowly to matter.
    const vehicle: Vehicle = {
      stages: [stage(constantThrust(n * mass * g, 1e-9), mass - burnt, burnt)],
      referenceArea: 0,
      drag: noDrag,
    };
    const flight = flyAscent(
      vehicle,
      0,
      flat,
      { kickSpeed: from, kickAngle: degrees(kick), upper: { start: 0, rate: 0 } },
      { record: true },
    );
    // It leaves the vertical by the held angle, and turns from where its way has come to point there.
    const turning = flight.points.find(({ pathAngle }) => pathAngle <= Math.PI / 2 - degrees(kick) + 1e-9)!;
    const z1 = Math.tan((Math.PI / 2 - turning.pathAngle) / 2);
    const own = turning.speed / (z1 ** (n - 1) * (1 + z1 * z1));
    const later = flight.points.filter(({ time: t }) => t > turning.time + 5).at(0)!;
    const z2 = Math.tan((Math.PI / 2 - later.pathAngle) / 2);
    expect(Math.abs(later.speed / (own * z2 ** (n - 1) * (1 + z2 * z2)) - 1)).toBeLessThan(1e-6);
    const last = flight.points.filter(({ pathAngle }) => pathAngle > Math.PI / 2 - degrees(to)).at(-1)!;
    const z3 = Math.tan((Math.PI / 2 - last.pathAngle) / 2);
    expect(Math.abs(last.speed / (own * z3 ** (n - 1) * (1 + z3 * z3)) - 1)).toBeLessThan(1e-4);
    // The printed rows themselves, from the closed form.
    const zEnd = Math.tan(degrees(to) / 2);
    expect(Math.abs(constant * zEnd ** (n - 1) * (1 + zEnd * zEnd) - speed)).toBeLessThan(6e-3);
    expect(Math.abs(n * g * duration - (speed - from) - loss)).toBeLessThan(0.02);
  });
});

const site: Site = { earth: EARTH, altitude: 0, rotation: EARTH_ROTATION * Math.cos(degrees(28)) };
const booster = (thrust: number, atSea: number, impulse: number, lowestThrottle = 0.4): StagePropulsion => ({
  thrust: (pressure) => thrust - ((thrust - atSea) * pressure) / 101325,
  massFlow: thrust / (impulse * g),
  vacuumThrust: thrust,
  lowestThrottle,
  exitArea: 2,
});
const twoStages: Vehicle = {
  stages: [
    stage(booster(2.4e6, 2.2e6, 340), 9_000, 118_000),
    { ...stage(booster(160e3, 60e3, 350), 2_500, 22_000), coastBefore: 3 },
  ],
  referenceArea: 8,
  drag: slenderDrag(),
  fairing: { mass: 800, dropAltitude: 110_000 },
};
const upwards: Steering = { kickSpeed: 60, kickAngle: degrees(3.5), upper: { start: 0.6, rate: -0.001 } };

describe('an ascent of two stages', () => {
  it('has a budget that closes', () => {
    const { budget } = flyAscent(twoStages, 3_000, site, upwards);
    expect(Math.abs(budget.rest)).toBeLessThan(1e-6 * budget.ideal);
    const { ideal, gravity, drag, steering, backPressure, gained } = budget;
    expect(ideal - gravity - drag - steering - backPressure).toBeCloseTo(gained, 2);
    for (const loss of [gravity, drag, steering, backPressure]) expect(loss).toBeGreaterThan(0);
  });

  it('keeps its acceleration and dynamic pressure below limits by throttling, and says where it cannot', () => {
    const limited: Vehicle = { ...twoStages, mostAcceleration: 30, mostDynamicPressure: 28e3 };
    const free = flyAscent(twoStages, 3_000, site, upwards, { record: true });
    const held = flyAscent(limited, 3_000, site, upwards, { record: true });
    expect(Math.max(...free.points.map(({ felt }) => felt))).toBeGreaterThan(40);
    expect(free.greatestDynamicPressure.dynamicPressure).toBeGreaterThan(30e3);
    expect(Math.max(...held.points.map(({ felt }) => felt))).toBeLessThan(30.01);
    expect(held.greatestDynamicPressure.dynamicPressure).toBeLessThan(28e3);
    expect(held.exceeded).toEqual([]);
    const stiff = flyAscent(
      {
        ...limited,
        stages: twoStages.stages.map((each) => ({
          ...each,
          propulsion: { ...each.propulsion, lowestThrottle: 0.95 },
        })),
      },
      3_000,
      site,
      upwards,
    );
    expect(stiff.exceeded).toHaveLength(2);
  });

  it('drops its fairing once, at its altitude', () => {
    const { points } = flyAscent(twoStages, 3_000, site, upwards, { record: true });
    const drops = points.filter(
      ({ mass, altitude, time }, i) =>
        i > 0 && time === points[i - 1]!.time && altitude > 100e3 && points[i - 1]!.mass - mass === 800,
    );
    expect(drops).toHaveLength(1);
    expect(drops[0]!.altitude).toBeCloseTo(110_000, 0);
  });

  it('weighs its mean specific impulse by propellant, between sea level and vacuum', () => {
    const { meanSpecificImpulse, halfPropellantAltitude } = flyAscent(twoStages, 3_000, site, upwards);
    expect(meanSpecificImpulse).toBeGreaterThan((340 * 2.2) / 2.4);
    expect(meanSpecificImpulse).toBeLessThan(340);
    expect(halfPropellantAltitude).toBeGreaterThan(5_000);
  });

  it('refuses a vehicle that does not rise, and one that comes down again', () => {
    const heavy = { ...twoStages, stages: [stage(booster(1e6, 0.9e6, 340), 9_000, 118_000)] };
    expect(() => flyAscent(heavy, 3_000, site, upwards)).toThrow('weighs');
    expect(() => flyAscent(twoStages, 3_000, site, { ...upwards, kickAngle: degrees(30) })).toThrow(
      'down to the ground',
    );
  });
});

describe('a flight without thrust', () => {
  it('keeps its energy, and so rises as high as the vis-viva equation says', () => {
    const vehicle: Vehicle = {
      stages: [stage(constantThrust(60_000, 20), 1_000, 2_000)],
      referenceArea: 0,
      drag: noDrag,
    };
    const turning = { ...site, rotation: 0 };
    const burnt = flyAscent(vehicle, 0, turning, straightUp).end;
    const top = flyAscent(vehicle, 0, turning, straightUp, { toHighestPoint: true }).end;
    const { radius, gravitationalParameter: mu } = EARTH;
    const energy = burnt.speed ** 2 / 2 - mu / (radius + burnt.altitude);
    expect((radius + top.altitude) / (-mu / energy)).toBeCloseTo(1, 8);
  });

  it('circles at 7793 m/s at 185 km', () => {
    // Recomputed from μ and r.
    expect(perigeeSpeed(185_000, 185_000)).toBeCloseTo(7793, 0);
  });
});
