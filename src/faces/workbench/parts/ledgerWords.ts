/** Words that the cells of the ledger share: where their numbers hold, and how they stand. */

import { altitude } from '../state/altitude.ts';
import type { ShownEngine } from '../state/pair.ts';
import { altitudeText } from '../state/shown.ts';
import { ABOUT, BEFORE, standingWords } from './standingWords.ts';

/** `≈ ` before what is a first estimate, `before: ` before what was so until now. */
export function aboutOf({ standing }: ShownEngine): string {
  if (standing === undefined) return '';
  return standing === 'before' ? BEFORE : ABOUT;
}

export const classOf = ({ side, standing }: ShownEngine): string =>
  `value ${side}${standing === undefined ? '' : ' catching-up'}`;

/** In place of a number that there is not. */
export function noNumberWords({ result }: ShownEngine): string {
  if (result.ok) return 'no number';
  return result.isAwaited ? 'follows …' : 'failed';
}

/** Of a number on its way, what there is of it. */
export const standingOf = ({ standing }: ShownEngine): string =>
  standing === undefined ? '' : `, ${standingWords[standing]}`;

export function conditionHere(): string {
  if (!Number.isFinite(altitude.value)) return 'in vacuum';
  return altitude.value === 0 ? 'at the pad' : `at ${altitudeText.value}`;
}

/** As a test writes the altitude on the scale: `(12 km)`. */
export function placeHere(): string {
  return Number.isFinite(altitude.value) ? `(${altitude.value} km)` : '(vacuum)';
}
