/**
 * Mesh of a round nozzle with the air round it, in three blocks that follow the walls: the nozzle, all that lies behind its
 * lip, and the air beside its outside. Lines across are planes across the axis. Behind the lip the first lines along follow
 * the edge of the jet as it is expected, so that the mesh moves with the ambient pressure and keeps its numbering.
 */

import { type MeshBlock, meshBlock, type SideKind, type SidePart } from '../euler/index.ts';
import { part, to, wall } from './blockSides.ts';
import { nearestPlace, placesAlong, stretchedShares, throughPlace } from './places.ts';
import type { WallCourse } from './wallCourse.ts';

export interface RoundShape {
  readonly wall: WallCourse;
  /** [m] where the gas comes in, and the lip */ readonly inlet: number;
  readonly lip: number;
  /** [m] thickness of the wall at the lip */ readonly thickness: number;
  /** [m] where a line across must lie; absent or null: nowhere */ readonly through?: number | null;
}

/** The room behind the lip. */
export interface JetRoom {
  /** [m] radius of the jet's expected edge at a distance behind the lip; at 0 the lip's radius */
  readonly edge: (behind: number) => number;
  /** [m] behind the lip up to which cells stay fine */ readonly fine: number;
  /** [m] behind the lip where the field ends */ readonly long: number;
  /** [m] from the axis where the field ends */ readonly wide: number;
}

/** Numbers of cells; the same for every ambient pressure, so that a field carries over from one to the next. */
export interface MeshSize {
  /** from the axis to the wall */ readonly across: number;
  /** beside the lip's own thickness */ readonly base: number;
  /** from there outwards */ readonly outside: number;
  /** along the nozzle */ readonly nozzle: number;
  /** behind the lip: the fine part, and the rest */ readonly fine: number;
  readonly rest: number;
  /** upstream beside the nozzle */ readonly ahead: number;
}

/** Cells as wide as long in the nozzle and just behind it, for so many across on the coarsest mesh; others are multiples. */
export function meshSize({ wall, inlet, lip }: RoundShape, coarsest: number, across = coarsest): MeshSize {
  const nozzle = placesAlong(inlet, lip, (x) => (1.5 * wall(x)) / coarsest).length - 1;
  const finer = across / coarsest;
  return {
    across,
    base: finer * Math.max(2, Math.round(coarsest / 8)),
    outside: finer * Math.round(1.2 * coarsest),
    nozzle: finer * nozzle,
    fine: finer * 7 * coarsest,
    rest: finer * Math.round(1.5 * coarsest),
    ahead: across,
  };
}

/** Blocks by their place in the list. */
export const NOZZLE = 0;
export const BEHIND = 1;
export const BESIDE = 2;

export interface EngineMesh {
  readonly blocks: readonly { readonly mesh: MeshBlock; readonly sides: readonly SidePart[] }[];
}

/** @param chamber where the gas comes in @param air far outside @param pressed where jet and air leave */
export function roundMesh(
  shape: RoundShape,
  room: JetRoom,
  size: MeshSize,
  ends: { readonly chamber: SideKind; readonly air: SideKind; readonly pressed: SideKind },
): EngineMesh {
  const { across, base, outside, nozzle, ahead } = size;
  const inside = nozzleBlock(shape, size);
  const behind = behindBlock(shape, room, size);
  const beside = besideBlock(shape, room, size);
  const rows = across + base + outside;
  const along = size.fine + size.rest;
  return {
    blocks: [
      {
        mesh: inside,
        sides: [
          part('iLow', 0, across, ends.chamber),
          part('iHigh', 0, across, to(BEHIND, 'iLow')),
          part('jLow', 0, nozzle, wall),
          part('jHigh', 0, nozzle, wall),
        ],
      },
      {
        mesh: behind,
        sides: [
          part('iLow', 0, across, to(NOZZLE, 'iHigh')),
          part('iLow', across, across + base, wall),
          part('iLow', across + base, rows, to(BESIDE, 'iHigh')),
          part('iHigh', 0, rows, ends.pressed),
          part('jLow', 0, along, wall),
          part('jHigh', 0, along, ends.air),
        ],
      },
      {
        mesh: beside,
        sides: [
          part('iLow', 0, outside, ends.air),
          part('iHigh', 0, outside, to(BEHIND, 'iLow', across + base)),
          part('jLow', 0, ahead, wall),
          part('jHigh', 0, ahead, ends.air),
        ],
      },
    ],
  };
}

