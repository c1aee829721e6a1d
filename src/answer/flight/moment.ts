/** What is so at one moment of a flight: between the points at which it was integrated, one second apart at most. */

import { ProblemError } from '../../numerics/problem.ts';
import { EARTH, type FlightPoint } from '../../physics/flight/index.ts';
import { show } from '../display.ts';
import type { Flown } from './fly.ts';
import type { MomentNumber } from './model.ts';

/** Altitude and way over the ground follow from the speeds at both points; all else runs straight between them. */
const RATES: Readonly<Partial<Record<MomentNumber, (point: FlightPoint) => number>>> = {
  altitude: ({ speed, pathAngle }) => speed * Math.sin(pathAngle),
  downrange: ({ speed, pathAngle, altitude }) =>
    (speed * Math.cos(pathAngle) * EARTH.radius) / (EARTH.radius + altitude),
};

/**
 * At a jump (a stage dropped, an engine started) what is so behind it.
 *
 * @param time [s] since lift-off
 * @throws ProblemError `flight-over` after its end, `no-value` for a Mach number above all air
 */
export function atMoment(flown: Flown, time: number, name: MomentNumber): number {
  const { points } = flown.ascent;
  const end = points.at(-1)!.time;
  if (time > end) throw over(flown, time, end);
  const at = lastUpTo(points, time);
  const from = points[at]!;
  const a = numberAt(from, name);
  if (from.time === time) return a;
  const to = points[at + 1]!;
  const b = numberAt(to, name);
  const step = to.time - from.time;
  const u = (time - from.time) / step;
  const rate = RATES[name];
  if (rate === undefined) return a + u * (b - a);
  const [ra, rb] = [rate(from) * step, rate(to) * step];
  return a + u * (ra + u * (3 * (b - a) - 2 * ra - rb + u * (ra + rb - 2 * (b - a))));
}

/** Index of the last point that is not later. */
function lastUpTo(points: readonly FlightPoint[], time: number): number {
  let [low, high] = [0, points.length];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (points[middle]!.time <= time) low = middle;
    else high = middle;
  }
  return low;
}

function numberAt(point: FlightPoint, name: MomentNumber): number {
  const value = point[name];
  if (value !== null) return value;
  throw new ProblemError({
    code: 'no-value',
    what: `At ${show('altitude', point.altitude).text} the thin air has no speed of sound to hold the speed against.`,
    mend: 'Ask for the speed, or at an earlier time.',
    where: `flight.points.${name}`,
  });
}

function over({ toOrbit }: Flown, time: number, end: number): ProblemError {
  const [asked, ended] = [time, end].map((each) => show('flight.points.time', each).text);
  const what = toOrbit === null ? 'at its highest point' : 'where the engine stops on the orbit';
  return new ProblemError({
    code: 'flight-over',
    what: `${asked} after lift-off the flight is over: it is followed up to ${ended}, ${what}.`,
    why:
      toOrbit === null ? 'What falls back is not followed.' : 'In orbit nothing of it changes but the place.',
    mend: `Ask at a time up to ${ended}.`,
    where: 'time',
    facts: { time, end },
  });
}
