/** An expression of a test in words: `half the difference between the thrust of A in vacuum and that of B in vacuum`. */

import { resolveQuantity } from '../asked/resolveQuantity.ts';
import { listed } from '../compare/speech.ts';
import type { CompiledExpression, CompiledTest } from '../expression/model.ts';
import { readExpression } from '../expression/readTest.ts';
import type { Expression, NameNode } from '../expression/tree.ts';
import { Trouble } from '../expression/trouble.ts';
import { askWords, type OwnersById, thatOfWords } from './askWords.ts';
import type { Compile } from './measured.ts';
import { timesWords } from './ratioWords.ts';

type Asks = CompiledTest['asks'];
type Ask = Asks[number];

/** Words, and how tightly they hang together: a sum may stand in no product. */
interface Spoken {
  readonly words: string;
  readonly as: 'one' | 'product' | 'sum';
  /** The one quantity that it is. */ readonly ask: Ask | null;
}

/** More quantities than this are no sentence. */
const MOST_NAMED = 4;

/** Of one number outside ranges; what is too complex for words is told by what it is worked out from. */
export function expressionWords(
  expression: CompiledExpression,
  engines: OwnersById,
  compile: Compile,
): string {
  const { ask, asks } = expression;
  const own = ask === null ? undefined : asks[ask];
  if (own !== undefined) return askWords(own, engines);
  return spokenOf(expression, engines, compile) ?? workedOutWords(asks, engines, true);
}

/** True where only a description of what it is worked out from can be said. */
export function isBeyondWords(
  expression: CompiledExpression,
  engines: OwnersById,
  compile: Compile,
): boolean {
  return expression.ask === null && spokenOf(expression, engines, compile) === null;
}

function spokenOf({ text }: CompiledExpression, engines: OwnersById, compile: Compile): string | null {
  const node = parsed(text);
  if (node === null) return null;
  const find = ({ start, end }: NameNode): Ask | null => {
    const found = compile(text.slice(start, end))?.expression;
    return found === undefined || found.ask === null ? null : (found.asks[found.ask] ?? null);
  };
  return new Speaker(find, engines, true).say(node)?.words ?? null;
}

/** Of a side inside a range: without the places, which move. */
export function movingWords(text: string, asks: Asks, engines: OwnersById): string {
  const node = parsed(text);
  const find = (name: NameNode): Ask | null => movingAsk(name, asks);
  const spoken = node === null ? null : new Speaker(find, engines, false).say(node);
  return spoken?.words ?? workedOutWords(node === null ? asks : asksIn(node, asks), engines, false);
}

/** `what the test works out from the thrust of A and the exit area of A` */
function workedOutWords(used: Asks, engines: OwnersById, placed: boolean): string {
  const names = [...new Set(used.map((ask) => askWords(ask, engines, placed)))];
  if (names.length > 0 && names.length <= MOST_NAMED) return `what the test works out from ${listed(names)}`;
  return `what the test works out for ${listed(engineNames(used, engines))}`;
}

export function engineNames(asks: Asks, engines: OwnersById): readonly string[] {
  const ids = new Set(asks.flatMap(({ engine }) => (engine === null ? [] : [engine])));
  return ids.size === 0 ? ['the air'] : [...ids].map((id) => engines.get(id)?.name ?? id);
}

function parsed(text: string): Expression | null {
  try {
    return readExpression(text);
  } catch (error) {
    if (error instanceof Trouble) return null;
    throw error;
  }
}

/** Standard acceleration of free fall [m/s²], by which a specific impulse becomes a speed. */
const G0 = 9.80665;

class Speaker {
  readonly #find: (node: NameNode) => Ask | null;
  readonly #engines: OwnersById;
  readonly #placed: boolean;
  #named = 0;

  constructor(find: (node: NameNode) => Ask | null, engines: OwnersById, placed: boolean) {
    this.#find = find;
    this.#engines = engines;
    this.#placed = placed;
  }

  say(node: Expression): Spoken | null {
    if (node.is === 'name') return this.#name(node);
    return node.is === 'binary' ? this.#binary(node) : null;
  }

