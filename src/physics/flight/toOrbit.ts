/** The payload that burns the last propellant exactly on reaching the orbit, and the steering that carries most. */

import { solveDenseInto } from '../../numerics/denseSolve.ts';
import { attempt, ProblemError } from '../../numerics/problem.ts';
import { flyAscent } from './ascent.ts';
import { perigeeSpeed } from './earth.ts';
import type { Orbit, Site, Steering, Vehicle } from './model.ts';

/** Steering with the payload that it brings to the orbit. */
export interface ToOrbit {
  readonly payload: number;
  readonly steering: Steering;
  /** Flights that it took to find. */ readonly flights: number;
}

/** What is left open: payload and the upper law. */
interface Unknowns {
  readonly start: number;
  readonly rate: number;
  readonly payload: number;
}

/** Scales of altitude [m] and of the two speeds [m/s] at the end: an orbit met within 1e-4 of these is met, far above the error of a flight. */
const SCALE = [1000, 10, 10] as const;
const MET = 1e-4;
const MOST_STEPS = 40;
/** Steps for the differences, of start [–], rate [1/s], payload [kg, as a share of the last stage]. */
const PROBE = 1e-5;

/**
 * For given vertical rise and first bend: start and rate of the upper law and the payload for which the last propellant is
 * burnt on the orbit, in horizontal flight at its speed. Three equations in three unknowns by Newton's method with
 * differences, steps halved while they make it worse.
 *
 * @throws ProblemError `orbit-not-reached`
 */
export function payloadAt(
  vehicle: Vehicle,
  site: Site,
  orbit: Orbit,
  steering: Omit<Steering, 'upper'>,
  near?: ToOrbit,
): ToOrbit {
  let flights = 0;
  const last = vehicle.stages.at(-1)!;
  const lastMass = last.dryMass + last.propellantMass;
  const targetSpeed = perigeeSpeed(orbit.altitude, orbit.apogee, site.earth);
  const law = ({ start, rate }: Unknowns): Steering => ({ ...steering, upper: { start, rate } });

  /** Misses at the end over their scales; null where the flight fails. */
  function miss(unknowns: Unknowns): readonly number[] | null {
    if (unknowns.payload <= -0.95 * last.dryMass) return null;
    flights += 1;
    const flown = attempt(() => flyAscent(vehicle, unknowns.payload, site, law(unknowns)));
    if (!flown.ok) return null;
    const { end, radialSpeed, tangentialSpeed } = flown.value;
    return [
      (end.altitude - orbit.altitude) / SCALE[0],
      radialSpeed / SCALE[1],
      (tangentialSpeed - targetSpeed) / SCALE[2],
    ];
  }

  const starts: readonly Unknowns[] = near
    ? [unknownsOf(near), ...firstGuesses(lastMass)]
    : firstGuesses(lastMass);
  for (const guess of near ? [starts[0]!] : bestOf(starts, miss)) {
    const found = newton(guess, miss, lastMass);
    if (found !== null) return { payload: found.payload, steering: law(found), flights };
  }
  if (near) {
    for (const guess of bestOf(starts.slice(1), miss)) {
      const found = newton(guess, miss, lastMass);
      if (found !== null) return { payload: found.payload, steering: law(found), flights };
    }
  }
  throw new ProblemError({
    code: 'orbit-not-reached',
    what: `No payload and steering of the upper part were found that end on the orbit at ${Math.round(orbit.altitude / 1000)} km with this first bend of ${((steering.kickAngle * 180) / Math.PI).toFixed(2)}°.`,
    why: 'The vehicle gains too little speed, or its way is too flat or too steep by then.',
    mend: 'Give it more propellant, less dry mass or more thrust, or another first bend.',
  });
}

function unknownsOf({ payload, steering }: ToOrbit): Unknowns {
  return { payload, start: steering.upper.start, rate: steering.upper.rate };
}

/** Upper laws from flat to steep, payloads from none to a good share of the last stage. */
function firstGuesses(lastMass: number): readonly Unknowns[] {
  return [-0.3, 0.2, 0.6, 1.4].flatMap((start) =>
    [0.001, -0.001, -0.004].flatMap((rate) =>
      [0, 0.15, 0.4].map((share) => ({ start, rate, payload: share * lastMass })),
    ),
  );
}

/** The few guesses that come nearest. */
function bestOf(
  guesses: readonly Unknowns[],
  miss: (of: Unknowns) => readonly number[] | null,
): readonly Unknowns[] {
  return guesses
    .flatMap((guess) => {
      const missed = miss(guess);
      return missed === null ? [] : [{ guess, size: sizeOf(missed) }];
    })
    .sort((a, b) => a.size - b.size)
    .slice(0, 6)
    .map(({ guess }) => guess);
}

