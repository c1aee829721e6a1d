/** Dimensions as exponents: products, powers, and in words for messages. */

import { quantityKinds } from '../../study/unitTable.ts';
import type { Dimension as CatalogueDimension } from '../catalogue/entry.ts';
import type { Exponents } from './model.ts';

export const NUMBER: Exponents = [0, 0, 0, 0, 0, 0];
export const LENGTH: Exponents = [0, 1, 0, 0, 0, 0];
export const PRESSURE: Exponents = [1, -1, -2, 0, 0, 0];
export const TIME: Exponents = [0, 0, 1, 0, 0, 0];
export const TEMPERATURE: Exponents = [0, 0, 0, 1, 0, 0];
export const ANGLE: Exponents = [0, 0, 0, 0, 0, 1];

const OF_CATALOGUE: Readonly<Record<Exclude<CatalogueDimension, 'sameAsCompared'>, Exponents>> = {
  pressure: PRESSURE,
  temperature: TEMPERATURE,
  length: LENGTH,
  area: [0, 2, 0, 0, 0, 0],
  angle: ANGLE,
  velocity: [0, 1, -1, 0, 0, 0],
  force: [1, 1, -2, 0, 0, 0],
  time: TIME,
  massFlow: [1, 0, -1, 0, 0, 0],
  mass: [1, 0, 0, 0, 0, 0],
  specificPower: [0, 2, -3, 0, 0, 0],
  heatCapacity: [0, 2, -2, -1, 0, 0],
  power: [1, 2, -3, 0, 0, 0],
  heatFlux: [1, 0, -3, 0, 0, 0],
  density: [1, -3, 0, 0, 0, 0],
  molarMass: [1, 0, 0, 0, -1, 0],
  acceleration: [0, 1, -2, 0, 0, 0],
  specificEnergy: [0, 2, -2, 0, 0, 0],
  ratio: NUMBER,
};

/** Exponents of what the catalogue calls by a word; null for a difference of whatever is compared. */
export const exponentsOf = (dimension: CatalogueDimension): Exponents | null =>
  dimension === 'sameAsCompared' ? null : OF_CATALOGUE[dimension];

/** Powers such as one third are not exact: exponents this near are the same. */
const NEAR = 1e-9;

export const sameDimension = (a: Exponents, b: Exponents): boolean =>
  a.every((e, i) => Math.abs(e - b[i]!) < NEAR);

export const isNumber = (dimension: Exponents): boolean => sameDimension(dimension, NUMBER);

export const combine = (a: Exponents, b: Exponents, sign: 1 | -1): Exponents =>
  a.map((e, i) => e + sign * b[i]!) as unknown as Exponents;

export const raise = (a: Exponents, power: number): Exponents =>
  a.map((e) => e * power) as unknown as Exponents;

const OTHER_WORDS: readonly (readonly [string, Exponents])[] = [
  ['a plain number', NUMBER],
  ['an acceleration', OF_CATALOGUE.acceleration],
  ['a power', OF_CATALOGUE.power],
  ['a heat flux', OF_CATALOGUE.heatFlux],
  ['an energy', [1, 2, -2, 0, 0, 0]],
  ['a volume', [0, 3, 0, 0, 0, 0]],
];

const SYMBOLS = ['kg', 'm', 's', 'K', 'mol', 'rad'];

/** `a pressure`, `a speed`, or `a quantity in kg·m/s` where there is no word. */
export function inWords(dimension: Exponents): string {
  const other = OTHER_WORDS.find(([, exponents]) => sameDimension(exponents, dimension));
  if (other !== undefined) return other[0];
  const kind = Object.values(quantityKinds).find((known) => sameDimension(known.dimension, dimension));
  return kind?.name ?? `a quantity in ${inUnits(dimension)}`;
}

/** SI units of a dimension, e.g. `kg·m/s²`. */
function inUnits(dimension: Exponents): string {
  const power = (e: number): string =>
    e === 1 ? '' : e === 2 ? '²' : e === 3 ? '³' : `^${Number(e.toFixed(3))}`;
  const factors = (sign: 1 | -1): string[] =>
    dimension.flatMap((e, i) => (sign * e > NEAR ? [`${SYMBOLS[i]!}${power(sign * e)}`] : []));
  const over = factors(-1);
  const top = factors(1).join('·') || '1';
  return over.length === 0 ? top : `${top}/${over.length > 1 ? `(${over.join('·')})` : over[0]!}`;
}

/** Units to offer for a dimension, most usual first. */
export function usualUnits(dimension: Exponents): readonly string[] {
  return Object.values(quantityKinds).find((known) => sameDimension(known.dimension, dimension))?.usual ?? [];
}
