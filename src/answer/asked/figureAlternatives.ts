/** What each published criterion of separation makes of thrust, thrust coefficient or specific impulse at a place. */

import type { NozzleMode, ThrustAt, WallSeparation } from '../../physics/nozzle/index.ts';
import { thrustFollowsSeparation } from '../scatter/separationErrors.ts';
import { wallInUse } from '../separation/wallInUse.ts';
import type { EngineSolution } from '../solution.ts';
import type { Alternative } from './model.ts';

export const SEPARATION_CRITERION = 'separation criterion';
/** Where the surroundings press harder than a choked throat. */
const UNCHOKED_FLOW = 'unchoked flow';

/**
 * Empty where all agree. Each figure goes with the thrust coefficient, size and mass flow at their best values.
 *
 * @param best of the figure [SI]
 */
export function figureAlternatives(
  solution: EngineSolution,
  at: ThrustAt,
  best: number,
): readonly Alternative[] {
  const { nozzle, losses } = solution;
  if (at.thrustCoefficient === null) return [];
  const share = at.separation?.massFlowShare ?? 1;
  const lost = share * losses.coefficientLost;
  const own = at.thrustCoefficient - lost;
  const worthOf = (coefficient: number | null): number | null =>
    coefficient === null || own === 0 ? null : (best * (coefficient - lost)) / own;
  const unchoked = at.ambientPressure > nozzle.expansion.throat.pressure;
  const found = unchoked
    ? unchokedCoefficients(at)
    : nozzle.spec.kind === 'dualBell'
      ? twoModeCoefficients(solution, at)
      : coefficientsOnWall(wallInUse(nozzle, at.ambientPressure), at);
  const values = found.map(({ by, coefficient }) => ({ by, value: worthOf(coefficient) }));
  const agree = values.every(
    ({ value }) => value !== null && Math.abs(value - best) <= 1e-9 * Math.abs(best),
  );
  const of = unchoked ? UNCHOKED_FLOW : SEPARATION_CRITERION;
  return agree ? [] : values.map(({ by, value }) => ({ of, by, value }));
}

interface ByModel {
  readonly by: string;
  readonly coefficient: number | null;
}

function coefficientsOnWall(wall: WallSeparation | null, at: ThrustAt): readonly ByModel[] {
  if (wall === null || at.thrustCoefficient === null || !thrustFollowsSeparation(at)) return [];
  const all = wall.byCriterion(at.ambientPressure);
  const deciding = all.find(({ isDeciding }) => isDeciding);
  if (deciding === undefined) return [];
  const { thrustCoefficient } = at;
  return all.map(({ name, gain }) => ({
    by: name,
    coefficient: thrustCoefficient + gain.best - deciding.gain.best,
  }));
}

/** A criterion that lets the gas go at the inflection keeps the nozzle in its first mode. */
function twoModeCoefficients({ nozzle }: EngineSolution, at: ThrustAt): readonly ByModel[] {
  const { change } = nozzle;
  if (change === undefined) return [];
  const { ambientPressure } = at;
  const byMode = new Map<NozzleMode, readonly ByModel[]>();
  const inMode = (mode: NozzleMode): readonly ByModel[] => {
    const known = byMode.get(mode);
    if (known !== undefined) return known;
    const there = mode.at(ambientPressure);
    const onWall = coefficientsOnWall(mode.separation?.() ?? null, there);
    const all = [...onWall, { by: '', coefficient: there.thrustCoefficient }];
    byMode.set(mode, all);
    return all;
  };
  return change.estimates.map(({ by, ambientPressure: changesAt }) => {
    const all = inMode(ambientPressure >= changesAt ? change.thick : change.thin);
    return { by, coefficient: (all.find((one) => one.by === by) ?? all.at(-1)!).coefficient };
  });
}

/** Between a bare throat, the best value, and gas that the wall holds to the lip. */
function unchokedCoefficients({ thrustCoefficient, separation }: ThrustAt): readonly ByModel[] {
  const span = separation?.thrustCoefficient ?? null;
  if (span === null || span.low === span.high || thrustCoefficient === null) return [];
  const other =
    Math.abs(span.low - thrustCoefficient) < Math.abs(span.high - thrustCoefficient) ? span.high : span.low;
  return [
    { by: 'a jet from the bare throat', coefficient: thrustCoefficient },
    { by: 'gas held by the wall to the lip', coefficient: other },
  ];
}
