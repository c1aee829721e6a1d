/** Engines answered first and vehicles flown later, put together. */

import type { VehicleAnswer } from './flight/model.ts';
import type { EnginesAnswer, StudyAnswer } from './model.ts';

/** The whole answer, in the order in which it is printed. */
export function withVehicles(
  { notModelled, hazards, ...rest }: EnginesAnswer,
  vehicles: readonly VehicleAnswer[],
): StudyAnswer {
  return { ...rest, vehicles, notModelled, hazards };
}
