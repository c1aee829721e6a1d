/** What stands in the brackets behind a quantity, as surroundings, throttle, station, part and changed inputs. */

import { nearestName } from '../../study/nearest.ts';
import { listNames, quote } from '../../study/report.ts';
import type { Ask, AskedAmbient, AskedStation, ChangedInput } from '../asked/model.ts';
import type { Bound, Built } from './built.ts';
import { inWords, isNumber, LENGTH, PRESSURE, sameDimension } from './dimensions.ts';
import type { SettableInput } from './model.ts';
import type { Argument, Expression, NameNode, Span } from './tree.ts';
import { refuse } from './trouble.ts';
import type { Workshop } from './workshop.ts';

type Places = Omit<Ask, 'engine' | 'quantity'>;

interface Draft {
  ambient: AskedAmbient | null;
  throttle: number | null;
  station: AskedStation | null;
  part: string | null;
  readonly inputs: ChangedInput[];
}

type Inside = (of: Expression) => Built;

/** A throttle beyond this is no throttle. */
const MOST_THROTTLE = 2;

export function readPlaces(
  node: NameNode,
  engine: string | null,
  shop: Workshop,
  inside: Inside,
  bound: Bound,
): Places {
  const draft: Draft = { ambient: null, throttle: null, station: null, part: null, inputs: [] };
  const inputs = engine === null ? [] : shop.scope.inputs(engine);
  for (const arg of node.args ?? []) {
    if (arg.is === 'set') setOne(draft, arg, inputs, inside);
    else if (arg.is === 'part') once(draft, 'part', `${arg.name}`, arg);
    else placeOf(draft, arg, inside, bound);
  }
  const { part, ...rest } = draft;
  return { ...rest, ...(part === null ? {} : { part }) };
}

function once<K extends 'ambient' | 'station' | 'part' | 'throttle'>(
  draft: Draft,
  key: K,
  value: NonNullable<Draft[K]>,
  at: Span,
): void {
  if (draft[key] !== null) {
    const what = { ambient: 'outside', station: 'place on the wall', part: 'part', throttle: 'throttle' }[
      key
    ];
    refuse(
      at,
      'place-twice',
      `A second ${what} stands in the brackets.`,
      'Keep one. A point marks decimals: 0.5 bar, not 0,5 bar.',
    );
  }
  draft[key] = value;
}

type PlaceArgument = Exclude<Argument, { is: 'set' } | { is: 'part' }>;

function placeOf(draft: Draft, arg: PlaceArgument, inside: Inside, bound: Bound): void {
  if (arg.is === 'station') once(draft, 'station', { kind: arg.station }, arg);
  else if (arg.is === 'areaRatio') stationAt(draft, arg.value, arg, inside);
  else if (arg.is === 'distance') once(draft, 'station', distanceOf(arg, inside), arg);
  else once(draft, 'ambient', surroundingsOf(arg, inside, bound), arg);
}

function stationAt(draft: Draft, value: Expression, at: Span, inside: Inside): void {
  const areaRatio = numberOf(value, inside, 'an area ratio', isNumber);
  once(draft, 'station', { kind: 'areaRatio', areaRatio }, at);
}

function distanceOf(arg: Extract<Argument, { is: 'distance' }>, inside: Inside): AskedStation {
  const length = numberOf(arg.value, inside, 'a length', (d) => sameDimension(d, LENGTH));
  return { kind: 'distance', distance: arg.side === 'behind' ? length : -length };
}

function surroundingsOf(
  arg: Extract<Argument, { is: 'vacuum' | 'pad' | 'place' }>,
  inside: Inside,
  bound: Bound,
): AskedAmbient {
  if (arg.is === 'vacuum') return { kind: 'vacuum' };
  return arg.is === 'pad' ? { kind: 'altitude', altitude: 0 } : ambientOf(arg.value, inside, bound);
}

/** A fixed number of the right kind: what stands in the brackets may not be asked for itself. */
function numberOf(
  node: Expression,
  inside: Inside,
  kind: string,
  fits: (dimension: Built['dimension']) => boolean,
): number {
  const built = fixed(node, inside);
  if (fits(built.dimension)) return built.constant;
  return refuse(
    node,
    'place-unlike',
    `Here ${kind} is expected, but this is ${inWords(built.dimension)}.`,
    `Give ${kind}.`,
  );
}

