/** What is found about one sentence of a study: what `plumeline check --json` prints and every face shows. SI units. */

import type { Problem } from '../../numerics/problem.ts';

export type Verdict =
  | 'safe to say'
  | 'say with care'
  | 'don’t say'
  | 'can’t tell'
  /** A fact of history with its citation: not computed. */
  | 'reported'
  /** No test stands beside the words. */
  | 'not checked';

/** One number that decides a sentence. */
export interface DecidingNumber {
  /** As in the test, e.g. `bell.specificImpulse(vacuum)`. */ readonly expression: string;
  /** Name in the catalogue; null where it is made of several. */ readonly quantity: string | null;
  /** [SI] at the study’s middle values */ readonly value: number;
  /** [SI] 95 % of the draws lie between them */ readonly low: number;
  readonly high: number;
  /** For people, with its unit: `about 350 s`. */ readonly words: string;
}

/** Where one input turns the verdict, all others at their middle values. */
export interface FlipPoint {
  /** Path of the input in the study. */ readonly input: string;
  /** [SI] */ readonly value: number;
  readonly words: string;
}

/** Share of one source of not knowing in the spread of what decides (total effect) [–]. */
export interface SpreadShare {
  /** Path of an input, or the name of a model’s error. */ readonly source: string;
  readonly share: number;
  readonly words: string;
}

export interface AbsoluteWord {
  /** As written in the sentence. */ readonly word: string;
  /** The test covers the whole range that the word claims. */ readonly covered: boolean;
  /** What to do where it does not; what covers it where it does. */ readonly words: string;
}

/** A number read out of the words of a sentence. */
export interface SaidNumber {
  /** As written in the sentence, e.g. `12 %`. */ readonly text: string;
  /** Null where nothing of its kind is computed. */ readonly agrees: boolean | null;
  readonly words: string;
}

/** A reason given in the words: “because …”. It changes no verdict. */
export interface SaidReason {
  /** As written in the sentence. */ readonly text: string;
  /** The test looks at it. */ readonly tested: boolean;
  readonly words: string;
}

/** One of several published models, and what the sentence is by it. */
export interface SentenceByModel {
  readonly of: string;
  readonly by: string;
  /** Null where that model has no number here. */ readonly share: number | null;
}

export interface CheckedSentence {
  readonly id: string;
  readonly say: string;
  /** Meant to be said; false: a half-truth kept to discuss, whose failing is no failure. */ readonly said: boolean;
  /** The test as written; null where there is none. */ readonly holds: string | null;
  readonly verdict: Verdict;
  /** Share of what is not known in which it holds [–]; null where it is not computed. */ readonly share:
    | number
    | null;
  /** Standard error of that share [–]. */ readonly shareError: number | null;
  readonly numbers: readonly DecidingNumber[];
  /** What can be said safely, with numbers; null where there is nothing to say. */ readonly wording:
    | string
    | null;
  /** What is true instead; null where the sentence is. */ readonly instead: string | null;
  /** `wording`, or `instead`, as tests that hold in at least 95 % of the draws; null where they have no test. */
  readonly wordingHolds: string | null;
  /** Under which conditions it was tested, one line each. */ readonly conditions: readonly string[];
  readonly flips: readonly FlipPoint[];
  readonly matters: readonly SpreadShare[];
  /** By each of several published models, where they disagree or could. */
  readonly alternatives: readonly SentenceByModel[];
  /** Absolute words that were found, and whether the test covers the whole range. */
  readonly absolutes: readonly AbsoluteWord[];
  /** Numbers found in the words, each held against the test and what is computed. */
  readonly saidNumbers: readonly SaidNumber[];
  /** Reasons given in the words, each held against the test; empty where no test can be read. */
  readonly saidReasons: readonly SaidReason[];
  /** One line: why this verdict. */ readonly why: string;
  /** Still being worked out: fewer draws than asked for. */ readonly provisional: boolean;
  /** Why there is no verdict. */ readonly problem: Problem | null;
  readonly sources: readonly string[];
}
