/** `script.md` as read: scenes of lines that are said and of what is shown, with live numbers where they stand in the words. */

import type { StudyProblem } from '../model.ts';

/** A stretch of words as written, Markdown emphasis taken out. */
export interface WordsPiece {
  readonly kind: 'words';
  readonly text: string;
  /** Characters of the file, first and behind the last. */ readonly from: number;
  readonly to: number;
}

/** A live number: `{{bell.thrust(pad) in kN, about, 2 digits}}`. Rounded to what its span allows, unless digits are asked for. */
export interface NumberPiece {
  readonly kind: 'number';
  /** As in a sentence's test, without a comparison (docs/sentences.md). */ readonly expression: string;
  readonly unit?: string;
  /** `about`: the word stands before it where it is rounded. */ readonly about: boolean;
  /** `spoken`: in words (“a hundred and twenty”). */ readonly spoken: boolean;
  /** `span`: both ends of what it may be (“between 3 and 5 s”). */ readonly span?: boolean;
  /** `bare`: without its unit, which stands in the words. */ readonly bare?: boolean;
  /** Significant digits asked for. */ readonly digits?: number;
  readonly from: number;
  readonly to: number;
}

export type Piece = WordsPiece | NumberPiece;

/** One paragraph that is said. */
export interface ScriptLine {
  /** Given (`{#match}`), or made of scene and place (`pad.2`). */ readonly id: string;
  readonly pieces: readonly Piece[];
  /** What it is worth keeping, 0 to 100; 1 where none is given. */ readonly weight: number;
  /** Lines or scenes (by id) that must be kept with it. */ readonly relies: readonly string[];
  /** The checked sentence that it says. */ readonly says?: string;
  /** Seconds of silence behind it. */ readonly pause: number;
  readonly from: number;
  readonly to: number;
}

/** What is seen, a block quote: `> cut-view from pad to vacuum`, or words for what the film maker shoots. */
export interface Shown {
  /** A figure's or clip's name, where the words begin with one. */ readonly figure?: string;
  readonly words: string;
  /** Id of the line it begins with. */ readonly at: string;
  readonly from: number;
  readonly to: number;
}

export interface Scene {
  readonly id: string;
  readonly name: string;
  /** Added to the weight of keeping any of its lines; 0 where none is given. */ readonly weight: number;
  readonly relies: readonly string[];
  readonly lines: readonly ScriptLine[];
  readonly shown: readonly Shown[];
  readonly from: number;
  readonly to: number;
}

/** A cut asked for at the head of the file. */
export interface CutAsked {
  readonly name: string;
  /** Seconds. */ readonly length: number;
  /** Lines or scenes the writer keeps whatever their weight. */ readonly keep: readonly string[];
  readonly leave: readonly string[];
}

export type ScriptUnits = 'metric' | 'customary' | 'both';

export interface Script {
  readonly title: string;
  /** Words a minute. */ readonly pace: number;
  /** The same in a scene of three or more live numbers. */ readonly densePace: number;
  readonly units: ScriptUnits;
  readonly cuts: readonly CutAsked[];
  readonly scenes: readonly Scene[];
}

export interface ScriptRead {
  /** What could be read, even beside problems. */ readonly script: Script;
  /** Each with file, line and column in `script.md`. */ readonly problems: readonly StudyProblem[];
}
