/** In which quantity of the catalogue a computed value is told: its unit and its digits. */

import { quantity } from '../catalogue.ts';
import { exponentsOf, isNumber, sameDimension } from '../expression/dimensions.ts';
import type { CompiledExpression } from '../expression/index.ts';

/**
 * Its own where it is one; a plain number made of several has none; else the first that it is made of and that has its
 * dimension; else null.
 */
export function quantityOf({ quantity: own, dimension, asks }: CompiledExpression): string | null {
  if (own !== null) return own;
  if (isNumber(dimension)) return null;
  const same = asks.find(({ quantity: name }) => {
    const exponents = exponentsOf(quantity(name).dimension);
    return exponents !== null && sameDimension(exponents, dimension);
  });
  return same?.quantity ?? null;
}