/** [m] of the lines across the nozzle, and which of them lies where the shape asks for one: the last where for none. */
function nozzleLines({ wall, inlet, lip, through }: RoundShape, nozzle: number) {
  const places = placesAlong(inlet, lip, wall, nozzle);
  if (through == null) return { places, at: nozzle };
  const at = nearestPlace(places, through);
  return { places: throughPlace(places, through, at), at };
}

/** Of the line across the nozzle where the shape asks for one. */
export function lineThrough(shape: RoundShape, { nozzle }: MeshSize): number {
  return nozzleLines(shape, nozzle).at;
}

function nozzleBlock(shape: RoundShape, { across, nozzle }: MeshSize): MeshBlock {
  const { wall } = shape;
  const { places } = nozzleLines(shape, nozzle);
  return meshBlock('round', nozzle, across, (i, j) => [places[i]!, (wall(places[i]!) * j) / across]);
}

/** Still gas in the middle behind a lip: cells from the axis to its edge. */
export interface Core {
  readonly cells: number;
  /** [m] of its edge at a distance behind the lip */ readonly radius: (behind: number) => number;
  /** Of it from axis to edge, by the height of the gas round it [m] and its own radius [m]. */ readonly shares: (
    height: number,
    radius: number,
  ) => readonly number[];
}

export function behindBlock(shape: RoundShape, room: JetRoom, size: MeshSize, core?: Core): MeshBlock {
  const { wall, lip, thickness } = shape;
  const { across, base, outside, fine, rest } = size;
  const radius = wall(lip);
  const first = radius / across;
  const step = Math.max(first, room.fine / fine);
  const fineTo = Math.min(room.fine, 0.8 * room.long);
  const near = placesAlong(0, fineTo, (x) => Math.min(step, first + 0.1 * x), fine);
  const last = fineTo - near[fine - 1]!;
  const far = stretchedShares(rest, Math.min(1 / rest, last / (room.long - fineTo)));
  const places = [...near, ...far.slice(1).map((share) => fineTo + share * (room.long - fineTo))];
  const outer = outerShares(shape, room, size);
  const columns = places.map((x) => {
    const edge = Math.min(room.edge(x), 0.7 * room.wide);
    const inner = core === undefined ? 0 : core.radius(x);
    return { edge, inner, shares: core?.shares(edge - inner, inner) ?? [] };
  });
  const within = core?.cells ?? 0;
  return meshBlock('round', fine + rest, within + across + base + outside, (i, row) => {
    const { edge, inner, shares } = columns[i]!;
    const wake = (edge - radius) * 0.15 + thickness;
    const j = row - within;
    const r =
      j < 0
        ? inner * shares[row]!
        : j <= across
          ? inner + ((edge - inner) * j) / across
          : j <= across + base
            ? edge + (wake * (j - across)) / base
            : edge + wake + outer[j - across - base]! * (room.wide - edge - wake);
    return [lip + places[i]!, r];
  });
}

export function besideBlock(shape: RoundShape, room: JetRoom, size: MeshSize): MeshBlock {
  const { wall, lip, thickness } = shape;
  const radius = wall(lip) + thickness;
  const shares = stretchedShares(size.ahead, Math.min(1 / size.ahead, wall(lip) / size.across / room.wide));
  const outer = outerShares(shape, room, size);
  // The outside of the wall is drawn straight along the axis: what stands there is not stated.
  return meshBlock('round', size.ahead, size.outside, (i, j) => [
    lip - room.wide * shares[size.ahead - i]!,
    radius + outer[j]! * (room.wide - radius),
  ]);
}

function outerShares(
  { wall, lip, thickness }: RoundShape,
  { wide }: JetRoom,
  { across, outside }: MeshSize,
): readonly number[] {
  const radius = wall(lip);
  return stretchedShares(outside, Math.min(1 / outside, radius / across / (wide - radius - thickness)));
}
