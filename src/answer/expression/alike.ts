/** Whether two parts are of one kind, and what to say where they are not. */

import { listNames } from '../../study/report.ts';
import type { Built } from './built.ts';
import { inWords, isNumber, sameDimension, usualUnits } from './dimensions.ts';
import type { Span } from './tree.ts';
import { refuse } from './trouble.ts';

/** The one dimension of two parts; refuses to add a length to a time. */
export function commonDimension(
  left: Built,
  right: Built,
  span: Span,
  deed: 'adds' | 'takes' | 'compares',
): Built['dimension'] {
  if (left.anyDimension) return right.dimension;
  if (right.anyDimension || sameDimension(left.dimension, right.dimension)) return left.dimension;
  const [l, r] = [inWords(left.dimension), inWords(right.dimension)];
  const [code, what] = {
    adds: ['adds-unlike', `This adds ${r} to ${l}.`],
    takes: ['adds-unlike', `This takes ${r} from ${l}.`],
    compares: ['compares-unlike', `This compares ${l} with ${r}.`],
  }[deed] as [string, string];
  return refuse(span, code, what, mendOf(left, right), { facts: { left: l, right: r } });
}

function mendOf(left: Built, right: Built): string {
  const plain = [left, right].find((side) => isNumber(side.dimension) && side.constant !== null);
  if (plain === undefined) return 'Both sides must be of one kind; look at the quantities and units on each.';
  const units = usualUnits((plain === left ? right : left).dimension);
  return `Give the plain number its unit${units.length === 0 ? '' : `: ${listNames(units)}`}.`;
}

export function refuseDegrees(at: Span): never {
  return refuse(
    at,
    'degrees-in-arithmetic',
    'A temperature in °C or °F is a point on a scale; arithmetic with it has no plain meaning.',
    'Write it in kelvin (K), or compare a temperature with it directly.',
  );
}
