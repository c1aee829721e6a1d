import { describe, expect, it } from 'vitest';
import { STANDARD_GRAVITY } from '../../../src/physics/constants.ts';
import {
  type Ascent,
  type FlightAir,
  flyAscent,
  type Site,
  type StagePropulsion,
  type Steering,
  type Vehicle,
} from '../../../src/physics/flight/index.ts';
import { besselSeries, exponentialIntegral } from './closedForms.ts';

/*
 * Motion with drag K v², K = ½ ρ C S, over flat ground: closed forms in docs/methods/flight.md. L. M. B. C. Campos, P. J. S. Gil, Aerospace 5(3),
 * 2018, 88, treat the same effects by series (abstract read); the forms here are derived anew and need none.
 */

const g = STANDARD_GRAVITY;
/** So large that it is flat; heights are kept to a tenth of a millimetre. */
const FLAT_RADIUS = 1e12;
const COEFFICIENT = 0.3;
const AREA = 0.2;
const SOUND = 340;

const site = (gravity: number, density: (altitude: number) => number): Site => ({
  earth: { radius: FLAT_RADIUS, gravitationalParameter: gravity * FLAT_RADIUS ** 2 },
  altitude: 0,
  rotation: 0,
  air: (altitude): FlightAir => ({ density: density(altitude), pressure: 0, soundSpeed: SOUND }),
});
const push = (thrust: number, massFlow: number): StagePropulsion => ({
  thrust: () => thrust,
  massFlow,
  vacuumThrust: thrust,
  lowestThrottle: 1,
  exitArea: 0,
});
/** Burns so little that its mass stands still: 10⁻⁶ kg/s. */
const TRICKLE = 1e-6;
function steadyVehicle(mass: number, thrust: number, time: number): Vehicle {
  return {
    stages: [
      {
        propulsion: push(thrust, TRICKLE),
        dryMass: mass,
        propellantMass: TRICKLE * time,
        coastBefore: 0,
      },
    ],
    referenceArea: AREA,
    drag: { body: () => COEFFICIENT, base: () => 0 },
  };
}
const straightUp: Steering = { kickSpeed: 1e9, kickAngle: 0, upper: { start: 0, rate: 0 } };
const near = (value: number, expected: number, share = 1e-6): void => {
  expect(Math.abs(value / expected - 1)).toBeLessThan(share);
};

describe('in air of one density, with steady mass and thrust', () => {
  // m v′ = F − m g − K v²: v = v_T tanh(a t/v_T), h = (v_T²/a) ln cosh(a t/v_T), a = F/m − g, v_T² = a m/K.
  it.each([
    { mass: 800, thrust: 20_000, time: 12 },
    { mass: 300, thrust: 9_000, time: 60 },
  ])('$mass kg under $thrust N climb as tanh says for $time s', ({ mass, thrust, time }) => {
    const density = 1.1;
    const { end, budget } = flyAscent(
      steadyVehicle(mass, thrust, time),
      0,
      site(g, () => density),
      straightUp,
    );
    const a = thrust / mass - g;
    const terminal = Math.sqrt((a * mass) / (0.5 * density * COEFFICIENT * AREA));
    const phase = (a * end.time) / terminal;
    near(end.time, time);
    near(end.speed, terminal * Math.tanh(phase));
    near(end.altitude, (terminal ** 2 / a) * Math.log(Math.cosh(phase)));
    near(budget.drag, a * end.time - terminal * Math.tanh(phase));
  });
});

const SCALE_HEIGHT = 7_200;
const SEA_DENSITY = 1.2;
const thinning = (altitude: number): number => SEA_DENSITY * Math.exp(-altitude / SCALE_HEIGHT);

describe('in air that thins out exponentially, with steady mass', () => {
  /*
   * dv²/dh = 2 a − 2 k e^(−h/H) v², k = ½ ρ₀ C S/m: linear in v². With x = 2 k H e^(−h/H), from x₁ at speed v₁:
   * v² = e^(x − x₁) v₁² + 2 a H eˣ [E₁(x) − E₁(x₁)].
   */
  const squared = (mass: number, a: number, from: { h: number; v: number }, h: number): number => {
    const k = (0.5 * SEA_DENSITY * COEFFICIENT * AREA) / mass;
    const x = (altitude: number): number => 2 * k * SCALE_HEIGHT * Math.exp(-altitude / SCALE_HEIGHT);
    const [now, then] = [x(h), x(from.h)];
    const work = 2 * a * SCALE_HEIGHT * Math.exp(now);
    return Math.exp(now - then) * from.v ** 2 + work * (exponentialIntegral(now) - exponentialIntegral(then));
  };

  it('E₁ is that of the printed table', () => {
    // M. Abramowitz, I. Stegun, Handbook of Mathematical Functions, table 5.1 (from memory).
    expect(exponentialIntegral(1)).toBeCloseTo(0.2193839344, 9);
    expect(exponentialIntegral(2)).toBeCloseTo(0.0489005107, 9);
  });

  it.each([
    { mass: 300, thrust: 9_000, time: 25 },
    { mass: 120, thrust: 5_000, time: 40 },
  ])(
    '$mass kg under $thrust N have the speed of the exponential integral after $time s, and rise to its zero',
    ({ mass, thrust, time }) => {
      const vehicle = steadyVehicle(mass, thrust, time);
      const air = site(g, thinning);
      const burnt = flyAscent(vehicle, 0, air, straightUp).end;
      near(burnt.speed, Math.sqrt(squared(mass, thrust / mass - g, { h: 0, v: 0 }, burnt.altitude)));
      const top = flyAscent(vehicle, 0, air, straightUp, { toHighestPoint: true }).end;
      const coasting = { h: burnt.altitude, v: burnt.speed };
      // At the top v² passes through zero with the slope −2 g: a metre of error in height is 20 m²/s².
      const missed = squared(mass, -g, coasting, top.altitude) / (2 * g);
      expect(Math.abs(missed)).toBeLessThan(1e-6 * top.altitude);
      expect(top.altitude).toBeGreaterThan(burnt.altitude);
    },
  );
});

