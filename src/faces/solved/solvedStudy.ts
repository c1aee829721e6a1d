/** A study as solved for the page: its answer, and the rows that the altitude scale runs through. */

import type { VehicleAnswer } from '../../answer/flight/model.ts';
import type { EnginesAnswer } from '../../answer/model.ts';
import type { Study, StudyProblem } from '../../study/model.ts';
import type { Ladder } from './ladder.ts';

export interface SolvedStudy {
  readonly study: Study;
  readonly warnings: readonly StudyProblem[];
  readonly answer: EnginesAnswer;
  /** Null: they are still being flown. */ readonly vehicles: Flights | null;
  readonly ladders: Readonly<Record<string, Ladder>>;
  /** Engines that are still being worked out: what is here of them is that of the study before, or nothing. */
  readonly awaited: readonly string[];
  /** False: more of it is on its way, besides flights. */ readonly isWhole: boolean;
}

/** What the engines do for the vehicles of a study. */
export type Flights = readonly VehicleAnswer[];
