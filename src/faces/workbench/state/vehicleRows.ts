/** The inputs of a vehicle as lines of a form; optional ones that the study does not state are left out. */

import { quantity } from '../../../answer/catalogue.ts';
import { vehicleSlots } from '../../../answer/inputs/vehicleSlots.ts';
import type { VehicleInput } from '../../../study/model.ts';
import { capital, type InputRow } from './inputRows.ts';

export function vehicleRows(vehicle: VehicleInput): readonly InputRow[] {
  const below = `vehicles.${vehicle.id}.`;
  return vehicleSlots(vehicle).flatMap(({ name, quantity: entry, now }): readonly InputRow[] => {
    if (now === null) return [];
    return [
      {
        key: name,
        label: capital(quantity(entry).label),
        quantity: entry,
        path: `${below}${name}`,
        text: now.text,
        origin: now.byDefault ? 'default' : now.path.startsWith(below) ? 'own' : 'shared',
        stated: now,
      },
    ];
  });
}
