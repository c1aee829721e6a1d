/** Slopes of the flow from cell to cell along one index, so limited that no new extreme appears. */

import type { Field } from './field.ts';
import { cellAt, strideOf } from './mesh.ts';

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

/** None in cells that broke. @param flat none anywhere: first order */
export function findSlopes(field: Field, slopes: Slopes, along: 'i' | 'j', flat: boolean): void {
  const { mesh } = field;
  const step = along === 'i' ? 1 : strideOf(mesh);
  const [beyondI, beyondJ] = along === 'i' ? [1, 0] : [0, 1];
  for (const key of SLOPED) {
    if (flat) slopes[key].fill(0);
    else
      for (let j = -beyondJ; j < mesh.nj + beyondJ; j++)
        slopesOfRow(
          field[key],
          slopes[key],
          field.blurred,
          cellAt(mesh, -beyondI, j),
          mesh.ni + 2 * beyondI,
          step,
        );
  }
}

/** Van Leer’s harmonic mean (1974): nothing at an extreme, second order elsewhere. */
function slopesOfRow(
  of: Float64Array,
  out: Float64Array,
  blurred: Uint8Array,
  from: number,
  count: number,
  step: number,
): void {
  for (let cell = from; cell < from + count; cell++) {
    const here = of[cell]!;
    const behind = here - of[cell - step]!;
    const ahead = of[cell + step]! - here;
    const product = behind * ahead;
    out[cell] = product > 0 && blurred[cell] === 0 ? (2 * product) / (behind + ahead) : 0;
  }
}
