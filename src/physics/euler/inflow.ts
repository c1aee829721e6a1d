/** What flows into the cells of a field. */

import type { Field } from './field.ts';
import { type Slopes, slopesFor } from './slopes.ts';

/** Into each cell a second, all faces together; ghosts hold nothing. */
export interface Inflow {
  readonly mass: Float64Array;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly energy: Float64Array;
  readonly share: Float64Array;
  /** Work space. */ readonly slopes: Slopes;
}

export function inflowFor(field: Field): Inflow {
  const array = (): Float64Array => new Float64Array(field.density.length);
  return { mass: array(), x: array(), y: array(), energy: array(), share: array(), slopes: slopesFor(field) };
}
