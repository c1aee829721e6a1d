/** Random vehicles, flown; what happens to each is one of a few typed ends. */

import { attempt } from '../../src/numerics/problem.ts';
import { randomStream } from '../../src/numerics/randomStream.ts';
import { STANDARD_GRAVITY } from '../../src/physics/constants.ts';
import {
  EARTH,
  EARTH_ROTATION,
  flyAscent,
  mostToOrbit,
  type Orbit,
  type Site,
  type Stage,
  slenderDrag,
  type Vehicle,
} from '../../src/physics/flight/index.ts';

export interface FlightCase {
  readonly vehicle: Vehicle;
  readonly site: Site;
  readonly orbit: Orbit;
  readonly turnSpeed: number;
}

export interface FlightEnd {
  readonly code: 'solved' | string;
  readonly why: string | null;
  /** Of the budget over the ideal speed [–]; 0 where it was not solved. */ readonly rest: number;
}

/** Typed ends that nature or the figures at random demand, with what each means. */
export const PHYSICAL_REASONS: Readonly<Record<string, string>> = {
  'orbit-not-reached': 'the propellant does not give the speed of the orbit, even with nothing on board',
  'flight-falls-back': 'it comes down to the ground again before its engines could hold it up',
  'flight-does-not-rise': 'the first stage pushes less than the vehicle weighs',
};

export interface FlightReport {
  readonly cases: number;
  /** By outcome. */ readonly counts: Readonly<Record<string, number>>;
  readonly solved: number;
  /** What the budget leaves open over the ideal speed, at its worst [–]. */ readonly largestRest: number;
  /** Seeds and reasons of the typed ends. */ readonly typed: readonly string[];
  /** Seeds of all that was neither solved nor told why. */ readonly failures: readonly string[];
}

/** Runs `cases` seeds from `first` on. Any error that is not a typed one passes through and fails the run. */
export function runFlightCampaign(first: number, cases: number): FlightReport {
  const counts: Record<string, number> = {};
  const typed: string[] = [];
  const failures: string[] = [];
  let largestRest = 0;
  for (let seed = first; seed < first + cases; seed++) {
    const { code, why, rest } = flownCase(flightCase(seed));
    counts[code] = (counts[code] ?? 0) + 1;
    largestRest = Math.max(largestRest, Math.abs(rest));
    if (code === 'solved') continue;
    (code in PHYSICAL_REASONS && why !== null ? typed : failures).push(
      `seed ${seed}: ${code}: ${why ?? 'no reason'}`,
    );
  }
  return { cases, counts, solved: counts.solved ?? 0, largestRest, typed, failures };
}

/** Masses and thrusts as vehicles have them, at random between wide limits; reasons for the limits stand beside them. */
export function flightCase(seed: number): FlightCase {
  const random = randomStream(seed);
  const between = (low: number, high: number): number => low + (high - low) * random();
  const count = random() < 0.15 ? 1 : random() < 0.8 ? 2 : 3;
  const kerosene = random() < 0.6;
  const lift = 10 ** between(4.3, 6.3);
  // What a stage burns over what stands on it: enough in all for 9.5 to 11 km/s.
  const impulse = (stage: number): number =>
    count === 1 ? between(420, 455) : stage === 0 && kerosene ? between(295, 345) : between(340, 455);
  const target = between(9500, 11_000);
  const impulses = Array.from({ length: count }, (_, i) => impulse(i));
  const shares =
    count === 1 ? [1] : count === 2 ? [between(0.36, 0.5)] : [between(0.3, 0.38), between(0.3, 0.36)];
  const parts = count === 1 ? [1] : [...shares, 1 - shares.reduce((sum, share) => sum + share, 0)];
  let mass = lift;
  const stages = impulses.map((seconds, i): Stage => {
    const ratio = Math.exp((parts[i]! * target) / (seconds * STANDARD_GRAVITY));
    const propellantMass = mass * (1 - 1 / ratio);
    const dryMass = propellantMass * between(0.05, count === 1 ? 0.07 : 0.12);
    const thrustToWeight = i === 0 ? between(1.15, 1.7) : between(0.6, 1.4);
    const vacuumThrust = thrustToWeight * mass * STANDARD_GRAVITY * (i === 0 ? between(1.05, 1.2) : 1);
    const atSea = i === 0 ? between(0.83, 0.95) : between(0.1, 0.6);
    const stage: Stage = {
      propulsion: {
        thrust: (pressure) => Math.max(0, vacuumThrust * (1 - ((1 - atSea) * pressure) / 101_325)),
        massFlow: vacuumThrust / (seconds * STANDARD_GRAVITY),
        vacuumThrust,
        lowestThrottle: between(0.3, 1),
        exitArea: (vacuumThrust * (1 - atSea)) / 101_325,
      },
      dryMass,
      propellantMass,
      coastBefore: i === 0 ? 0 : between(0, 10),
    };
    mass -= propellantMass + dryMass;
    return stage;
  });
  // The mass left on top is no input: it is what a right payload would be; the search starts from nothing.
  const area = 10 * (lift / 300e3) ** (2 / 3) * between(0.7, 1.5);
  const altitude = between(160e3, 400e3);
  return {
    vehicle: {
      stages,
      referenceArea: area,
      drag: slenderDrag(between(0.8, 1.2)),
      ...(random() < 0.5 && { fairing: { mass: 0.004 * lift, dropAltitude: between(100e3, 130e3) } }),
      ...(random() < 0.5 && { mostAcceleration: between(35, 60) }),
      ...(random() < 0.3 && { mostDynamicPressure: between(25e3, 40e3) }),
    },
    site: { earth: EARTH, altitude: between(0, 500), rotation: EARTH_ROTATION * Math.cos(between(0, 1.2)) },
    orbit: { altitude, apogee: altitude + (random() < 0.5 ? 0 : between(0, 600e3)) },
    turnSpeed: between(30, 120),
  };
}

export function flownCase({ vehicle, site, orbit, turnSpeed }: FlightCase): FlightEnd {
  const lone = vehicle.stages.length === 1 && { upperFrom: 40_000 };
  const outcome = attempt(() => {
    const found = mostToOrbit(vehicle, site, orbit, { kickSpeed: turnSpeed, ...lone });
    return flyAscent(vehicle, found.payload, site, found.steering);
  });
  if (!outcome.ok) return { code: outcome.problem.code, why: outcome.problem.why ?? null, rest: 0 };
  const { budget, end } = outcome.value;
  const finite = [...Object.values(budget), end.altitude, end.speed].every((value) => Number.isFinite(value));
  if (!finite) return { code: 'not finite', why: null, rest: Number.NaN };
  if (Math.abs(end.altitude - orbit.altitude) > 5) return { code: 'orbit missed', why: null, rest: 0 };
  return { code: 'solved', why: null, rest: budget.rest / budget.ideal };
}
