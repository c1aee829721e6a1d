/** Engines and vehicles of a study: what inputs belong to and quantities are asked of. */

import type { EngineInput, Study, VehicleInput } from './model.ts';

export type Owner = EngineInput | VehicleInput;

export function isVehicle(owner: Owner): owner is VehicleInput {
  return 'stages' in owner;
}

export function ownersOf({ engines, vehicles }: Pick<Study, 'engines' | 'vehicles'>): readonly Owner[] {
  return [...engines, ...vehicles];
}

/** Ids of the engines that push a vehicle, each once. */
export function enginesOfVehicle({ stages }: VehicleInput): readonly string[] {
  return [...new Set(stages.flatMap(({ push }) => (push.by === 'engine' ? [push.engine] : [])))];
}

/** A vehicle with another engine below its first stage, and below every other stage that has the same. */
export function withEngine(vehicle: VehicleInput, engine: string): VehicleInput {
  const own = vehicle.stages[0]!.push;
  const stages = vehicle.stages.map((stage, i) => {
    const same = own.by === 'engine' && stage.push.by === 'engine' && stage.push.engine === own.engine;
    return i === 0 || same ? { ...stage, push: { by: 'engine', engine } as const } : stage;
  });
  return { ...vehicle, stages };
}
