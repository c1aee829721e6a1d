import type { ConditionRow } from '../../../answer/model.ts';
import { COARSE, type Ladder } from '../../solved/ladder.ts';

/** One row of so many is enough for a curve: every half kilometre. */
export const CURVE_EVERY = COARSE;

/** A ladder of an estimate: rows for a curve, the others worked out one by one when asked for. */
export interface EstimatedLadder {
  /** Every {@link CURVE_EVERY}th. */ readonly rows: readonly ConditionRow[];
  readonly vacuum: ConditionRow;
  /** By the number of the row on the whole ladder. */ rowAt(index: number): ConditionRow;
}

export type ShownLadder = Ladder | EstimatedLadder;
