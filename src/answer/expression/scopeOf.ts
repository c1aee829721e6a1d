/** What the tests of a study may name: its engines, the catalogue, and the inputs that can be set. */

import type { Study } from '../../study/model.ts';
import { askProblem } from '../asked/askProblem.ts';
import { nearestQuantities, resolveQuantity } from '../asked/resolveQuantity.ts';
import { quantity } from '../catalogue.ts';
import { settableInputs } from '../inputs/index.ts';
import type { TestScope } from './model.ts';

export function scopeOf(study: Pick<Study, 'engines'>): TestScope {
  const inputs = new Map(study.engines.map((engine) => [engine.id, settableInputs(engine)]));
  return {
    engines: study.engines.map(({ id }) => id),
    quantity: (name, hasPlace) => {
      const found = resolveQuantity(name, hasPlace);
      return found.ok ? found.value : null;
    },
    nearestQuantities,
    inputs: (engine) => inputs.get(engine) ?? [],
    askProblem: (ask) => askProblem(quantity(ask.quantity), ask),
  };
}
