/** Whole flows on the page: whether they are shown, which are there, and asking the local server for more. */

import { batch, computed, effect, signal, untracked } from '@preact/signals';
import type { Shown } from '../../../answer/flow/index.ts';
import type { Tint } from '../../../telling/look/flowRamps.ts';
import {
  enginesMark,
  type FlowList,
  type FlowsWanted,
  type ListedFlow,
  NO_FLOWS,
  takeIn,
} from '../../flows/flowList.ts';
import { altitude } from '../state/altitude.ts';
import { enginesOnScreen } from '../state/pair.ts';
import { solved, solving } from '../state/studyStore.ts';
import { tint } from '../state/view.ts';
import { finerAsked, finerFields } from './finerFields.ts';
import { askFlows, type FlowsRefused } from './flowLink.ts';
import { forgetMissing } from './painter.ts';

const PLACE = 'plumeline-whole-flow';

/** Asked for; remembered by this browser. */
export const flowAsked = signal(localStorage.getItem(PLACE) === 'shown');
/** Fields shown by what the engines under them are not tinted by; null: by the tint of all. */
export const flowView = signal<'density' | 'density gradient' | null>(null);
/** What fields are shown by. */
export const flowShown = computed<Shown>(() => flowView.value ?? tint.value);
/** Lines that run with the gas. */
export const flowLines = signal(false);
export const flowList = signal<FlowList>(NO_FLOWS);
/** What the person took back; another each time that somebody asks for it. */
const stop = signal({ isAsked: false });

/** Of the inputs as they are solved now. */
export const markNow = computed(() => {
  const study = solved.value?.study;
  return study === undefined ? '' : enginesMark(study.engines);
});

/** Id of the engine whose whole flow a figure over the page shows; null: none does. */
export const flowFigureOf = signal<string | null>(null);

/** Fields by engine, by falling pressure of the air; none while inputs move. */
export const flowsThere = computed((): ReadonlyMap<string, readonly ListedFlow[]> => {
  const found = new Map<string, ListedFlow[]>();
  const mark = markNow.value;
  if (flowList.value.mark !== mark) return found;
  const there = new Map<string, ListedFlow>();
  const own = finerAsked.value && finerFields.value.mark === mark ? finerFields.value.fields : [];
  for (const field of [...flowList.value.fields, ...own]) takeIn(there, field);
  for (const field of there.values()) found.set(field.engine, [...(found.get(field.engine) ?? []), field]);
  for (const fields of found.values()) fields.sort((a, b) => b.ambientPressure - a.ambientPressure);
  return found;
});

/** Those to be shown over the engines. */
export const flowsHere = computed(
  (): ReadonlyMap<string, readonly ListedFlow[]> => (flowAsked.value ? flowsThere.value : new Map()),
);

/** What the page is drawn by: with no whole flow on it the tint of all. */
export const pageShown = computed<Shown>(() => (flowsHere.value.size > 0 ? flowShown.value : tint.value));

/** By what gas is drawn, engines and whole flows alike. */
export function drawBy(chosen: Tint): void {
  batch(() => {
    tint.value = chosen;
    flowView.value = null;
  });
}

export function showFlows(isShown: boolean): void {
  batch(() => {
    flowAsked.value = isShown;
    stop.value = { isAsked: false };
  });
  if (isShown) localStorage.setItem(PLACE, 'shown');
  else {
    localStorage.removeItem(PLACE);
    void stopFlows();
  }
}

/** After a stop, or where the computing ended before the place that one looks at. */
export function goOnWithFlows(): void {
  stop.value = { isAsked: false };
}

/** Ends the computing; what is there stays. */
export async function stopFlows(): Promise<void> {
  stop.value = { isAsked: true };
  take(await askFlows('stop'));
}

/** [ms] after the last edit; between two looks at how far it is */
const QUIET = 1200;
const LOOK = 600;

let round = 0;

/** Follows the study: what is kept is shown at once, the rest computed in the background. */
export function followFlows(): void {
  effect(() => {
    const figure = flowFigureOf.value;
    const isWanted = (flowAsked.value || figure !== null) && !stop.value.isAsked;
    const mark = markNow.value;
    const onScreen = enginesOnScreen.value.map(({ id }) => id);
    const isBusy = solving.value;
    const mine = ++round;
    if (!isWanted) void stopUnwanted();
    if (!isWanted || mark === '' || isBusy) return;
    const first = figure === null ? [] : [figure];
    const wanted: Wanted = flowAsked.value
      ? { engines: [...new Set([...first, ...onScreen])] }
      : { engines: first, only: 'here' };
    setTimeout(
      () => {
        if (mine === round) void run(mine, wanted);
      },
      figure === null ? QUIET : 0,
    );
    if (untracked(() => flowList.value.mark) !== mark) void lookOnce(mine);
  });
  effect(() => {
    // What one looks at is computed first.
    const here = altitudeNow();
    if (untracked(() => flowList.value.work.is) !== 'working') return;
    const mine = round;
    setTimeout(() => {
      if (mine === round && here === altitudeNow()) void look(mine, here);
    }, LOOK);
  });
}

/** What a figure asked for that is closed again. */
async function stopUnwanted(): Promise<void> {
  if (untracked(() => flowList.value.work.is) === 'working') take(await askFlows('stop'));
}

/** [m]; null: vacuum */
export const altitudeNow = (): number | null =>
  Number.isFinite(altitude.value) ? 1000 * altitude.value : null;

async function look(mine: number, altitude: number | null): Promise<void> {
  const list = await askFlows({ look: altitude });
  if (mine === round) take(list);
}

async function lookOnce(mine: number): Promise<void> {
  const list = await askFlows(null);
  if (mine === round) take(list);
}

type Wanted = Omit<FlowsWanted, 'altitude'>;

async function run(mine: number, wanted: Wanted): Promise<void> {
  let list = await askFlows({ ...wanted, altitude: untracked(altitudeNow) });
  while (mine === round) {
    take(list);
    if (list === null || 'refused' in list || list.work.is !== 'working') return;
    await new Promise((resolve) => setTimeout(resolve, LOOK));
    if (mine !== round) return;
    list = await askFlows(null);
  }
}

/** A list that says the same is not taken up: nothing would be drawn otherwise. */
function take(told: FlowList | FlowsRefused | null): void {
  if (told === null) return;
  // What is there stays.
  const list: FlowList =
    'refused' in told ? { ...flowList.value, work: { is: 'failed', problem: told.refused } } : told;
  if (JSON.stringify(list) === JSON.stringify(flowList.value)) return;
  if (!('refused' in told)) forgetMissing(list.fields.map(({ key }) => key));
  flowList.value = list;
}
