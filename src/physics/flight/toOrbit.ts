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
  /** Of the misses at the end over the unknowns, for whoever looks for a neighbour; empty: not needed. */
  readonly slopes: readonly number[];
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
const MOST_GUESSES = 3;
/** Unknowns in scale: start [–], rate [1/s] times this, payload over the last stage’s mass [–]. */
const RATE_SCALE = 1000;
/** Step of the differences, and longest step of the search, in scale. */
const PROBE = 1e-5;
const LONGEST = [0.4, 2, 0.3] as const;

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
  let flew = false;
  let refused: ProblemError | null = null;
  const last = vehicle.stages.at(-1)!;
  const lastMass = last.dryMass + last.propellantMass;
  const targetSpeed = perigeeSpeed(orbit.altitude, orbit.apogee, site.earth);
  const law = ({ start, rate }: Unknowns): Steering => ({ ...steering, upper: { start, rate } });

  /** Misses at the end over their scales; null where the flight fails. */
  function miss(unknowns: Unknowns): readonly number[] | null {
    if (unknowns.payload <= -0.95 * last.dryMass) return null;
    flights += 1;
    const flown = attempt(() => flyAscent(vehicle, unknowns.payload, site, law(unknowns)));
    if (!flown.ok) {
      refused = new ProblemError(flown.problem);
      return null;
    }
    flew = true;
    const { end, radialSpeed, tangentialSpeed } = flown.value;
    return [
      (end.altitude - orbit.altitude) / SCALE[0],
      radialSpeed / SCALE[1],
      (tangentialSpeed - targetSpeed) / SCALE[2],
    ];
  }

  const solved = (guess: Unknowns, slopes: readonly number[] | null): ToOrbit | null => {
    const found = newton(guess, slopes, miss, lastMass);
    if (found === null) return null;
    const { at, slopes: there } = found;
    return { payload: at.payload, steering: law(at), flights, slopes: there };
  };
  if (near) {
    const found = solved(unknownsOf(near), near.slopes.length === 9 ? near.slopes : null);
    if (found !== null) return found;
  }
  for (const guess of bestOf(firstGuesses(lastMass), miss)) {
    const found = solved(guess, null);
    if (found !== null) return found;
  }
  // Where no flight ended at all, what ended them is the reason.
  if (!flew && refused !== null) throw refused as ProblemError;
  throw new ProblemError({
    code: 'orbit-not-reached',
    what: `No payload and steering of the upper part were found that end on the orbit at ${Math.round(orbit.altitude / 1000)} km with this first bend of ${((steering.kickAngle * 180) / Math.PI).toFixed(2)}°.`,
    why: 'The vehicle gains too little speed, or its way is too flat or too steep by then.',
    mend: 'Give it more propellant, less dry mass or more thrust, or another first bend.',
    facts: { flights },
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
    .slice(0, MOST_GUESSES)
    .map(({ guess }) => guess);
}

function sizeOf(missed: readonly number[]): number {
  return Math.hypot(...missed);
}

/** Found unknowns, with the slopes of the misses over them there. */
interface Solved {
  readonly at: Unknowns;
  readonly slopes: readonly number[];
}

/** The unknowns over their scales, so that slopes of one vehicle fit another. */
function scaled({ start, rate, payload }: Unknowns, lastMass: number): readonly [number, number, number] {
  return [start, rate * RATE_SCALE, payload / lastMass];
}

function unscaled([start, rate, payload]: readonly [number, number, number], lastMass: number): Unknowns {
  return { start, rate: rate / RATE_SCALE, payload: payload * lastMass };
}

/**
 * Newton's method with slopes by differences, kept from step to step with one correction each (C. G. Broyden, Math. Comp. 19,
 * 1965, 577) and found anew only where they no longer lead downhill.
 *
 * @param known slopes of a neighbour; null: found first
 */
function newton(
  from: Unknowns,
  known: readonly number[] | null,
  miss: (of: Unknowns) => readonly number[] | null,
  lastMass: number,
): Solved | null {
  let x = scaled(from, lastMass);
  let missed = miss(from);
  let slopes = known === null ? null : [...known];
  let fresh = false;
  for (let round = 0; round < MOST_STEPS && missed !== null; round++) {
    if (sizeOf(missed) < MET) return { at: unscaled(x, lastMass), slopes: slopes ?? [] };
    if (slopes === null) {
      slopes = slopesBy(x, missed, miss, lastMass);
      if (slopes === null) return null;
      fresh = true;
    }
    const next = downhill(x, missed, slopes, miss, lastMass, fresh ? 12 : 2);
    if (next === null) {
      if (fresh) return null;
      slopes = null;
      continue;
    }
    correct(slopes, x, missed, next);
    fresh = false;
    ({ x, missed } = next);
  }
  return null;
}

interface At {
  readonly x: readonly [number, number, number];
  readonly missed: readonly number[];
}

function slopesBy(
  x: readonly [number, number, number],
  missed: readonly number[],
  miss: (of: Unknowns) => readonly number[] | null,
  lastMass: number,
): number[] | null {
  const slopes = new Array<number>(9);
  for (let column = 0; column < 3; column++) {
    const moved: [number, number, number] = [...x];
    moved[column]! += PROBE;
    const there = miss(unscaled(moved, lastMass));
    if (there === null) return null;
    for (let row = 0; row < 3; row++) slopes[row * 3 + column] = (there[row]! - missed[row]!) / PROBE;
  }
  return slopes;
}

/** The step, halved until it misses by less; null where it never does. */
function downhill(
  x: readonly [number, number, number],
  missed: readonly number[],
  slopes: readonly number[],
  miss: (of: Unknowns) => readonly number[] | null,
  lastMass: number,
  halvings: number,
): At | null {
  const system = new Float64Array(12);
  const step = new Float64Array(3);
  for (let row = 0; row < 3; row++) {
    for (let column = 0; column < 3; column++) system[row * 4 + column] = slopes[row * 3 + column]!;
    system[row * 4 + 3] = -missed[row]!;
  }
  if (!solveDenseInto(step, system, 3, 4)) return null;
  let share = Math.min(1, ...LONGEST.map((most, i) => most / Math.abs(step[i]!)));
  const size = sizeOf(missed);
  for (let halving = 0; halving < halvings; halving++) {
    const moved = x.map((value, i) => value + share * step[i]!) as unknown as [number, number, number];
    const there = miss(unscaled(moved, lastMass));
    if (there !== null && sizeOf(there) < size) return { x: moved, missed: there };
    share *= 0.5;
  }
  return null;
}

/** Broyden's correction: the slopes give what the step has shown. */
function correct(slopes: number[], x: readonly number[], missed: readonly number[], next: At): void {
  const step = next.x.map((value, i) => value - x[i]!);
  const length = step.reduce((sum, value) => sum + value * value, 0);
  for (let row = 0; row < 3; row++) {
    const told = step.reduce((sum, value, column) => sum + slopes[row * 3 + column]! * value, 0);
    const rest = (next.missed[row]! - missed[row]! - told) / length;
    for (let column = 0; column < 3; column++) slopes[row * 3 + column]! += rest * step[column]!;
  }
}
