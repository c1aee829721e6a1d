/** In which unit a number of a test is told. */

import { findUnit } from '../../study/units.ts';
import type { DisplayUnit } from '../catalogue.ts';
import { quantity } from '../catalogue.ts';
import { unitFor } from '../display.ts';
import { exponentsOf, inWords, isNumber, sameDimension, usualUnits } from '../expression/dimensions.ts';
import type { Exponents } from '../expression/model.ts';

/** The unit of the quantity that it is, or of one of those it is made of; else a usual one of its kind. */
export function unitOfNumber(
  own: string | null,
  dimension: Exponents,
  madeOf: readonly string[],
  values: readonly number[],
): DisplayUnit {
  const others = isNumber(dimension) ? [] : [...madeOf, 'thrust'];
  const alike = [...(own === null ? [] : [own]), ...others].find((name) => {
    const exponents = exponentsOf(quantity(name).dimension);
    return exponents !== null && sameDimension(exponents, dimension);
  });
  if (alike !== undefined) return unitFor(quantity(alike), values);
  if (isNumber(dimension)) return { symbol: '', perSI: 1 };
  const [symbol] = usualUnits(dimension);
  const unit = symbol === undefined ? null : findUnit(symbol);
  if (symbol === undefined || unit === null)
    return { symbol: inWords(dimension).replace(/^a quantity in /, ''), perSI: 1 };
  return { symbol, perSI: unit.over / unit.times };
}
