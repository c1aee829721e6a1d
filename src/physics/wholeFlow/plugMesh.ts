/**
 * Mesh of an annular plug with the air round it, in four blocks: the ring from the chamber to the lip, the gas between plug (behind
 * the cut: the wake) and air with the air beyond it, the air beside the cowl, the wake behind the base.
 */

import { type MeshBlock, meshBlock, type SideKind, type SidePart } from '../euler/index.ts';
import { part, to, wall } from './blockSides.ts';
import { nearestPlace, stretchedShares } from './places.ts';
import {
  AT_LIP,
  type PlugRoom,
  type PlugShape,
  type PlugSize,
  plugLayout,
  plugPlaces,
  plugRows,
  ringPlaces,
} from './plugLayout.ts';
import { apart, type Place } from './polyLine.ts';

export const RING = 0;
export const ROUND_PLUG = 1;
export const BESIDE_COWL = 2;
export const WAKE = 3;

export function plugSize(
  shape: PlugShape,
  coarsest: number,
  across = coarsest,
  { lipCell, calm }: Pick<PlugSize, 'lipCell' | 'calm'> = AT_LIP.atRest,
): PlugSize {
  const finer = across / coarsest;
  const ring = ringPlaces(shape, coarsest, lipCell);
  return {
    across,
    lipCell,
    calm,
    base: finer * 2,
    outside: finer * 12,
    ring: finer * (ring.length - 1),
    throat: finer * nearestPlace(ring, shape.throat),
    plug: finer * (plugPlaces(shape, coarsest, lipCell).length - 1),
    fine: finer * 5 * coarsest,
    rest: finer * 12,
    ahead: finer * 8,
    wake: finer * 6,
  };
}

export function plugMesh(
  shape: PlugShape,
  room: PlugRoom,
  size: PlugSize,
  ends: { readonly chamber: SideKind; readonly air: SideKind; readonly pressed: SideKind },
): readonly { readonly mesh: MeshBlock; readonly sides: readonly SidePart[] }[] {
  const { across, base, outside, ring, plug, ahead, wake } = size;
  const rows = across + base + outside;
  const behind = size.fine + size.rest;
  const grid = plugLayout(shape, room, size);
  return [
    {
      mesh: ringBlock(shape, size),
      sides: [
        part('iLow', 0, across, ends.chamber),
        part('iHigh', 0, across, to(ROUND_PLUG, 'iLow')),
        part('jLow', 0, ring, wall),
        part('jHigh', 0, ring, wall),
      ],
    },
    {
      mesh: meshBlock(shape.symmetry, plug + behind, rows, grid.node),
      sides: [
        part('iLow', 0, across, to(RING, 'iHigh')),
        part('iLow', across, across + base, wall),
        part('iLow', across + base, rows, to(BESIDE_COWL, 'iHigh')),
        part('iHigh', 0, rows, ends.pressed),
        part('jLow', 0, plug, wall),
        part('jLow', plug, plug + behind, to(WAKE, 'jHigh')),
        part('jHigh', 0, plug + behind, ends.air),
      ],
    },
    {
      mesh: besideBlock(shape, room, size, grid.outer),
      sides: [
        part('iLow', 0, outside, ends.air),
        part('iHigh', 0, outside, to(ROUND_PLUG, 'iLow', across + base)),
        part('jLow', 0, ahead, wall),
        part('jHigh', 0, ahead, ends.air),
      ],
    },
    {
      mesh: meshBlock(shape.symmetry, behind, wake, (i, j) => {
        const [x, r] = grid.inner(plug + i);
        return [x, (r * j) / wake];
      }),
      sides: [
        part('iLow', 0, wake, wall),
        part('iHigh', 0, wake, ends.pressed),
        part('jLow', 0, behind, wall),
        part('jHigh', 0, behind, to(ROUND_PLUG, 'jLow', plug)),
      ],
    },
  ];
}

function ringBlock(shape: PlugShape, size: PlugSize): MeshBlock {
  const { ring: count, across } = size;
  const { ring } = shape;
  const places = ringPlaces(shape, across, size.lipCell, size);
  const between = (of: 'inner' | 'outer', s: number): Place => {
    const k = Math.min(ring.length - 2, Math.floor(s));
    const [a, b] = [ring[k]![of], ring[k + 1]![of]];
    return [a[0] + (s - k) * (b[0] - a[0]), a[1] + (s - k) * (b[1] - a[1])];
  };
  const row = plugRows(shape, size);
  return meshBlock(shape.symmetry, count, across, (i, j) =>
    row(between('inner', places[i]!), between('outer', places[i]!), j),
  );
}

function besideBlock(
  shape: PlugShape,
  room: PlugRoom,
  { ahead, outside, across }: PlugSize,
  outer: readonly number[],
): MeshBlock {
  const { inner, outer: lip } = shape.ring.at(-1)!;
  const radius = lip[1] + shape.thickness;
  const shares = stretchedShares(ahead, Math.min(1 / ahead, (1.5 * apart(inner, lip)) / across / room.wide));
  // The outside of the cowl is drawn straight along the axis: what stands there is not stated.
  return meshBlock(shape.symmetry, ahead, outside, (i, j) => [
    lip[0] - 0.6 * room.wide * shares[ahead - i]!,
    radius + outer[j]! * (room.wide - radius),
  ]);
}
