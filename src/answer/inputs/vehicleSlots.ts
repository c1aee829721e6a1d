/** The places in a vehicle's inputs that hold a number. */

import type { Field, QuantityField } from '../../study/form.ts';
import type { Quantity, StageInput, VehicleInput } from '../../study/model.ts';
import { payloadField, type VehicleSection, vehicleForms } from '../../study/vehicleForm.ts';
import type { InputSlot } from './slot.ts';

type Slot = InputSlot<VehicleInput>;
type Numbers = Readonly<Record<string, Quantity | null>>;

export function vehicleSlots(vehicle: VehicleInput): readonly Slot[] {
  return [
    ...vehicle.stages.flatMap((stage) => stageSlots(vehicle, stage)),
    ...(['fairing', 'drag', 'limits', 'launch', 'steering', 'reliability'] as const).flatMap((section) =>
      sectionSlots(vehicle, section),
    ),
    ...goalSlots(vehicle),
  ];
}

const WHOLE: ReadonlySet<string> = new Set(['count', 'stopped', 'allowedOut']);

function slot(
  section: VehicleSection,
  key: string,
  now: Quantity | null,
  put: (value: Quantity) => VehicleInput,
): readonly Slot[] {
  const field = (vehicleForms[section] as Readonly<Record<string, Field>>)[key];
  if (field?.is !== 'quantity') return [];
  const name = `${section}.${key}`;
  const whole = WHOLE.has(key) && { whole: true as const };
  return [{ name, quantity: `vehicle.${name}`, field: field as QuantityField, ...whole, now, put }];
}

function stageSlots(vehicle: VehicleInput, stage: StageInput): readonly Slot[] {
  const withStage = (changed: StageInput): VehicleInput => ({
    ...vehicle,
    stages: vehicle.stages.map((each) => (each.name === stage.name ? changed : each)),
  });
  const own = (['count', 'stopped', 'propellant', 'dry', 'lowestThrottle', 'coast'] as const).flatMap(
    (key) => {
      const now = stage[key];
      return now === null ? [] : slot(stage.name, key, now, (value) => withStage({ ...stage, [key]: value }));
    },
  );
  const { push } = stage;
  if (push.by === 'engine') return own;
  const figures = (['specificImpulse', 'thrust'] as const).flatMap((key) =>
    slot(stage.name, key, push[key], (value) => withStage({ ...stage, push: { ...push, [key]: value } })),
  );
  return [...own, ...figures];
}

function sectionSlots(
  vehicle: VehicleInput,
  section: 'fairing' | 'drag' | 'limits' | 'launch' | 'steering' | 'reliability',
): readonly Slot[] {
  const held = vehicle[section];
  if (held === null) return [];
  return Object.keys(vehicleForms[section]).flatMap((key) =>
    slot(section, key, (held as unknown as Numbers)[key] ?? null, (value) => ({
      ...vehicle,
      [section]: { ...held, [key]: value },
    })),
  );
}

function goalSlots(vehicle: VehicleInput): readonly Slot[] {
  const { goal } = vehicle;
  if (goal.is === 'orbit') {
    return (['altitude', 'apogee'] as const).flatMap((key) =>
      slot('orbit', key, goal[key], (value) => ({ ...vehicle, goal: { ...goal, [key]: value } })),
    );
  }
  return [
    {
      name: 'payload',
      quantity: 'vehicle.payload',
      field: payloadField,
      now: goal.payload,
      put: (value) => ({ ...vehicle, goal: { ...goal, payload: value } }),
    },
  ];
}
