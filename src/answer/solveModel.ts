/** What may be asked of a solve, and what comes of it. */

import type { Problem } from '../numerics/problem.ts';
import type { Wanted } from './engineAnswer.ts';
import type { EngineAnswer, EnginesAnswer, StudyAnswer } from './model.ts';
import type { SolvedBefore } from './reuse.ts';
import type { EngineSolution } from './solution.ts';

export interface SolveOptions {
  /** Version of the program, for the answer's head. */ readonly version?: string;
  /** [Pa] besides the study's */ readonly ambients?: readonly number[];
  /** [m] geometric, besides the study's and the standard ones */ readonly altitudes?: readonly number[];
  /** Told before each engine is solved: its name, which it is, of how many. */
  readonly onEngine?: (name: string, which: number, count: number) => void;
  /** Waited for between pieces of the work, none much longer than one engine or one vehicle; where it throws, the work ends. */
  readonly pause?: () => Promise<void>;
  /** A study solved before: what is the same in this one is taken over, as a fresh solve gives it but for the last digits. */
  readonly before?: SolvedBefore;
  /** Told of the engines as soon as they are answered, where vehicles are still to be flown with them. */
  readonly onEngines?: (solved: SolvedEngines) => void | Promise<void>;
  /** Told of each piece of the answer as soon as it is there: the engines compared come first. */
  readonly onPiece?: (piece: AnswerPiece) => void | Promise<void>;
  /** Engines are told of a first time without most of their jets, which take as long as all their numbers together. */
  readonly jetsLater?: boolean;
}

export type AnswerPiece =
  | {
      readonly kind: 'engine';
      readonly id: string;
      readonly answer: EngineAnswer;
      readonly solution: EngineSolution;
      /** False: of its jets those at the pad and in vacuum alone; it is told of once more. */
      readonly isWhole: boolean;
    }
  | { readonly kind: 'failed'; readonly id: string; readonly problem: Problem }
  | ({ readonly kind: 'compared' } & Pick<EnginesAnswer, 'comparison' | 'shortAnswer'>);

/** A study whose vehicles are not flown yet. */
export interface SolvedEngines extends Pick<SolvedStudy, 'solutions' | 'wanted'> {
  readonly answer: EnginesAnswer;
}

/** The answer, and the live engines behind it from which more rows and curves can be asked. */
export interface SolvedStudy {
  readonly answer: StudyAnswer;
  readonly solutions: ReadonlyMap<string, EngineSolution>;
  /** Conditions that its rows were asked at, besides the standard ones. */ readonly wanted: Wanted;
}
