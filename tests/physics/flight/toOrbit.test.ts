import { describe, expect, it } from 'vitest';
import { STANDARD_GRAVITY } from '../../../src/physics/constants.ts';
import {
  EARTH,
  EARTH_ROTATION,
  flyAscent,
  mostToOrbit,
  type Orbit,
  payloadAt,
  perigeeSpeed,
  type Site,
  type StagePropulsion,
  slenderDrag,
  type Vehicle,
} from '../../../src/physics/flight/index.ts';

const degrees = (angle: number): number => (angle * Math.PI) / 180;
const site: Site = { earth: EARTH, altitude: 0, rotation: EARTH_ROTATION * Math.cos(degrees(28)) };
const engine = (thrust: number, atSea: number, impulse: number, exitArea: number): StagePropulsion => ({
  thrust: (pressure) => thrust - ((thrust - atSea) * pressure) / 101325,
  massFlow: thrust / (impulse * STANDARD_GRAVITY),
  vacuumThrust: thrust,
  lowestThrottle: 0.5,
  exitArea,
});
/** An invented vehicle. */
const vehicle: Vehicle = {
  stages: [
    { propulsion: engine(2.4e6, 2.2e6, 335, 2), dryMass: 9_500, propellantMass: 118_000, coastBefore: 0 },
    { propulsion: engine(240e3, 100e3, 350, 1.4), dryMass: 2_500, propellantMass: 26_000, coastBefore: 3 },
  ],
  referenceArea: 8,
  drag: slenderDrag(),
  fairing: { mass: 800, dropAltitude: 110_000 },
  mostAcceleration: 45,
};
const orbit: Orbit = { altitude: 200_000, apogee: 200_000 };

describe('payload to an orbit', () => {
  const best = mostToOrbit(vehicle, site, orbit, { kickSpeed: 60 });

  it('ends on the orbit: height, level flight, speed', () => {
    const { end, radialSpeed, tangentialSpeed, budget } = flyAscent(
      vehicle,
      best.payload,
      site,
      best.steering,
    );
    expect(Math.abs(end.altitude - orbit.altitude)).toBeLessThan(1);
    expect(Math.abs(radialSpeed)).toBeLessThan(0.01);
    expect(Math.abs(tangentialSpeed - perigeeSpeed(200_000, 200_000))).toBeLessThan(0.01);
    expect(Math.abs(budget.rest)).toBeLessThan(1e-6 * budget.ideal);
  });

  /*
   * R. Humble, G. Henry, W. Larson, Space Propulsion Analysis and Design, 1995, table of launch vehicles (from memory): gravity
   * 1150 to 1576, drag 40 to 156, steering 33 to 243, rotation −347 to −413, total 8814 to 9267 m/s; with room around.
   */
  it('loses on the way what launch vehicles lose', () => {
    const { budget } = flyAscent(vehicle, best.payload, site, best.steering);
    expect(budget.gravity).toBeGreaterThan(1100);
    expect(budget.gravity).toBeLessThan(1800);
    expect(budget.drag).toBeGreaterThan(30);
    expect(budget.drag).toBeLessThan(160);
    expect(budget.steering).toBeLessThan(250);
    expect(budget.fromRotation).toBeGreaterThan(340);
    expect(budget.fromRotation).toBeLessThan(430);
    const total = budget.ideal - budget.backPressure;
    expect(total).toBeGreaterThan(8800);
    expect(total).toBeLessThan(9600);
  });

  it('is the most: a smaller and a larger bend carry less', () => {
    for (const factor of [0.8, 1.25]) {
      const other = payloadAt(vehicle, site, orbit, {
        kickSpeed: 60,
        kickAngle: factor * best.steering.kickAngle,
      });
      expect(other.payload).toBeLessThan(best.payload);
    }
  });

  it('grows with the specific impulse as the rocket equation says, upper stage alone', () => {
    const second = vehicle.stages[1]!;
    const better = (factor: number): Vehicle => ({
      ...vehicle,
      stages: [
        vehicle.stages[0]!,
        { ...second, propulsion: { ...second.propulsion, massFlow: second.propulsion.massFlow / factor } },
      ],
    });
    // dm/dI_sp at the same speed gain of the upper stage: m₁ ln(R)/(I_sp (1 − 1/R)) less what the first stage feels of it.
    const { end } = flyAscent(vehicle, best.payload, site, best.steering);
    const ratio = (end.mass + 26_000) / end.mass;
    const perShare = (end.mass * Math.log(ratio)) / (1 - 1 / ratio);
    const gain = mostToOrbit(better(1.01), site, orbit, { kickSpeed: 60 }).payload - best.payload;
    expect(gain / (0.01 * perShare)).toBeGreaterThan(0.6);
    expect(gain / (0.01 * perShare)).toBeLessThan(1.05);
  });

  it('says that an orbit is out of reach', () => {
    const weak: Vehicle = { ...vehicle, stages: [vehicle.stages[0]!] };
    expect(() => mostToOrbit(weak, site, { altitude: 2e6, apogee: 2e6 }, { kickSpeed: 60 })).toThrow('orbit');
  });
});
