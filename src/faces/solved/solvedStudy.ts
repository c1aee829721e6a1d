/** A study as solved for the page: its answer, and the rows that the altitude scale runs through. */

import type { VehicleAnswer } from '../../answer/flight/model.ts';
import type { ConditionRow, EnginesAnswer } from '../../answer/model.ts';
import type { Study, StudyProblem } from '../../study/model.ts';
import type { PackedRows } from './packedRows.ts';

/** Results of one engine at every tenth of a kilometre from 0 to 40 km, and in vacuum. */
export interface Ladder extends PackedRows {
  readonly vacuum: ConditionRow;
}

/** Spacing of a ladder's rows [m]. */
export const ladderStep = 100;
/** Highest row of a ladder [m]. */
export const ladderTop = 40_000;

export interface SolvedStudy {
  readonly study: Study;
  readonly warnings: readonly StudyProblem[];
  readonly answer: EnginesAnswer;
  /** Null: they are still being flown. */ readonly vehicles: Flights | null;
  readonly ladders: Readonly<Record<string, Ladder>>;
}

/** What the engines do for the vehicles of a study. */
export type Flights = readonly VehicleAnswer[];
