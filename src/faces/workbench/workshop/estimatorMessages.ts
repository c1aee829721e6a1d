/** What page and estimator say to each other. All of it is plain data. */

import type { EngineBasis } from '../../../answer/estimate/index.ts';
import type { Edit } from './messages.ts';

/** What is done to the study answered last. */
export type Change =
  | { readonly edits: readonly Edit[] }
  /** A text in its place: a step back or forth, or a change made elsewhere. */
  | { readonly text: string };

export type EstimatorOrder =
  /** The study that has been answered in full: its text, and √(A_t/π) of its engines [m]. */
  | {
      readonly kind: 'base';
      readonly epoch: number;
      readonly text: string;
      readonly throatRadii: Readonly<Record<string, number>>;
    }
  /** These changes, one after the other. */
  | {
      readonly kind: 'estimate';
      readonly number: number;
      readonly epoch: number;
      readonly changes: readonly Change[];
    };

/** An engine before and after the changes; null: only the full answer can tell. */
export type Bases = Readonly<
  Record<string, { readonly before: EngineBasis; readonly now: EngineBasis } | null>
>;

/** Engines that the changes touch, in an order in which each can take its size from one before; null: not readable. */
export type EstimatorReport =
  | { readonly number: number; readonly epoch: number; readonly bases: Bases | null }
  /** A bug: what was thrown, for the console. */
  | { readonly number: number; readonly epoch: number; readonly fault: string };
