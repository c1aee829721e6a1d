/** The rows of one engine that the altitude scale runs through. */

import type { ConditionRow } from '../../answer/model.ts';
import type { PackedRows } from './packedRows.ts';

/** Results of one engine from 0 to 40 km, and in vacuum. */
export interface Ladder extends PackedRows {
  readonly vacuum: ConditionRow;
  /** How many steps of {@link ladderStep} lie between two rows: 1 on a whole ladder. */ readonly every: number;
}

/** Spacing of a whole ladder's rows [m]. */
export const ladderStep = 100;
/** Highest row of a ladder [m]. */
export const ladderTop = 40_000;
/** Rows at these steps alone come first: every half kilometre. */
export const COARSE = 5;
