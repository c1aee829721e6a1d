/** A script with its numbers resolved, and what is to be looked at in it. */

import type { Problem } from '../../numerics/problem.ts';
import type { NumberPiece, Scene, Script, ScriptLine, WordsPiece } from '../../study/script/model.ts';

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

export type FlagKind =
  /** A live number has no value. */
  | 'no value'
  /** A number that is said reads otherwise than when it was recorded. */
  | 'moved'
  /** More digits are asked for than what is not known leaves. */
  | 'too exact'
  /** What is not known reaches over nothing: it may be more or less. */
  | 'sign open'
  /** A number typed by hand. */
  | 'by hand'
  /** The line says a sentence, and this is its verdict. */
  | 'verdict'
  /** The words of the line are not those of its sentence. */
  | 'words'
  /** A unit in the words that the audience is told no longer. */
  | 'not converted';

export interface ScriptFlag {
  readonly kind: FlagKind;
  /** It must not be said so. */ readonly fails: boolean;
  /** Id of the line. */ readonly line: string;
  readonly words: string;
  /** Characters of the file. */ readonly from: number;
  readonly to: number;
}
