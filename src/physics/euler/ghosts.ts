/** The ghosts of a block filled from what is beyond its sides. */

import { type Field, type FlowPoint, type GasPair, putPoint, type Reals } from './field.ts';
import type { Tangent } from './fieldGas.ts';
import { GHOSTS } from './mesh.ts';
import { farPoint, pressedPoint, reservoirPoint } from './openSides.ts';
import { cellFrom, hasArea, outward, type SideName } from './sideGeometry.ts';
import type { SideKind, SidePart } from './sides.ts';

/** Fill the ghosts of one block from what is beyond it. */
export function fillGhosts(
  fields: readonly Field[],
  block: number,
  parts: readonly SidePart[],
  gases: GasPair,
): void {
  const field = fields[block]!;
  const tangent: Tangent = { kappa: 1, eta: 0, zeta: 0 };
  for (const { side, from, to, kind } of parts) {
    for (let along = from; along < to; along++) {
      if (kind.is === 'joined') {
        const other = fields[kind.block]!;
        const place = joinedPlace(kind, along - from);
        for (let layer = 0; layer < GHOSTS; layer++)
          copy(
            field,
            cellFrom(field.mesh, side, along, -1 - layer),
            other,
            cellFrom(other.mesh, kind.side, place, layer),
          );
      } else if (kind.is === 'wall') {
        for (let layer = 0; layer < GHOSTS; layer++) beyondWall(field, side, along, layer);
      } else {
        const ghost = cellFrom(field.mesh, side, along, -1);
        const point = pointBeyond(field, side, along, kind);
        if (point === null) copy(field, ghost, field, cellFrom(field.mesh, side, along, 0));
        else putPoint(field, ghost, point, gases, tangent);
        for (let layer = 1; layer < GHOSTS; layer++)
          copy(field, cellFrom(field.mesh, side, along, -1 - layer), field, ghost);
      }
    }
  }
}

/** Null: as in the cell inside. */
function pointBeyond(
  field: Field,
  side: SideName,
  along: number,
  kind: Exclude<SideKind, { is: 'joined' | 'wall' }>,
): FlowPoint | null {
  const inside = cellFrom(field.mesh, side, along, 0);
  switch (kind.is) {
    case 'given':
      return kind.at(along);
    case 'free':
      return null;
    case 'far':
      return farPoint(field, inside, kind.air, outward(field.mesh, side, along));
    case 'pressed':
      return pressedPoint(field, inside, kind.pressure, outward(field.mesh, side, along));
    case 'reservoir':
      return reservoirPoint(field, inside, kind, outward(field.mesh, side, along));
  }
}

/** The marks of shocks beyond one block: those of the other block where one is joined, else those of the cell inside. */
export function fillMarks(fields: readonly Field[], block: number, parts: readonly SidePart[]): void {
  const field = fields[block]!;
  for (const { side, from, to, kind } of parts) {
    for (let along = from; along < to; along++) {
      const ghost = cellFrom(field.mesh, side, along, -1);
      if (kind.is !== 'joined') {
        const inside = cellFrom(field.mesh, side, along, 0);
        field.shockI[ghost] = field.shockI[inside]!;
        field.shockJ[ghost] = field.shockJ[inside]!;
        continue;
      }
      const other = fields[kind.block]!;
      const there = cellFrom(other.mesh, kind.side, joinedPlace(kind, along - from), 0);
      const alike = side.startsWith('i') === kind.side.startsWith('i');
      field.shockI[ghost] = (alike ? other.shockI : other.shockJ)[there]!;
      field.shockJ[ghost] = (alike ? other.shockJ : other.shockI)[there]!;
    }
  }
}

/** The cell along the other’s side. @param along counted from where the part begins */
export function joinedPlace({ from, up }: Extract<SideKind, { is: 'joined' }>, along: number): number {
  return from + (up ? along : -along);
}

function copy(to: Field, a: number, from: Field, b: number): void {
  to.density[a] = from.density[b]!;
  to.u[a] = from.u[b]!;
  to.v[a] = from.v[b]!;
  to.pressure[a] = from.pressure[b]!;
  to.share[a] = from.share[b]!;
  to.energy[a] = from.energy[b]!;
  to.kappa[a] = from.kappa[b]!;
  to.eta[a] = from.eta[b]!;
  to.zeta[a] = from.zeta[b]!;
}

/** At the axis the flow mirrored; at a wall the flow carried straight on, so that the cell beside it keeps its slope. */
function beyondWall(field: Field, side: SideName, along: number, layer: number): void {
  const { mesh } = field;
  const ghost = cellFrom(mesh, side, along, -1 - layer);
  const inside = cellFrom(mesh, side, along, 0);
  const deep = side.startsWith('i') ? mesh.ni > 1 : mesh.nj > 1;
  if (deep && hasArea(mesh, side, along)) {
    const next = cellFrom(mesh, side, along, 1);
    const density = carriedOn(field.density, inside, next, layer);
    const pressure = carriedOn(field.pressure, inside, next, layer);
    if (density > 0 && pressure > 0) {
      copy(field, ghost, field, inside);
      field.density[ghost] = density;
      field.pressure[ghost] = pressure;
      field.u[ghost] = carriedOn(field.u, inside, next, layer);
      field.v[ghost] = carriedOn(field.v, inside, next, layer);
      return;
    }
  }
  mirror(field, ghost, cellFrom(mesh, side, along, layer), outward(mesh, side, along));
}

function carriedOn(of: Reals, inside: number, next: number, layer: number): number {
  return of[inside]! + (layer + 1) * (of[inside]! - of[next]!);
}

function mirror(field: Field, ghost: number, inside: number, [nx, ny]: readonly [number, number]): void {
  copy(field, ghost, field, inside);
  const through = field.u[inside]! * nx + field.v[inside]! * ny;
  field.u[ghost] = field.u[inside]! - 2 * through * nx;
  field.v[ghost] = field.v[inside]! - 2 * through * ny;
}
