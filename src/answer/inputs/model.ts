/** What may be set on an engine, and the surroundings that are no input of the study. SI units. */

import type { SettableInput } from '../expression/model.ts';

/** A range worth looking over. */
export interface SweepRange {
  readonly from: number;
  readonly to: number;
  readonly spacing: 'even' | 'in equal ratios';
}

export interface EngineInputEntry extends SettableInput {
  /** Name in the catalogue of what is set: its unit and its digits. */ readonly quantity: string;
  /** Whether the ends of the range are themselves left out. */ readonly openBelow: boolean;
  readonly openAbove: boolean;
  /** Only whole numbers make sense. */ readonly whole: boolean;
  /** As the study has it [SI]; null where the program finds it. */ readonly current: number | null;
  /** Where the study states it, or would; engines that inherit it have the same path. */ readonly path: string;
  readonly stated: boolean;
  readonly sweep: SweepRange;
}

export type ConditionName = 'altitude' | 'ambientPressure' | 'throttle' | 'time';

/** Where an engine works and how hard, or when in a flight: asked, not stated. */
export interface ConditionEntry {
  readonly name: ConditionName;
  readonly label: string;
  /** Name in the catalogue. */ readonly quantity: string;
  readonly lowest: number;
  readonly highest: number | null;
  readonly openBelow: boolean;
  readonly range: string;
  readonly sweep: SweepRange;
}
