/** What lies beyond the sides of a block: walls, the axis, given flow, the far air, or another block. */

import { ProblemError } from '../../numerics/problem.ts';
import type { Field, FlowPoint } from './field.ts';
import type { MeshBlock } from './mesh.ts';
import { cellsAlong, faceOf, type SideName } from './sideGeometry.ts';

export type SideKind =
  /** No flow through it; the axis too. */
  | { readonly is: 'wall' }
  /** All that comes is known: faster than sound, or to be kept. */
  | { readonly is: 'given'; readonly at: (face: number) => FlowPoint }
  /**
   * Gas at rest far inside, such as a chamber: what it is once it has expanded to a pressure [Pa]; density [kg/m³] and speed
   * [m/s], straight through the side. The flow must come in slower than sound.
   */
  | {
      readonly is: 'reservoir';
      readonly at: (pressure: number) => { readonly density: number; readonly speed: number };
      readonly highest: number;
      readonly share: number;
    }
  /** The flow leaves faster than sound. */
  | { readonly is: 'free' }
  /** The flow leaves against a pressure [Pa], slower than sound; faster, the pressure has no say. */
  | { readonly is: 'pressed'; readonly pressure: number }
  /** The air far away; waves leave, what comes in is this. */
  | { readonly is: 'far'; readonly air: FlowPoint }
  /** Cells of another block, from its cell `from` on, running up or down its side. */
  | {
      readonly is: 'joined';
      readonly block: number;
      readonly side: SideName;
      readonly from: number;
      readonly up: boolean;
    };

/** A part of a side, cells `from` up to but not with `to`. */
export interface SidePart {
  readonly side: SideName;
  readonly from: number;
  readonly to: number;
  readonly kind: SideKind;
}

/** @throws ProblemError where a side is left open, or filled twice */
export function requireClosed(mesh: MeshBlock, parts: readonly SidePart[]): void {
  for (const side of ['iLow', 'iHigh', 'jLow', 'jHigh'] as const) {
    const own = parts.filter((part) => part.side === side).sort((a, b) => a.from - b.from);
    let at = 0;
    for (const { from, to } of own) {
      if (from !== at || to <= from) throw open(side, at);
      at = to;
    }
    if (at !== cellsAlong(mesh, side)) throw open(side, at);
  }
}

function open(side: SideName, at: number): ProblemError {
  return new ProblemError({
    code: 'mesh-side-open',
    what: `Side ${side} of a block is not said once and only once at its cell ${at}.`,
    mend: 'Give parts that follow each other without a gap from 0 to the end of the side.',
    facts: { at },
  });
}

/** Note which faces are walls. */
export function markWalls({ mesh, iWalls, jWalls }: Field, parts: readonly SidePart[]): void {
  for (const { side, from, to, kind } of parts) {
    if (kind.is !== 'wall') continue;
    const walls = side === 'iLow' || side === 'iHigh' ? iWalls : jWalls;
    for (let along = from; along < to; along++) walls[faceOf(mesh, side, along)] = 1;
  }
}
