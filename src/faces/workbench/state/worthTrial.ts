/** Longer questions of the pair, worked out on request: whether it is worth it, and what the study’s needs would take. */

import { effect, type Signal, signal } from '@preact/signals';
import type { VehicleWorth, WorthTable } from '../../../answer/worth/index.ts';
import type { Outcome, Problem } from '../../../numerics/problem.ts';
import { askDesk, QuestionEnded } from '../workshop/desk.ts';
import type { NeedTold } from '../workshop/deskMessages.ts';
import { weighVehicles } from '../workshop/workshop.ts';
import { solved } from './studyStore.ts';

/** Something that is worked out when asked for, until the study changes. */
export interface Job<Found> {
  readonly found: Signal<Found | null>;
  /** Null while nothing runs. */ readonly progress: Signal<Progress | null>;
  readonly problem: Signal<Problem | null>;
  readonly start: () => void;
  readonly stop: () => void;
}

interface Progress {
  readonly done: number;
  /** Null until it is known. */ readonly most: number | null;
}

type Work<Found> = (signal: AbortSignal, tell: (progress: Progress) => void) => Promise<Outcome<Found>>;

function jobOf<Found>(work: Work<Found>): Job<Found> {
  const found = signal<Found | null>(null);
  const progress = signal<Progress | null>(null);
  const problem = signal<Problem | null>(null);
  let running: AbortController | null = null;
  const stop = (): void => {
    running?.abort();
    running = null;
    progress.value = null;
  };
  const start = (): void => {
    stop();
    problem.value = null;
    const mine = new AbortController();
    running = mine;
    progress.value = { done: 0, most: null };
    const tell = (now: Progress): void => {
      if (running === mine) progress.value = now;
    };
    work(mine.signal, tell)
      .then((outcome) => {
        if (running !== mine) return;
        if (outcome.ok) found.value = outcome.value;
        else problem.value = outcome.problem;
      })
      .catch((error: unknown) => {
        if (!(error instanceof QuestionEnded)) reportError(error);
      })
      .finally(() => {
        if (running === mine) stop();
      });
  };
  // Of another study it would be untrue.
  effect(() => {
    void solved.value;
    stop();
    found.value = null;
    problem.value = null;
  });
  return { found, progress, problem, start, stop };
}

export interface WorthFound {
  readonly table: WorthTable;
  readonly vehicles: readonly VehicleWorth[];
}

export const worthJob = jobOf<WorthFound>(async (ended, tell) => {
  const table = await askDesk('worth', {}, ended, tell);
  if (!table.ok) return table;
  if (solved.value?.study.vehicles.length === 0)
    return { ok: true, value: { table: table.value, vehicles: [] } };
  const vehicles = await weighVehicles();
  return vehicles.ok ? { ok: true, value: { table: table.value, vehicles: vehicles.value } } : vehicles;
});

/** All needs of the study, one after the other. */
export const needsJob = jobOf<readonly NeedTold[]>(async (ended, tell) => {
  const told: NeedTold[] = [];
  for (const { id } of solved.value?.study.needs ?? []) {
    const one = await askDesk('need', { id }, ended, tell);
    if (!one.ok) return one;
    told.push(one.value);
  }
  return { ok: true, value: told };
});
