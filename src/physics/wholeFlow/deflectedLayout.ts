/** Where the nodes of an expansion–deflection nozzle’s mesh lie, from the chamber to the lip. */

import type { DeflectedShape } from './deflectedShape.ts';
import { nearestPlace, placesAlong, stretchedShares, throughPlace } from './places.ts';
import { apart, lengthAt, type Place } from './polyLine.ts';
import type { JetRoom, MeshSize } from './roundMesh.ts';

export interface DeflectedSize extends MeshSize {
  /** Along the nozzle: ahead of the throat line, along the pintle’s edge, behind its base. */ readonly duct: number;
  readonly edge: number;
  readonly free: number;
  /** From the axis to the edge of the wake. */ readonly wake: number;
}

/** Where wake and jet are to be expected in one surrounding. What the flow does is not read from it. */
export interface DeflectedLayout {
  readonly room: JetRoom;
  /** [m] from the axis: the edge of the wake, from the base to the lip */ readonly inner: (
    axial: number,
  ) => number;
  /** The same at a distance behind the lip. */ readonly innerBehind: (behind: number) => number;
  /** [m] where a line across must meet the outer wall; null: nowhere */ readonly through: number | null;
}

/** Cells along the pintle’s edge, for each one across. */
const ON_EDGE = 1.25;
/** Length of the cells at the base over the gap, at 8 across, and how much longer each is than the one before. */
const AT_BASE = 0.12;
const GROWS = 0.12;
/** Longest cell ahead of the throat over its height, and behind the base over that of the wall there. */
const LONGEST_AHEAD = 1.5;
const LONGEST_BEHIND = 0.7;

/** Places along the ring, by its middle line; along the pintle’s edge; and behind the base, by the axial distance [m]. */
export function deflectedPlaces(
  shape: DeflectedShape,
  across: number,
  cells?: Pick<DeflectedSize, 'duct' | 'edge' | 'free'>,
) {
  const { throat, gap, wall, base, lip } = shape;
  const middle = (throat.inner + throat.outer) / 2;
  const first = (8 * AT_BASE * gap) / across;
  const duct = placesAlong(
    0,
    middle,
    (length) => {
      const [a, b] = ringAt(shape, length / middle);
      return Math.min((LONGEST_AHEAD * apart(a, b)) / across, first + 0.15 * (middle - length));
    },
    cells?.duct,
  );
  const edge = placesAlong(0, 1, () => 1 / (ON_EDGE * across), cells?.edge);
  const free = placesAlong(
    base[0],
    lip,
    (x) => Math.min((LONGEST_BEHIND * wall(x)) / across, first + GROWS * (x - base[0])),
    cells?.free,
  );
  return { duct, edge, free };
}

/** Both ends of a line across the ring ahead of the throat line, by its share of the way; one joins the two walls at the bore. */
export function ringAt(
  { pintle, outer, throat, bore }: DeflectedShape,
  share: number,
): readonly [Place, Place] {
  const atBore = (bore.inner + bore.outer) / (throat.inner + throat.outer);
  const along = (end: 'inner' | 'outer'): number =>
    share < atBore
      ? (share / atBore) * bore[end]
      : bore[end] + ((share - atBore) / (1 - atBore)) * (throat[end] - bore[end]);
  return [pintle.at(along('inner')), outer.at(along('outer'))];
}

export function deflectedLayout(shape: DeflectedShape, layout: DeflectedLayout, size: DeflectedSize) {
  const { pintle, outer, throat, base, lip, wall } = shape;
  const { across, duct, edge, nozzle, wake } = size;
  const places = deflectedPlaces(shape, across, size);
  const middle = (throat.inner + throat.outer) / 2;
  // A line across leans as the throat line does, less and less, and is upright at the lip.
  const leans = (pintle.at(throat.inner)[0] - outer.at(throat.outer)[0]) * LEAN_AT_BASE;
  const outerAt = (x: number): number =>
    x - leans * Math.exp((base[0] - x) / (3 * leans)) * ((lip - x) / (lip - base[0]));
  const walled = duct + edge;
  const { free, opens } = freePlaces(places.free, layout.through, outerAt, walled, nozzle);
  const overBase = lengthAt(outer, outerAt(base[0]));
  const lines = Array.from({ length: nozzle + 1 }, (_, i): readonly [Place, Place] => {
    if (i <= duct) return ringAt(shape, places.duct[i]! / middle);
    if (i < walled) {
      const share = places.edge[i - duct]!;
      return [
        pintle.at(throat.inner + share * (pintle.length - throat.inner)),
        outer.at(throat.outer + share * (overBase - throat.outer)),
      ];
    }
    const x = free[i - walled]!;
    const over = i === nozzle ? lip : outerAt(x);
    return [i === walled ? base : [x, layout.inner(x)], [over, wall(over)]];
  });
  /** Shares of the wake from the axis to its edge: cells there as high as those of the gas beside it. */
  const shares = (height: number, inner: number): readonly number[] => {
    const from = stretchedShares(wake, Math.min(1 / wake, height / across / inner));
    return from.map((_, j) => 1 - from[wake - j]!);
  };
  const wakeShares = lines.slice(walled).map(([[, r], [, over]]) => shares(over - r, r));
  return {
    opens,
    shares,
    nozzle: (i: number, j: number): Place => {
      const [a, b] = lines[i]!;
      return [a[0] + ((b[0] - a[0]) * j) / across, a[1] + ((b[1] - a[1]) * j) / across];
    },
    wake: (i: number, j: number): Place => {
      const [[x, r]] = lines[walled + i]!;
      return [x, r * wakeShares[i]![j]!];
    },
  };
}

/** Lean of the line across from the end of the pintle’s edge over that of the throat line. */
const LEAN_AT_BASE = 0.6;

/** Places behind the base, drawn so that a line across meets the outer wall where one must. */
function freePlaces(
  places: readonly number[],
  through: number | null,
  outerAt: (x: number) => number,
  walled: number,
  nozzle: number,
): { readonly free: readonly number[]; readonly opens: number } {
  if (through === null || through <= outerAt(places[0]!)) return { free: places, opens: nozzle };
  let [low, high] = [places[0]!, places.at(-1)!];
  for (let n = 0; n < 60; n++) {
    const middle = (low + high) / 2;
    if (outerAt(middle) < through) low = middle;
    else high = middle;
  }
  const at = nearestPlace(places, low);
  return { free: throughPlace(places, low, at), opens: walled + at };
}
