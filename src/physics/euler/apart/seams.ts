/**
 * Where strips meet that take steps of different lengths. One of them, the slower, has gone ahead; what the faster sees of it
 * lies between what it was and what it is. What passed through the faces between them is what the faster had, step by step:
 * the slower is put right by the difference, so that mass, momentum and energy are conserved.
 */

import type { Problem } from '../../../numerics/problem.ts';
import { copyCells } from '../cellCopies.ts';
import { CELL_VALUES, type Field, type GasPair } from '../field.ts';
import { MIXED } from '../fieldGas.ts';
import { joinedCells } from '../ghosts.ts';
import { facesFlow } from '../sideFlow.ts';
import { cellFrom } from '../sideGeometry.ts';
import type { SidePart } from '../sides.ts';
import { brokeAt, putState } from '../stage.ts';

/** What a strip sees of another through one part of a side. */
export interface Seam {
  readonly strip: number;
  readonly other: number;
  readonly part: SidePart;
  /** Ghosts of the strip, layer by layer, and the other’s cells that they stand for. */
  readonly ghosts: Int32Array;
  readonly cells: Int32Array;
  /** The strip’s own cells beside the faces. */ readonly inside: Int32Array;
  /** The other’s cells as they were when it began its step, value by value. */ readonly before: Float64Array;
  /** What is to be put right in the other’s cells beside the faces: five sums a face. */
  readonly sums: Float64Array;
  /** Place in `inside` of the seam seen from the other, for each face here. */ facing: Int32Array;
}

const [KAPPA, ETA] = [CELL_VALUES.indexOf('kappa'), CELL_VALUES.indexOf('eta')];
const SUMS = ['mass', 'x', 'y', 'energy', 'share'] as const;

/** By strip. */
export function seamsOf(
  fields: readonly Field[],
  sides: readonly (readonly SidePart[])[],
): readonly (readonly Seam[])[] {
  return sides.map((parts, strip) =>
    parts.flatMap((part) => (part.kind.is === 'joined' ? [seamOf(fields, strip, part, part.kind)] : [])),
  );
}

function seamOf(
  fields: readonly Field[],
  strip: number,
  part: SidePart,
  kind: Extract<SidePart['kind'], { is: 'joined' }>,
): Seam {
  const [own, other] = [fields[strip]!, fields[kind.block]!];
  const faces = part.to - part.from;
  const { into: ghosts, from: cells } = joinedCells(own, other, part, kind);
  return {
    strip,
    other: kind.block,
    part,
    ghosts,
    cells,
    inside: Int32Array.from({ length: faces }, (_, face) =>
      cellFrom(own.mesh, part.side, part.from + face, 0),
    ),
    before: new Float64Array(CELL_VALUES.length * cells.length),
    sums: new Float64Array(SUMS.length * faces),
    facing: new Int32Array(0),
  };
}

/** The other is about to take its step. */
export function noteBefore({ cells, before, sums }: Seam, other: Field): void {
  sums.fill(0);
  for (const [v, key] of CELL_VALUES.entries()) {
    const from = other[key];
    for (let k = 0; k < cells.length; k++) before[v * cells.length + k] = from[cells[k]!]!;
  }
}

/** The other is as far, or waits for this one. */
export function fillNow({ ghosts, cells }: Seam, own: Field, other: Field): void {
  copyCells(own, other, { into: ghosts, from: cells });
}

/**
 * Of the other its tangents are those of its step, so that the energy that passes is reckoned as it did itself.
 * @param part of the other’s step that has passed
 */
export function fillBetween({ ghosts, cells, before }: Seam, own: Field, other: Field, part: number): void {
  for (const [v, key] of CELL_VALUES.entries()) {
    const [into, now] = [own[key], other[key]];
    const share = key === 'kappa' || key === 'eta' || key === 'zeta' ? 0 : part;
    for (let k = 0; k < cells.length; k++) {
      const was = before[v * cells.length + k]!;
      into[ghosts[k]!] = was + share * (now[cells[k]!]! - was);
    }
  }
}

/** The faster’s part: what it puts through into the slower, over `seconds`. Ghosts and marks must be filled. */
export function addPassed({ part, ghosts, sums }: Seam, own: Field, seconds: number): void {
  const inflow = facesFlow(own, part);
  const faces = part.to - part.from;
  for (const [s, key] of SUMS.entries())
    for (let k = 0; k < faces; k++)
      sums[s * faces + k] = sums[s * faces + k]! + seconds * inflow[key][ghosts[k]!]!;
}

/** The slower’s part: what it had itself is taken off from the sums of the seam on the faster’s side. */
export function takeOwn(mine: Seam, theirs: Seam, own: Field, seconds: number): void {
  const inflow = facesFlow(own, mine.part);
  const faces = mine.part.to - mine.part.from;
  for (const [s, key] of SUMS.entries())
    for (let k = 0; k < faces; k++) {
      const at = s * faces + mine.facing[k]!;
      theirs.sums[at] = theirs.sums[at]! - seconds * inflow[key][mine.inside[k]!]!;
    }
}

/** The seams in pairs, each from both sides. */
export function faceEachOther(seams: readonly (readonly Seam[])[]): ReadonlyMap<Seam, Seam> {
  const pairs = new Map<Seam, Seam>();
  for (const seam of seams.flat()) {
    const [first, own] = [seam.cells[0]!, seam.inside[0]!];
    const other = seams[seam.other]!.find(
      (each) => each.other === seam.strip && each.inside.includes(first) && each.cells.includes(own),
    )!;
    const place = new Map([...other.inside].map((cell, k) => [cell, k]));
    seam.facing = seam.inside.map((_, k) => place.get(seam.cells[k]!)!);
    pairs.set(seam, other);
  }
  return pairs;
}

/**
 * Put the slower right once the faster is as far. A cell of mixed gas takes the pressure that the tangent of its step gives, as it
 * keeps its pressure when the tangent is renewed; of one gas it takes the energy.
 */
export function putRight(
  { cells, sums, part, before }: Seam,
  slower: Field,
  { inner: one, outer: two }: GasPair,
): Problem | null {
  const faces = part.to - part.from;
  const { mesh, density, u, v, pressure, share, energy, kappa, eta, zeta } = slower;
  for (let k = 0; k < faces; k++) {
    const at = cells[k]!;
    const more = (s: number): number => sums[s * faces + k]! / mesh.volume[at]!;
    const rho = density[at]!;
    const mass = rho + more(0);
    const x = rho * u[at]! + more(1);
    const y = rho * v[at]! + more(2);
    const inner = rho * share[at]! + more(4);
    const moving = (x * x + y * y) / (2 * mass);
    const isMixed = one !== two && inner > MIXED * mass && inner < (1 - MIXED) * mass;
    const was = (value: number): number => before[value * cells.length + k]!;
    const gained = more(3) - moving + (rho * (u[at]! * u[at]! + v[at]! * v[at]!)) / 2;
    const p = isMixed
      ? pressure[at]! + (gained - was(ETA) * (mass - rho)) / was(KAPPA)
      : (energy[at]! + more(3) - moving - eta[at]! * mass - zeta[at]!) / kappa[at]!;
    const held = isMixed ? kappa[at]! * p + eta[at]! * mass + zeta[at]! + moving : energy[at]! + more(3);
    if (!(mass > 0) || !(p > 0)) return brokeAt(slower, at);
    putState(slower, at, mass, x, y, inner, held, p);
  }
  return null;
}
