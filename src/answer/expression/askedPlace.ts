/** What stands in the brackets behind a quantity, as surroundings, throttle, station, part and changed inputs. */

import { listNames, quote } from '../../study/report.ts';
import type { Ask, AskedAmbient, AskedStation } from '../asked/model.ts';
import { type Draft, type Fixed, fixed, type Inside, numberOf, once, stationAt } from './askedDraft.ts';
import { setOne } from './askedInput.ts';
import type { Bound } from './built.ts';
import { inWords, LENGTH, PRESSURE, sameDimension, TIME } from './dimensions.ts';
import type { Argument, Expression, NameNode } from './tree.ts';
import { refuse } from './trouble.ts';
import type { Workshop } from './workshop.ts';

type Places = Omit<Ask, 'engine' | 'quantity'>;

export function readPlaces(
  node: NameNode,
  engine: string | null,
  shop: Workshop,
  inside: Inside,
  bound: Bound,
): Places {
  const draft: Draft = { ambient: null, throttle: null, station: null, time: null, part: null, inputs: [] };
  const inputs = engine === null ? [] : shop.scope.inputs(engine);
  for (const arg of node.args ?? []) {
    if (arg.is === 'set') setOne(draft, arg, inputs, inside);
    else if (arg.is === 'part') partOf(draft, arg, shop);
    else placeOf(draft, arg, inside, bound);
  }
  const { part, time, ...rest } = draft;
  return { ...rest, ...(time === null ? {} : { time }), ...(part === null ? {} : { part }) };
}

function partOf(draft: Draft, arg: Extract<Argument, { is: 'part' }>, { scope }: Workshop): void {
  if (arg.kind === 'engine' && !scope.engines.includes(arg.name)) {
    refuse(
      arg,
      'engine-unknown',
      `${quote(arg.name)} is not an engine of this study.`,
      `Engines of this study: ${listNames(scope.engines)}.`,
    );
  }
  once(draft, 'part', arg.name, arg);
}

type PlaceArgument = Exclude<Argument, { is: 'set' } | { is: 'part' }>;

function placeOf(draft: Draft, arg: PlaceArgument, inside: Inside, bound: Bound): void {
  if (arg.is === 'station') once(draft, 'station', { kind: arg.station }, arg);
  else if (arg.is === 'areaRatio') stationAt(draft, arg.value, arg, inside);
  else if (arg.is === 'distance') once(draft, 'station', distanceOf(arg, inside), arg);
  else if (arg.is === 'vacuum') once(draft, 'ambient', { kind: 'vacuum' }, arg);
  else if (arg.is === 'pad') once(draft, 'ambient', { kind: 'altitude', altitude: 0 }, arg);
  else placeAt(draft, arg, inside, bound);
}

function distanceOf(arg: Extract<Argument, { is: 'distance' }>, inside: Inside): AskedStation {
  const length = numberOf(arg.value, inside, 'a length', (d) => sameDimension(d, LENGTH));
  return { kind: 'distance', distance: arg.side === 'behind' ? length : -length };
}

/** A value: what it is of tells whether an altitude, a pressure or a time is meant. */
function placeAt(draft: Draft, arg: Extract<Argument, { is: 'place' }>, inside: Inside, bound: Bound): void {
  const node = arg.value;
  const moving = node.is === 'name' && node.args === null ? bound.get(node.name) : undefined;
  if (moving?.place === 'vacuum') {
    once(draft, 'ambient', { kind: 'vacuum' }, arg);
    return;
  }
  const value = fixed(node, inside);
  if (sameDimension(value.dimension, TIME)) once(draft, 'time', value.constant, arg);
  else once(draft, 'ambient', ambientOf(node, value), arg);
}

function ambientOf(node: Expression, { constant, dimension, anyDimension }: Fixed): AskedAmbient {
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
    `In the brackets stands ${anyDimension ? 'a plain number' : inWords(dimension)}; an altitude, a pressure or a time is expected.`,
    'Write e.g. (0 km), (12 km), (0.5 bar), (pad) or (vacuum); of a vehicle (60 s).',
  );
}
