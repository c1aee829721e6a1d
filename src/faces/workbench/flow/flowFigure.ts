/** The field that a figure of a whole flow shows: the nearest there is to where one looks, its cells fetched when one looks. */

import { computed, effect, signal } from '@preact/signals';
import type { FlowField } from '../../../answer/flow/model.ts';
import { CLIMB } from '../../../answer/flow/places.ts';
import type { ListedFlow } from '../../flows/flowList.ts';
import { placeAt } from '../../flows/flowTasks.ts';
import { flowOfText } from '../../flows/flowText.ts';
import { airPressure } from '../state/shown.ts';
import { cellText } from './cellShelf.ts';
import { altitudeNow, flowFigureOf, flowList, flowsThere } from './flows.ts';
import { nearestFirst } from './shownFlows.ts';

const listed = computed((): ListedFlow | null => {
  const engine = flowFigureOf.value;
  const own = engine === null ? [] : (flowsThere.value.get(engine) ?? []);
  return nearestFirst(own, airPressure.value)[0] ?? null;
});

/** The last that came. */
const held = signal<{ readonly key: string; readonly field: FlowField } | null>(null);
/** Name of a field whose cells neither the browser nor the server gives any more; null: none. */
const gone = signal<string | null>(null);
effect(() => {
  const wanted = listed.value;
  if (wanted !== null && wanted.key !== held.peek()?.key) void hold(wanted.key).catch(reportError);
});

async function hold(key: string): Promise<void> {
  const text = await cellText(key);
  if (listed.peek()?.key !== key) return;
  gone.value = text === null ? key : null;
  if (text !== null) held.value = { key, field: flowOfText(text) };
}

/** The field to be shown cannot be. */
export const flowIsGone = computed((): boolean => gone.value !== null && gone.value === listed.value?.key);

/** While a nearer or finer one is on its way the one before stays; none of other inputs does. */
export const flowInFigure = computed((): FlowField | null => {
  const known = held.value;
  const engine = flowFigureOf.value;
  if (known === null || engine === null || known.field.engine !== engine) return null;
  const isThere = (flowsThere.value.get(engine) ?? []).length > 0;
  return isThere ? known.field : null;
});

/** Of the place nearest to where one looks, and as fine as they are computed here. */
export const flowIsFinal = computed((): boolean => {
  const here = CLIMB[placeAt(altitudeNow())]!;
  const now = listed.value;
  return now !== null && now.fineness !== 'coarse' && now.altitude === here.altitude;
});

/** A nearer or a finer field is being computed. */
export const flowToCome = computed(
  (): boolean => flowFigureOf.value !== null && flowList.value.work.is === 'working' && !flowIsFinal.value,
);
