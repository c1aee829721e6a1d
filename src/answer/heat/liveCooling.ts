/** The cooling of one engine and what hangs on it, each found when first asked for. */

import { once } from '../../numerics/once.ts';
import { attempt, type Outcome } from '../../numerics/problem.ts';
import { BARTZ_SCATTER } from '../../physics/heat/index.ts';
import { type CoolingParts, coolingSetup } from './coolingSetup.ts';
import { type EngineCooling, engineCooling } from './engineCooling.ts';
import { type Exponents, withBartz, withPressure, withThrust } from './scaledCooling.ts';

export interface LiveCooling {
  readonly cooling: EngineCooling;
  readonly notes: readonly string[];
  thrust(): Outcome<Exponents>;
  pressure(): Outcome<Exponents>;
  /** With Bartz at the lower and the upper end of its published scatter. */
  ends(): { readonly low: Outcome<EngineCooling>; readonly high: Outcome<EngineCooling> };
}

/** @throws ProblemError where it cannot be computed */
export function liveCooling(parts: CoolingParts): LiveCooling {
  const { setup, notes } = coolingSetup(parts);
  const cooling = engineCooling(setup);
  return {
    cooling,
    notes,
    thrust: once(() => attempt(() => withThrust(cooling))),
    pressure: once(() => attempt(() => withPressure(cooling))),
    ends: once(() => ({
      low: attempt(() => withBartz(setup, BARTZ_SCATTER.low)),
      high: attempt(() => withBartz(setup, BARTZ_SCATTER.high)),
    })),
  };
}
