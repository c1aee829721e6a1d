/** Where whole flows are computed. */

import { airAtGeometricAltitude } from '../../physics/air/index.ts';

export interface FlowPlace {
  /** [m] geometric; null: given by its pressure */ readonly altitude: number | null;
  /** [Pa] */ readonly ambientPressure: number;
  /** [m/s] of the vehicle through the air, along the engine's axis, 0 or more; absent: at rest */ readonly flightSpeed?: number;
}

/** @param altitude [m] geometric; `vacuum`: the thinnest air that is computed stands for it */
export function flowPlaceAt(altitude: number | 'vacuum'): FlowPlace {
  return altitude === 'vacuum'
    ? { altitude: null, ambientPressure: 0 }
    : { altitude, ambientPressure: airAtGeometricAltitude(altitude).pressure };
}

/** [m] Two kilometres are a quarter less air: a shock moves by an eighth of its distance from one to the next. */
const ALTITUDES = [
  0, 2_000, 4_000, 6_000, 8_000, 10_000, 12_000, 14_000, 16_000, 18_000, 20_000, 23_000, 26_000, 30_000,
  35_000, 40_000,
];

/** The places of a climb, in the order in which they are computed: each begins from the one before. */
export const CLIMB: readonly FlowPlace[] = [...ALTITUDES, 'vacuum' as const].map(flowPlaceAt);
