/**
 * Seeded random tests of sentences: whole ones with their verdict worked out by JavaScript itself, the same with slips,
 * and random signs. Each is compiled and decided, or refused with a typed problem and its place.
 */
import { type Ask, askKey } from '../../src/answer/asked/model.ts';
import {
  type CompiledTest,
  compileExpression,
  compileTest,
  type Decision,
  type TestScope,
} from '../../src/answer/expression/index.ts';
import { type Random, randomFrom } from './random.ts';
import { type Judge, wholeTest } from './randomTests.ts';

export type ExpressionFamily = 'whole' | 'slips' | 'signs';
export const EXPRESSION_FAMILIES: readonly ExpressionFamily[] = ['whole', 'slips', 'signs'];

export interface ExpressionCase {
  readonly seed: number;
  readonly family: ExpressionFamily;
  readonly text: string;
  /** What JavaScript itself says of it; null where the case is not made to be decided. */ readonly judge: Judge | null;
}

export interface ExpressionVerdict {
  readonly seed: number;
  readonly family: ExpressionFamily;
  /** `decided`, the code of the typed problem, or `wrong …` when a law is broken. */ readonly outcome: string;
  readonly detail: string;
}

const NOT: Judge = () => null;

const WORDS = [
  ...[
    'and',
    'or',
    'not',
    'is',
    'for every',
    'for some',
    'from',
    'to',
    'between',
    'within',
    'about',
    'rises',
    'highest',
  ],
  ...[
    'vacuum',
    'pad',
    'lip',
    'bell',
    'plug.thrust',
    '.',
    '(',
    ')',
    ',',
    '=',
    '<',
    '>=',
    '^',
    '*',
    '/',
    '-',
    ':',
    '²',
  ],
  ...[
    '1e999',
    '0',
    '3.',
    '.5',
    '%',
    'km',
    'bar',
    '°C',
    'constructor',
    '__proto__',
    'throttle =',
    'species H2O',
    'z',
    'twice',
    '💥',
  ],
];
const SIGNS = ' \t\n()[]{}<>=+-*/^%.,:;!?&|\\"\'`~#$@_abzAZ019µ°²³≤≥≈−×÷éñ中💥\u0000\u200b\ufeff';

function withSlips(text: string, random: Random): string {
  let slipped = text;
  for (let n = Math.ceil(random.between(0, 3)); n > 0; n--) {
    const at = Math.floor(random.between(0, slipped.length));
    const to = Math.min(slipped.length, at + Math.ceil(random.between(0, 6)));
    const [before, behind] = [slipped.slice(0, at), slipped.slice(at)];
    slipped = random.pick([
      before + slipped.slice(to),
      `${before} ${random.pick(WORDS)} ${behind}`,
      slipped.slice(0, to) + behind,
      before + random.pick([...SIGNS]) + behind,
      before + behind.replace(/\d/, String(Math.floor(random.between(0, 10)))),
      before + behind.replace(/ [+*/-] /, random.pick([' + ', ' - ', ' * ', ' / '])),
      before +
        behind.replace(/ (?:N|s|bar|K|km|%)/, random.pick([' N', ' s', ' bar', ' K', ' km', ' %', ''])),
      before + behind.replace(' ', random.pick(['  ', '\n', '\u00a0'])),
    ]);
  }
  return slipped;
}

function randomSigns(random: Random): string {
  const length = Math.floor(10 ** random.between(0, 3.7));
  const pool = random.pick([
    [...SIGNS],
    WORDS,
    ['(', '1 ', '-'],
    ['for every z from 0 km to vacuum: ', 'z '],
    ['9', '.', 'e'],
  ]);
  return Array.from({ length }, () => random.pick(pool)).join(random.pick(['', ' ']));
}

export function makeExpressionCase(seed: number, scope: TestScope): ExpressionCase {
  const random = randomFrom(seed);
  const family = EXPRESSION_FAMILIES[seed % 3]!;
  if (family === 'signs') return { seed, family, text: randomSigns(random), judge: null };
  const { text, judge } = wholeTest(3, random, scope);
  if (family === 'whole') return { seed, family, text, judge };
  return { seed, family, text: withSlips(text, random), judge: null };
}

export function runExpressionCase(one: ExpressionCase, scope: TestScope): ExpressionVerdict {
  const { seed, family, text, judge } = one;
  const verdict = (outcome: string, detail = text): ExpressionVerdict => ({ seed, family, outcome, detail });
  let compiled: ReturnType<typeof compileTest>;
  try {
    compiled = compileTest(text, scope);
    const expression = compileExpression(text, scope);
    if (compiled.ok && expression.ok) return verdict('wrong both a test and a number');
  } catch (error) {
    return verdict('wrong error', `${String(error)} in ${text}`);
  }
  if (!compiled.ok) {
    const { code, what, mend, start, end } = compiled.problem;
    const placed = start >= 0 && end >= start && end <= text.length;
    if (!placed || what === '' || mend === '')
      return verdict('wrong problem', `${code} at ${start}–${end} of ${text}`);
    // A whole test may be too deep, too long, or divide fixed numbers by nothing; any other refusal is a mistake.
    const fair = ['arithmetic-without-value', 'text-too-long', 'nested-too-deep'].includes(code);
    return verdict(family === 'whole' && !fair ? `wrong refusal ${code}` : code, `${what} in ${text}`);
  }
  try {
    return verdict(...judged(compiled.value, judge ?? NOT, judge !== null, seed));
  } catch (error) {
    return verdict('wrong error while deciding', `${String(error)} in ${text}`);
  }
}

/** Decide with random values, some of them absent; the laws that every decision obeys. */
function judged(test: CompiledTest, judge: Judge, known: boolean, seed: number): [string, string] {
  const random = randomFrom(seed + 1);
  const values = test.asks.map((): number | null =>
    random.chance(0.05) ? null : 10 ** random.between(-2, 6),
  );
  const told = new Map(test.asks.map((ask: Ask, i) => [askKey(ask), values[i]!]));
  const decision = test.decide(values);
  const broken = brokenLaw(test, decision, values);
  if (broken !== null) return [`wrong ${broken}`, test.text];
  if (!known) return ['decided', test.text];
  const expected = judge((key) => told.get(key) ?? null);
  if (decision.holds === expected) return ['decided', test.text];
  return ['wrong verdict', `${decision.holds} for ${expected} in ${test.text}`];
}

function brokenLaw(
  test: CompiledTest,
  decision: Decision,
  values: readonly (number | null)[],
): string | null {
  const { holds, margin, absent, sides, witnesses } = decision;
  if (test.holds(values) !== holds || test.margin(values) !== margin) return 'quick verdict';
  if ((holds === null) !== (absent !== null) || (holds === null) !== (margin === null)) return 'absence';
  if (margin !== null && margin !== 0 && margin > 0 !== holds) return 'sign of the margin';
  const numbers = [
    margin,
    ...sides.flatMap(({ left, right, margin: m, tolerance }) => [left, right, m, tolerance]),
  ];
  const places = witnesses.map(({ place }) => (place === 'vacuum' ? 0 : place));
  const told = test.numbers.map((number) => number.evaluate(values));
  for (const x of [...numbers, ...places, ...told])
    if (x !== null && !Number.isFinite(x)) return 'not a number';
  return null;
}
