/** What goes out of a block through a part of a side, by the fluxes of the faces themselves. */

import { type FaceRange, flowThroughFaces } from './faceFlux.ts';
import type { Field } from './field.ts';
import { type Inflow, inflowFor } from './inflow.ts';
import { cellFrom } from './sideGeometry.ts';
import type { SidePart } from './sides.ts';
import { type CellRange, findSlopes } from './slopes.ts';

/** Out of a block each second: round fields for the whole turn, flat ones a metre deep. */
export interface SideFlow {
  /** [kg/s] */ readonly mass: number;
  /** Momentum, pressure counted [N]; of a round field along the axis only. */ readonly x: number;
  /** [N]; null for a round field, whose sideways push cancels */ readonly y: number | null;
  /** [W] */ readonly energy: number;
  /** Of the inner gas [kg/s]. */ readonly share: number;
}

/** Work space by field. */
const spaces = new WeakMap<Field, Inflow>();

/** Ghosts and marks must be filled. */
export function sideFlow(field: Field, part: Pick<SidePart, 'side' | 'from' | 'to'>): SideFlow {
  const { mesh } = field;
  const { side, from, to } = part;
  const { mass, x, y, energy, share } = facesFlow(field, part);
  const ghosts = Array.from({ length: to - from }, (_, n) => cellFrom(mesh, side, from + n, -1));
  const round = mesh.symmetry === 'round';
  const sum = (of: Float64Array): number =>
    (round ? 2 * Math.PI : 1) * ghosts.reduce((total, ghost) => total + of[ghost]!, 0);
  return { mass: sum(mass), x: sum(x), y: round ? null : sum(y), energy: sum(energy), share: sum(share) };
}

/**
 * What flows through these faces alone into the cells on both sides of them, the ghosts and those inside; until the next
 * call for the same field. Ghosts and marks must be filled.
 */
export function facesFlow(field: Field, part: Pick<SidePart, 'side' | 'from' | 'to'>): Inflow {
  const { side, from, to } = part;
  const inflow = spaces.get(field) ?? inflowFor(field);
  spaces.set(field, inflow);
  const { slopes } = inflow;
  for (let along = from; along < to; along++) {
    empty(inflow, cellFrom(field.mesh, side, along, -1));
    empty(inflow, cellFrom(field.mesh, side, along, 0));
  }
  const across = side === 'iLow' || side === 'iHigh' ? 'i' : 'j';
  const [cells, faces] = ranges(field, part);
  findSlopes(field, slopes, across, false, cells);
  flowThroughFaces(field, slopes, inflow, across, faces);
  return inflow;
}

function empty({ mass, x, y, energy, share }: Inflow, cell: number): void {
  mass[cell] = 0;
  x[cell] = 0;
  y[cell] = 0;
  energy[cell] = 0;
  share[cell] = 0;
}

/** The cells beside the faces, and the faces. */
function ranges(
  { mesh: { ni, nj } }: Field,
  { side, from, to }: Pick<SidePart, 'side' | 'from' | 'to'>,
): readonly [CellRange, FaceRange] {
  if (side === 'iLow' || side === 'iHigh') {
    const face = side === 'iLow' ? 0 : ni;
    return [
      { i: face - 1, iEnd: face + 1, j: from, jEnd: to },
      { line: from, lineEnd: to, face, faceEnd: face + 1 },
    ];
  }
  const line = side === 'jLow' ? 0 : nj;
  return [
    { i: from, iEnd: to, j: line - 1, jEnd: line + 1 },
    { line, lineEnd: line + 1, face: from, faceEnd: to },
  ];
}
