/** Values of a sweep in the unit in which they are read. */

import { type DisplayUnit, findQuantity, quantity } from '../catalogue.ts';
import { type Shown, showIn, showStated, unitFor } from '../display.ts';
import { unitOfNumber } from '../sentences/sideUnit.ts';
import type { ToldOf, ToldRange } from './model.ts';

/** Digits of what has no entry in the catalogue. */
const USUAL_DIGITS = 4;

/** One unit for all these values [SI]: that of the catalogue, else a usual one of its kind. */
export function unitOf(
  { quantity: name, dimension }: ToldOf,
  values: readonly (number | null)[],
): DisplayUnit {
  const entry = name === null ? undefined : findQuantity(name);
  if (entry !== undefined) return unitFor(entry, values);
  return unitOfNumber(
    null,
    dimension,
    [],
    values.filter((value) => value !== null),
  );
}

export function digitsOf({ quantity: name }: ToldOf): number {
  return (name === null ? undefined : findQuantity(name)?.digits) ?? USUAL_DIGITS;
}

/** A value of what is followed, in its own unit. */
export function showValue(told: ToldOf, value: number, digits = digitsOf(told)): Shown {
  return showIn(unitOf(told, [value]), value, digits);
}

/** A value of what moves, with the digits it needs. */
export function showPlace({ quantity: name }: ToldRange, value: number, digits?: number): string {
  if (digits === undefined) return showStated(name, value).text;
  return showIn(unitFor(quantity(name), [value]), value, digits).text;
}
