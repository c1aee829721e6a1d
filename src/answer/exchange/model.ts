/** What a little more of something is worth in what a vehicle carries to its orbit. SI units. */

import type { StageName } from '../../study/model.ts';

/** What is moved, all else held. */
export type Lever = 'specificImpulse' | 'dryMass' | 'thrust' | 'propellant';

export interface ExchangeRate {
  readonly stage: StageName;
  readonly lever: Lever;
  /** [kg] of payload for one second more, one kilogram more, or one per cent more. */ readonly payload: number;
  /** `one second of specific impulse more` */ readonly words: string;
  /** [kg] that may be added to the dry mass of the first stage for it, the payload being the same; null for that mass itself. */
  readonly paysFor: number | null;
}

export interface ExchangeTable {
  readonly vehicle: string;
  readonly name: string;
  /** [kg] at which the rates are taken */ readonly payload: number;
  readonly rates: readonly ExchangeRate[];
}
