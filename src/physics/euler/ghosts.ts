/** The ghosts of a block filled from what is beyond its sides; the places are found once. */

import { type CellCopies, copyCell, copyCells } from './cellCopies.ts';
import { type Field, type FlowPoint, type GasPair, putPoint } from './field.ts';
import type { Tangent } from './fieldGas.ts';
import { GHOSTS } from './mesh.ts';
import { farPoint, pressedPoint, reservoirPoint } from './openSides.ts';
import { cellFrom, outward } from './sideGeometry.ts';
import type { SideKind, SidePart } from './sides.ts';
import { wallFill } from './wallGhosts.ts';

type Joined = Extract<SideKind, { is: 'joined' }>;

/** Each call fills the ghosts of one block. */
export function ghostFill(
  fields: readonly Field[],
  block: number,
  parts: readonly SidePart[],
  gases: GasPair,
): () => void {
  const field = fields[block]!;
  const fills = parts.map((part) => {
    const { kind } = part;
    if (kind.is === 'wall') return wallFill(field, part);
    if (kind.is !== 'joined') return openFill(field, part, kind, gases);
    const other = fields[kind.block]!;
    const copies = joinedCells(field, other, part, kind);
    return () => copyCells(field, other, copies);
  });
  return () => {
    for (const fill of fills) fill();
  };
}

/** Ghosts of a joined part, layer by layer, and the other’s cells that they stand for. */
export function joinedCells(
  field: Field,
  other: Field,
  { side, from, to }: SidePart,
  kind: Joined,
): CellCopies {
  const faces = to - from;
  const places = (of: (face: number, layer: number) => number): Int32Array =>
    Int32Array.from({ length: GHOSTS * faces }, (_, k) => of(k % faces, Math.floor(k / faces)));
  return {
    into: places((face, layer) => cellFrom(field.mesh, side, from + face, -1 - layer)),
    from: places((face, layer) => cellFrom(other.mesh, kind.side, joinedPlace(kind, face), layer)),
  };
}

function openFill(
  field: Field,
  { side, from, to }: SidePart,
  kind: Exclude<SideKind, Joined | { is: 'wall' }>,
  gases: GasPair,
): () => void {
  const { mesh } = field;
  const tangent: Tangent = { kappa: 1, eta: 0, zeta: 0 };
  const faces = Array.from({ length: to - from }, (_, k) => ({
    along: from + k,
    inside: cellFrom(mesh, side, from + k, 0),
    ghosts: Array.from({ length: GHOSTS }, (__, layer) => cellFrom(mesh, side, from + k, -1 - layer)),
    normal: outward(mesh, side, from + k),
  }));
  return () => {
    for (const { along, inside, ghosts, normal } of faces) {
      const first = ghosts[0]!;
      const point = pointBeyond(field, inside, along, normal, kind);
      if (point === null) copyCell(field, first, inside);
      else putPoint(field, first, point, gases, tangent);
      for (let layer = 1; layer < GHOSTS; layer++) copyCell(field, ghosts[layer]!, first);
    }
  };
}

/** Null: as in the cell inside. */
function pointBeyond(
  field: Field,
  inside: number,
  along: number,
  normal: readonly [number, number],
  kind: Exclude<SideKind, Joined | { is: 'wall' }>,
): FlowPoint | null {
  switch (kind.is) {
    case 'given':
      return kind.at(along);
    case 'free':
      return null;
    case 'far':
      return farPoint(field, inside, kind.air, normal);
    case 'pressed':
      return pressedPoint(field, inside, kind.pressure, normal);
    case 'reservoir':
      return reservoirPoint(field, inside, kind, normal);
  }
}

/** Each call fills the marks of shocks beyond one block: those of the other block where one is joined, else those of the cell inside. */
export function markFill(fields: readonly Field[], block: number, parts: readonly SidePart[]): () => void {
  const field = fields[block]!;
  const fills = parts.map(({ side, from, to, kind }) => {
    const isJoined = kind.is === 'joined';
    const other = isJoined ? fields[kind.block]! : field;
    const places = (of: (along: number) => number): Int32Array =>
      Int32Array.from({ length: to - from }, (_, k) => of(from + k));
    const ghosts = places((along) => cellFrom(field.mesh, side, along, -1));
    const there = places((along) =>
      isJoined
        ? cellFrom(other.mesh, kind.side, joinedPlace(kind, along - from), 0)
        : cellFrom(field.mesh, side, along, 0),
    );
    const isAlike = !isJoined || side.startsWith('i') === kind.side.startsWith('i');
    const [marksI, marksJ] = isAlike ? [other.shockI, other.shockJ] : [other.shockJ, other.shockI];
    return { ghosts, there, marksI, marksJ };
  });
  const { shockI, shockJ } = field;
  return () => {
    for (const { ghosts, there, marksI, marksJ } of fills)
      for (let k = 0; k < ghosts.length; k++) {
        shockI[ghosts[k]!] = marksI[there[k]!]!;
        shockJ[ghosts[k]!] = marksJ[there[k]!]!;
      }
  };
}

/** The cell along the other’s side. @param along counted from where the part begins */
export function joinedPlace({ from, up }: Joined, along: number): number {
  return from + (up ? along : -along);
}
