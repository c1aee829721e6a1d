/**
 * First estimates of the engines whose inputs move: on screen within a frame or two, marked as such, until the full
 * answer takes their place. Nothing else is made of them: files, verdicts and spans rest on `solved` alone.
 */

import { batch, computed, signal } from '@preact/signals';
import { type AnsweredEngine, type EstimatedEngine, estimateEngine } from '../../../answer/estimate/index.ts';
import type { ConditionRow } from '../../../answer/model.ts';
import type { Ladder } from '../../solved/ladder.ts';
import { rowLike } from '../../solved/packedRows.ts';
import type { SolvedStudy } from '../../solved/solvedStudy.ts';
import { askEstimate, endEstimate, estimateFrom } from '../workshop/estimator.ts';
import type { Bases, Change } from '../workshop/estimatorMessages.ts';
import type { Edit } from '../workshop/messages.ts';
import { CURVE_EVERY, type EstimatedLadder } from './ladders.ts';

/** An engine as first estimated. */
export interface Estimate extends Pick<EstimatedEngine, 'answer' | 'isShaped'> {
  readonly ladder: EstimatedLadder;
}

/** What is known of the engines that changes touch; null: nothing on screen is an estimate. */
const known = signal<ReturnType<typeof estimatesFrom> | null>(null);

/** Null where only the full answer can tell what becomes of this engine; undefined where nothing does. */
export const estimateOf = (id: string): Estimate | null | undefined => known.value?.(id);

/** Some of what is on screen is an estimate, or waits for the full answer. */
export const isEstimated = computed(() => known.value !== null);

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

/** The last study that was answered in full. */
export const lastAnswered = (): SolvedStudy | null => answered;

/** Number of the text whose pieces are on screen. */
let shownSerial = 0;

export function pieceShown(serial: number): void {
  shownSerial = serial;
}

/** Nothing has changed since the text whose pieces are on screen: what has come of it is the newest there is. */
export const piecesAreNewest = (): boolean =>
  draft.value === null && made.value.every(({ serial }) => serial !== null && serial <= shownSerial);

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

/**
 * A change that is being made; the same is handed to {@link changeWritten} or {@link changeRefused}.
 *
 * @param under one that was begun before and is made on this one; null: it is the last
 */
export function changeBegun(change: Change, under: Made | null = null): Made {
  const one: Made = { change, serial: null };
  const before = under === null ? -1 : made.value.indexOf(under);
  const place = before < 0 ? made.value.length : before;
  batch(() => {
    made.value = [...made.value.slice(0, place), one, ...made.value.slice(place)];
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
    estimateFrom(text, throatRadiiOf(solved));
  }
  ask();
}

function throatRadiiOf({ answer }: SolvedStudy): Record<string, number> {
  return Object.fromEntries(
    Object.entries(answer.engines).map(([id, { contour }]) => [id, contour.throatRadius]),
  );
}

function ask(): void {
  const changes = [
    ...made.value.map(({ change }) => change),
    ...(draft.value ? [{ edits: draft.value }] : []),
  ];
  if (changes.length > 0 && answered !== null) askEstimate(changes, hear);
  else {
    endEstimate();
    known.value = null;
  }
}

/** An estimate that cannot be had leaves the one before in sight: half a word is being typed. */
function hear(bases: Bases | null): void {
  if (answered === null || bases === null) return;
  known.value = Object.keys(bases).length === 0 ? null : estimatesFrom(answered, bases);
}

/** Each engine is estimated when it is first asked for; one off screen only where another takes its size from it. */
function estimatesFrom(
  { answer, ladders }: SolvedStudy,
  bases: Bases,
): (id: string) => Estimate | null | undefined {
  const found = new Map<string, EstimatedEngine | null>();
  const shown = new Map<string, Estimate>();
  const engineOf = (id: string): AnsweredEngine | null => {
    const [engine, ladder] = [answer.engines[id], ladders[id]];
    if (engine === undefined || ladder === undefined) return null;
    return { answer: engine, rows: ladder.rows, vacuum: ladder.vacuum };
  };
  const estimated = (id: string): EstimatedEngine | null | undefined => {
    const before = found.get(id);
    if (before !== undefined || !(id in bases)) return before;
    const [both, engine] = [bases[id], engineOf(id)];
    if (!both || engine === null) return null;
    const { size } = both.now.input;
    const source = size.by !== 'same' ? null : size.as in bases ? estimated(size.as) : engineOf(size.as);
    const others = size.by === 'same' && source ? new Map([[size.as, source]]) : new Map();
    const outcome = estimateEngine(engine, both.before, both.now, others, CURVE_EVERY);
    const estimate = outcome.ok ? outcome.value : null;
    found.set(id, estimate);
    return estimate;
  };
  return (id) => {
    const engine = estimated(id);
    const ladder = ladders[id];
    if (!engine || ladder === undefined) return engine === undefined ? undefined : null;
    const estimate = shown.get(id) ?? estimateShown(engine, ladder);
    shown.set(id, estimate);
    return estimate;
  };
}

function estimateShown(engine: EstimatedEngine, before: Ladder): Estimate {
  const { answer, isShaped, rows, vacuum, likeness } = engine;
  const opened = new Map<number, ConditionRow>();
  const openedAt = (index: number): ConditionRow => {
    const one = opened.get(index);
    if (one !== undefined) return one;
    const { row, like } = engine.rowAt(index);
    const whole = rowLike(before, row, Math.min(like, before.rows.length - 1), likeness);
    opened.set(index, whole);
    return whole;
  };
  return { answer, isShaped, ladder: { rows, vacuum, rowAt: openedAt } };
}
