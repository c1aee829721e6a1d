/** What the answer says of a cycle. SI units; null has its reason. */

import type { CycleKind } from '../../study/cycleForm.ts';

export interface EngineFigures {
  /** [N] */ readonly thrust: number | null;
  /** [s] */ readonly specificImpulse: number | null;
}

export interface CycleNumbers {
  /** Of the engine, chamber and dump [kg/s] */ readonly massFlow: number | null;
  /** Out of the tanks [–] */ readonly mixtureRatio: number | null;
  /** [–] */ readonly dumpShare: number | null;
  /** [kg/s] */ readonly dumpFlow: number | null;
  /** In vacuum [s] */ readonly dumpImpulse: number | null;
  /** [K] */ readonly dumpTemperature: number | null;
  /** In vacuum [s] */ readonly impulseLost: number | null;
  /** [s] */ readonly lostPerHundredBar: number | null;
  /** [W] */ readonly pumpPower: number | null;
  /** [Pa] */ readonly oxidiserPressure: number | null;
  /** [Pa] */ readonly fuelPressure: number | null;
  /** [kg/s] */ readonly turbineFlow: number | null;
  /** [J/kg] */ readonly turbineWork: number | null;
  readonly turbinePressureRatio: number | null;
  /** [K] */ readonly turbineInletTemperature: number | null;
  readonly gasMixtureRatio: number | null;
  /** [kg/mol] */ readonly gasMolarMass: number | null;
  /** [J/(kg K)] */ readonly gasHeatCapacity: number | null;
  /** [Pa] */ readonly reachablePressure: number | null;
  readonly pressureMargin: number | null;
  /** [Pa] */ readonly tankPressure: number | null;
  /** [kg] */ readonly tankMass: number | null;
  /** [kg] */ readonly pressurantMass: number | null;
  /** [kg] */ readonly bottleMass: number | null;
  /** [kg] */ readonly batteryMass: number | null;
}

export interface CycleAnswer extends CycleNumbers {
  readonly kind: CycleKind;
  /** In vacuum and at sea level, the dump counted. */
  readonly vacuum: EngineFigures;
  readonly seaLevel: EngineFigures;
  /** What sets the highest chamber pressure, in words; null where that is. */ readonly reachSetBy:
    | string
    | null;
}

export interface MassAnswer {
  /** [kg] */ readonly engine: number;
  readonly low: number;
  readonly high: number;
  readonly thrustToWeight: number;
  readonly relations: readonly { readonly source: string; readonly mass: number }[];
}
