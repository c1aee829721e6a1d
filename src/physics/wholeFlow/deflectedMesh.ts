/**
 * Mesh of an expansion–deflection nozzle with the air round it, in four blocks: the gas between pintle (behind its base: the wake)
 * and outer wall from the chamber to the lip, all behind the lip, the air beside the nozzle, the wake from the base to the lip.
 */

import { type MeshBlock, meshBlock, type SideKind, type SidePart } from '../euler/index.ts';
import { part, to, wall } from './blockSides.ts';
import {
  type DeflectedLayout,
  type DeflectedSize,
  deflectedLayout,
  deflectedPlaces,
} from './deflectedLayout.ts';
import type { DeflectedShape } from './deflectedShape.ts';
import { BEHIND, BESIDE, behindBlock, besideBlock, meshSize, NOZZLE } from './roundMesh.ts';

export const WAKE_OF_PINTLE = 3;

export function deflectedSize(shape: DeflectedShape, coarsest: number, across = coarsest): DeflectedSize {
  const finer = across / coarsest;
  const { duct, edge, free } = deflectedPlaces(shape, coarsest);
  const cells = (places: readonly number[]): number => finer * (places.length - 1);
  return {
    ...meshSize(shape, coarsest, across),
    nozzle: cells(duct) + cells(edge) + cells(free),
    duct: cells(duct),
    edge: cells(edge),
    free: cells(free),
    wake: finer * WAKE_CELLS,
  };
}
const WAKE_CELLS = 10;

export interface DeflectedMesh {
  readonly blocks: readonly { readonly mesh: MeshBlock; readonly sides: readonly SidePart[] }[];
  /** The line across from which on the outer wall is left; as many as there are cells: none. */ readonly opens: number;
}

export function deflectedMesh(
  shape: DeflectedShape,
  layout: DeflectedLayout,
  size: DeflectedSize,
  ends: {
    readonly chamber: SideKind;
    readonly air: SideKind;
    readonly still: SideKind;
    readonly pressed: SideKind;
  },
): DeflectedMesh {
  const { across, base, outside, nozzle, ahead, duct, edge, free, wake } = size;
  const grid = deflectedLayout(shape, layout, size);
  const [walled, rows] = [duct + edge, wake + across + base + outside];
  const along = size.fine + size.rest;
  const { opens } = grid;
  const left = opens < nozzle ? [part('jHigh', opens, nozzle, ends.still)] : [];
  return {
    opens,
    blocks: [
      {
        mesh: meshBlock('round', nozzle, across, grid.nozzle),
        sides: [
          part('iLow', 0, across, ends.chamber),
          part('iHigh', 0, across, to(BEHIND, 'iLow', wake)),
          part('jLow', 0, walled, wall),
          part('jLow', walled, nozzle, to(WAKE_OF_PINTLE, 'jHigh')),
          part('jHigh', 0, opens, wall),
          ...left,
        ],
      },
      {
        mesh: behindBlock(shape, layout.room, size, {
          cells: wake,
          radius: layout.innerBehind,
          shares: grid.shares,
        }),
        sides: [
          part('iLow', 0, wake, to(WAKE_OF_PINTLE, 'iHigh')),
          part('iLow', wake, wake + across, to(NOZZLE, 'iHigh')),
          part('iLow', wake + across, wake + across + base, wall),
          part('iLow', wake + across + base, rows, to(BESIDE, 'iHigh')),
          part('iHigh', 0, rows, ends.pressed),
          part('jLow', 0, along, wall),
          part('jHigh', 0, along, ends.air),
        ],
      },
      {
        mesh: besideBlock(shape, layout.room, size),
        sides: [
          part('iLow', 0, outside, ends.air),
          part('iHigh', 0, outside, to(BEHIND, 'iLow', wake + across + base)),
          part('jLow', 0, ahead, wall),
          part('jHigh', 0, ahead, ends.air),
        ],
      },
      {
        mesh: meshBlock('round', free, wake, grid.wake),
        sides: [
          part('iLow', 0, wake, wall),
          part('iHigh', 0, wake, to(BEHIND, 'iLow')),
          part('jLow', 0, free, wall),
          part('jHigh', 0, free, to(NOZZLE, 'jLow', walled)),
        ],
      },
    ],
  };
}
