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

export type ExpressionFamily = 'whole' | 'slips' | 'signs';
export const EXPRESSION_FAMILIES: readonly ExpressionFamily[] = ['whole', 'slips', 'signs'];

/** Told of an ask, from its key. */
type Teller = (key: string) => number | null;
type Work = (told: Teller) => number | null;
type Judge = (told: Teller) => boolean | null;

interface Part {
  readonly text: string;
  readonly work: Work;
}

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

/** One kind of quantity: what stands in a test and the units its numbers bear. */
interface Kind {
  readonly names: readonly string[];
  readonly units: readonly (readonly [unit: string, size: number])[];
}

const KINDS: readonly Kind[] = [
  {
    names: [
      'bell.thrust(vacuum)',
      'plug.thrust(pad)',
      'bell.thrust(12 km, throttle = 60 %)',
      'adapting.thrust(0.3 bar)',
    ],
    units: [
      ['N', 1],
      ['kN', 1e3],
      ['MN', 1e6],
    ],
  },
  {
    names: ['bell.specificImpulse(0 km)', 'plug.specificImpulse(vacuum, chamber.pressure = 80 bar)'],
    units: [
      ['s', 1],
      ['min', 60],
    ],
  },
  {
    names: [
      'bell.exitPressure',
      'bell.separationPressure(0 km)',
      'bell.wall.pressure(areaRatio 5)',
      'air.pressure(10 km)',
    ],
    units: [
      ['bar', 1e5],
      ['kPa', 1e3],
      ['Pa', 1],
    ],
  },
  { names: ['bell.areaRatio', 'plug.areaRatio', 'bell.exit.mach'], units: [['', 1]] },
  {
    names: [
      'bell.exit.temperature',
      'plug.chamber.temperature',
      'bell.wall.temperature(0.3 m behind throat)',
    ],
    units: [['K', 1]],
  },
];

const keys = new Map<string, string>();

/** The key under which a quantity is asked. */
function keyOf(name: string, scope: TestScope): string {
  const known = keys.get(name);
  if (known !== undefined) return known;
  const compiled = compileExpression(name, scope);
  if (!compiled.ok) throw new Error(`${name}: ${compiled.problem.what}`);
  const key = askKey(compiled.value.asks[0]!);
  keys.set(name, key);
  return key;
}

const both =
  (a: Part, b: Part, of: (x: number, y: number) => number): Work =>
  (told) => {
    const [x, y] = [a.work(told), b.work(told)];
    if (x === null || y === null) return null;
    const value = of(x, y);
    return Number.isFinite(value) ? value : null;
  };

/** A number of one kind: linear in its quantities, with plain numbers as factors. */
function amount(kind: Kind, depth: number, random: Random, scope: TestScope): Part {
  const roll = random.between(0, 1);
  if (depth <= 0 || roll < 0.35) return leaf(kind, random, scope);
  const inside = (): Part => amount(kind, depth - 1, random, scope);
  if (roll < 0.6) {
    const [a, b] = [inside(), inside()];
    const minus = random.chance(0.5);
    const work = both(a, b, (x, y) => (minus ? x - y : x + y));
    return { text: `(${a.text} ${minus ? '-' : '+'} ${b.text})`, work };
  }
  if (roll < 0.75) {
    const [a, b] = [inside(), inside()];
    const least = random.chance(0.5);
    return {
      text: `${least ? 'min' : 'max'}(${a.text}, ${b.text})`,
      work: both(a, b, least ? Math.min : Math.max),
    };
  }
  if (roll < 0.9) {
    const [a, b, c] = [inside(), inside(), inside()];
    const share: Part = {
      text: `(${b.text}) / (${c.text})`,
      work: both(b, c, (x, y) => (y === 0 ? Number.NaN : x / y)),
    };
    return { text: `${a.text} * (${share.text})`, work: both(a, share, (x, y) => x * y) };
  }
  const of = inside();
  const word = random.pick([
    ['twice ', 2],
    ['half of ', 0.5],
    ['three times ', 3],
    ['-', -1],
  ] as const);
  const work: Work = (told) => {
    const x = of.work(told);
    return x === null ? null : word[1] * x;
  };
  return { text: `${word[0]}(${of.text})`, work };
}

function leaf(kind: Kind, random: Random, scope: TestScope): Part {
  if (random.chance(0.6)) {
    const text = random.pick(kind.names);
    const key = keyOf(text, scope);
    return { text, work: (told) => told(key) };
  }
  const [unit, size] = random.pick(kind.units);
  const number = Number((10 ** random.between(-1, 3)).toPrecision(3));
  return { text: `${number} ${unit}`.trim(), work: () => number * size };
}

interface Whole {
  readonly text: string;
  readonly judge: Judge;
}

const compared =
  (a: Part, b: Part, of: (x: number, y: number) => boolean): Judge =>
  (told) => {
    const [x, y] = [a.work(told), b.work(told)];
    return x === null || y === null ? null : of(x, y);
  };

function relation(random: Random, scope: TestScope): Whole {
  const kind = random.pick(KINDS);
  const [a, b] = [amount(kind, 3, random, scope), amount(kind, 2, random, scope)];
  const [words, of] = random.pick([
    ['>', (x, y) => x > y],
    ['<=', (x, y) => x <= y],
    ['is more than', (x, y) => x > y],
    ['is below', (x, y) => x < y],
    ['is at least', (x, y) => x >= y],
    ['is about', (x, y) => Math.abs(x - y) <= 0.05 * Math.abs(y)],
    ['is roughly', (x, y) => Math.abs(x - y) <= 0.2 * Math.abs(y)],
    ['exceeds', (x, y) => x > y],
  ] as readonly (readonly [string, (x: number, y: number) => boolean])[]);
  return { text: `${a.text} ${words} ${b.text}`, judge: compared(a, b, of) };
}

/** Over outside pressures, evenly spaced: the thrust told at each is a value of its own. */
function ranged(random: Random, scope: TestScope): Whole {
  const limit = Number(random.between(1, 1e6).toPrecision(3));
  const every = random.chance(0.5);
  const at = [0.25, 0.5, 0.75, 1].map((p) => `bell.thrust(${p} bar)`);
  const judge: Judge = (told) => {
    const each = at.map((name) => told(keyOf(name, scope))).map((x) => (x === null ? null : x > limit));
    if (each.includes(!every)) return !every;
    return each.includes(null) ? null : every;
  };
  const text = `for ${every ? 'every' : 'some'} p from 0.25 bar to 1 bar at 4 points: bell.thrust(p) > ${limit} N`;
  return { text, judge };
}

const NOT: Judge = () => null;

function wholeTest(depth: number, random: Random, scope: TestScope): Whole {
  const roll = random.between(0, 1);
  if (depth <= 0 || roll < 0.55) return random.chance(0.15) ? ranged(random, scope) : relation(random, scope);
  const one = wholeTest(depth - 1, random, scope);
  if (roll < 0.65) {
    const judge: Judge = (told) => {
      const holds = one.judge(told);
      return holds === null ? null : !holds;
    };
    return { text: `not (${one.text})`, judge };
  }
  const other = wholeTest(depth - 1, random, scope);
  const and = random.chance(0.5);
  const judge: Judge = (told) => {
    const each = [one.judge(told), other.judge(told)];
    if (each.includes(!and)) return !and;
    return each.includes(null) ? null : and;
  };
  return { text: `(${one.text}) ${and ? 'and' : 'or'} (${other.text})`, judge };
}

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
  return verdict(...judged(compiled.value, judge ?? NOT, judge !== null, seed));
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
