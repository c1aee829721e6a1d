/** Exhaust and air of a field, the air far away, and the side of the chamber. */

import { type FlowPoint, type GasPair, perfectFieldGas, type SideKind } from '../euler/index.ts';
import type { Expansion } from '../gas/index.ts';
import { chamberSide } from './chamberSide.ts';
import { expansionGas } from './expansionGas.ts';
import { type Thermometer, thermometer } from './thermometer.ts';

/** The air far away. */
export interface FarAir {
  /** [Pa] above 0 */ readonly pressure: number;
  /** [kg/m³] */ readonly density: number;
  /** [m/s] at which it comes from ahead */ readonly speed: number;
}

export interface FieldGases {
  readonly pair: GasPair;
  readonly chamber: SideKind;
  readonly temperatureAt: Thermometer;
}

/** cp/cv of air. */
const AIR = 1.4;

export function airGases(expansion: Expansion): FieldGases {
  const inner = expansionGas(expansion);
  return {
    pair: { inner, outer: perfectFieldGas(AIR) },
    temperatureAt: thermometer(inner),
    chamber: chamberSide(expansion),
  };
}

export function stillAir({ density, speed, pressure }: FarAir): FlowPoint {
  return { density, u: speed, v: 0, pressure, share: 0 };
}