  #name(node: NameNode): Spoken | null {
    const ask = this.#find(node);
    this.#named += 1;
    if (ask === null || this.#named > MOST_NAMED) return null;
    return { words: askWords(ask, this.#engines, this.#placed), as: 'one', ask };
  }

  #binary(node: Extract<Expression, { is: 'binary' }>): Spoken | null {
    const { operator, left, right } = node;
    if (operator === '^') return null;
    const [first, second] = [constantOf(left), constantOf(right)];
    if (operator === '*' && first !== null) return this.#times(first, right);
    if (second !== null && operator === '*') return this.#times(second, left);
    if (second !== null && operator === '/') return this.#times(1 / second, left);
    if (operator === '*' && isG0(left)) return this.#asSpeed(right);
    if (operator === '*' && isG0(right)) return this.#asSpeed(left);
    const [one, other] = [this.say(left), this.say(right)];
    return one === null || other === null ? null : this.#joined(operator, one, other);
  }

  #times(factor: number, of: Expression): Spoken | null {
    const spoken = this.say(of);
    if (spoken === null || factor <= 0 || !Number.isFinite(factor)) return null;
    if (spoken.as === 'sum' && !spoken.words.startsWith('the difference')) return null;
    // It is part of what is named, so it is told to three digits and not as “a little more than”.
    const rounded = Number(factor.toPrecision(3));
    if (rounded === 1) return spoken;
    const words = timesWords(rounded, rounded).words.replace(/^(?:a little|about) .*$/, `${rounded} times`);
    return { words: `${words} ${spoken.words}`, as: 'product', ask: null };
  }

  #asSpeed(of: Expression): Spoken | null {
    const spoken = this.say(of);
    if (spoken?.ask?.quantity !== 'specificImpulse') return null;
    return { words: `${spoken.words} as a speed`, as: 'one', ask: null };
  }

  #joined(operator: '+' | '-' | '*' | '/', one: Spoken, other: Spoken): Spoken | null {
    const beside = this.#beside(one, other);
    if (operator === '-') {
      return one.as === 'one' && other.as === 'one'
        ? { words: `the difference between ${one.words} and ${beside}`, as: 'sum', ask: null }
        : { words: `${one.words} less ${beside}`, as: 'sum', ask: null };
    }
    if (operator === '+') return { words: `${one.words} plus ${beside}`, as: 'sum', ask: null };
    if (one.as === 'sum' || other.as === 'sum') return null;
    if (operator === '*') return { words: `${one.words} times ${other.words}`, as: 'product', ask: null };
    if (other.as !== 'one') return null;
    return one.as === 'one'
      ? { words: `the ratio of ${one.words} to ${beside}`, as: 'one', ask: null }
      : { words: `${one.words} divided by ${other.words}`, as: 'product', ask: null };
  }

  #beside(one: Spoken, other: Spoken): string {
    const [a, b] = [one.ask, other.ask];
    if (a === null || b === null || b.engine === null) return other.words;
    return a.quantity === b.quantity && a.part === b.part
      ? thatOfWords(b, this.#engines, this.#placed)
      : other.words;
  }
}

/** Which of the asks a name inside a range is, wherever it is asked for. */
function movingAsk({ name, args }: NameNode, asks: Asks): Ask | null {
  const [engine = '', ...rest] = name.split('.');
  const found = asks.find((ask) =>
    ask.engine === null
      ? quantityNamed(name, args !== null) === ask.quantity
      : ask.engine === engine && quantityNamed(rest.join('.'), args !== null) === ask.quantity,
  );
  return found ?? null;
}

function quantityNamed(name: string, hasPlace: boolean): string | null {
  const found = resolveQuantity(name, hasPlace);
  return found.ok ? found.value.name : null;
}

function asksIn(node: Expression, asks: Asks): Asks {
  const found: Ask[] = [];
  const walk = (at: Expression): void => {
    if (at.is === 'name') {
      const ask = movingAsk(at, asks);
      if (ask !== null) found.push(ask);
    } else if (at.is === 'binary') {
      walk(at.left);
      walk(at.right);
    } else if (at.is === 'negative') walk(at.of);
    else if (at.is === 'call') at.args.forEach(walk);
  };
  walk(node);
  return found;
}

const isG0 = (node: Expression): boolean =>
  node.is === 'number' && node.dimension.some((e) => e !== 0) && Math.abs(node.value - G0) < 0.01;

/** A plain number, also one worked out of others; null where it is none. */
function constantOf(node: Expression): number | null {
  if (node.is === 'number') return node.dimension.every((e) => e === 0) ? node.value : null;
  if (node.is === 'call' && node.name === 'ln' && node.args[0] !== undefined) {
    const of = constantOf(node.args[0]);
    return of === null ? null : Math.log(of);
  }
  if (node.is !== 'binary') return null;
  const [a, b] = [constantOf(node.left), constantOf(node.right)];
  if (a === null || b === null) return null;
  return { '+': a + b, '-': a - b, '*': a * b, '/': a / b, '^': a ** b }[node.operator];
}
