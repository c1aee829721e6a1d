/** Looks up a name: a variable of a range, or a quantity of an engine or of the air with where it is asked for. */

import { listNames, quote } from '../../study/report.ts';
import type { Ask } from '../asked/model.ts';
import type { CatalogueEntry } from '../catalogue/entry.ts';
import { readPlaces } from './askedPlace.ts';
import { askedOf, type Bound, type Built, constantOf } from './built.ts';
import { exponentsOf } from './dimensions.ts';
import type { Expression, NameNode } from './tree.ts';
import { refuse } from './trouble.ts';
import { askIndex, type Workshop } from './workshop.ts';

export function buildQuantity(
  node: NameNode,
  bound: Bound,
  shop: Workshop,
  inside: (of: Expression) => Built,
): Built {
  const variable = bound.get(node.name);
  if (variable !== undefined) return variableOf(node, variable);
  const { engine, entry } = resolve(node, shop);
  const dimension = exponentsOf(entry.dimension);
  if (dimension === null || entry.place === 'comparison') {
    refuse(
      node,
      'quantity-of-pair',
      `${quote(node.name)} belongs to a pair of engines, not to one.`,
      'Write the difference out: plug.thrust(0 km) − bell.thrust(0 km).',
    );
  }
  const places = readPlaces(node, engine, shop, inside, bound);
  const ask: Ask = { engine, quantity: entry.name, ...places };
  const { start, end } = node;
  if (isNothing(ask)) return constantOf(0, { dimension, start, end });
  const problem = shop.scope.askProblem(ask);
  if (problem !== null) {
    const { code, what, mend, why } = problem;
    refuse(node, code, what, mend, why === undefined ? {} : { why });
  }
  return askedOf(askIndex(shop, ask, node), { dimension, quantity: entry.name, start, end });
}

/** Air that is not there presses on nothing: known without asking, so that a range up to vacuum may hold it. */
const isNothing = ({ quantity, ambient, throttle, inputs, part, station }: Ask): boolean =>
  ambient?.kind === 'vacuum' &&
  ['air.pressure', 'air.density'].includes(quantity) &&
  throttle === null &&
  station === null &&
  part === undefined &&
  inputs.length === 0;

function variableOf(
  node: NameNode,
  { place, dimension }: { place: number | 'vacuum'; dimension: Built['dimension'] },
): Built {
  const { start, end, name } = node;
  if (node.args !== null) {
    refuse(
      node,
      'variable-with-place',
      `${quote(name)} is what moves; it has no place of its own.`,
      `Write ${name} alone.`,
    );
  }
  if (place === 'vacuum') {
    refuse(
      node,
      'vacuum-as-number',
      `${quote(name)} goes up to vacuum, which is no number to reckon with.`,
      `Use ${name} only in brackets, as in bell.thrust(${name}), or let the range end at a value such as 100 km.`,
    );
  }
  return constantOf(place, { dimension, start, end });
}

/** Whether the brackets name surroundings or a place along the wall. */
const isPlaced = ({ args }: NameNode): boolean =>
  args?.some(({ is }) => is !== 'set' && is !== 'part') ?? false;

interface Resolved {
  readonly engine: string | null;
  readonly entry: CatalogueEntry;
}

function resolve(node: NameNode, { scope }: Workshop): Resolved {
  const dot = node.name.indexOf('.');
  const first = dot < 0 ? node.name : node.name.slice(0, dot);
  const rest = dot < 0 ? '' : node.name.slice(dot + 1);
  const hasPlace = isPlaced(node);
  const ofEngine = scope.engines.includes(first);
  if (ofEngine && rest !== '') {
    const entry = scope.quantity(rest, hasPlace);
    if (entry !== null && entry.place !== 'air' && entry.place !== 'vehicle') return { engine: first, entry };
  }
  if (scope.vehicles.includes(first)) return { engine: first, entry: ofVehicle(node, first, rest, scope) };
  const air = scope.quantity(node.name, hasPlace);
  if (air?.place === 'air') return { engine: null, entry: air };
  return refuseName(node, ofEngine ? first : null, rest, air, scope);
}

