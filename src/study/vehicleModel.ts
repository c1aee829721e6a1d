/** A vehicle of the study: stages, what else it carries, where it is to go, and what is known of its engines. SI values. */

import type { Quantity } from './quantity.ts';

/** From the ground up. */
export const stageNames = ['first', 'second', 'third'] as const;
export type StageName = (typeof stageNames)[number];

/** What pushes a stage. */
export type StagePush =
  /** An engine of the study. */
  | { readonly by: 'engine'; readonly engine: string }
  /** In vacuum, all engines together; upper stages only. */
  | { readonly by: 'figures'; readonly specificImpulse: Quantity; readonly thrust: Quantity };

export interface StageInput {
  readonly name: StageName;
  readonly push: StagePush;
  /** Engines of the stage. */ readonly count: Quantity;
  /** Of those, stopped from the start on. */ readonly stopped: Quantity;
  /** [kg] that may be burnt */ readonly propellant: Quantity;
  /** [kg] without propellant, engines included unless `engineMass` is estimated */ readonly dry: Quantity;
  readonly engineMass: 'included' | 'estimated';
  /** Least flow over full flow [–] */ readonly lowestThrottle: Quantity;
  /** [s] without thrust before its engines start; null for the first */ readonly coast: Quantity | null;
}

/** What is the same on both sides when the engine of the first stage is exchanged for another one. */
export type HeldInExchange = 'engines' | 'liftoffThrust' | 'massFlow';

export interface VehicleInput {
  readonly id: string;
  readonly name: string;
  /** The vehicle whose inputs it shares, if `like:` was used. */ readonly like: string | null;
  readonly stages: readonly StageInput[];
  readonly fairing: { readonly mass: Quantity; readonly dropAltitude: Quantity } | null;
  readonly drag: {
    /** [m²] largest cross-section */ readonly area: Quantity;
    readonly table: 'slender' | 'none';
    /** Times the table [–] */ readonly factor: Quantity;
  };
  readonly limits: {
    /** [m/s²]; null: none */ readonly acceleration: Quantity | null;
    /** [Pa]; null: none */ readonly dynamicPressure: Quantity | null;
  };
  readonly launch: {
    /** [rad] */ readonly latitude: Quantity;
    /** [m] */ readonly altitude: Quantity;
    /** [rad] of the orbit against the equator; null: due east */ readonly inclination: Quantity | null;
  };
  readonly steering: {
    /** [m/s] of climb at which it leaves the vertical */ readonly turnSpeed: Quantity;
    /** [rad] first bend; null: the one that carries most */ readonly bend: Quantity | null;
  };
  readonly goal: VehicleGoal;
  readonly held: HeldInExchange;
  readonly reliability: {
    /** Chance that one engine works to the end [–] */ readonly each: Quantity;
    /** Engines of the first stage that may stop with the flight still a success. */ readonly allowedOut: Quantity;
    /** Share of the failures that take the stage with them [–] */ readonly uncontained: Quantity;
  } | null;
}

/** The payload to an orbit is looked for, or the highest point of a given one. */
export type VehicleGoal =
  | {
      readonly is: 'orbit';
      /** [m] where the engines stop */ readonly altitude: Quantity;
      /** [m] highest point; null: a circle */ readonly apogee: Quantity | null;
    }
  | { readonly is: 'height' /** [kg] */; readonly payload: Quantity };
