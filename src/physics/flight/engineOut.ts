/** Several engines on one stage: what is lost with some out, and how likely that is. */

import { ProblemError } from '../../numerics/problem.ts';

export interface EngineCluster {
  readonly engines: number;
  /** How many may fail harmlessly with the flight still a success. */ readonly allowedOut: number;
  /** Chance that one engine works to the end [–] */ readonly each: number;
  /** Share of the failures that take the stage with them [–] */ readonly uncontained: number;
}

/**
 * Chance of success of n engines of which k may fail, if no failure causes another but the uncontained ones, which lose the
 * flight whatever is allowed:
 *
 *   P = Σ_{j=0..k} C(n, j) pⁿ⁻ʲ [(1 − p)(1 − c)]ʲ
 *
 * p: of one engine, c: share of failures that are not contained. Source: multinomial distribution; no source needed.
 * Check: n 1, k 0: p. c 1: pⁿ whatever k.
 *
 * @throws ProblemError `cluster-impossible`
 */
export function chanceOfSuccess({ engines, allowedOut, each, uncontained }: EngineCluster): number {
  const counts = Number.isInteger(engines) && Number.isInteger(allowedOut);
  if (!counts || engines < 1 || allowedOut < 0 || allowedOut > engines) {
    throw impossible(
      `${engines} engines of which ${allowedOut} may fail`,
      'Give whole numbers, at most all engines out.',
    );
  }
  if (!(each >= 0 && each <= 1) || !(uncontained >= 0 && uncontained <= 1)) {
    throw impossible(`chances of ${each} and ${uncontained}`, 'Give shares between 0 and 1.');
  }
  const harmless = (1 - each) * (1 - uncontained);
  let sum = 0;
  let ways = 1;
  for (let out = 0; out <= allowedOut; out++) {
    sum += ways * each ** (engines - out) * harmless ** out;
    ways = (ways * (engines - out)) / (out + 1);
  }
  return Math.min(1, sum);
}

/**
 * Thrust over weight with `out` engines stopped, over that with all: (n − out)/n. The mass of the dead engines and their share
 * of propellant stay on board.
 */
export function thrustShareLeft(engines: number, out: number): number {
  if (!(out >= 0 && out <= engines))
    throw impossible(`${out} of ${engines} engines out`, 'Leave at least none.');
  return (engines - out) / engines;
}

function impossible(what: string, mend: string): ProblemError {
  return new ProblemError({ code: 'cluster-impossible', what: `There is no stage with ${what}.`, mend });
}
