/** In which units an audience is told a number. */

import type { DisplayUnit } from '../../answer/catalogue.ts';
import { sameDimension } from '../../answer/expression/dimensions.ts';
import type { Exponents } from '../../answer/expression/model.ts';
import type { ToldNumber } from '../../answer/numbers/index.ts';
import { unitOfNumber } from '../../answer/sentences/sideUnit.ts';
import type { ScriptUnits } from '../../study/script/model.ts';
import { findUnit } from '../../study/units.ts';

/** shown number = (SI value − zero) × perSI */
export interface ShownUnit extends DisplayUnit {
  /** Of the scale [SI]: not 0 for degrees Celsius and Fahrenheit alone. */ readonly zero: number;
}

/** Customary unit by dimension; where there are several, the one whose size [SI] the value still reaches. */
const CUSTOMARY: readonly { readonly dimension: Exponents; readonly units: readonly string[] }[] = [
  { dimension: [1, 1, -2, 0, 0, 0], units: ['lbf'] },
  { dimension: [1, 0, 0, 0, 0, 0], units: ['lb'] },
  { dimension: [0, 1, 0, 0, 0, 0], units: ['mi', 'ft', 'in'] },
  { dimension: [0, 2, 0, 0, 0, 0], units: ['ft²', 'in²'] },
  { dimension: [1, -1, -2, 0, 0, 0], units: ['psi'] },
  { dimension: [0, 0, 0, 1, 0, 0], units: ['°F'] },
  { dimension: [0, 1, -1, 0, 0, 0], units: ['ft/s'] },
  { dimension: [0, 1, -2, 0, 0, 0], units: ['ft/s²'] },
  { dimension: [1, 0, -1, 0, 0, 0], units: ['lb/s'] },
  { dimension: [1, -3, 0, 0, 0, 0], units: ['lb/ft³'] },
];
const CUSTOMARY_SYMBOLS: ReadonlySet<string> = new Set([
  ...CUSTOMARY.flatMap(({ units }) => units),
  'nmi',
  'klbf',
  'ksi',
  '°R',
]);

/** The metric unit, and the customary one where the audience is told it, alone or behind the other. */
export function unitsFor(
  asked: string | null,
  told: ToldNumber,
  audience: ScriptUnits,
): readonly [ShownUnit] | readonly [ShownUnit, ShownUnit] {
  const { quantity, dimension, madeOf, value, low, high, isDifference } = told;
  const values = [value, low, high].flatMap((one) => one ?? []);
  const own = (): ShownUnit => ({
    ...spoken(unitOfNumber(quantity, dimension, madeOf, values), values),
    zero: 0,
  });
  const given = asked === null ? null : shownUnit(asked, dimension, isDifference);
  const metric = given === null || isCustomary(given.symbol) ? own() : given;
  if (audience === 'metric') return [metric];
  const customary =
    given !== null && isCustomary(given.symbol) ? given : customaryFor(dimension, values, isDifference);
  if (customary === null) return [metric];
  return [metric, customary];
}

/** A drawing has 2000 mm; one says two metres. */
const spoken = (unit: DisplayUnit, values: readonly number[]): DisplayUnit =>
  unit.symbol === 'mm' && Math.max(0, ...values.map(Math.abs)) >= 1 ? { symbol: 'm', perSI: 1 } : unit;

export const isCustomary = (symbol: string): boolean => CUSTOMARY_SYMBOLS.has(symbol);

/** Whether an audience of the other system would be told another unit. */
export const isConverted = (dimension: Exponents): boolean => customaryOf(dimension) !== null;

const customaryOf = (dimension: Exponents): readonly string[] | null =>
  CUSTOMARY.find((one) => sameDimension(one.dimension, dimension))?.units ?? null;

function customaryFor(
  dimension: Exponents,
  values: readonly number[],
  isDifference: boolean,
): ShownUnit | null {
  const units = customaryOf(dimension)?.map((symbol) => shownUnit(symbol, dimension, isDifference)!);
  const largest = Math.max(0, ...values.map(Math.abs));
  return units?.find(({ perSI }) => largest * perSI >= 1) ?? units?.at(-1) ?? null;
}

/** Null where it is no unit of that dimension. */
export function shownUnit(symbol: string, dimension: Exponents, isDifference: boolean): ShownUnit | null {
  const unit = findUnit(symbol);
  if (unit === null || !sameDimension(unit.dimension, dimension)) return null;
  return {
    symbol: PRINTED.get(symbol) ?? symbol,
    perSI: unit.over / unit.times,
    zero: isDifference ? 0 : (unit.zero ?? 0),
  };
}

/** How a spelling of a unit is printed. */
const PRINTED: ReadonlyMap<string, string> = new Map([
  ['percent', '%'],
  ['per cent', '%'],
  ['deg', '°'],
  ['degrees', '°'],
  ['m2', 'm²'],
  ['m^2', 'm²'],
  ['cm2', 'cm²'],
  ['cm^2', 'cm²'],
  ['kg/m3', 'kg/m³'],
  ['m/s2', 'm/s²'],
  ['m/s^2', 'm/s²'],
  ['MW/m2', 'MW/m²'],
  ['kW/m2', 'kW/m²'],
]);
