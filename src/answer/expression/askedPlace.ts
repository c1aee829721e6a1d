/** What stands in the brackets behind a quantity, as surroundings, throttle, station, part and changed inputs. */

import { listNames, quote } from '../../study/report.ts';
import type { Ask, AskedAmbient, AskedStation } from '../asked/model.ts';
import { type Draft, fixed, type Inside, numberOf, once, stationAt } from './askedDraft.ts';
import { setOne } from './askedInput.ts';
import type { Bound } from './built.ts';
import { inWords, LENGTH, PRESSURE, sameDimension } from './dimensions.ts';
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
  const draft: Draft = { ambient: null, throttle: null, station: null, part: null, inputs: [] };
  const inputs = engine === null ? [] : shop.scope.inputs(engine);
  for (const arg of node.args ?? []) {
    if (arg.is === 'set') setOne(draft, arg, inputs, inside);
    else if (arg.is === 'part') partOf(draft, arg, shop);
    else placeOf(draft, arg, inside, bound);
  }
  const { part, ...rest } = draft;
  return { ...rest, ...(part === null ? {} : { part }) };
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
  else once(draft, 'ambient', surroundingsOf(arg, inside, bound), arg);
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
