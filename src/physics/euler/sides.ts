/** What lies beyond the sides of a block: walls, the axis, given flow, the far air, or another block. */

import { ProblemError } from '../../numerics/problem.ts';
import { type Field, type FlowPoint, type GasPair, putPoint, putTangent, soundSpeedAt } from './field.ts';
import type { Tangent } from './fieldGas.ts';
import { GHOSTS, type MeshBlock } from './mesh.ts';
import { areaOf, cellFrom, cellsAlong, faceOf, outward, type SideName } from './sideGeometry.ts';

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
      for (let layer = 0; layer < GHOSTS; layer++) {
        const ghost = cellFrom(field.mesh, side, along, -1 - layer);
        switch (kind.is) {
          case 'wall':
            beyondWall(field, side, along, layer);
            break;
          case 'given':
            putPoint(field, ghost, kind.at(along), gases, tangent);
            break;
          case 'free':
            copy(field, ghost, field, cellFrom(field.mesh, side, along, 0));
            break;
          case 'far': {
            const inside = cellFrom(field.mesh, side, along, 0);
            putPoint(
              field,
              ghost,
              farPoint(field, inside, kind.air, outward(field.mesh, side, along)),
              gases,
              tangent,
            );
            break;
          }
          case 'pressed': {
            const inside = cellFrom(field.mesh, side, along, 0);
            copy(field, ghost, field, inside);
            const { u, v } = { u: field.u[inside]!, v: field.v[inside]! };
            const [nx, ny] = outward(field.mesh, side, along);
            if (u * nx + v * ny < soundSpeedAt(field, inside)) {
              const point = { density: field.density[inside]!, u, v, pressure: kind.pressure };
              putPoint(field, ghost, { ...point, share: field.share[inside]! }, gases, tangent);
            }
            break;
          }
          case 'reservoir': {
            const inside = cellFrom(field.mesh, side, along, 0);
            const normal = outward(field.mesh, side, along);
            putPoint(field, ghost, reservoirPoint(field, inside, kind, normal), gases, tangent);
            break;
          }
          case 'joined': {
            const other = fields[kind.block]!;
            const place = joinedPlace(kind, along - from);
            copy(field, ghost, other, cellFrom(other.mesh, kind.side, place, layer));
            break;
          }
        }
      }
    }
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

function joinedPlace({ from, up }: Extract<SideKind, { is: 'joined' }>, along: number): number {
  return from + (up ? along : -along);
}

function copy(to: Field, a: number, from: Field, b: number): void {
  to.density[a] = from.density[b]!;
  to.u[a] = from.u[b]!;
  to.v[a] = from.v[b]!;
  to.pressure[a] = from.pressure[b]!;
  to.share[a] = from.share[b]!;
  to.energy[a] = from.energy[b]!;
  putTangent(to, a, { kappa: from.kappa[b]!, eta: from.eta[b]!, zeta: from.zeta[b]! });
}

/** At the axis the flow mirrored; at a wall the flow carried straight on, so that the cell beside it keeps its slope. */
function beyondWall(field: Field, side: SideName, along: number, layer: number): void {
  const { mesh } = field;
  const ghost = cellFrom(mesh, side, along, -1 - layer);
  const inside = cellFrom(mesh, side, along, 0);
  const deep = side.startsWith('i') ? mesh.ni > 1 : mesh.nj > 1;
  if (areaOf(mesh, side, along) > 0 && deep) {
    const next = cellFrom(mesh, side, along, 1);
    const on = (of: Float64Array): number => of[inside]! + (layer + 1) * (of[inside]! - of[next]!);
    const [density, pressure] = [on(field.density), on(field.pressure)];
    if (density > 0 && pressure > 0) {
      copy(field, ghost, field, inside);
      field.density[ghost] = density;
      field.pressure[ghost] = pressure;
      field.u[ghost] = on(field.u);
      field.v[ghost] = on(field.v);
      return;
    }
  }
  mirror(field, ghost, cellFrom(mesh, side, along, layer), outward(mesh, side, along));
}

function mirror(field: Field, ghost: number, inside: number, [nx, ny]: readonly [number, number]): void {
  copy(field, ghost, field, inside);
  const through = field.u[inside]! * nx + field.v[inside]! * ny;
  field.u[ghost] = field.u[inside]! - 2 * through * nx;
  field.v[ghost] = field.v[inside]! - 2 * through * ny;
}

/** The pressure of the cell inside says how far the gas has expanded on its way in; above the highest it stands still. */
function reservoirPoint(
  field: Field,
  inside: number,
  { at, highest, share }: Extract<SideKind, { is: 'reservoir' }>,
  [nx, ny]: readonly [number, number],
): FlowPoint {
  const pressure = field.pressure[inside]!;
  if (pressure >= highest) return { ...at(highest), u: 0, v: 0, pressure: highest, share };
  const { density, speed } = at(pressure);
  return { density, u: -speed * nx, v: -speed * ny, pressure, share };
}

/** One-dimensional characteristics across the side: what leaves is from inside, what comes is of the far air. */
function farPoint(
  field: Field,
  inside: number,
  air: FlowPoint,
  [nx, ny]: readonly [number, number],
): FlowPoint {
  const density = field.density[inside]!;
  const pressure = field.pressure[inside]!;
  const { u, v, share } = { u: field.u[inside]!, v: field.v[inside]!, share: field.share[inside]! };
  const own: FlowPoint = { density, u, v, pressure, share };
  const sound = soundSpeedAt(field, inside);
  const out = u * nx + v * ny;
  if (out >= sound) return own;
  if (out <= -sound) return air;
  const farOut = air.u * nx + air.v * ny;
  const stiff = density * sound;
  const met = (pressure + air.pressure + stiff * (out - farOut)) / 2;
  const speed = out + (pressure - met) / stiff;
  const from = out >= 0 ? own : air;
  const along = from.v * nx - from.u * ny;
  const there = from.density + (met - from.pressure) / (sound * sound);
  if (!(met > 0) || !(there > 0)) return { ...from, pressure: air.pressure };
  return {
    density: there,
    pressure: met,
    u: speed * nx - along * ny,
    v: speed * ny + along * nx,
    share: from.share,
  };
}
