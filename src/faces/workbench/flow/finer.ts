/** Finer fields where one looks, by the graphics processor of this machine: what is asked of its worker, and when. */

import { computed, effect, signal, untracked } from '@preact/signals';
import type { Problem } from '../../../numerics/problem.ts';
import type { ListedFlow } from '../../flows/flowList.ts';
import { rowsHere } from '../state/drawn.ts';
import { enginesOnScreen } from '../state/pair.ts';
import { airPressure } from '../state/shown.ts';
import { solved, solving } from '../state/studyStore.ts';
import { finerAsked, finerFields, rememberFiner } from './finerFields.ts';
import type { FinerOrder, FinerReport } from './finerMessages.ts';
import { flowAsked, markNow } from './flows.ts';
import { graphicsProcessor } from './processor.ts';
import { nearestFirst } from './shownFlows.ts';
import { fieldsOnScreen } from './underFlows.ts';

/** Where it holds `software`, shaders run in software count as well. */
const KIND = 'plumeline-finer-by';

/** Whether this machine has one. */
export const hasProcessor = signal(false);
export const finerWork = signal<'none' | 'working' | Problem>('none');

/** Names of fields from which none finer came. */
const failed = signal<ReadonlySet<string>>(new Set());

export function askFiner(isAsked: boolean): void {
  rememberFiner(isAsked);
  failed.value = new Set();
  if (!isAsked) end();
}

/** The field nearest to where one looks of the first engine on screen that has none finer yet. */
const next = computed((): ListedFlow | null => {
  if (!flowAsked.value || !finerAsked.value || !hasProcessor.value || solving.value) return null;
  const engines = enginesOnScreen.value;
  for (const fields of fieldsOnScreen(engines, rowsHere(engines)).values()) {
    const [nearest] = nearestFirst(fields, airPressure.value);
    if (nearest?.fineness === 'normal' && !failed.value.has(nearest.key)) return nearest;
  }
  return null;
});

/** [ms] that one must look at a place before it is computed finer */
const QUIET = 700;

export function followFiner(): void {
  let isLooked = false;
  effect(() => {
    if (!flowAsked.value || isLooked) return;
    isLooked = true;
    void graphicsProcessor(software()).then((found) => {
      hasProcessor.value = found !== null;
    }, reportError);
  });
  effect(() => {
    const wanted = next.value;
    const isBusy = finerWork.value === 'working';
    if (wanted === null || isBusy) return;
    const waiting = setTimeout(() => order(wanted), QUIET);
    return () => clearTimeout(waiting);
  });
}

const software = (): boolean => localStorage.getItem(KIND) === 'software';

let worker: Worker | null = null;
let ordered: (Pick<FinerOrder, 'number' | 'mark'> & { readonly key: string }) | null = null;
let count = 0;

function order(from: ListedFlow): void {
  const study = untracked(() => solved.value?.study);
  if (study === undefined) return;
  worker ??= started();
  count += 1;
  const mark = untracked(() => markNow.value);
  ordered = { number: count, mark, key: from.key };
  finerWork.value = 'working';
  worker.postMessage({ number: count, study, mark, from, software: software() } satisfies FinerOrder);
}

function started(): Worker {
  const fresh = new Worker(new URL('./finerWorker.ts', import.meta.url), { type: 'module' });
  fresh.addEventListener('message', ({ data }: MessageEvent<FinerReport>) => take(data));
  fresh.addEventListener('error', (event) => {
    reportError(new Error(event.message || 'What computes finer fields failed.'));
    end();
  });
  return fresh;
}

/** What is under way is lost. */
function end(): void {
  worker?.terminate();
  worker = null;
  ordered = null;
  finerWork.value = 'none';
}

function take(report: FinerReport): void {
  if (ordered === null || report.number !== ordered.number) return;
  const { mark, key } = ordered;
  ordered = null;
  if (report.is === 'field') {
    const before = finerFields.value.mark === mark ? finerFields.value.fields : [];
    finerFields.value = { mark, fields: [...before, report.field] };
    finerWork.value = 'none';
    return;
  }
  failed.value = new Set([...failed.value, key]);
  if (report.is === 'fault') reportError(new Error(`A finer field could not be computed: ${report.message}`));
  finerWork.value = report.is === 'failed' ? report.problem : 'none';
}
