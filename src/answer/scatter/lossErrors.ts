/** Errors of the loss budget, as what they move of thrust coefficient and efficiency. */

import { STANDARD_GRAVITY } from '../../physics/constants.ts';
import { ENERGY_RELEASE_BAND, type LossItem } from '../../physics/nozzle/losses/index.ts';
import type { EngineSolution } from '../solution.ts';
import { ERROR_NAMES, type ModelError } from './model.ts';

/**
 * One error an item of the budget that has a band.
 *
 *   δC_F = −s (share_end − share) I_ideal · d g₀ C_D / c*     s: mass flow over that of the choked throat, d: the layer's discharge
 *
 * The inverse of how the budget turns lost seconds into a lost thrust coefficient. The chamber's efficiency has its published
 * band where the study states none; a stated ± belongs to the input, not to a model.
 */
export function lossErrors(solution: EngineSolution, massFlowShare: number): readonly ModelError[] {
  const { budget } = solution.losses;
  const inNozzle = budget.items.flatMap((item): readonly ModelError[] => {
    if (item.error === undefined || item.low === item.high) return [];
    const end = (share: number) => ({
      coefficient: -massFlowShare * coefficientOf(solution, (share - item.share) * budget.ideal),
      efficiency: 1,
    });
    return [{ name: item.error, source: item.source, low: end(item.low), high: end(item.high) }];
  });
  return [...inNozzle, ...energyRelease(solution)];
}

function coefficientOf({ nozzle, losses }: EngineSolution, seconds: number): number {
  const { characteristicVelocity } = nozzle.expansion;
  const secondsPerCoefficient = characteristicVelocity / (nozzle.dischargeCoefficient * STANDARD_GRAVITY);
  return (seconds * losses.layerDischarge) / secondsPerCoefficient;
}

function energyRelease({ input }: EngineSolution): readonly ModelError[] {
  const { efficiency } = input.chamber;
  if (!efficiency.byDefault || efficiency.value >= 1) return [];
  const end = (loss: number) => ({ coefficient: 0, efficiency: (1 - loss) / efficiency.value });
  const { low, high, source } = ENERGY_RELEASE_BAND;
  return [{ name: ERROR_NAMES.energyRelease, source, low: end(low), high: end(high) }];
}

/** The name of the error of one item of the budget; null where it has no band. */
export function errorOfItem(item: LossItem, solution: EngineSolution): string | null {
  if (item.error !== undefined) return item.low === item.high ? null : item.error;
  const isChamber = item === solution.losses.budget.items.at(-1);
  return isChamber && energyRelease(solution).length > 0 ? ERROR_NAMES.energyRelease : null;
}
