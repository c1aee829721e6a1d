/** What the variable of a range stands for: an altitude, a pressure, a throttle, an input or a plain number. */

import { quote } from '../../study/report.ts';
import { LENGTH, PRESSURE, sameDimension, TIME } from './dimensions.ts';
import type { Exponents, TestedRange } from './model.ts';
import type { Argument, NameNode, Node, RangeNode } from './tree.ts';
import { refuse } from './trouble.ts';

export interface RangeUse {
  readonly of: TestedRange['of'];
  readonly input: string | null;
  readonly dimension: Exponents;
  /** What the points are, e.g. `altitudes`. */ readonly words: string;
}

const WORDS: Readonly<Record<Exclude<TestedRange['of'], 'input'>, string>> = {
  altitude: 'altitudes',
  pressure: 'outside pressures',
  time: 'times',
  throttle: 'throttles',
  areaRatio: 'area ratios',
  distance: 'distances from the throat',
  number: 'values',
};

/** All uses of the variable in the body; the costliest counts. Refuses a variable that is never used. */
export function useOf(node: RangeNode, body: Node, dimension: Exponents): RangeUse {
  const found: RangeUse[] = [];
  const use = (of: Exclude<TestedRange['of'], 'input'>): RangeUse => ({
    of,
    input: null,
    dimension,
    words: WORDS[of],
  });
  for (const name of namesIn(body)) {
    if (name.name === node.variable) found.push(use('number'));
    for (const arg of name.args ?? []) {
      if (!('value' in arg) || !namesIn(arg.value).some((inner) => inner.name === node.variable)) continue;
      found.push(ofArgument(arg, dimension, use));
    }
  }
  const order: readonly TestedRange['of'][] = [
    'input',
    'throttle',
    'altitude',
    'pressure',
    'time',
    'areaRatio',
    'distance',
    'number',
  ];

  const best = order.flatMap((of) => found.filter((one) => one.of === of))[0];
  if (best !== undefined) return best;
  return refuse(
    node,
    'variable-unused',
    `${quote(node.variable)} moves over a range but stands nowhere in what is said of it.`,
    `Use it in brackets, e.g. bell.thrust(${node.variable}), or leave the range out.`,
  );
}

function ofArgument(
  arg: Extract<Argument, { readonly value: unknown }>,
  dimension: Exponents,
  use: (of: Exclude<TestedRange['of'], 'input'>) => RangeUse,
): RangeUse {
  if (arg.is === 'set') {
    if (arg.input === 'throttle') return use('throttle');
    if (arg.input === 'areaRatio') return use('areaRatio');
    return { of: 'input', input: arg.input, dimension, words: `values of ${arg.input}` };
  }
  if (arg.is !== 'place') return use(arg.is);
  if (sameDimension(dimension, LENGTH)) return use('altitude');
  if (sameDimension(dimension, TIME)) return use('time');
  return use(sameDimension(dimension, PRESSURE) ? 'pressure' : 'number');
}

/** Every name in a tree, outside and inside the brackets of others. */
function namesIn(tree: unknown): readonly NameNode[] {
  if (typeof tree !== 'object' || tree === null) return [];
  const inside = Object.values(tree).flatMap(namesIn);
  return 'is' in tree && tree.is === 'name' ? [tree as NameNode, ...inside] : inside;
}
