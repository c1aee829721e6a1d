/** Numbers as they are read out and printed: true minus, no-break spaces, few digits, the catalogue's units. */

import { findQuantity, quantity } from '../../answer/catalogue.ts';
import { roundedText, showIn, unitFor } from '../../answer/display.ts';

const NO_BREAK = '\u00a0';

/** Plain number with so many significant digits; trailing zeros after the point are kept unless `trim`. */
export function formatNumber(value: number, significant = 3, trim = false): string {
  const text = roundedText(value, significant).replace(/\u202f/g, NO_BREAK);
  return trim && text.includes('.') && !text.includes('e') ? text.replace(/\.?0+$/, '') : text;
}

/** A value of the catalogue as spoken, `317 s`, `0.41 bar`, `9.9 km`: three digits unless said otherwise. */
export function formatSpoken(name: string, value: number, significant = 3): string {
  return unbroken(showIn(unitFor(quantity(name), [value]), value, significant).text);
}

/** A value of the catalogue with all the digits worth showing, for tables. */
export function formatValue(name: string, value: number): string {
  const entry = quantity(name);
  return unbroken(showIn(unitFor(entry, [value]), value, entry.digits).text);
}

/** [Pa] as spoken, in bar, also for small values: `1.01 bar`, `0.19 bar`, `no air` for nothing. */
export function formatPressure(pressure: number, significant = 2): string {
  if (pressure === 0) return 'no air';
  const digits = pressure >= 1e5 && significant < 3 ? 3 : significant;
  return `${formatNumber(pressure / 1e5, digits)}${NO_BREAK}bar`;
}

/** [m] as spoken: `0 km`, `9.9 km`, `12 km`, or the word for no air at all. */
export function formatAltitude(altitude: number | 'vacuum'): string {
  if (altitude === 'vacuum') return 'vacuum';
  if (altitude === 0) return `0${NO_BREAK}km`;
  const kilometres = altitude / 1000;
  return `${formatNumber(kilometres, Math.abs(kilometres) < 1 ? 1 : Math.abs(kilometres) < 10 ? 2 : 3, true)}${NO_BREAK}km`;
}

/** A length [m] at the scale of a nozzle: millimetres below 1 m, metres above. */
export function formatLength(length: number, significant = 3): string {
  return length < 1
    ? `${formatNumber(length * 1000, significant)}${NO_BREAK}mm`
    : `${formatNumber(length, significant)}${NO_BREAK}m`;
}

/** A share as per cent, `4 %`, `0.3 %`. */
export function formatShare(share: number, significant = 2): string {
  return `${formatNumber(100 * share, significant, true)}${NO_BREAK}%`;
}

/** Label of the catalogue for a name that may be unknown to it: then the name itself. */
export function labelOf(name: string): string {
  return findQuantity(name)?.label ?? name;
}

function unbroken(text: string): string {
  return text.replace(/[ \u202f]/g, NO_BREAK);
}
