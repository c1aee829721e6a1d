/** What stands in the brackets behind a quantity, as surroundings, throttle, station, part and changed inputs. */

import { nearestName } from '../../study/nearest.ts';
import { listNames, quote } from '../../study/report.ts';
import type { Ask, AskedAmbient, AskedStation, ChangedInput } from '../asked/model.ts';
import type { CatalogueEntry } from '../catalogue/entry.ts';
import type { Bound, Built } from './built.ts';
import { inWords, isNumber, LENGTH, PRESSURE, sameDimension } from './dimensions.ts';
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
  entry: CatalogueEntry,
  shop: Workshop,
  inside: Inside,
  bound: Bound,
): Places {
  const draft: Draft = { ambient: null, throttle: null, station: null, part: null, inputs: [] };
  for (const arg of node.args ?? []) {
    if (arg.is === 'set') setInput(draft, arg, engine, shop, inside);
    else if (arg.is === 'part') once(draft, 'part', `${arg.name}`, arg);
    else placeOf(draft, arg, inside, bound);
  }
  const { part, ...rest } = draft;
  refuseMisplaced(node, entry, draft);
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

function placeOf(
  draft: Draft,
  arg: Exclude<Argument, { is: 'set' } | { is: 'part' }>,
  inside: Inside,
  bound: Bound,
): void {
  switch (arg.is) {
    case 'vacuum':
      return once(draft, 'ambient', { kind: 'vacuum' }, arg);
    case 'pad':
      return once(draft, 'ambient', { kind: 'altitude', altitude: 0 }, arg);
    case 'station':
      return once(draft, 'station', { kind: arg.station }, arg);
    case 'areaRatio': {
      const areaRatio = numberOf(arg.value, inside, 'an area ratio', isNumber);
      if (areaRatio < 1)
        refuse(
          arg,
          'area-ratio-below-one',
          'No cross-section is smaller than the throat.',
          'Give an area ratio of 1 or more.',
        );
      return once(draft, 'station', { kind: 'areaRatio', areaRatio }, arg);
    }
    case 'distance': {
      const length = numberOf(arg.value, inside, 'a length', (d) => sameDimension(d, LENGTH));
      const distance = arg.side === 'behind' ? length : -length;
      return once(draft, 'station', { kind: 'distance', distance }, arg);
    }
    case 'place':
      return once(draft, 'ambient', ambientOf(arg.value, inside, bound), arg);
  }
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

function setInput(
  draft: Draft,
  arg: Extract<Argument, { is: 'set' }>,
  engine: string | null,
  shop: Workshop,
  inside: Inside,
): void {
  if (arg.input === 'throttle') return setThrottle(draft, arg, inside);
  if (arg.input === 'areaRatio') return placeOf(draft, { ...arg, is: 'areaRatio' }, inside, new Map());
  const inputs = engine === null ? [] : shop.scope.inputs(engine);
  const input = inputs.find(({ name }) => name === arg.input);
  if (input === undefined) {
    const names = inputs.map(({ name }) => name);
    const near = nearestName(arg.input, names);
    return refuse(
      arg,
      'input-unknown',
      engine === null
        ? 'The air has no inputs to change.'
        : `${quote(arg.input)} is not an input of ${quote(engine)} that can be changed.`,
      `${near === null ? '' : `Did you mean ${near}? `}Inputs that can be changed: throttle, ${listNames(names)}.`,
    );
  }
  const value = numberOf(arg.value, inside, inWords(input.dimension), (d) =>
    sameDimension(d, input.dimension),
  );
  if ((input.lowest !== null && value < input.lowest) || (input.highest !== null && value > input.highest)) {
    refuse(
      arg.value,
      'input-out-of-range',
      `This is outside what ${quote(input.name)} may be: ${input.range}.`,
      `Give ${input.range}.`,
      { facts: { value } },
    );
  }
  if (draft.inputs.some((other) => other.input === input.name)) {
    refuse(arg, 'input-twice', `${quote(input.name)} is set twice.`, 'Keep one of the two.');
  }
  draft.inputs.push({ input: input.name, value });
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

/** What the place of the entry says about brackets; finer rules come with the quantities themselves. */
function refuseMisplaced(node: NameNode, entry: CatalogueEntry, draft: Draft): void {
  const { place, name } = entry;
  const perAmbient = place === 'altitude' || place === 'air';
  const where = node.name;
  if (perAmbient && draft.ambient === null) {
    refuse(
      node,
      'place-missing',
      `${quote(name)} is not the same everywhere; no place is given.`,
      `Write where: ${where}(vacuum), ${where}(0 km) or ${where}(0.5 bar).`,
    );
  }
  if (place === 'wall' && draft.station === null) {
    refuse(
      node,
      'place-missing',
      `${quote(name)} differs along the wall; no place is given.`,
      `Write where: ${where}(lip), ${where}(throat), ${where}(areaRatio 5) or ${where}(0.3 m behind throat).`,
    );
  }
  if (place !== 'wall' && draft.station !== null) {
    refuse(
      node,
      'place-misplaced',
      `${quote(name)} has no place along the wall.`,
      'Leave the place on the wall out.',
    );
  }
}
