/** A script with its numbers resolved, and what is to be looked at in it. */

import type { Problem } from '../../numerics/problem.ts';
import type { NumberPiece, Scene, Script, ScriptLine, WordsPiece } from '../../study/script/model.ts';
import type { Dimension as Exponents } from '../../study/unitTable.ts';

/** What was told of one expression of a script. */
export interface ToldNumber {
  readonly expression: string;
  /** [SI] at the study’s middle values; null where there is none */ readonly value: number | null;
  /** [SI] 95 % of what it may be lies between them; null where there is no value */
  readonly low: number | null;
  readonly high: number | null;
  /** Name in the catalogue; null where it is made of several. */ readonly quantity: string | null;
  /** Names in the catalogue of what it is made of. */ readonly madeOf: readonly string[];
  readonly dimension: Exponents;
  /** Of temperatures: a difference of two, which has no zero of its scale. */ readonly isDifference: boolean;
  /** Why there is no value. */ readonly problem: Problem | null;
}

/** By expression as written. */
export type ScriptNumbers = ReadonlyMap<string, ToldNumber>;

export interface ResolvedNumber {
  readonly kind: 'number';
  readonly piece: NumberPiece;
  /** As it stands in the words: figures and unit, or words where `spoken` is asked for; the expression where there is no value. */
  readonly text: string;
  /** As it is said aloud, always in words. */ readonly spoken: string;
  /** [SI] */ readonly value: number | null;
  readonly low: number | null;
  readonly high: number | null;
  /** Symbol of the unit shown; empty for a plain number. */ readonly unit: string;
  /** Significant digits shown. */ readonly digits: number;
  /** Why there is no value. */ readonly problem: Problem | null;
}

export interface ResolvedLine {
  readonly line: ScriptLine;
  readonly pieces: readonly (WordsPiece | ResolvedNumber)[];
  /** All of it as it is read. */ readonly text: string;
  /** The same with the live numbers as they are said aloud. */ readonly spoken: string;
}

export interface ResolvedScene {
  readonly scene: Scene;
  readonly lines: readonly ResolvedLine[];
}

export interface ResolvedScript {
  readonly script: Script;
  readonly scenes: readonly ResolvedScene[];
}
