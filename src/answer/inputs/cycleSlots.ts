/** Numbers of the cycle, by its kind. */

import { cycleForms } from '../../study/cycleForm.ts';
import type { Fields } from '../../study/form.ts';
import type { Cycle, EngineInput, Quantity } from '../../study/model.ts';
import type { InputSlot } from './slot.ts';

export function cycleSlots(engine: EngineInput): readonly InputSlot[] {
  const { cycle } = engine;
  if (cycle === null) return [];
  const fields: Fields = cycleForms[cycle.kind];
  const values = cycle as unknown as Readonly<Record<string, Quantity | null>>;
  return Object.entries(fields).flatMap(([key, field]): readonly InputSlot[] => {
    if (field.is !== 'quantity') return [];
    return [
      {
        name: `cycle.${key}`,
        quantity: `cycle.${key}`,
        field,
        now: values[key] ?? null,
        put: (value) => ({ ...engine, cycle: { ...cycle, [key]: value } as Cycle }),
      },
    ];
  });
}
