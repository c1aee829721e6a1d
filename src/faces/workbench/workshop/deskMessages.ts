/** What the page and its desk say to each other: checks, and questions about single numbers. All of it is plain data. */

import type { CheckedAnalogy } from '../../../answer/analogies/model.ts';
import type { ExpressionProblem } from '../../../answer/expression/model.ts';
import type { SweepRange } from '../../../answer/inputs/model.ts';
import type { CheckedSentence } from '../../../answer/sentences/model.ts';
import type { MapRequest, Sweep, SweepMap, SweepRequest } from '../../../answer/sweeps/model.ts';
import type { WorthTable } from '../../../answer/worth/index.ts';
import type { Outcome, Problem } from '../../../numerics/problem.ts';
import type { Study } from '../../../study/model.ts';
import type { ScriptAnswer } from '../../../telling/script/index.ts';

/** A number of the engines shown, where it holds. */
export interface SpanPlace {
  /** Name in the catalogue. */ readonly quantity: string;
  /** Geometric [m]; `vacuum`; null where the quantity is the same everywhere. */
  readonly altitude: number | 'vacuum' | null;
}

/** 95 % of the draws lie between the two [SI]. */
export interface Span {
  readonly low: number;
  readonly high: number;
}

export interface PairSpans extends SpanPlace {
  /** One an engine; null where it has no number. */ readonly own: readonly (Span | null)[];
  /** Second less first: what they share cancels. */ readonly difference: Span | null;
}

/** An input that a number moves with. */
export interface HangsOn {
  readonly label: string;
  /** Name in the catalogue. */ readonly quantity: string;
  /** [SI] */ readonly value: number;
  /** Change of the number for one per cent more of the input, as a share of it [–]. */ readonly effect: number;
}

/** Where one number comes from, as far as it takes computing. */
export interface Pedigree {
  /** [SI] at the study's middle values */ readonly value: number;
  /** [SI] 95 % of the draws lie between them */ readonly low: number;
  readonly high: number;
  /** Shares of the spread by what is not known, most first [–]. */
  readonly shares: readonly { readonly label: string; readonly share: number }[];
  /** By each of several published models that stand beside each other [SI]. */
  readonly alternatives: readonly { readonly by: string; readonly value: number | null }[];
  /** Inputs it moves with, most first. */ readonly hangsOn: readonly HangsOn[];
}

/** What a quantity may be followed against. */
export interface SweepChoice {
  /** As a sweep names it. */ readonly name: string;
  readonly label: string;
  /** Name in the catalogue. */ readonly quantity: string;
  /** A range worth looking over. */ readonly range: SweepRange;
}

/** One of the study's needs, answered. */
export interface NeedTold {
  readonly id: string;
  readonly title: string | null;
  readonly words: readonly string[];
  /** Both sides over the range that was looked over. */ readonly sweep: Sweep;
}

export type SweptFound = Sweep | SweepMap;

/** How far a sweep or a map has come. */
export interface SweepSoFar {
  /** Null until there is something to see. */ readonly found: SweptFound | null;
  readonly done: number;
  readonly most: number;
}

/** The script as it stands in the page, with what is found of the sentences so far. */
export interface ScriptAsked {
  readonly text: string;
  readonly judged: readonly (CheckedSentence | CheckedAnalogy)[];
  /** The record of its numbers as its file has it. */ readonly record: string | null;
  /** Name of a cut that it asks for; null: the whole. */ readonly cut: string | null;
}
export interface ScriptShown {
  readonly answer: ScriptAnswer;
  /** Its numbers as they are now, to be recorded. */ readonly record: string;
}

export interface DeskQuestions {
  readonly script: { readonly asked: ScriptAsked; readonly told: Outcome<ScriptShown> };
  /** Of an engine or a vehicle. */
  readonly choices: { readonly asked: { readonly owner: string }; readonly told: readonly SweepChoice[] };
  /** A sweep or a map: one of the study's own by its id, or one that is tried out. */
  readonly sweep: {
    readonly asked:
      | { readonly id: string }
      | { readonly mapId: string }
      | { readonly request: SweepRequest }
      | { readonly mapRequest: MapRequest };
    readonly told: Outcome<SweptFound>;
  };
  /** Whether a test can be read; null: it can. */
  readonly test: { readonly asked: { readonly text: string }; readonly told: ExpressionProblem | null };
  /** A sentence that is being written, on a few draws; null: it has no test that can be read. */
  readonly judged: {
    readonly asked: { readonly say: string; readonly holds: string };
    readonly told: Outcome<CheckedSentence | null>;
  };
  /** Gain and price of the pair. */
  readonly worth: { readonly asked: object; readonly told: Outcome<WorthTable> };
  /** One of the study's needs, by its id. */
  readonly need: { readonly asked: { readonly id: string }; readonly told: Outcome<NeedTold> };
  /** Of one quantity as a test names it. */
  readonly pedigree: { readonly asked: { readonly expression: string }; readonly told: Outcome<Pedigree> };
  readonly spans: {
    readonly asked: { readonly engines: readonly string[]; readonly places: readonly SpanPlace[] };
    readonly told: readonly PairSpans[];
  };
}
export type QuestionKind = keyof DeskQuestions;
export type Asked<Kind extends QuestionKind> = DeskQuestions[Kind]['asked'];
export type ToldOf<Kind extends QuestionKind> = DeskQuestions[Kind]['told'];

export type DeskOrder =
  /** A study to check; all work on the one before ends. */
  | {
      readonly kind: 'study';
      readonly epoch: number;
      readonly study: Study;
      /** Whether its sentences are to be judged now; questions are answered either way. */
      readonly checks: boolean;
    }
  /** All work ends; nothing takes its place yet. */
  | { readonly kind: 'stop' }
  | { readonly kind: 'forget'; readonly number: number }
  | {
      [Kind in QuestionKind]: {
        readonly kind: 'question';
        readonly number: number;
        readonly about: Kind;
        readonly asked: Asked<Kind>;
      };
    }[QuestionKind];

/** `first look`: at middle values or on few points; `decided`: complete but for flip points; `final`. */
export type CheckStage = 'first look' | 'decided' | 'final';

export type DeskReport =
  | {
      readonly kind: 'sentences';
      readonly epoch: number;
      readonly stage: CheckStage;
      readonly sentences: readonly CheckedSentence[];
    }
  /** After the sentences; nothing where the study has no analogies. */
  | {
      readonly kind: 'analogies';
      readonly epoch: number;
      readonly told: Outcome<readonly CheckedAnalogy[]>;
    }
  | { readonly kind: 'progress'; readonly epoch: number; readonly done: number; readonly of: number }
  | { readonly kind: 'problem'; readonly epoch: number; readonly problem: Problem }
  | { readonly kind: 'told'; readonly number: number; readonly told: unknown }
  | { readonly kind: 'so far'; readonly number: number; readonly found: SweepSoFar }
  /** The work was ended before it was done. */
  | { readonly kind: 'ended'; readonly number: number }
  /** A fault of the program, for the console. */
  | { readonly kind: 'fault'; readonly number: number | null; readonly message: string };
