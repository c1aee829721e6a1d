/** The finished film beside its script: when each line is said, and what is said otherwise than written. */

export interface FilmLine {
  readonly id: string;
  readonly scene: string;
  /** [s] of its first word; null where it is not said. */ readonly start: number | null;
  readonly end: number | null;
  /** Share of its words that are said [–]. */ readonly said: number;
}

export interface FilmScene {
  readonly id: string;
  readonly name: string;
  readonly start: number | null;
  readonly end: number | null;
}

export type SlipKind =
  /** Another number than the live one. */
  | 'number'
  /** The number in another kind of unit. */
  | 'unit'
  /** The number is not said. */
  | 'number missing'
  /** A number that the script does not have. */
  | 'number added'
  /** The whole line is not said. */
  | 'line missing'
  /** Other words in a line that says a checked sentence. */
  | 'wording';

export interface Slip {
  readonly kind: SlipKind;
  /** [s] in the film; that of the nearest word said where it is missing. */ readonly time: number;
  /** Null for what stands outside all lines. */ readonly line: string | null;
  /** The checked sentence that the line says. */ readonly sentence: string | null;
  /** As in the captions; empty where it is missing. */ readonly said: string;
  /** As the script has it. */ readonly meant: string;
  readonly words: string;
}

export interface FilmRead {
  readonly lines: readonly FilmLine[];
  readonly scenes: readonly FilmScene[];
  /** In the order of time. */ readonly slips: readonly Slip[];
  /** Share of the script’s words that are said [–]. */ readonly said: number;
}
