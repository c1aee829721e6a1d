/** Under which conditions a sentence was tested, one line each. */

import type { EngineInput, Study } from '../../study/model.ts';
import { ownersOf } from '../../study/owners.ts';
import { ownersAsked } from '../asked/ownersAsked.ts';
import { quantity } from '../catalogue.ts';
import { listed } from '../compare/speech.ts';
import { settableInputs } from '../inputs/index.ts';
import { ambientWords } from './askWords.ts';
import type { DrawnAsks } from './drawnAsks.ts';
import { movableInputs } from './inputLabels.ts';
import type { PlacedTest } from './shareOf.ts';

export function conditionsOf(
  { test, places }: PlacedTest,
  study: Study,
  drawn: DrawnAsks,
): readonly string[] {
  const ids = new Set(test.asks.map(({ engine }) => engine));
  const engines = study.engines.filter(({ id }) => ids.has(id));
  const models = [...new Set(test.asks.map((ask) => quantity(ask.quantity).model))];
  return [
    ...(engines.length === 0 ? [] : [`Engines: ${listed(engines.map(({ name }) => name))}.`]),
    ...surroundings(test),
    ...test.ranges.map(({ words }) => `Range: ${words}.`),
    ...heldEqual(engines),
    ...(engines.length === 0 ? [] : [lossWords(engines)]),
    ...engines.flatMap(restWords),
    `Models: ${models.join(', ')}.`,
    ...openWords(test, places, drawn, study),
    ...drawn.conditions,
  ];
}

/** What is not known of this sentence. */
function openWords(
  { asks }: PlacedTest['test'],
  places: readonly number[],
  { sources, middle }: DrawnAsks,
  study: Study,
): readonly string[] {
  const moved = ownersAsked(asks, study);
  const inputs = movableInputs(ownersOf(study));
  const told = places.flatMap((place) => {
    const one = middle[place];
    return one?.ok ? one.scatter.map(({ name }) => name) : [];
  });
  const own = sources.filter(({ name, kind }) =>
    kind === 'model' ? told.includes(name) : (inputs.get(name)?.engines ?? []).some((id) => moved.has(id)),
  );
  if (own.length === 0) return ['Nothing is left open: no input has a ±, no model brings an error.'];
  const words = own.map(({ kind, label }) => (kind === 'input' ? label : `error of the model for ${label}`));
  return [`Not known: ${words.join('; ')}.`];
}

/** A range tells its own places. */
const MOST_PLACES = 6;

function surroundings({ asks, ranges }: PlacedTest['test']): readonly string[] {
  const places = new Set(asks.flatMap(({ ambient }) => (ambient === null ? [] : [ambientWords(ambient)])));
  if (places.size === 0 || (ranges.length > 0 && places.size > MOST_PLACES)) return [];
  return [`Surroundings: ${[...places].join(', ')}.`];
}

/** Inputs that all engines asked have alike, and a size taken from each other. */
function heldEqual(engines: readonly EngineInput[]): readonly string[] {
  const [first, ...others] = engines;
  if (first === undefined || others.length === 0) return [];
  const alike = settableInputs(first).filter(({ name, current }) =>
    others.every((other) => {
      const entry = settableInputs(other).find((one) => one.name === name);
      return current !== null && entry?.current === current;
    }),
  );
  const shared = others.flatMap(({ size }) =>
    size.by === 'same' && size.as === first.id ? [size.what] : [],
  );
  const names = [...new Set([...alike.filter(({ stated }) => stated).map(({ label }) => label), ...shared])];
  return [`Held equal: ${names.length === 0 ? 'nothing' : listed(names)}.`];
}

function lossWords(engines: readonly EngineInput[]): string {
  const without = engines.filter(({ losses }) => losses === 'none');
  if (without.length === 0)
    return 'With losses: friction, slow chemistry, lagging drops as the models give them.';
  if (without.length === engines.length) return 'Without losses.';
  return `Without losses: ${listed(without.map(({ name }) => name))}; with losses: the others.`;
}

function restWords({ name, nozzle }: EngineInput): readonly string[] {
  if (nozzle.kind !== 'plug') return [];
  return nozzle.machOne === null
    ? [`${name}: at rest, no wind past the plug.`]
    : [`${name}: in flight, Mach 1 at ${nozzle.machOne.text}.`];
}
