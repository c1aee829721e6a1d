/** The numbers at the altitude on the scale, as text. */

import { computed } from '@preact/signals';
import type { ConditionRow } from '../../../answer/model.ts';
import { airAtGeometricAltitude } from '../../../physics/air/index.ts';
import { formatPressure } from '../../../telling/numbers/formatNumber.ts';
import { ladderStep } from '../../solved/ladder.ts';
import { openedRow } from '../../solved/packedRows.ts';
import { altitude } from './altitude.ts';
import { CURVE_EVERY, type ShownLadder } from './ladders.ts';
import { topOfScale } from './scale.ts';

/** The row nearest to an altitude [km]; the rows stand at every tenth of a kilometre. */
export function rowOfLadder(ladder: ShownLadder, kilometres: number): ConditionRow {
  if (!Number.isFinite(kilometres)) return ladder.vacuum;
  const step = (kilometres * 1000) / ladderStep;
  if ('rowAt' in ladder) return ladder.rowAt(Math.round(step)) ?? ladder.vacuum;
  return openedRow(ladder, Math.round(step / ladder.every)) ?? ladder.vacuum;
}

/** Rows close enough for a line of a few hundred pixels, and the vacuum. */
export function curveOfLadder(ladder: ShownLadder): readonly ConditionRow[] {
  const rows =
    'rowAt' in ladder ? ladder.rows : ladder.rows.filter((_, i) => (i * ladder.every) % CURVE_EVERY === 0);
  return [...rows, ladder.vacuum];
}

/** Air pressure at the altitude shown [Pa]. */
export const airPressure = computed(() =>
  Number.isFinite(altitude.value) ? airAtGeometricAltitude(altitude.value * 1000).pressure : 0,
);

export const altitudeText = computed(() => kilometresText(altitude.value));

/** `12.3 km`, or `vacuum`. */
export function kilometresText(kilometres: number): string {
  return Number.isFinite(kilometres) ? `${kilometres.toFixed(1)} km` : 'vacuum';
}

/** Air pressure as text. */
export const airHere = computed(() => formatPressure(airPressure.value));

/** The slider's value for assistive technology: `12 kilometres, 0.19 bar`. */
export const altitudeSpoken = computed(() => {
  const kilometres = altitude.value;
  if (!Number.isFinite(kilometres)) return 'vacuum, no air';
  const number = Number.isInteger(kilometres) ? String(kilometres) : kilometres.toFixed(1);
  const unit = kilometres === 1 ? 'kilometre' : 'kilometres';
  return `${number} ${unit}, ${airHere.value}`.replaceAll('\u00a0', ' ');
});

/** The slider's number: kilometres, with vacuum one step above the scale. */
export const sliderNumber = computed(() =>
  Number.isFinite(altitude.value) ? altitude.value : topOfScale + 1,
);
