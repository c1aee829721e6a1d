/** The sweep that is tried out on the page: what is followed, against what, and how far it has come. */

import { computed, effect, signal } from '@preact/signals';
import { type CatalogueEntry, catalogue } from '../../../answer/catalogue.ts';
import type { Sweep, SweepRequest } from '../../../answer/sweeps/model.ts';
import type { Problem } from '../../../numerics/problem.ts';
import { askDesk, QuestionEnded } from '../workshop/desk.ts';
import type { Asked, SweepChoice } from '../workshop/deskMessages.ts';
import { engineInputs, shownEngines } from './pair.ts';
import { commitEdits, solved } from './studyStore.ts';
import { openCard, panel } from './view.ts';

export type TriedPlace = 'pad' | '10 km' | 'vacuum';
export const triedPlaces: readonly TriedPlace[] = ['pad', '10 km', 'vacuum'];

/** Quantities that are one number of an engine, or one number at a place. */
export const sweepable: readonly CatalogueEntry[] = catalogue.filter(
  ({ place, part, notAsked, along }) =>
    (place === 'engine' || place === 'altitude') &&
    part?.needed !== true &&
    notAsked === undefined &&
    along === undefined,
);

export const triedQuantity = signal('specificImpulse');
export const triedInput = signal('nozzle.areaRatio');
export const triedPlace = signal<TriedPlace>('vacuum');
/** It waits until somebody looks. */
export const isTrying = computed(() => panel.value === 'sweeps' && openCard.value === null);

export const triedChoices = signal<readonly SweepChoice[]>([]);
export const found = signal<Sweep | null>(null);
export const progress = signal<{ readonly done: number; readonly most: number } | null>(null);
export const sweepProblem = signal<Problem | null>(null);
let running: AbortController | null = null;

const points = 25;

/** Whether a place has to be said: the quantity hangs on the surroundings, and these do not move. */
export const needsPlace = computed(
  () =>
    sweepable.find(({ name }) => name === triedQuantity.value)?.place === 'altitude' &&
    triedInput.value !== 'altitude' &&
    triedInput.value !== 'ambientPressure',
);

/** Id of the study's sweep that is shown; null: the one that is tried out. */
export const shownSweep = signal<string | null>(null);

const request = computed<Asked<'sweep'> | null>(() => {
  const own = solved.value?.study.sweeps.find(({ id }) => id === shownSweep.value);
  if (own !== undefined) return { id: own.id };
  const tried = triedRequest.value;
  return tried === null ? null : { request: tried };
});

const triedRequest = computed<SweepRequest | null>(() => {
  const choice = triedChoices.value.find(({ name }) => name === triedInput.value);
  if (choice === undefined) return null;
  const place = needsPlace.value ? `(${triedPlace.value})` : '';
  return {
    id: null,
    title: null,
    of: shownEngines.value.map(({ id }) => `${id}.${triedQuantity.value}${place}`),
    range: { over: choice.name, ...choice.range },
    engines: null,
    points,
  };
});

export function cancelSweep(): void {
  running?.abort();
  running = null;
  progress.value = null;
}

/** Sweeps of this quantity, against the area ratio to begin with. */
export function beginSweep(quantity: string): void {
  openCard.value = null;
  panel.value = 'sweeps';
  shownSweep.value = null;
  triedQuantity.value = quantity;
}

/** Writes the sweep that is tried out into the study, and shows it as the study's own. */
export async function keepSweep(): Promise<void> {
  const tried = triedRequest.value;
  if (tried === null) return;
  const id = freshId();
  const problems = await commitEdits([{ list: 'sweeps', add: { id, of: tried.of, over: tried.range.over } }]);
  if (problems[0] !== undefined) sweepProblem.value = problems[0];
  else shownSweep.value = id;
}

function freshId(): string {
  const taken = new Set(solved.value?.study.sweeps.map(({ id }) => id));
  const plain = `${triedQuantity.value}-${triedInput.value}`.replace(/[^A-Za-z0-9-]+/g, '-');
  let id = plain;
  for (let number = 2; taken.has(id); number++) id = `${plain}-${number}`;
  return id;
}

function quietly(error: unknown): void {
  if (!(error instanceof QuestionEnded)) reportError(error);
}

/** Follows what is chosen, and the study, while the sweeps are in sight. */
export function followSweep(): void {
  effect(() => {
    const first = engineInputs.value.find(({ id }) => id === shownEngines.value[0]?.id);
    if (!isTrying.value || solved.value === null || first === undefined) return;
    askDesk('choices', { engine: first.id }).then((choices) => {
      triedChoices.value = choices;
    }, quietly);
  });
  effect(() => {
    const asked = request.value;
    cancelSweep();
    found.value = null;
    sweepProblem.value = null;
    if (!isTrying.value || asked === null) return;
    const mine = new AbortController();
    running = mine;
    progress.value = { done: 0, most: points };
    askDesk('sweep', asked, mine.signal, ({ sweep, done, most }) => {
      if (sweep !== null) found.value = sweep;
      progress.value = { done, most };
    })
      .then((told) => {
        if (told.ok) found.value = told.value;
        else sweepProblem.value = told.problem;
        progress.value = null;
      })
      .catch(quietly);
  });
}
