/** A cut: the lines of greatest weight that fit a time, with all that they rely on. */

import type { CutAsked, Script } from '../../study/script/model.ts';

/** Why a line is in or out. */
export type CutReason =
  | 'kept by the writer'
  | 'relied on'
  | 'worth its time'
  | 'left by the writer'
  | 'relies on a line left'
  | 'without weight'
  | 'no room';

export interface CutLine {
  readonly id: string;
  readonly scene: string;
  readonly kept: boolean;
  readonly because: CutReason;
  /** Lines that ask for it, or that it would have needed. */ readonly with: readonly string[];
  /** [s] */ readonly seconds: number;
  readonly weight: number;
}

/** A dropped line that says the same checked sentence as a kept one: the verdict is on both. */
export interface VerdictNeed {
  /** The kept line. */ readonly line: string;
  readonly sentence: string;
  /** Dropped lines that say a part of it. */ readonly dropped: readonly string[];
}

/** What the writer asks of a cut. */
export type CutWish = Pick<CutAsked, 'length' | 'keep' | 'leave'>;

export interface Cut {
  /** What is kept; reads, checks and is timed like any script. */ readonly script: Script;
  /** [s] asked for. */ readonly target: number;
  /** [s] that it takes, at the paces of the whole. */ readonly seconds: number;
  /** [s] of the whole script. */ readonly whole: number;
  readonly weight: number;
  readonly wholeWeight: number;
  /** No cut of this length weighs more than this beyond it. 0: it is the best; else the script is too tangled to be sure. */
  readonly short: number;
  /** Every line of the script, in its order. */ readonly lines: readonly CutLine[];
  readonly verdictNeeds: readonly VerdictNeed[];
}
