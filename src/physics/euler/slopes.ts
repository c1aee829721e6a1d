/** Slopes of the flow from cell to cell along one index, so limited that no new extreme appears. */

import type { Field, Reals } from './field.ts';
import { cellAt, type MeshBlock, strideOf } from './mesh.ts';

/** Difference a cell of each value, one layer of ghosts included. */
export interface Slopes {
  readonly density: Float64Array;
  readonly u: Float64Array;
  readonly v: Float64Array;
  readonly pressure: Float64Array;
  readonly share: Float64Array;
}
const SLOPED = ['density', 'u', 'v', 'pressure', 'share'] as const;

export function slopesFor({ density }: Field): Slopes {
  const array = (): Float64Array => new Float64Array(density.length);
  return { density: array(), u: array(), v: array(), pressure: array(), share: array() };
}

/** Cells `i` up to but not with `iEnd` of the rows `j` up to but not with `jEnd`. */
export interface CellRange {
  readonly i: number;
  readonly iEnd: number;
  readonly j: number;
  readonly jEnd: number;
}

/** All cells that a sweep along one index asks for: with one layer of ghosts. */
export function allAlong({ ni, nj }: MeshBlock, along: 'i' | 'j'): CellRange {
  return along === 'i' ? { i: -1, iEnd: ni + 1, j: 0, jEnd: nj } : { i: 0, iEnd: ni, j: -1, jEnd: nj + 1 };
}

/** None in cells that broke. @param flat none anywhere: first order */
export function findSlopes(
  field: Field,
  slopes: Slopes,
  along: 'i' | 'j',
  flat: boolean,
  { i, iEnd, j: jFrom, jEnd }: CellRange = allAlong(field.mesh, along),
): void {
  const { mesh } = field;
  const step = along === 'i' ? 1 : strideOf(mesh);
  const range = {
    from: cellAt(mesh, i, jFrom),
    columns: iEnd - i,
    rows: jEnd - jFrom,
    stride: strideOf(mesh),
  };
  for (const key of SLOPED) {
    if (flat) slopes[key].fill(0);
    else slopesOf(field[key], slopes[key], field.blurred, range, step);
  }
}

/** Van Leer’s harmonic mean (1974): nothing at an extreme, second order elsewhere. */
function slopesOf(
  of: Reals,
  out: Float64Array,
  blurred: Uint8Array,
  { from, columns, rows, stride }: Readonly<Record<'from' | 'columns' | 'rows' | 'stride', number>>,
  step: number,
): void {
  for (let first = from; first < from + rows * stride; first += stride)
    for (let cell = first; cell < first + columns; cell++) {
      const here = of[cell]!;
      const behind = here - of[cell - step]!;
      const ahead = of[cell + step]! - here;
      const product = behind * ahead;
      out[cell] = product > 0 && blurred[cell] === 0 ? (2 * product) / (behind + ahead) : 0;
    }
}
