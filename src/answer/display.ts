/** Numbers as people read them: catalogue unit, significant digits, true minus. */

import type { CatalogueEntry, DisplayUnit } from './catalogue.ts';
import { quantity } from './catalogue.ts';

export interface Shown {
  readonly number: string;
  readonly unit: string;
  /** Both together, `312 s`; degrees and per cent as the SI asks. */
  readonly text: string;
}

/** `significant` digits, never in powers of ten between 1e-4 and 1e9; trailing zeros kept as they are meant. */
export function roundedText(value: number, significant: number): string {
  if (value === 0) return '0';
  const magnitude = Math.floor(Math.log10(Math.abs(Number(value.toPrecision(significant)))));
  const minus = value < 0 ? '−' : '';
  const size = Math.abs(value);
  if (magnitude >= 9 || magnitude < -4) return minus + size.toExponential(significant - 1);
  const decimals = Math.max(0, significant - 1 - magnitude);
  return minus + grouped(Number(size.toPrecision(significant)).toFixed(decimals));
}

/** Thin grouping of thousands from five digits on, as the SI brochure prints it. */
function grouped(plain: string): string {
  const [whole = '', decimals] = plain.split('.');
  const spaced = whole.length > 4 ? whole.replace(/\B(?=(\d{3})+(?!\d))/g, '\u202f') : whole;
  return decimals === undefined ? spaced : `${spaced}.${decimals}`;
}

/** A pressure below this many bar is shown in pascals. */
const SMALLEST_IN_BAR = 1e-3;

/** The unit in which all these values are shown side by side. */
export function unitFor(entry: CatalogueEntry, values: readonly (number | null)[]): DisplayUnit {
  const largest = Math.max(0, ...values.map((v) => Math.abs(v ?? 0)));
  const small = entry.unitForSmall;
  const least = entry.dimension === 'pressure' ? SMALLEST_IN_BAR : 1;
  return small && largest * entry.unit.perSI < least ? small : entry.unit;
}

export function showIn(unit: DisplayUnit, value: number, digits: number): Shown {
  const number = roundedText(value * unit.perSI, digits);
  const gap = unit.symbol === '' || unit.symbol === '°' ? '' : ' ';
  return { number, unit: unit.symbol, text: `${number}${gap}${unit.symbol}` };
}

/** One value of the catalogue, in its own unit. */
export function show(name: string, value: number, digits?: number): Shown {
  const entry = quantity(name);
  return showIn(unitFor(entry, [value]), value, digits ?? entry.digits);
}

/** A stated value with the digits it needs and no more, up to four: `25`, `97.5 %`, `3.5`. */
export function showStated(name: string, value: number): Shown {
  const entry = quantity(name);
  const unit = unitFor(entry, [value]);
  return showIn(unit, value, neededDigits(value * unit.perSI));
}

function neededDigits(value: number): number {
  const rounded = Math.abs(Number(value.toPrecision(4)));
  if (rounded === 0) return 1;
  const [whole = '', decimals = ''] = String(rounded).split('.');
  return (whole === '0' ? 0 : whole.length) + decimals.replace(whole === '0' ? /^0+/ : /^$/, '').length;
}
