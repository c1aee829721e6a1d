/** Values as one would say them aloud: `about a hundred and twenty bar`. */

import type { DisplayUnit } from './catalogue.ts';
import { quantity } from './catalogue.ts';
import { unitFor } from './display.ts';
import { numberInWords } from './spoken/numberWords.ts';
import { unitWords } from './spoken/unitWords.ts';

export interface SpokenOptions {
  /** Significant digits at most; absent: two, or three where two would be off by more than a hundredth. */
  readonly digits?: number;
}

/** Two digits are said if they miss the value by no more than this share. */
const CLOSE_ENOUGH = 0.01;
/** Closer than this share to what is said, the value is what is said. */
const EXACT = 1e-9;

/** One value [SI] of the catalogue in words, rounded as people do; `about` in front where it is rounded. */
export function spoken(name: string, value: number, options: SpokenOptions = {}): string {
  return spokenIn(unitFor(quantity(name), [value]), value, options);
}

/** A value [SI] in a unit, in words. */
export function spokenIn(unit: DisplayUnit, value: number, { digits }: SpokenOptions = {}): string {
  if (!Number.isFinite(value)) throw new Error(`${value} cannot be said`);
  const inUnit = Number((value * unit.perSI).toPrecision(12));
  const used = digits ?? usualDigits(inUnit);
  const about = isSaid(inUnit, used, EXACT) ? '' : 'about ';
  const { words, isOne, ofParts } = numberInWords(inUnit, used);
  const { one, many } = unitWords(unit.symbol);
  if (one === '') return about + words;
  if (ofParts) return `${about}${words} of a ${one}`;
  return `${about}${words} ${isOne ? one : many}`;
}

function usualDigits(value: number): number {
  return isSaid(value, 2, CLOSE_ENOUGH) ? 2 : 3;
}

function isSaid(value: number, digits: number, share: number): boolean {
  return Math.abs(Number(value.toPrecision(digits)) - value) <= share * Math.abs(value);
}
