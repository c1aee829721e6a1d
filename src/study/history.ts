/** What was done to a study’s text, step by step, so that it can be taken back and done again. Results are no part of it. */

import { applied, changeBetween, inverted, type TextChange } from './textChange.ts';

export interface Step {
  readonly change: TextChange;
  /** What was done, as one says it: `Alder B, chamber pressure: 130 bar`. */ readonly words: string;
  /** Steps of one gesture carry the same key; null stands alone. */ readonly gesture: string | null;
  /** Of its last part [ms]. */ readonly time: number;
  /** `elsewhere`: by another program or window. */ readonly by: 'here' | 'elsewhere';
}

export interface History {
  /** Last one last. */ readonly done: readonly Step[];
  /** Taken back; the next to be done again last. */ readonly undone: readonly Step[];
}

export const emptyHistory: History = { done: [], undone: [] };

/** Parts of a gesture follow each other within this time [ms]. */
const GESTURE_PAUSE = 1500;
const LONGEST_HISTORY = 500;

export interface Done {
  readonly before: string;
  readonly after: string;
  readonly words: string;
  readonly gesture: string | null;
  /** When it was asked for [ms]; writing may take its time. */ readonly begun: number;
  /** When it was done [ms]. */ readonly time: number;
  readonly by: Step['by'];
}

/** The history with one thing more done. Parts of a gesture become one step; what was taken back before is forgotten. */
export function recorded(history: History, { before, after, begun, ...said }: Done): History {
  if (before === after) return history;
  const last = history.done.at(-1);
  const start =
    last !== undefined && isOneGesture(last, { ...said, begun })
      ? applied(before, inverted(last.change))
      : null;
  const earlier = start === null ? history.done : history.done.slice(0, -1);
  // A gesture that ends where it began has done nothing.
  if (start === after) return { done: earlier, undone: [] };
  const step: Step = { ...said, change: changeBetween(start ?? before, after) };
  return { done: [...earlier, step].slice(-LONGEST_HISTORY), undone: [] };
}

function isOneGesture(last: Step, next: Omit<Done, 'before' | 'after'>): boolean {
  return (
    next.gesture !== null &&
    last.gesture === next.gesture &&
    last.by === next.by &&
    next.begun - last.time <= GESTURE_PAUSE
  );
}

export interface Stepped {
  readonly history: History;
  readonly text: string;
  readonly step: Step;
}

/** One step back; null where there is none, or the text is not the one the step led to. */
export function steppedBack({ done, undone }: History, text: string): Stepped | null {
  const step = done.at(-1);
  const before = step === undefined ? null : applied(text, inverted(step.change));
  if (step === undefined || before === null) return null;
  return { history: { done: done.slice(0, -1), undone: [...undone, step] }, text: before, step };
}

/** One step forth again. */
export function steppedForth({ done, undone }: History, text: string): Stepped | null {
  const step = undone.at(-1);
  const after = step === undefined ? null : applied(text, step.change);
  if (step === undefined || after === null) return null;
  // A part done again is no gesture still going on.
  const again: Step = { ...step, gesture: null };
  return { history: { done: [...done, again], undone: undone.slice(0, -1) }, text: after, step };
}
