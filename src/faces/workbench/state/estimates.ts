/**
 * First estimates of the engines whose inputs move: on screen within a frame or two, marked as such, until the full
 * answer takes their place. Nothing else is made of them: files, verdicts and spans rest on `solved` alone.
 */

import { batch, computed, signal } from '@preact/signals';
import { type AnsweredEngine, type EstimatedEngine, estimateEngine } from '../../../answer/estimate/index.ts';
import { likeRows } from '../../solved/packedRows.ts';
import type { Ladder, SolvedStudy } from '../../solved/solvedStudy.ts';
import { askEstimate, endEstimate, estimateFrom } from '../workshop/estimator.ts';
import type { Bases, Change } from '../workshop/estimatorMessages.ts';
import type { Edit } from '../workshop/messages.ts';

/** An engine as first estimated. */
export interface Estimate extends Pick<EstimatedEngine, 'answer' | 'isShaped'> {
  readonly ladder: Ladder;
}

/** By id: the estimate; null where only the full answer can tell what becomes of it. */
export const estimates = signal<ReadonlyMap<string, Estimate | null>>(new Map());

/** A change on its way into the study, or being worked out in full. */
export interface Made {
  readonly change: Change;
  /** Number of the text that holds it; null: it is still being written. */ serial: number | null;
}
const made = signal<readonly Made[]>([]);
/** A value under a hand that still moves, or that is being written into a field. */
const draft = signal<readonly Edit[] | null>(null);

/** Something on screen is about to be another. */
export const catchingUp = computed(() => made.value.length > 0 || draft.value !== null);

/** What the estimates are of. */
let answered: SolvedStudy | null = null;

/** Shows what these values would do, as a first estimate; writes nothing. Of several calls the last one counts. */
export function estimateDraft(edits: readonly Edit[]): void {
  draft.value = edits;
  ask();
}

/** The value in hand is no more: taken back, or written. */
export function endDraft(): void {
  if (draft.value === null) return;
  draft.value = null;
  ask();
}

/** A change that is being made; the same is handed to {@link changeWritten} or {@link changeRefused}. */
export function changeBegun(change: Change): Made {
  const one: Made = { change, serial: null };
  batch(() => {
    made.value = [...made.value, one];
    draft.value = null;
  });
  ask();
  return one;
}

/** @param serial number of the text that is being worked out with it */
export function changeWritten(one: Made, serial: number): void {
  one.serial = serial;
}

export function changeRefused(one: Made): void {
  made.value = made.value.filter((each) => each !== one);
  ask();
}

/** The full answer has come, or there is none: all changes up to this text are settled. @param solved null: as before */
export function settleEstimates(serial: number, text: string, solved: SolvedStudy | null): void {
  made.value = made.value.filter((one) => one.serial === null || one.serial > serial);
  if (solved !== null) {
    answered = solved;
    estimateFrom(text);
  }
  ask();
}

function ask(): void {
  const changes = [
    ...made.value.map(({ change }) => change),
    ...(draft.value ? [{ edits: draft.value }] : []),
  ];
  if (changes.length > 0 && answered !== null) askEstimate(changes, hear);
  else {
    endEstimate();
    if (estimates.value.size > 0) estimates.value = new Map();
  }
}

/** An estimate that cannot be had leaves the one before in sight: half a word is being typed. */
function hear(bases: Bases | null): void {
  if (answered === null || bases === null) return;
  estimates.value = estimatesFrom(answered, bases);
}

function estimatesFrom({ answer, ladders }: SolvedStudy, bases: Bases): ReadonlyMap<string, Estimate | null> {
  const others = new Map<string, AnsweredEngine>();
  for (const [id, ladder] of Object.entries(ladders)) {
    const engine = answer.engines[id];
    if (engine !== undefined) others.set(id, { answer: engine, rows: ladder.rows, vacuum: ladder.vacuum });
  }
  const found = new Map<string, Estimate | null>();
  for (const [id, both] of Object.entries(bases)) {
    const known = others.get(id);
    const ladder = ladders[id];
    if (known === undefined || ladder === undefined) continue;
    const estimate = both === null ? null : estimateEngine(known, both.before, both.now, others);
    if (estimate === null || !estimate.ok) {
      found.set(id, null);
      others.delete(id);
      continue;
    }
    others.set(id, estimate.value);
    found.set(id, shown(ladder, estimate.value));
  }
  return found;
}

function shown(
  before: Ladder,
  { answer, isShaped, rows, vacuum, like, likeness }: EstimatedEngine,
): Estimate {
  return { answer, isShaped, ladder: { ...likeRows(before, rows, like, likeness), vacuum } };
}
