/** The first bend that carries most to an orbit. */

import { attempt, ProblemError } from '../../numerics/problem.ts';
import type { Orbit, Site, Steering, Vehicle } from './model.ts';
import { payloadAt, type ToOrbit } from './toOrbit.ts';

const SMALLEST_BEND = Math.log((0.3 * Math.PI) / 180);
const LARGEST_BEND = Math.log((40 * Math.PI) / 180);
/** Bends of the scan, and smaller ones, down to 0.02°, where it finds none: what hardly lifts off and leans early bends down fast. */
const SCAN = 14;
const SMALLER = 7;
/** Problems that a smaller bend may mend. */
const BEND_MATTERS: ReadonlySet<string> = new Set(['orbit-not-reached', 'flight-falls-back']);
/** Distances, in the logarithm of the bend, of the three points of the parabolas, one after the other; and from a neighbour's. */
const PARABOLAS = [0.08, 0.02] as const;
const PARABOLA_NEARBY = [0.04] as const;
/** Bends one after the other that lead to no orbit, behind ones that do, after which flatter ones are not tried. */
const GIVEN_UP_AFTER = 2;
/** Flights after which a scan that has found nothing is given up; fewer where even a neighbour's answer led nowhere. */
const MOST_FLIGHTS = 4000;
const MOST_FLIGHTS_NEARBY = 800;
/** Steps that the three points may walk uphill. */
const MOST_STEPS = 12;

/**
 * A scan over bends evenly spaced in their logarithm, each from its neighbour's answer, then over smaller ones where it finds none; then the tops of two parabolas, the
 * second one four times narrower; from a neighbour one is enough. The payload is flat at its top: what is left is below a
 * ten-thousandth of it.
 *
 * @param near where to look first: the answer for a vehicle that is nearly the same; the scan is then left out
 * @throws ProblemError `orbit-not-reached` where no bend leads to the orbit
 */
export function mostToOrbit(
  vehicle: Vehicle,
  site: Site,
  orbit: Orbit,
  steering: Omit<Steering, 'upper' | 'kickAngle'>,
  near?: ToOrbit,
): ToOrbit {
  let flights = 0;
  const most = near === undefined ? MOST_FLIGHTS : MOST_FLIGHTS_NEARBY;
  let problem: ProblemError | null = null;
  let known: ToOrbit | undefined = near;
  function at(logBend: number): ToOrbit | null {
    const bend = { ...steering, kickAngle: Math.exp(logBend) };
    const found = attempt(() => payloadAt(vehicle, site, orbit, bend, known));
    if (!found.ok) {
      flights += Number(found.problem.facts?.flights ?? 0);
      // The smallest usual bend is tried first: what keeps that one down keeps the larger ones down.
      problem ??= new ProblemError(found.problem);
      return null;
    }
    flights += found.value.flights;
    known = found.value;
    return found.value;
  }

  /** Top of the parabola through three points a distance apart, walked uphill until the middle one is the highest. */
  function top(from: number, distance: number): ToOrbit | null {
    let middle = from;
    const met = new Map<number, ToOrbit | null>();
    const worth = (steps: number): ToOrbit | null => {
      if (!met.has(steps)) met.set(steps, at(from + steps * distance));
      return met.get(steps)!;
    };
    let steps = 0;
    for (let walked = 0; walked <= MOST_STEPS; walked++) {
      const centre = worth(steps);
      if (centre === null) return null;
      known = centre;
      const left = worth(steps - 1);
      known = centre;
      const right = worth(steps + 1);
      const [l, c, r] = [left?.payload ?? -Infinity, centre.payload, right?.payload ?? -Infinity];
      if (c >= l && c >= r) {
        if (left === null || right === null || l + r - 2 * c === 0) return centre;
        middle = from + distance * (steps + (0.5 * (l - r)) / (l - 2 * c + r));
        known = centre;
        const best = at(middle);
        return best !== null && best.payload > c ? best : centre;
      }
      steps += r > l ? 1 : -1;
    }
    return null;
  }

  const scanned = (): ToOrbit | null => {
    known = undefined;
    const step = (LARGEST_BEND - SMALLEST_BEND) / (SCAN - 1);
    let best: ToOrbit | null = null;
    let failed = 0;
    for (let i = 0; i < SCAN && failed < GIVEN_UP_AFTER && (best !== null || flights < most); i++) {
      const found = at(SMALLEST_BEND + i * step);
      // What does not rise, or has no thrust, does so at no bend.
      if (found === null && problem?.problem.code !== 'orbit-not-reached' && best === null && i > 0) break;
      failed = found === null && best !== null ? failed + 1 : 0;
      if (found !== null && (best === null || found.payload > best.payload)) best = found;
    }
    const mayFly = BEND_MATTERS.has((problem as ProblemError | null)?.problem.code ?? '');
    for (let i = 1; mayFly && best === null && i <= SMALLER && flights < most; i++) {
      best = at(SMALLEST_BEND - i * step);
    }
    return best;
  };

  for (const start of near === undefined ? [scanned] : [() => near, scanned]) {
    const from = start();
    if (from === null) continue;
    known = from;
    let best: ToOrbit | null = from;
    for (const distance of start === scanned ? PARABOLAS : PARABOLA_NEARBY) {
      if (best !== null) best = top(Math.log(best.steering.kickAngle), distance);
    }
    // A maximum at the end of what can be flown has no point on its other side.
    if (best !== null) return { ...best, flights };
    if (start === scanned) return { ...from, flights };
  }
  throw whyNone(problem!, orbit);
}

function whyNone(first: ProblemError, { altitude }: Orbit): ProblemError {
  if (first.problem.code !== 'orbit-not-reached') return first;
  return new ProblemError({
    code: 'orbit-not-reached',
    what: `No payload and no steering were found that end on the orbit at ${Math.round(altitude / 1000)} km, whatever the first bend.`,
    why: 'The vehicle gains too little speed, or it lacks the thrust to stay up while it does.',
    mend: 'Give it more propellant, less dry mass or more thrust, above all in the last stage.',
  });
}
