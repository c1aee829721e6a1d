/** The two ends of a range: fixed values of one kind, or vacuum. */

import type { Bound, Built } from './built.ts';
import { inWords, LENGTH, PRESSURE, sameDimension } from './dimensions.ts';
import type { Exponents, RangePlace } from './model.ts';
import type { Expression, RangeNode } from './tree.ts';
import { refuse } from './trouble.ts';
import type { Workshop } from './workshop.ts';

type Build = (node: Expression, bound: Bound, shop: Workshop) => Built;

/** Top [m] of a range of altitudes that goes up to vacuum, which itself is the last point. */
export const TOP = 100_000;

export interface Ends {
  readonly from: RangePlace;
  readonly to: RangePlace;
  readonly dimension: Exponents;
  readonly fromWords: string;
  readonly toWords: string;
}

export function endsOf(node: RangeNode, shop: Workshop, build: Build): Ends {
  const read = (end: Expression | 'vacuum'): Built | 'vacuum' => {
    if (end === 'vacuum') return end;
    const built = build(end, new Map(), shop);
    if (built.constant !== null) return built;
    return refuse(
      end,
      'range-not-fixed',
      'The end of a range is itself computed; only fixed values can stand there.',
      'Write a value such as 0 km, 0.5 bar or 40 %.',
    );
  };
  const [from, to] = [read(node.from), read(node.to)];
  const known = from === 'vacuum' ? to : from;
  if (known === 'vacuum') {
    refuse(node, 'range-empty', 'The range begins and ends in vacuum.', 'Write e.g. from 0 km to vacuum.');
  }
  const zero = known.anyDimension && to !== 'vacuum' ? to.dimension : known.dimension;
  const dimension = zero;
  for (const end of [from, to]) {
    if (end === 'vacuum' || end.anyDimension || sameDimension(end.dimension, dimension)) continue;
    refuse(
      node,
      'range-unlike',
      `The range goes from ${inWords(dimension)} to ${inWords(end.dimension)}.`,
      'Give both ends in units of one kind.',
    );
  }
  const ends = {
    from: from === 'vacuum' ? from : from.constant!,
    to: to === 'vacuum' ? to : to.constant!,
    dimension,
    fromWords: wordsOf(node.from, shop.text),
    toWords: wordsOf(node.to, shop.text),
  };
  return checkEnds(ends, node);
}

const wordsOf = (node: Expression | 'vacuum', text: string): string =>
  node === 'vacuum' ? node : text.slice(node.start, node.end);

function checkEnds(ends: Ends, node: RangeNode): Ends {
  const { from, to, dimension } = ends;
  if (from === to)
    refuse(node, 'range-empty', 'Both ends of the range are the same.', 'Give two different ends.');
  if (from !== 'vacuum' && to !== 'vacuum') return ends;
  if (sameDimension(dimension, PRESSURE)) {
    return { ...ends, from: from === 'vacuum' ? 0 : from, to: to === 'vacuum' ? 0 : to };
  }
  if (!sameDimension(dimension, LENGTH)) {
    refuse(
      node,
      'range-unlike',
      `The range goes from ${inWords(dimension)} to vacuum.`,
      'Only altitudes and outside pressures go up to vacuum.',
    );
  }
  const other = from === 'vacuum' ? to : from;
  if (typeof other === 'number' && other >= TOP) {
    refuse(
      node,
      'range-empty',
      'The range begins above 100 km, where vacuum is taken to begin.',
      'Begin lower.',
    );
  }
  return ends;
}
