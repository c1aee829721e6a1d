/** What a cycle is asked, and what it answers. SI units, pressures absolute. */

import type { PressureDrops } from './feed.ts';
import type { Excess, FedPropellants } from './generatorGas.ts';
import type { TurbineGas } from './turbineGas.ts';

/** What every cycle hangs on. */
export interface Feed {
  readonly fed: FedPropellants;
  /** [Pa] */ readonly chamberPressure: number;
  /** Into the thrust chamber [kg/s] */ readonly flow: { readonly oxidiser: number; readonly fuel: number };
  readonly drops: PressureDrops;
  /** In the tanks [Pa] */ readonly tankPressure: number;
}

export interface Pumped extends Feed {
  /** [–] */ readonly pumpEfficiency: { readonly oxidiser: number; readonly fuel: number };
  /** Highest pressure behind a pump that is allowed [Pa] */ readonly pumpPressureLimit: number;
}

export interface Turbine {
  /** Share of the ideal work that reaches the pumps [–], bearings and gears included. */
  readonly efficiency: number;
}

/** The turbine’s gas is thrown away behind it. */
export interface OpenCycle extends Pumped, Turbine {
  readonly kind: 'gasGenerator' | 'tapOff' | 'bleedExpander';
  readonly gas: TurbineGas;
  /** Inlet over outlet of the turbine [–] */ readonly pressureRatio: number;
  /** Of the small nozzle behind the turbine [–] */ readonly exhaustAreaRatio: number;
}

/** The turbine’s gas burns on in the chamber. */
export interface ClosedCycle extends Pumped, Turbine {
  readonly kind: 'stagedCombustion' | 'closedExpander';
  readonly excess: Excess;
  readonly gas: TurbineGas;
}

export interface ElectricCycle extends Pumped {
  readonly kind: 'electricPump';
  /** Share of the battery’s power that reaches the pumps [–] */ readonly motorEfficiency: number;
}

/** Pressures and powers of one way of driving the pumps. */
export interface Balance {
  /** Of all pumps together [W] */ readonly pumpPower: number;
  /** Highest pressure behind the pump of each side [Pa] */
  readonly oxidiserPressure: number;
  readonly fuelPressure: number;
  /** Through the turbine [kg/s]; 0: there is none */ readonly turbineFlow: number;
  /** Inlet over outlet [–]; null: no turbine */ readonly pressureRatio: number | null;
  /** Given to the shaft by each kilogram [J/kg]; null: no turbine */ readonly work: number | null;
  /** Thrown away behind the turbine [kg/s] */
  readonly dumped: { readonly oxidiser: number; readonly fuel: number };
}

/** The highest chamber pressure that a cycle can reach. */
export interface Reach {
  /** [Pa] */ readonly pressure: number;
  /** What sets it, in words. */ readonly setBy: string;
}
