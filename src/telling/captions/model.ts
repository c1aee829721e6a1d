/** Captions and chapters of a script, timed. */

export interface Cue {
  /** [s] */ readonly start: number;
  readonly end: number;
  /** One or two. */ readonly rows: readonly string[];
  /** As spoken: numbers count by their words. */ readonly words: number;
}

export type CaptionRule =
  | 'row-length'
  | 'rows'
  | 'too-short'
  | 'too-long'
  | 'too-fast'
  | 'order'
  | 'empty'
  | 'break';

/** A cue that breaks a rule. */
export interface CaptionBreach {
  /** From 1. */ readonly cue: number;
  readonly rule: CaptionRule;
  readonly found: number;
  readonly allowed: number;
  readonly words: string;
}

export interface Chapter {
  /** [s] */ readonly start: number;
  readonly end: number;
  readonly title: string;
  /** Ids of the scenes in it. */ readonly scenes: readonly string[];
}

export interface Chapters {
  /** Empty where there are too few. */ readonly chapters: readonly Chapter[];
  /** What was merged, and why there are none, one line each. */ readonly notes: readonly string[];
}
