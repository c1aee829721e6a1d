/** Random whole tests of sentences, each with its verdict worked out by JavaScript itself beside the text. */
import { askKey } from '../../src/answer/asked/model.ts';
import { compileExpression, type TestScope } from '../../src/answer/expression/index.ts';
import type { Random } from './random.ts';

/** Told of an ask, from its key. */
export type Teller = (key: string) => number | null;
type Work = (told: Teller) => number | null;
export type Judge = (told: Teller) => boolean | null;

interface Part {
  readonly text: string;
  readonly work: Work;
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

/** Steps smaller than this share of the largest value count as flat, as docs/sentences.md says. */
const FLAT = 1e-6;
const steps = (y: readonly number[]): number[] =>
  y.slice(1).map((value, i) => (value - y[i]!) / Math.max(...y));
const noStepDown = (y: readonly number[]): boolean => steps(y).every((step) => step >= -FLAT);
const noStepUp = (y: readonly number[]): boolean => steps(y).every((step) => step <= FLAT);
const whole = (y: readonly number[]): number => (y.at(-1)! - y[0]!) / Math.max(...y);

/** What is said of the whole range: the steps between its four points, and how far the values lie apart. */
function trending(random: Random, scope: TestScope): Whole {
  const at = [0.25, 0.5, 0.75, 1].map((p) => `bell.thrust(${p} bar)`);
  const percent = Number(random.between(1, 99).toPrecision(3));
  const [words, of] = random.pick([
    ['rises', (y) => noStepDown(y) && whole(y) > FLAT],
    ['falls', (y) => noStepUp(y) && whole(y) < -FLAT],
    ['does not rise', noStepUp],
    ['never falls', noStepDown],
    [
      `is constant within ${percent} %`,
      (y) => (Math.max(...y) - Math.min(...y)) * 100 <= percent * (Math.max(...y) + Math.min(...y)),
    ],
  ] as readonly (readonly [string, (y: readonly number[]) => boolean])[]);
  const judge: Judge = (told) => {
    const y = at.map((name) => told(keyOf(name, scope)));
    return y.includes(null) ? null : of(y as readonly number[]);
  };
  return { text: `bell.thrust(p) ${words} for p from 0.25 bar to 1 bar at 4 points`, judge };
}

function simple(random: Random, scope: TestScope): Whole {
  if (random.chance(0.15)) return ranged(random, scope);
  return random.chance(0.1) ? trending(random, scope) : relation(random, scope);
}

/** A test in words and signs, with what JavaScript says of it. */
export function wholeTest(depth: number, random: Random, scope: TestScope): Whole {
  const roll = random.between(0, 1);
  if (depth <= 0 || roll < 0.55) return simple(random, scope);
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
