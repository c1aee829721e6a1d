/** The functions of ordinary algebra, with what they may be taken of. */

import type { Built } from './built.ts';
import { ANGLE, inWords, isNumber, NUMBER, raise, sameDimension } from './dimensions.ts';
import type { Exponents } from './model.ts';
import type { Expression } from './tree.ts';
import { refuse } from './trouble.ts';
import { FUNCTIONS } from './vocabulary.ts';

type Call = Extract<Expression, { is: 'call' }>;

interface Rule {
  readonly of: (x: number) => number;
  readonly takes: 'number' | 'angle' | 'anything';
  readonly gives: (dimension: Exponents) => Exponents;
  readonly fails: string;
  /** From the size of what it is taken of to its own. */ readonly size: (
    value: number,
    inner: number,
  ) => number;
}

const plain = (of: (x: number) => number, takes: 'number' | 'angle', fails: string): Rule => ({
  of,
  takes,
  gives: () => NUMBER,
  fails,
  size: (value) => Math.max(1, Math.abs(value)),
});

const RULES: ReadonlyMap<string, Rule> = new Map([
  ['abs', { of: Math.abs, takes: 'anything', gives: (d) => d, fails: '', size: (_, inner) => inner }],
  [
    'sqrt',
    {
      of: Math.sqrt,
      takes: 'anything',
      gives: (d) => raise(d, 0.5),
      fails: 'This is the square root of a negative number.',
      size: (value, inner) => (inner >= 0 ? Math.sqrt(inner) : Math.abs(value)),
    },
  ],
  ['ln', plain(Math.log, 'number', 'This is the logarithm of zero or a negative number.')],
  [
    'exp',
    { ...plain(Math.exp, 'number', 'The result is too large a number.'), size: (value) => Math.abs(value) },
  ],
  ['sin', plain(Math.sin, 'angle', '')],
  ['cos', plain(Math.cos, 'angle', '')],
  ['tan', plain(Math.tan, 'angle', '')],
] satisfies readonly (readonly [string, Rule])[]);

export function buildCall(node: Call, args: readonly Built[], { text }: { readonly text: string }): Built {
  const takes = FUNCTIONS.get(node.name)!;
  if (args.length < takes.least || args.length > takes.most) {
    const number = takes.least === takes.most ? `${takes.least}` : `${takes.least} to ${takes.most}`;
    refuse(
      node,
      'arguments-wrong',
      `${node.name} is taken of ${number} ${takes.most === 1 ? 'number' : 'numbers'}; ${args.length} stand here.`,
      takes.most === 1 ? `Write ${node.name}(x).` : `Write ${node.name}(a, b).`,
    );
  }
  const base = { quantity: null, ask: null, constant: null, parts: args, start: node.start, end: node.end };
  const rule = RULES.get(node.name);
  return rule === undefined
    ? { ...base, ...pick(node, args) }
    : { ...base, ...ofOne(node, rule, args[0]!, text) };
}

type Core = Pick<Built, 'dimension' | 'anyDimension' | 'scale' | 'value' | 'size' | 'fails'>;

function ofOne(node: Call, rule: Rule, arg: Built, text: string): Core {
  const fits =
    rule.takes === 'anything' ||
    isNumber(arg.dimension) ||
    (rule.takes === 'angle' && sameDimension(arg.dimension, ANGLE));
  if (!fits) {
    refuse(
      arg,
      'function-of-unlike',
      `This takes ${node.name} of ${inWords(arg.dimension)}; it needs ${rule.takes === 'angle' ? 'an angle' : 'a plain number'}.`,
      rule.takes === 'angle'
        ? 'Give an angle such as 15 deg.'
        : `Divide by a quantity of the same kind first: ${node.name}(${text.slice(arg.start, arg.end)} / …).`,
    );
  }
  if (arg.scale === 'degrees') {
    refuse(
      arg,
      'degrees-in-arithmetic',
      `${node.name} of a temperature in °C or °F has no plain meaning.`,
      'Write it in kelvin (K).',
    );
  }
  const of = (x: number): number => {
    const value = rule.of(x);
    return Number.isFinite(value) ? value : Number.NaN;
  };
  return {
    dimension: rule.gives(arg.dimension),
    anyDimension: node.name === 'abs' && arg.anyDimension,
    scale: node.name === 'abs' ? arg.scale : 'plain',
    value: (values) => of(arg.value(values)),
    size: (values) => rule.size(of(arg.value(values)), arg.size(values)),
    fails: rule.fails,
  };
}

/** `min`, `max`: all of one kind. */
function pick(node: Call, args: readonly Built[]): Core {
  const first = args.find((arg) => !arg.anyDimension) ?? args[0]!;
  for (const arg of args) {
    if (arg.anyDimension || sameDimension(arg.dimension, first.dimension)) continue;
    const [a, b] = [inWords(first.dimension), inWords(arg.dimension)];
    refuse(
      arg,
      'compares-unlike',
      `${node.name} is taken of ${a} and ${b}.`,
      'Give numbers of one kind, each with its unit.',
      { facts: { left: a, right: b } },
    );
  }
  const of = node.name === 'min' ? Math.min : Math.max;
  return {
    dimension: first.dimension,
    anyDimension: args.every((arg) => arg.anyDimension),
    scale: args.find((arg) => arg.scale !== 'plain')?.scale ?? 'plain',
    value: (values) => args.reduce((best, arg) => of(best, arg.value(values)), args[0]!.value(values)),
    size: (values) => args.reduce((most, arg) => Math.max(most, arg.size(values)), 0),
    fails: 'One of these has no value.',
  };
}
