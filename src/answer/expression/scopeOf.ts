/** What the tests of a study may name: its engines, the catalogue, and the inputs that can be set. */

import {
  chamberFields,
  type Fields,
  nozzleForms,
  propellantForms,
  type QuantityField,
} from '../../study/form.ts';
import type { EngineInput, Study } from '../../study/model.ts';
import { nearestName } from '../../study/nearest.ts';
import { quantityKinds } from '../../study/unitTable.ts';
import { catalogue, findQuantity } from '../catalogue.ts';
import type { SettableInput, TestScope } from './model.ts';

export function scopeOf(study: Pick<Study, 'engines'>): TestScope {
  const inputs = new Map(study.engines.map((engine) => [engine.id, inputsOf(engine)]));
  const names = catalogue.map(({ name }) => name);
  return {
    engines: study.engines.map(({ id }) => id),
    quantity: (name) => findQuantity(name) ?? null,
    nearestQuantity: (name) => nearestName(name, names),
    inputs: (engine) => inputs.get(engine) ?? [],
    askProblem: () => null,
  };
}

const inputsOf = ({ propellants, nozzle }: EngineInput): readonly SettableInput[] => [
  ...settable('propellants', propellantForms[propellants.kind]),
  ...settable('chamber', chamberFields),
  ...settable('nozzle', nozzleForms[nozzle.kind]),
];

function settable(section: string, fields: Fields): readonly SettableInput[] {
  return Object.entries(fields).flatMap(([key, field]) =>
    field.is === 'quantity' ? [inputOf(`${section}.${key}`, field)] : [],
  );
}

function inputOf(name: string, { kinds, range, meaning }: QuantityField): SettableInput {
  return {
    name,
    label: findQuantity(name)?.label ?? meaning,
    dimension: quantityKinds[kinds[0]!].dimension,
    lowest: range.from ?? range.above ?? null,
    highest: range.upTo ?? range.below ?? null,
    range: range.words,
  };
}
