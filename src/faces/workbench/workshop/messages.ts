/** What page and worker say to each other. All of it is plain data. */

import type { Ask, Told } from '../../../answer/asked/model.ts';
import type { VehicleWorth } from '../../../answer/worth/index.ts';
import type { Outcome, Problem } from '../../../numerics/problem.ts';
import type { ListEdit } from '../../../study/edit.ts';
import type { StudyProblem } from '../../../study/model.ts';
import type { SolvedPiece } from '../../solved/solvedPiece.ts';
import type { Flights } from '../../solved/solvedStudy.ts';

/** A piece of a study being worked out; an engine that is as it was told last is not told again. */
export type OpenPiece = SolvedPiece | { readonly kind: 'same'; readonly id: string };

export type OpenOutcome =
  /** All of it has been told. */
  | { readonly ok: true }
  | { readonly ok: false; readonly problems: readonly StudyProblem[] }
  /** Nothing could be solved, e.g. the data could not be loaded. */
  | { readonly ok: false; readonly problems: null; readonly problem: Problem };

export type EditOutcome =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly problems: readonly StudyProblem[] };

/** One value to write: a path of the study, entries of lists by their ids, and the text that belongs there; null deletes it. */
export interface ValueEdit {
  readonly path: string;
  readonly value: string | boolean | null;
}
export type Edit = ValueEdit | ListEdit;

/** A study that the server has answered. */
export interface Adopted {
  readonly text: string;
  readonly hash: string;
  /** Null: not known yet. */ readonly vehicles: Flights | null;
}

export type Errand =
  /** The study on screen is the server's answer; it is solved here once something needs its engines. */
  | { readonly kind: 'adopt'; readonly from: Adopted }
  /** Something will need its engines before long. */
  | { readonly kind: 'warm up' }
  | { readonly kind: 'open'; readonly text: string }
  | { readonly kind: 'edit'; readonly text: string; readonly edits: readonly Edit[] }
  /** What the other engine is worth to the vehicles of the study opened last. */
  | { readonly kind: 'weigh' }
  /** Numbers of the engines of the study opened last, or of the air. */
  | { readonly kind: 'tell'; readonly asks: readonly Ask[] }
  /** A number of an engine of another study. */
  | { readonly kind: 'tell of'; readonly text: string; readonly ask: Ask };

export interface Order {
  readonly number: number;
  readonly errand: Errand;
}

export type Delivery =
  /** On the way to an outcome. */
  | { readonly number: number; readonly kind: 'piece'; readonly piece: OpenPiece }
  | {
      readonly number: number;
      readonly kind: 'open';
      readonly outcome: OpenOutcome;
      /** Its flights follow. */ readonly isMoreToCome: boolean;
    }
  /** After an outcome that had none yet. */
  | { readonly number: number; readonly kind: 'flights'; readonly flights: Flights }
  /** Nothing to be told of it. */
  | { readonly number: number; readonly kind: 'done' }
  | { readonly number: number; readonly kind: 'edit'; readonly outcome: EditOutcome }
  | {
      readonly number: number;
      readonly kind: 'weigh';
      readonly outcome: Outcome<readonly VehicleWorth[]>;
    }
  /** One an ask. */
  | { readonly number: number; readonly kind: 'tell'; readonly told: readonly Told[] }
  /** A study that a later one has overtaken. */
  | { readonly number: number; readonly kind: 'given up' }
  /** A bug: what was thrown, for the console. */
  | { readonly number: number; readonly kind: 'failed'; readonly message: string };