describe('in air of one density, with mass falling in proportion to time', () => {
  /*
   * dv/dt = [F − m g − K v²]/m, m = m₀ − ṁ t, is of Riccati’s kind. With v = −(ṁ m/K) w′(m)/w it becomes m² w″ + m w′ + (K/ṁ²)(m g − F) w = 0:
   * Bessel’s equation in z = 2 √(K g m)/ṁ, of the order ν = 2 √(K F)/ṁ, so that v = −(ṁ/2K) z w_z/w, w_z = 0 at the start.
   * Without gravity v = √(F/K) tanh[(ν/2) ln(m₀/m)].
   */
  const density = 1.1;
  const K = 0.5 * density * COEFFICIENT * AREA;
  const burning = (start: number, propellant: number, thrust: number, flow: number): Vehicle => ({
    ...steadyVehicle(start, thrust, 1),
    stages: [
      {
        propulsion: push(thrust, flow),
        dryMass: start - propellant,
        propellantMass: propellant,
        coastBefore: 0,
      },
    ],
  });
  const air = (gravity: number): Site => site(gravity, () => density);

  it('the Bessel functions are those of order one half', () => {
    // J_½ = √(2/πz) sin z, so its series without Γ is 2 sin z/√(2z); J_−½ goes with cos z in the same way.
    const z = 2.3;
    near(besselSeries(0.5, z).value, Math.sin(z) / Math.sqrt(2 * z), 1e-13);
    near(besselSeries(-0.5, z).value, Math.cos(z) * Math.sqrt(2 / z), 1e-13);
  });

  it.each([
    { start: 1000, propellant: 600, thrust: 20_000, flow: 8 },
    { start: 400, propellant: 150, thrust: 9_000, flow: 4.3 },
  ])(
    '$start kg burning $flow kg/s reach the speed that Bessel functions give',
    ({ start, propellant, thrust, flow }) => {
      const { end } = flyAscent(burning(start, propellant, thrust, flow), 0, air(g), straightUp);
      const order = (2 * Math.sqrt(K * thrust)) / flow;
      const zOf = (mass: number): number => (2 * Math.sqrt(K * g * mass)) / flow;
      const [z0, z] = [zOf(start), zOf(start - propellant)];
      const [up, down] = [besselSeries(order, z0).derivative, besselSeries(-order, z0).derivative];
      const [plus, minus] = [besselSeries(order, z), besselSeries(-order, z)];
      const w = down * plus.value - up * minus.value;
      const slope = down * plus.derivative - up * minus.derivative;
      near(end.speed, ((-flow / (2 * K)) * z * slope) / w);
    },
  );

  it('without gravity the speed is the tanh of the logarithm of the mass ratio', () => {
    const [start, propellant, thrust, flow] = [1000, 700, 15_000, 6];
    const { end, budget } = flyAscent(burning(start, propellant, thrust, flow), 0, air(0), straightUp);
    const order = (2 * Math.sqrt(K * thrust)) / flow;
    const ratio = start / (start - propellant);
    near(end.speed, Math.sqrt(thrust / K) * Math.tanh(0.5 * order * Math.log(ratio)));
    near(budget.drag, (thrust / flow) * Math.log(ratio) - end.speed);
  });
});

describe('a slanting coast without gravity in air that thins out exponentially', () => {
  /*
   * v = v₁ exp[−(k H/sin γ)(e^(−h₁/H) − e^(−h/H))], γ constant: the entry of H. J. Allen, A. J. Eggers, NACA Report 1381, 1958, flown
   * upwards.
   */
  it('slows down as the air that it has passed says, in a straight line', () => {
    const mass = 60;
    const steady = steadyVehicle(mass, 6_000, 6);
    const upperMass = 25;
    const vehicle: Vehicle = {
      ...steady,
      stages: [
        { ...steady.stages[0]!, dryMass: mass - upperMass },
        {
          propulsion: push(1e-3, TRICKLE),
          dryMass: upperMass,
          propellantMass: TRICKLE,
          coastBefore: 90,
        },
      ],
    };
    const flight: Ascent = flyAscent(
      vehicle,
      0,
      site(0, thinning),
      { kickSpeed: 100, kickAngle: 0.5, upper: { start: 1, rate: 0 } },
      { record: true },
    );
    const coast = flight.points.filter(({ stage, thrust }) => stage === 1 && thrust === 0);
    const first = coast[0]!;
    const k = (0.5 * SEA_DENSITY * COEFFICIENT * AREA) / upperMass;
    const passed = (h: number): number =>
      (k * SCALE_HEIGHT * Math.exp(-h / SCALE_HEIGHT)) / Math.sin(first.pathAngle);
    expect(first.pathAngle).toBeLessThan(1.3);
    expect(coast.length).toBeGreaterThan(50);
    for (const { speed, altitude, pathAngle } of coast) {
      near(speed, first.speed * Math.exp(passed(altitude) - passed(first.altitude)));
      expect(Math.abs(pathAngle - first.pathAngle)).toBeLessThan(1e-6);
    }
    expect(coast.at(-1)!.speed).toBeLessThan(0.6 * first.speed);
  });
});
