/** The sweep or map that is tried out on the page: what is followed, against what, and how far it has come. */

import { computed, effect, signal } from '@preact/signals';
import { type CatalogueEntry, catalogue } from '../../../answer/catalogue.ts';
import type { MapRequest, SweepRequest } from '../../../answer/sweeps/model.ts';
import type { Problem } from '../../../numerics/problem.ts';
import type { ListEntry } from '../../../study/listEdit.ts';
import { askDesk, QuestionEnded } from '../workshop/desk.ts';
import type { Asked, SweepChoice, SweptFound } from '../workshop/deskMessages.ts';
import { mapKey, ownSweeps, shownKey, TRIAL } from './ownSweeps.ts';
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
/** The second input of a map; empty: curves over the first alone. */
export const triedSecond = signal('');
/** What a map is of: an engine shown, or the second less the first. */
export const triedOwner = signal('');
export const triedPlace = signal<TriedPlace>('vacuum');
/** It waits until somebody looks. */
export const isTrying = computed(() => panel.value === 'sweeps' && openCard.value === null);

export const triedChoices = signal<readonly SweepChoice[]>([]);
export const found = signal<SweptFound | null>(null);
export const progress = signal<{ readonly done: number; readonly most: number } | null>(null);
export const sweepProblem = signal<Problem | null>(null);
let running: AbortController | null = null;

const points = 25;
/** Along each side of a map. */
const mapPoints = 13;
const LESS = ' - ';

/** Whether a place has to be said: the quantity hangs on the surroundings, and these do not move. */
export const needsPlace = computed(
  () =>
    sweepable.find(({ name }) => name === triedQuantity.value)?.place === 'altitude' &&
    ![triedInput.value, triedSecond.value].some((name) => name === 'altitude' || name === 'ambientPressure'),
);

/** The key of the one somebody has chosen to see, or {@link TRIAL}; null: nobody has chosen. */
export const chosenSweep = signal<string | null>(null);
export const ownOnes = computed(() => ownSweeps(solved.value?.study));
/** The study's own that is shown; null: the one that is tried out. */
export const shownSweep = computed(() => shownKey(chosenSweep.value, ownOnes.value));

const request = computed<Asked<'sweep'> | null>(() => {
  const study = solved.value?.study;
  const key = shownSweep.value;
  const map = study?.maps.find(({ id }) => mapKey(id) === key);
  if (map !== undefined) return { mapId: map.id };
  const own = study?.sweeps.find(({ id }) => id === key);
  if (own !== undefined) return { id: own.id };
  if (triedMap.value !== null) return { mapRequest: triedMap.value };
  const tried = triedRequest.value;
  return tried === null ? null : { request: tried };
});

const expressionOf = (engine: string): string =>
  `${engine}.${triedQuantity.value}${needsPlace.value ? `(${triedPlace.value})` : ''}`;

const choiceOf = (name: string): SweepChoice | undefined =>
  triedChoices.value.find((choice) => choice.name === name);

const triedRequest = computed<SweepRequest | null>(() => {
  const choice = choiceOf(triedInput.value);
  if (choice === undefined) return null;
  return {
    id: null,
    title: null,
    of: shownEngines.value.map(({ id }) => expressionOf(id)),
    range: { over: choice.name, ...choice.range },
    engines: null,
    points,
  };
});

/** Whose quantity a map may show. */
export const mapOwners = computed<readonly { readonly key: string; readonly label: string }[]>(() => {
  const engines = shownEngines.value.map(({ id, input }) => ({ key: id, label: input.name }));
  const [first, second] = engines;
  if (first === undefined || second === undefined) return engines;
  const difference = {
    key: [second.key, first.key].join(LESS),
    label: `${second.label} less ${first.label}`,
  };
  return [...engines, difference];
});

/** The one chosen, while it is shown; else the first engine. */
export const mapOwner = computed(
  () => (mapOwners.value.find(({ key }) => key === triedOwner.value) ?? mapOwners.value[0])?.key ?? '',
);

/** Null where curves over one input are tried. */
const triedMap = computed<MapRequest | null>(() => {
  const [across, up] = [choiceOf(triedInput.value), choiceOf(triedSecond.value)];
  const owner = mapOwner.value;
  if (across === undefined || up === undefined || across === up || owner === '') return null;
  return {
    id: null,
    title: null,
    of: owner.split(LESS).map(expressionOf).join(LESS),
    across: { over: across.name, ...across.range },
    up: { over: up.name, ...up.range },
    engines: null,
    points: mapPoints,
  };
});

export const isMapTried = computed(() => triedMap.value !== null);

export function cancelSweep(): void {
  running?.abort();
  running = null;
  progress.value = null;
}

/** Sweeps of this quantity, against the area ratio to begin with. */
export function beginSweep(quantity: string): void {
  openCard.value = null;
  panel.value = 'sweeps';
  chosenSweep.value = TRIAL;
  triedQuantity.value = quantity;
}

/** Writes what is tried out into the study, and shows it as the study's own. */
export async function keepSweep(): Promise<void> {
  const [map, tried] = [triedMap.value, triedRequest.value];
  const study = solved.value?.study;
  if (map !== null) {
    const id = freshId([triedQuantity.value, triedInput.value, triedSecond.value], study?.maps);
    const sides = { across: { over: map.across.over }, up: { over: map.up.over } };
    await keep('maps', { id, of: map.of, ...sides }, mapKey(id));
  } else if (tried !== null) {
    const id = freshId([triedQuantity.value, triedInput.value], study?.sweeps);
    await keep('sweeps', { id, of: tried.of, over: tried.range.over }, id);
  }
}

async function keep(list: 'sweeps' | 'maps', add: ListEntry, key: string): Promise<void> {
  const [problem] = await commitEdits([{ list, add }]);
  if (problem !== undefined) sweepProblem.value = problem;
  else chosenSweep.value = key;
}

function freshId(words: readonly string[], others: readonly { readonly id: string }[] = []): string {
  const taken = new Set(others.map(({ id }) => id));
  const plain = words.join('-').replace(/[^A-Za-z0-9-]+/g, '-');
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
    progress.value = { done: 0, most: 'mapId' in asked || 'mapRequest' in asked ? mapPoints ** 2 : points };
    askDesk('sweep', asked, mine.signal, (soFar) => {
      const { done, most } = soFar;
      if (soFar.found !== null) found.value = soFar.found;
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
