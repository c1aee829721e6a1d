/** The sweep or map that is tried out on the page: what is followed, against what, and how far it has come. */

import { computed, effect, signal } from '@preact/signals';
import type { MapRequest, SweepRequest } from '../../../answer/sweeps/model.ts';
import type { Problem } from '../../../numerics/problem.ts';
import { askDesk, QuestionEnded } from '../workshop/desk.ts';
import type { Asked, SweepChoice, SweptFound } from '../workshop/deskMessages.ts';
import { isInFlight, isOfMoment, ofEngine, ofVehicle, sweepable } from './followed.ts';
import { mapKey, ownSweeps, shownKey, TRIAL } from './ownSweeps.ts';
import { engineInputs, shownEngines } from './pair.ts';
import { solved } from './studyStore.ts';
import { type Ends, endsOf, noEnds, type TypedEnds } from './sweepEnds.ts';
import { openCard, panel } from './view.ts';

/** Places offered; one that a number was asked at comes with it. */
const usualPlaces: readonly string[] = ['pad', '10 km', 'vacuum'];
export const triedQuantity = signal('specificImpulse');
export const triedInput = signal('nozzle.areaRatio');
/** The second input of a map; empty: curves over the first alone. */
export const triedSecond = signal('');
/** What a map is of: an engine shown, or the second less the first. */
export const triedOwner = signal('');
export const triedPlace = signal('vacuum');
export const triedPlaces = computed(() => [...new Set([...usualPlaces, triedPlace.value])]);
/** Vehicle whose flight is followed; empty: the first. */
export const triedVehicle = signal('');
/** Ends of the first input, as typed. */
export const typedEnds = signal<TypedEnds>(noEnds);
/** It waits until somebody looks. */
export const isTrying = computed(() => panel.value === 'sweeps' && openCard.value === null);

export const triedChoices = signal<readonly SweepChoice[]>([]);
export const found = signal<SweptFound | null>(null);
export const progress = signal<{ readonly done: number; readonly most: number } | null>(null);
export const sweepProblem = signal<Problem | null>(null);
/** Id of the engine or vehicle that the choices are of. */
let choicesOf = '';
let running: AbortController | null = null;

const points = 25;
/** Along each side of a map. */
const mapPoints = 13;
const LESS = ' - ';

/** Whether a place has to be said: the quantity hangs on the surroundings, and these do not move. */
export const needsPlace = computed(
  () =>
    sweepable.find(({ name }) => name === triedQuantity.value)?.place === 'altitude' &&
    ![shownInput.value, triedSecond.value].some((name) => name === 'altitude' || name === 'ambientPressure'),
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
  ofEngine(engine, triedQuantity.value, needsPlace.value ? triedPlace.value : null);

/** Null where an engine is followed. */
export const followedVehicle = computed(() => {
  const vehicles = solved.value?.study.vehicles ?? [];
  if (!isInFlight(triedQuantity.value)) return null;
  return vehicles.find(({ id }) => id === triedVehicle.value) ?? vehicles[0] ?? null;
});

/** What a flight is followed against: its moments against the time, the whole of it against inputs of the vehicle. */
export const offeredChoices = computed<readonly SweepChoice[]>(() => {
  const isMoment = isOfMoment(triedQuantity.value);
  const isFlight = isInFlight(triedQuantity.value);
  const conditions = ['altitude', 'ambientPressure', 'throttle'];
  return triedChoices.value.filter(({ name }) => {
    if (isMoment) return name === 'time';
    return name !== 'time' && !(isFlight && conditions.includes(name));
  });
});

/** What is chosen, while it is offered; else the first offered. */
const firstChoice = computed<SweepChoice | undefined>(
  () => offeredChoices.value.find(({ name }) => name === triedInput.value) ?? offeredChoices.value[0],
);
export const shownInput = computed(() => firstChoice.value?.name ?? '');

export const ends = computed<Ends | null>(() =>
  firstChoice.value === undefined ? null : endsOf(firstChoice.value, typedEnds.value),
);
export function typeEnd(end: keyof TypedEnds, text: string): void {
  typedEnds.value = { ...typedEnds.value, [end]: text.trim() === '' ? null : text };
}
/** Another input has ends of its own. */
export function chooseInput(name: string): void {
  triedInput.value = name;
  typedEnds.value = noEnds;
}
export function follow(quantity: string): void {
  triedQuantity.value = quantity;
  typedEnds.value = noEnds;
}

const secondChoice = computed<SweepChoice | undefined>(() =>
  followedVehicle.value !== null
    ? undefined
    : offeredChoices.value.find(({ name }) => name === triedSecond.value && name !== shownInput.value),
);

export const triedRequest = computed<SweepRequest | null>(() => {
  const [choice, between] = [firstChoice.value, ends.value];
  if (choice === undefined || between === null) return null;
  const vehicle = followedVehicle.value;
  const engines = shownEngines.value.map(({ id }) => id);
  return {
    id: null,
    title: null,
    of:
      vehicle === null
        ? engines.map(expressionOf)
        : [...new Set(engines.map((id) => ofVehicle(vehicle, triedQuantity.value, id)))],
    range: { over: choice.name, ...between.range },
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
export const triedMap = computed<MapRequest | null>(() => {
  const [across, up, between] = [firstChoice.value, secondChoice.value, ends.value];
  const owner = mapOwner.value;
  if (across === undefined || up === undefined || between === null || owner === '') return null;
  return {
    id: null,
    title: null,
    of: owner.split(LESS).map(expressionOf).join(LESS),
    across: { over: across.name, ...between.range },
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

/** Sweeps of this quantity, where it was asked. @param place as a test writes it, e.g. `12 km`; null: none */
export function beginSweep(quantity: string, place: string | null): void {
  openCard.value = null;
  panel.value = 'sweeps';
  chosenSweep.value = TRIAL;
  follow(quantity);
  if (place !== null) triedPlace.value = place;
}

/** The same against this input, of this vehicle where it is of a flight. */
export function beginSweepAgainst(quantity: string, input: string | null, vehicle: string | null): void {
  beginSweep(quantity, null);
  if (vehicle !== null) triedVehicle.value = vehicle;
  if (input !== null) chooseInput(input);
}

function quietly(error: unknown): void {
  if (!(error instanceof QuestionEnded)) reportError(error);
}

/** Follows what is chosen, and the study, while the sweeps are in sight. */
export function followSweep(): void {
  effect(() => {
    const first = engineInputs.value.find(({ id }) => id === shownEngines.value[0]?.id);
    const owner = followedVehicle.value ?? first;
    if (!isTrying.value || solved.value === null || owner === undefined) return;
    if (owner.id !== choicesOf) triedChoices.value = [];
    choicesOf = owner.id;
    askDesk('choices', { owner: owner.id }).then((choices) => {
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
