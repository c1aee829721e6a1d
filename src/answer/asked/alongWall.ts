/** Places along a wall given by points, from the injector face to the lip. */

import { ProblemError } from '../../numerics/problem.ts';
import { show } from '../display.ts';
import type { AskedStation } from './model.ts';

export interface AxialPoint {
  /** [m] from the throat plane */ readonly axial: number;
  /** [m] */ readonly radius: number;
}

/** Between two neighbouring points: `from`, and the share of the way to the next one. */
export interface PlaceAlong {
  readonly from: number;
  /** 0 to 1 */ readonly share: number;
}

/** Rounding of a distance that is meant to be the wall's own end, over its length [–]. */
const AT_END = 1e-9;

/**
 * Where along a wall a station is.
 *
 * @param throatRadius [m]; null where the wall's radius does not tell the area of the flow
 * @throws ProblemError `station-outside-wall`, `station-without-area-ratio`
 */
export function placeAlong(
  points: readonly AxialPoint[],
  station: AskedStation,
  throatRadius: number | null,
): PlaceAlong {
  switch (station.kind) {
    case 'injector':
      return { from: 0, share: 0 };
    case 'lip':
      return { from: points.length - 2, share: 1 };
    case 'throat':
      return atDistance(points, 0);
    case 'distance':
      return atDistance(points, station.distance);
    case 'areaRatio':
      return atAreaRatio(points, station.areaRatio, throatRadius);
  }
}

function atDistance(points: readonly AxialPoint[], distance: number): PlaceAlong {
  const length = points.at(-1)!.axial - points[0]!.axial;
  const [first, last] = [points[0]!.axial, points.at(-1)!.axial];
  if (Math.abs(distance - first) <= AT_END * length) return { from: 0, share: 0 };
  if (Math.abs(distance - last) <= AT_END * length) return { from: points.length - 2, share: 1 };
  return (
    crossing(points, ({ axial }) => axial, distance, 0) ?? outside(points, show('wall.axial', distance).text)
  );
}

function atAreaRatio(
  points: readonly AxialPoint[],
  areaRatio: number,
  throatRadius: number | null,
): PlaceAlong {
  if (throatRadius === null) {
    throw new ProblemError({
      code: 'station-without-area-ratio',
      what: 'Along this wall an area ratio is no place: the gas flows between two walls, or along a free edge.',
      mend: 'Ask at a distance from the throat, at the throat or at the lip.',
    });
  }
  const throat = points.findIndex(({ axial }) => axial >= 0);
  const ratioOf = ({ radius }: AxialPoint): number => (radius / throatRadius) ** 2;
  const lip = ratioOf(points.at(-1)!);
  if (Math.abs(areaRatio - lip) <= AT_END * lip) return { from: points.length - 2, share: 1 };
  if (Math.abs(areaRatio - 1) <= AT_END) return atDistance(points, 0);
  return (
    crossing(points, ({ radius }) => radius, throatRadius * Math.sqrt(areaRatio), Math.max(throat, 0)) ??
    outside(points, `area ratio ${show('areaRatio', areaRatio).text}`)
  );
}

/** The first place, from a point on, at which a measure of the wall has a value. */
function crossing(
  points: readonly AxialPoint[],
  of: (point: AxialPoint) => number,
  value: number,
  start: number,
): PlaceAlong | null {
  for (let from = start; from < points.length - 1; from++) {
    const [a, b] = [of(points[from]!), of(points[from + 1]!)];
    if (a === value) return { from, share: 0 };
    if ((a - value) * (b - value) <= 0 && a !== b) return { from, share: (value - a) / (b - a) };
  }
  return null;
}

function outside(points: readonly AxialPoint[], asked: string): never {
  const [first, last] = [points[0]!.axial, points.at(-1)!.axial].map((at) => show('wall.axial', at).text);
  throw new ProblemError({
    code: 'station-outside-wall',
    what: `There is no wall at ${asked}.`,
    why: `It runs from ${first} to ${last} behind the throat; negative is ahead of it.`,
    mend: 'Ask at a place in between, at the injector, the throat or the lip.',
  });
}

/** Straight between two points. */
export function between(a: number, b: number, share: number): number {
  return share === 0 ? a : share === 1 ? b : a + share * (b - a);
}

/** Straight between the logarithms: for pressures. */
export function betweenLogs(a: number, b: number, share: number): number {
  return share === 0 ? a : share === 1 ? b : a * (b / a) ** share;
}
