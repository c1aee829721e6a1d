/** Which engines stand side by side. */

import { computed, effect } from '@preact/signals';
import type { EngineAnswer } from '../../../answer/model.ts';
import type { Problem } from '../../../numerics/problem.ts';
import type { EngineInput } from '../../../study/model.ts';
import { ENGINE_STYLES, type EngineStyle } from '../../../telling/look/engineStyles.ts';
import { ladderStep } from '../../solved/ladder.ts';
import { altitudeSteps } from './altitude.ts';
import { estimateOf, isEstimated, piecesAreNewest } from './estimates.ts';
import type { ShownLadder } from './ladders.ts';
import { solved } from './studyStore.ts';
import { chosenPair } from './view.ts';

/** One engine of the study as the page shows it: solved, or failed with the reason. */
export interface ShownEngine {
  readonly id: string;
  readonly input: EngineInput;
  /** Left or right. */ readonly side: 'first' | 'second';
  /** Hue, marker and dash: by place in the study, so that an engine keeps them whatever stands beside it. */
  readonly style: EngineStyle;
  readonly result:
    | ({ readonly ok: true } & Solved)
    /** `before`: its last good result, to stay in sight greyed; null where there was none. */
    | {
        readonly ok: false;
        readonly problem: Problem;
        readonly before: Solved | null;
        /** It has not failed: it is still being worked out. */ readonly isAwaited: boolean;
      };
  /** What is on screen of it while its inputs move; absent: it is as answered in full. */ readonly standing?: Standing;
}

/** An estimate, drawn in its own shape or still in the one before; or the answer before, since only the full one can tell. */
export type Standing = 'estimate' | 'estimate in the shape before' | 'before';

export interface Solved {
  readonly answer: EngineAnswer;
  readonly ladder: ShownLadder;
}

/** Last good result of each engine, by id. */
const lastGood = new Map<string, Solved>();
effect(() => {
  for (const [id, answer] of Object.entries(solved.value?.answer.engines ?? {})) {
    const ladder = solved.value?.ladders[id];
    if (ladder !== undefined) lastGood.set(id, { answer, ladder });
  }
});

/** All engines of the study, in its order. */
export const engineInputs = computed<readonly EngineInput[]>(() => solved.value?.study.engines ?? []);

const pairIds = computed<readonly string[]>(() => {
  const ids = engineInputs.value.map((engine) => engine.id);
  const chosen = chosenPair.value;
  if (chosen?.every((id) => ids.includes(id)) === true) return chosen;
  const compare = solved.value?.study.compare;
  if (compare !== null && compare !== undefined) return [compare.base, compare.other];
  return ids.slice(0, 2);
});

/** Of pieces that come, most are of no engine shown: then the list stays the same one. */
let shownBefore: readonly ShownEngine[] = [];

/** One or two engines. */
export const shownEngines = computed<readonly ShownEngine[]>(() => {
  const study = solved.value;
  if (study === null) return [];
  const now = enginesOf();
  if (!areSame(now, shownBefore)) shownBefore = now;
  return shownBefore;

  function enginesOf(): readonly ShownEngine[] {
    return pairIds.value.flatMap((id, index) => {
      const input = engineInputs.value.find((engine) => engine.id === id);
      if (input === undefined) return [];
      const side = index === 0 ? 'first' : 'second';
      return [{ id, input, side, style: styleOf(id), result: resultOf(id) } satisfies ShownEngine];
    });
  }

  function resultOf(id: string): ShownEngine['result'] {
    const answer = study?.answer.engines[id];
    const ladder = study?.ladders[id];
    if (answer !== undefined && ladder !== undefined) return { ok: true, answer, ladder };
    const problem = study?.answer.failed[id];
    const before = lastGood.get(id) ?? null;
    if (problem === undefined && study?.awaited.includes(id) === true)
      return { ok: false, before, isAwaited: true, problem: AWAITED };
    return { ok: false, before, isAwaited: false, problem: problem ?? NO_RESULT };
  }
});

const AWAITED: Problem = {
  code: 'engine-awaited',
  what: 'It is being worked out.',
  mend: 'It follows.',
};
const NO_RESULT: Problem = {
  code: 'engine-without-result',
  what: 'There is no result for this engine.',
  mend: 'Change an input or reload the page.',
};

const areSame = (a: readonly ShownEngine[], b: readonly ShownEngine[]): boolean =>
  a.length === b.length && a.every((one, i) => isSame(one, b[i]));

function isSame(one: ShownEngine, other: ShownEngine | undefined): boolean {
  if (one.id !== other?.id || one.input !== other.input || one.style !== other.style) return false;
  const [a, b] = [one.result, other.result];
  if (a.ok) return b.ok && a.answer === b.answer && a.ladder === b.ladder;
  return !b.ok && a.before === b.before && a.isAwaited === b.isAwaited && a.problem === b.problem;
}