function fixed(node: Expression, inside: Inside): Built & { readonly constant: number } {
  const built = inside(node);
  const { constant } = built;
  if (constant !== null) return { ...built, constant };
  return refuse(
    node,
    'place-not-fixed',
    'What stands in the brackets is itself computed; only fixed values can stand there.',
    'Write a value such as 10 km, or let a name move: for every z from 0 km to vacuum: ….',
  );
}

function ambientOf(node: Expression, inside: Inside, bound: Bound): AskedAmbient {
  const moving = node.is === 'name' && node.args === null ? bound.get(node.name) : undefined;
  if (moving?.place === 'vacuum') return { kind: 'vacuum' };
  const { constant, dimension, anyDimension } = fixed(node, inside);
  if (sameDimension(dimension, LENGTH)) return { kind: 'altitude', altitude: constant };
  if (sameDimension(dimension, PRESSURE)) {
    if (constant < 0) {
      refuse(
        node,
        'pressure-negative',
        'A pressure below zero cannot be.',
        'Pressures are absolute: give 0 bar or more.',
      );
    }
    return constant === 0 ? { kind: 'vacuum' } : { kind: 'pressure', pressure: constant };
  }
  return refuse(
    node,
    'place-unlike',
    `In the brackets stands ${anyDimension ? 'a plain number' : inWords(dimension)}; an altitude or a pressure is expected.`,
    'Write e.g. (0 km), (12 km), (0.5 bar), (pad) or (vacuum).',
  );
}

type SetArgument = Extract<Argument, { is: 'set' }>;

function setOne(draft: Draft, arg: SetArgument, inputs: readonly SettableInput[], inside: Inside): void {
  if (arg.input === 'throttle') setThrottle(draft, arg, inside);
  else if (arg.input === 'areaRatio') stationAt(draft, arg.value, arg, inside);
  else setInput(draft, arg, inputs, inside);
}

function setInput(draft: Draft, arg: SetArgument, inputs: readonly SettableInput[], inside: Inside): void {
  const input = inputs.find(({ name }) => name === arg.input) ?? unknownInput(arg, inputs);
  const { name, dimension } = input;
  const value = numberOf(arg.value, inside, inWords(dimension), (d) => sameDimension(d, dimension));
  if (!allows(input, value)) {
    refuse(
      arg.value,
      'input-out-of-range',
      `This is outside what ${quote(name)} may be: ${input.range}.`,
      `Give ${input.range}.`,
      { facts: { value } },
    );
  }
  if (draft.inputs.some((other) => other.input === name)) {
    refuse(arg, 'input-twice', `${quote(name)} is set twice.`, 'Keep one of the two.');
  }
  draft.inputs.push({ input: name, value });
}

function allows({ lowest, highest, openBelow, openAbove, whole }: SettableInput, value: number): boolean {
  if (whole && !Number.isInteger(value)) return false;
  if (lowest !== null && (openBelow ? value <= lowest : value < lowest)) return false;
  return highest === null || (openAbove ? value < highest : value <= highest);
}

function unknownInput(arg: SetArgument, inputs: readonly SettableInput[]): never {
  const names = inputs.map(({ name }) => name);
  const near = names.find((name) => name.endsWith(`.${arg.input}`)) ?? nearestName(arg.input, names);
  return refuse(
    arg,
    'input-unknown',
    `${quote(arg.input)} is not an input that can be changed here.`,
    names.length === 0
      ? 'The air has no inputs; leave it out.'
      : `${near === null ? '' : `Did you mean ${near}? `}Inputs that can be changed: throttle, ${listNames(names)}.`,
  );
}

function setThrottle(draft: Draft, arg: Extract<Argument, { is: 'set' }>, inside: Inside): void {
  const share = numberOf(arg.value, inside, 'a share', isNumber);
  if (!(share > 0 && share <= MOST_THROTTLE)) {
    refuse(
      arg.value,
      'throttle-out-of-range',
      'A throttle is a share of the chamber pressure: more than 0 % and up to 200 %.',
      'Write it like throttle = 60 %.',
      { facts: { throttle: share } },
    );
  }
  once(draft, 'throttle', share, arg);
}
