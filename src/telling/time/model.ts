/** How long a script takes to say: by words at a pace, with its pauses. */

import type { NumberPiece } from '../../study/script/model.ts';
import type { Dimension } from '../../study/unitTable.ts';

/** What stands in the words for a live number. */
export interface NumberTold {
  /** As shown: `122.5 bar`, `about 350 s`. */ readonly written: string;
  /** As said: `a hundred and twenty-two point five bar`. */ readonly said: string;
  /** [SI]; null where the number has none, and `written` says so. */ readonly value: number | null;
  readonly dimension: Dimension | null;
}

/** The live numbers of a script by their pieces. */
export type NumbersTold = (piece: NumberPiece) => NumberTold;

export interface TimedLine {
  readonly id: string;
  readonly scene: string;
  /** Spoken words. */ readonly words: number;
  /** Words a minute. */ readonly pace: number;
  /** [s] from the beginning, by tenths. */ readonly start: number;
  /** [s] said and paused, by tenths. */ readonly seconds: number;
  /** [s] of it silent behind the words. */ readonly pause: number;
}

export interface TimedScene {
  readonly id: string;
  readonly name: string;
  /** Words a minute. */ readonly pace: number;
  /** [s] */ readonly start: number;
  readonly seconds: number;
  readonly lines: readonly TimedLine[];
}

export interface TimedScript {
  readonly scenes: readonly TimedScene[];
  readonly words: number;
  /** [s]; the sum of its lines as they are told. */ readonly seconds: number;
}
