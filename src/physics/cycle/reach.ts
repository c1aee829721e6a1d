/** The highest chamber pressure that a cycle can reach, and what sets it. */

import { findBracketedRoot } from '../../numerics/bracketedRoot.ts';
import { attempt, ProblemError } from '../../numerics/problem.ts';
import type { Balance, Reach } from './model.ts';

/** How far a cycle is from a limit at one chamber pressure: above 0, it is kept. */
export interface Limit {
  readonly words: string;
  /** Relative to the limit [–]. */
  marginAt(chamberPressure: number): number;
}

/** [Pa] where the search begins and ends: beyond, the gas of the chamber leaves its data. */
const LOWEST = 1e5;
const HIGHEST = 1000e5;

/**
 * Root of the smallest of all margins between 1 and 1000 bar, bracketed; what is smallest there sets it.
 *
 * @throws ProblemError `cycle-reaches-nothing` where a limit is broken at 1 bar already
 */
export function reachOf(limits: readonly Limit[]): Reach {
  const tightest = (pressure: number): { readonly margin: number; readonly words: string } =>
    limits
      .map((limit) => ({ words: limit.words, margin: limit.marginAt(pressure) }))
      .reduce((least, one) => (one.margin < least.margin ? one : least));
  // The ends themselves, which the exponential of a logarithm may miss by a rounding.
  const margin = (logPressure: number): number =>
    tightest(Math.min(Math.max(Math.exp(logPressure), LOWEST), HIGHEST)).margin;
  const [low, high] = [Math.log(LOWEST), Math.log(HIGHEST)];
  if (margin(low) <= 0) {
    throw new ProblemError({
      code: 'cycle-reaches-nothing',
      what: 'This cycle does not even reach a chamber pressure of 1 bar.',
      why: tightest(LOWEST).words,
      mend: 'Raise the efficiencies, the turbine inlet temperature or the tank pressure, or choose another cycle.',
      where: 'cycle',
    });
  }
  if (margin(high) >= 0) {
    return { pressure: HIGHEST, setBy: 'nothing within 1000 bar, where the data of the gas end' };
  }
  const { root } = findBracketedRoot(margin, low, high, { valueTolerance: 1e-9, widthTolerance: 1e-9 });
  const pressure = Math.exp(root);
  return { pressure, setBy: tightest(pressure).words };
}

/** Why there is no balance where another limit, that of the power, tells so. */
const TOLD_BY_POWER = ['cycle-cannot-close', 'expander-too-cold'];

/** Pressure behind the pumps against the highest that is allowed [Pa]. @throws ProblemError any that the limit of the power leaves untold */
export function pumpPressureLimit(balanceAt: (pressure: number) => Balance, limit: number): Limit {
  return {
    words: 'the highest pressure allowed behind a pump',
    marginAt(pressure) {
      const balance = attempt(() => balanceAt(pressure));
      if (!balance.ok) {
        if (TOLD_BY_POWER.includes(balance.problem.code)) return 1;
        throw new ProblemError(balance.problem);
      }
      return 1 - Math.max(balance.value.oxidiserPressure, balance.value.fuelPressure) / limit;
    },
  };
}