let inputsBefore: readonly ShownEngine[] = [];

/** The same for the sake of their inputs: the same list until an input, or a reason to fail, is another. Its results may be older. */
export const shownInputs = computed<readonly ShownEngine[]>(() => {
  const now = shownEngines.value;
  if (!areSame(now.map(withoutResult), inputsBefore.map(withoutResult))) inputsBefore = now;
  return inputsBefore;
});

const withoutResult = (engine: ShownEngine): ShownEngine => ({
  ...engine,
  result:
    engine.result.ok || engine.result.isAwaited
      ? { ok: false, problem: AWAITED, before: null, isAwaited: true }
      : { ...engine.result, before: null },
});

/** Both are there, or have failed. */
export const pairIsThere = computed(
  () =>
    shownEngines.value.length > 0 &&
    shownEngines.value.every(({ id }) => solved.value?.awaited.includes(id) !== true),
);

/** Steps of the altitude that the engines shown have rows at; the finest ones follow. */
effect(() => {
  const coarsest = Math.max(1, ...shownEngines.value.map(({ id }) => solved.value?.ladders[id]?.every ?? 1));
  altitudeSteps.value = 1000 / ladderStep / coarsest;
});

/** Names of the engines shown that are still being worked out. */
export const awaitedShown = computed(() =>
  shownEngines.value.flatMap(({ id, input }) =>
    solved.value?.awaited.includes(id) === true ? [input.name] : [],
  ),
);

/** The engines shown as they are to be drawn and told: with first estimates of those whose inputs move. */
export const enginesOnScreen = computed<readonly ShownEngine[]>(() => {
  const study = solved.value;
  if (!isEstimated.value && study?.isWhole !== false) return shownEngines.value;
  const isNewest = study?.isWhole === false && piecesAreNewest();
  const all = shownEngines.value.map((engine): ShownEngine => {
    const isAwaited = study?.awaited.includes(engine.id) === true;
    // Its full answer has come; others may still be on their way.
    if (isNewest && !isAwaited) return engine;
    const estimate = estimateOf(engine.id);
    if (estimate === undefined)
      return isAwaited && engine.result.ok ? { ...engine, standing: 'before' } : engine;
    if (estimate === null) return { ...engine, standing: 'before' };
    const { answer, ladder, isShaped } = estimate;
    return {
      ...engine,
      result: { ok: true, answer, ladder },
      standing: isShaped ? 'estimate' : 'estimate in the shape before',
    };
  });
  // Where none is estimated it is the same list: what hangs on it need not be drawn anew.
  return all.every((engine, i) => engine === shownEngines.value[i]) ? shownEngines.value : all;
});

/** Any engine shown has published figures. */
export const publishedShown = computed(() =>
  shownEngines.value.some(({ input }) => input.published !== null),
);

/** Engines that could not be computed and are not on screen: their names and why. */
export const failedElsewhere = computed(() =>
  Object.entries(solved.value?.answer.failed ?? {})
    .filter(([id]) => !pairIds.value.includes(id))
    .map(([id, problem]) => ({
      id,
      name: engineInputs.value.find((engine) => engine.id === id)?.name ?? id,
      problem,
    })),
);

/** There are four styles; an engine beyond the fourth takes one that its neighbour does not have. */
function styleOf(id: string): EngineStyle {
  const places = pairIds.value.map((shown) => engineInputs.value.findIndex((engine) => engine.id === shown));
  const own = places[pairIds.value.indexOf(id)] ?? 0;
  const other = places.find((place) => place !== own);
  const free = ENGINE_STYLES.find((_, index) => index !== other);
  return ENGINE_STYLES[own] ?? free ?? ENGINE_STYLES[0];
}

/** Whether the pair on screen is the one the study's answer speaks of. */
export const pairIsCompared = computed(() => {
  const comparison = solved.value?.answer.comparison;
  if (comparison === null || comparison === undefined) return false;
  const [base, other] = pairIds.value;
  return comparison.base === base && comparison.other === other;
});

/** Name of an engine, or of a vehicle. */
export function ownerName(id: string | null): string | undefined {
  const study = solved.value?.study;
  return [...(study?.engines ?? []), ...(study?.vehicles ?? [])].find((owner) => owner.id === id)?.name;
}

/** What the comparison holds equal, in words; empty for one engine or another pair. */
export const heldEqual = computed(() => {
  const comparison = solved.value?.answer.comparison;
  if (!pairIsCompared.value || comparison === null || comparison === undefined) return '';
  return comparison.heldEqual.length > 0 ? comparison.heldEqual.join(', ') : 'nothing';
});

export function choosePair(first: string, second: string): void {
  chosenPair.value = [first, second];
}
