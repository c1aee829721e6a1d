/** A line through places in a plane, read by its length. */

import { findBracketedRoot } from '../../numerics/bracketedRoot.ts';
import { ProblemError } from '../../numerics/problem.ts';

export type Place = readonly [axial: number, radius: number];

export interface PolyLine {
  readonly length: number;
  /** @param along from 0 to the length */ at(along: number): Place;
}

/** @param places at least two */
export function polyLine(places: readonly Place[]): PolyLine {
  const sums = [0];
  for (let k = 1; k < places.length; k++) sums.push(sums[k - 1]! + apart(places[k - 1]!, places[k]!));
  const length = sums.at(-1)!;
  return {
    length,
    at(along) {
      let [low, high] = [0, places.length - 1];
      while (high - low > 1) {
        const middle = (low + high) >> 1;
        if (sums[middle]! <= along) low = middle;
        else high = middle;
      }
      const t = (along - sums[low]!) / (sums[high]! - sums[low]!);
      const [a, b] = [places[low]!, places[high]!];
      return [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])];
    },
  };
}

/** Parts between two points of a wall. */
const PARTS = 6;

/** Places of a wall on cubics with its own angle at each point; a corner, two points in one place, stays one. */
export function smoothPlaces(
  wall: readonly { readonly axial: number; readonly radius: number; readonly angle: number }[],
): readonly Place[] {
  const places: Place[] = [[wall[0]!.axial, wall[0]!.radius]];
  for (let k = 1; k < wall.length; k++) {
    const [a, b] = [wall[k - 1]!, wall[k]!];
    const length = Math.hypot(b.axial - a.axial, b.radius - a.radius);
    if (length === 0) continue;
    for (let n = 1; n <= PARTS; n++) {
      const t = n / PARTS;
      const s = 1 - t;
      const cubic = (from: number, to: number, out: number, into: number): number =>
        from * s * s * (1 + 2 * t) + to * t * t * (1 + 2 * s) + length * s * t * (out * s - into * t);
      places.push([
        cubic(a.axial, b.axial, Math.cos(a.angle), Math.cos(b.angle)),
        cubic(a.radius, b.radius, Math.sin(a.angle), Math.sin(b.angle)),
      ]);
    }
  }
  return places;
}

export function apart([x, r]: Place, [a, b]: Place): number {
  return Math.hypot(a - x, b - r);
}

/** Share of a line’s length to which a place on it is found. */
const FOUND_TO = 1e-15;

/**
 * Length along a line at which a value comes up to 0; 0 where it begins there or above.
 * @param sought the place, in words @throws ProblemError where the line ends before it
 */
export function lengthWhere(
  line: PolyLine,
  valueAt: (place: Place) => number,
  sought = 'far enough',
): number {
  if (valueAt(line.at(0)) >= 0) return 0;
  const end = line.at(line.length);
  if (valueAt(end) < 0) throw tooShort(line.at(0), end, sought);
  return findBracketedRoot((along) => valueAt(line.at(along)), 0, line.length, {
    valueTolerance: 0,
    widthTolerance: FOUND_TO * line.length,
  }).root;
}

function tooShort(from: Place, to: Place, sought: string): ProblemError {
  return new ProblemError({
    code: 'flow-wall-short',
    what: `The whole flow is not computed: a wall from ${placeWords(from)} to ${placeWords(to)} does not come ${sought}.`,
    why: 'A line of the mesh begins there.',
    mend: 'Make the nozzle longer, keep more of its plug, or make its pintle smaller.',
    facts: { fromAxial: from[0], fromRadius: from[1], toAxial: to[0], toRadius: to[1] },
  });
}

const metres = (length: number): string => `${Number(length.toPrecision(4))} m`;
const placeWords = ([axial, radius]: Place): string => `${metres(axial)} at a radius of ${metres(radius)}`;

/** Length along a line at which it passes an axial distance. */
export function lengthAt(line: PolyLine, axial: number): number {
  return lengthWhere(line, ([x]) => x - axial, `to ${metres(axial)} behind the throat`);
}

/** Length along a line at which the line from a place square to the flow there meets it. */
export function acrossFlow(line: PolyLine, [x0, r0]: Place, angle: number): number {
  return lengthWhere(
    line,
    ([x, r]) => (x - x0) * Math.cos(angle) + (r - r0) * Math.sin(angle),
    `to the line that stands square to the flow at ${placeWords([x0, r0])}`,
  );
}

/** Radius of a line where it passes an axial distance. */
export function radiusAt(line: PolyLine, axial: number): number {
  return line.at(lengthAt(line, axial))[1];
}
