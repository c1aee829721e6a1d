/** What the tests of a study may name: its engines, the catalogue, and the inputs that can be set. */

import type { Study } from '../../study/model.ts';
import { ownersOf } from '../../study/owners.ts';
import { askProblem } from '../asked/askProblem.ts';
import { nearestQuantities, resolveQuantity } from '../asked/resolveQuantity.ts';
import { quantity } from '../catalogue.ts';
import { settableInputs } from '../inputs/index.ts';
import type { TestScope } from './model.ts';

export function scopeOf(study: Pick<Study, 'engines' | 'vehicles'>): TestScope {
  const inputs = new Map(ownersOf(study).map((owner) => [owner.id, settableInputs(owner)]));
  // Below a vehicle stand engines, and their inputs may be set as well.
  const ofEngines = study.engines.flatMap(({ id }) =>
    inputs.get(id)!.map((input) => ({ ...input, name: `${id}.${input.name}` })),
  );
  const vehicles = study.vehicles.map(({ id }) => id);
  for (const id of vehicles) inputs.set(id, [...inputs.get(id)!, ...ofEngines]);
  return {
    engines: study.engines.map(({ id }) => id),
    vehicles,
    quantity: (name, hasPlace) => {
      const found = resolveQuantity(name, hasPlace);
      return found.ok ? found.value : null;
    },
    nearestQuantities,
    inputs: (engine) => inputs.get(engine) ?? [],
    askProblem: (ask) => askProblem(quantity(ask.quantity), ask),
  };
}