/** What is found of a vehicle, stated of it, or so at a moment: `booster.payload`, `booster.first.dry`, `booster.altitude(60 s)`. */
function ofVehicle(node: NameNode, vehicle: string, rest: string, scope: Workshop['scope']): CatalogueEntry {
  for (const kind of ['flight', 'vehicle', 'flight.points']) {
    const entry = rest === '' ? null : scope.quantity(`${kind}.${rest}`, false);
    if (entry !== null) return entry;
  }
  if (rest === '') {
    refuse(
      node,
      'quantity-missing',
      `${quote(vehicle)} is a vehicle, not a number.`,
      `Write what of it: ${vehicle}.payload.`,
    );
  }
  const isOfEngine = scope.quantity(rest, isPlaced(node)) !== null;
  const near = scope
    .nearestQuantities(`flight.${rest}`)
    .flatMap((name) =>
      /^(flight|vehicle)\./.test(name)
        ? [name.replace(/^(flight(?:\.points)?|vehicle)\./, `${vehicle}.`)]
        : [],
    );
  return refuse(
    node,
    'quantity-unknown',
    isOfEngine
      ? `${quote(rest)} belongs to an engine; ${quote(vehicle)} is a vehicle.`
      : `${quote(rest)} is not a quantity of a vehicle.`,
    isOfEngine
      ? `Ask an engine: ${scope.engines[0] ?? 'bell'}.${rest}.`
      : `${near.length === 0 ? '' : `Did you mean ${listNames(near)}? `}Of a vehicle are known e.g. ${vehicle}.payload, ${vehicle}.maxDynamicPressure, ${vehicle}.altitude(60 s); docs/quantities.md lists all.`,
  );
}

function refuseName(
  node: NameNode,
  engine: string | null,
  rest: string,
  alone: CatalogueEntry | null,
  scope: Workshop['scope'],
): never {
  const vehicles = scope.vehicles.length === 0 ? '' : `; vehicles: ${listNames(scope.vehicles)}`;
  const engines = `${listNames(scope.engines)}${vehicles}`;
  const example = scope.engines[0] ?? 'bell';
  if (alone !== null) {
    refuse(
      node,
      'engine-missing',
      `${quote(node.name)} is a quantity of an engine, but no engine is named.`,
      `Put the engine before it: ${example}.${node.name}. Engines of this study: ${engines}.`,
    );
  }
  if (engine !== null && rest !== '') {
    const near = scope
      .nearestQuantities(rest)
      .flatMap((name) => (/^(flight|vehicle)\./.test(name) ? [] : [`${engine}.${name}`]));
    refuse(
      node,
      'quantity-unknown',
      `${quote(rest)} is not a quantity in the catalogue.`,
      `${near.length === 0 ? '' : `Did you mean ${listNames(near)}? `}All of them are listed in docs/quantities.md.`,
    );
  }
  if (engine !== null) {
    refuse(
      node,
      'quantity-missing',
      `${quote(engine)} is an engine, not a number.`,
      `Write what of it: ${engine}.thrust(vacuum).`,
    );
  }
  const first = node.name.split('.')[0]!;
  const isQuantity = rest !== '' && scope.quantity(rest, isPlaced(node)) !== null;
  refuse(
    node,
    isQuantity ? 'engine-unknown' : 'name-unknown',
    `${quote(isQuantity ? first : node.name)} is ${isQuantity ? 'not an engine of this study' : 'neither an engine’s quantity, nor one of the air, nor what moves in a range'}.`,
    `Engines of this study: ${engines}. Write e.g. ${example}.thrust(vacuum). A place is vacuum, pad, sea level, an altitude such as 12 km or a pressure such as 0.5 bar.`,
  );
}
