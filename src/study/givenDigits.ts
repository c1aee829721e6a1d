/** How finely a number was written: half a unit of its last digit. */
import { differenceToSI, findUnit } from './units.ts';

/** Zeros at the end of a whole number count as rounded off as long as they leave this share of it open. */
const COARSEST = 0.01;

/**
 * Half a unit of the last digit that `digits` gives: `3.50` → 0.005, `1746000` → 500.
 *
 * Zeros at the end of a whole number may be digits or only fill it up. They are taken for rounding as long as half
 * of their unit is at most 1 % of the number: `1700` is ± 5, `100` is ± 0.5. A stated ± says it better.
 */
export function halfOfLastDigit(digits: string): number {
  const [, mantissa = '', exponent = '0'] = /^[+-]?([\d.]+)(?:[eE]([+-]?\d+))?/.exec(digits) ?? [];
  const scale = 10 ** Number(exponent);
  const [whole = '', decimals] = mantissa.split('.');
  if (decimals !== undefined && decimals !== '') return 0.5 * 10 ** -decimals.length * scale;
  const value = Number(whole);
  let unit = 1;
  while (value !== 0 && value % (unit * 10) === 0 && 0.5 * unit * 10 <= COARSEST * value) unit *= 10;
  return 0.5 * unit * scale;
}

/** The same in SI, of a quantity as written and its unit as understood. */
export function roundingOf(text: string, unit: string): number {
  const plain = text.trim().replace(/^[\u2212\ufe63\uff0d]/, '-');
  const half = halfOfLastDigit(plain);
  const known = unit === '' ? null : findUnit(unit);
  return known === null ? half : differenceToSI(half, known);
}
