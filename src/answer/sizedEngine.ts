/** The size of an engine and its losses, which hang on each other. */

import type { NozzleModel } from '../physics/nozzle/index.ts';
import type { EngineInput } from '../study/model.ts';
import { chamberContour, type DrawnContour } from './chamberContour.ts';
import { hasWall } from './hasWall.ts';
import { type EngineLosses, lossesOf } from './losses.ts';
import { diameterOf } from './solution.ts';
import { advisedWhenCold, type WorkingGas } from './workingGas.ts';

export interface SizedEngine {
  /** [m²] */ readonly throatArea: number;
  readonly drawn: DrawnContour;
  readonly losses: EngineLosses;
}

/** Rounds of sizing by thrust: the friction hangs on the size, by less than a hundredth of itself a round. */
const ROUNDS = 8;

/** @param throatAreaFor [m²] where the losses take so much of the thrust coefficient */
export function sizedEngine(
  input: EngineInput,
  gas: WorkingGas,
  nozzle: NozzleModel,
  throatAreaFor: (coefficientLost: number) => number,
): SizedEngine {
  const lossesAt = advisedWhenCold(input, () => lossesOf(input, gas, nozzle));
  let throatArea = throatAreaFor(0);
  for (let round = 0; ; round++) {
    const drawn = chamberContour(nozzle, diameterOf(throatArea) / 2, input.chamber);
    const losses = advisedWhenCold(input, () => lossesAt(drawn.contour, hasWall(nozzle.spec)));
    const next = throatAreaFor(losses.coefficientLost);
    const settled = Math.abs(next / throatArea - 1) < 1e-13;
    if (settled || round === ROUNDS) return { throatArea, drawn, losses };
    throatArea = next;
  }
}