function sizeOf(missed: readonly number[]): number {
  return Math.hypot(...missed);
}

function newton(
  from: Unknowns,
  miss: (of: Unknowns) => readonly number[] | null,
  lastMass: number,
): Unknowns | null {
  let at = from;
  let missed = miss(at);
  const system = new Float64Array(12);
  const step = new Float64Array(3);
  for (let round = 0; round < MOST_STEPS && missed !== null; round++) {
    const size = sizeOf(missed);
    if (size < MET) return at;
    const probes: readonly Unknowns[] = [
      { ...at, start: at.start + PROBE },
      { ...at, rate: at.rate + PROBE * 1e-3 },
      { ...at, payload: at.payload + PROBE * lastMass },
    ];
    const width = [PROBE, PROBE * 1e-3, PROBE * lastMass];
    for (let column = 0; column < 3; column++) {
      const there = miss(probes[column]!);
      if (there === null) return null;
      for (let row = 0; row < 3; row++) {
        system[row * 4 + column] = (there[row]! - missed[row]!) / width[column]!;
      }
    }
    for (let row = 0; row < 3; row++) system[row * 4 + 3] = -missed[row]!;
    if (!solveDenseInto(step, system, 3, 4)) return null;
    let share = Math.min(
      1,
      0.4 / Math.abs(step[0]!),
      0.002 / Math.abs(step[1]!),
      (0.3 * lastMass) / Math.abs(step[2]!),
    );
    let next: { at: Unknowns; missed: readonly number[] } | null = null;
    for (let halvings = 0; halvings < 12 && next === null; halvings++) {
      const trial: Unknowns = {
        start: at.start + share * step[0]!,
        rate: at.rate + share * step[1]!,
        payload: at.payload + share * step[2]!,
      };
      const there = miss(trial);
      if (there !== null && sizeOf(there) < size) next = { at: trial, missed: there };
      share *= 0.5;
    }
    if (next === null) return null;
    ({ at, missed } = next);
  }
  return null;
}

const SMALLEST_KICK = (0.3 * Math.PI) / 180;
const LARGEST_KICK = (40 * Math.PI) / 180;
const GOLDEN = (Math.sqrt(5) - 1) / 2;
/** Width of the bracket of the bend, relative, at which the search ends; the payload is flat there. */
const BEND_WIDTH = 2e-3;

/**
 * The bend that carries most, with its payload. A scan over bends evenly spaced in their logarithm, each from its neighbour's
 * answer, then golden section between the best one's neighbours.
 *
 * @throws ProblemError `orbit-not-reached` where no bend leads to the orbit
 */
export function mostToOrbit(
  vehicle: Vehicle,
  site: Site,
  orbit: Orbit,
  steering: Omit<Steering, 'upper' | 'kickAngle'>,
  scan = 14,
): ToOrbit {
  let flights = 0;
  let lastProblem: ProblemError | null = null;
  let near: ToOrbit | undefined;
  function at(logAngle: number): ToOrbit | null {
    const found = attempt(() =>
      payloadAt(vehicle, site, orbit, { ...steering, kickAngle: Math.exp(logAngle) }, near),
    );
    if (!found.ok) {
      lastProblem = new ProblemError(found.problem);
      return null;
    }
    flights += found.value.flights;
    near = found.value;
    return found.value;
  }
  const low = Math.log(SMALLEST_KICK);
  const width = (Math.log(LARGEST_KICK) - low) / (scan - 1);
  const tried = Array.from({ length: scan }, (_, i) => ({ x: low + i * width, found: at(low + i * width) }));
  let best = -1;
  tried.forEach(({ found }, i) => {
    if (found !== null && (best < 0 || found.payload > tried[best]!.found!.payload)) best = i;
  });
  if (best < 0) throw lastProblem!;
  near = tried[best]!.found!;
  let a = tried[Math.max(0, best - 1)]!.x;
  let b = tried[Math.min(scan - 1, best + 1)]!.x;
  const worth = (found: ToOrbit | null): number => found?.payload ?? -Infinity;
  let left = b - GOLDEN * (b - a);
  let right = a + GOLDEN * (b - a);
  let atLeft = at(left);
  let atRight = at(right);
  let top = near;
  while (b - a > BEND_WIDTH) {
    if (worth(atLeft) > worth(atRight)) {
      b = right;
      [right, atRight] = [left, atLeft];
      left = b - GOLDEN * (b - a);
      atLeft = at(left);
    } else {
      a = left;
      [left, atLeft] = [right, atRight];
      right = a + GOLDEN * (b - a);
      atRight = at(right);
    }
  }
  for (const found of [atLeft, atRight, tried[best]!.found]) if (worth(found) > top.payload) top = found!;
  return { ...top, flights };
}
