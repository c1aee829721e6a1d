/** How the thrust of a computed field differs from that of the nozzle’s model, and from what that comes. */

import { PLATEAU, pushOfDeadAir, type ThrustAt } from '../../physics/nozzle/index.ts';
import type { Settled } from '../../physics/wholeFlow/index.ts';
import type { EngineSolution } from '../solution.ts';
import type { AgainstModel } from './model.ts';

/** Walls round the jet of a shorter nozzle: the model has still air suck at them, the field has not got them. */
const ROUND_THE_JET: readonly string[] = ['extension', 'bell round the jet'];

/** Losses of the model that no field has: it knows no modules. */
const IN_NO_FIELD: readonly string[] = ['lost between modules'];

/**
 * Null where the model has no thrust, or takes losses off that no field has, or no more was watched than the thrust.
 *
 *   C_F/C_F,m = (1 + perMass)(1 + gas)(1 + (wake − suction − base_m)/C_F,m) + base/C_F,m
 *
 * @param wakePressure [Pa] of the field, along the edge of the wake behind a pintle; null: it has none
 */
export function againstModel(
  { nozzle, expansion, throatArea }: EngineSolution,
  model: ThrustAt,
  lipAreaRatio: number,
  watched: Settled['watched'],
  wakePressure: number | null,
): AgainstModel | null {
  const [thrust, onBase, massFlow, base] = watched.map(({ mean }) => mean);
  const { thrustCoefficient } = model;
  if (thrustCoefficient === null || thrust === undefined || massFlow === undefined || base === undefined)
    return null;
  if (model.parts.some(({ surface }) => IN_NO_FIELD.includes(surface))) return null;
  const unit = expansion.chamber.pressure * throatArea;
  const { dischargeCoefficient } = nozzle;
  const passes = massFlow / (expansion.throat.massFlux * throatArea);
  const partOf = (surfaces: readonly string[]): number =>
    model.parts
      .filter(({ surface }) => surfaces.includes(surface))
      .reduce((sum, { coefficient }) => sum + coefficient, 0);
  const isShort = nozzle.change !== undefined && model.mode === nozzle.change.thick.name;
  const suction =
    (isShort ? partOf(ROUND_THE_JET) : 0) + suctionBehind(model, lipAreaRatio) / expansion.chamber.pressure;
  const ofBase = partOf(['base']);
  const wake = wakeOf(nozzle, model, wakePressure);
  const gas = passes / dischargeCoefficient - 1;
  const stream = (thrust - base) / unit / (1 + gas);
  return {
    passes,
    passesByModel: dischargeCoefficient,
    gas,
    perMass: stream / (thrustCoefficient + wake - suction - ofBase) - 1,
    base: base / unit,
    baseByModel: ofBase,
    basePressure: base === 0 || onBase === undefined ? null : onBase,
    suction,
    wake,
  };
}

function wakeOf(
  nozzle: EngineSolution['nozzle'],
  { mode, ambientPressure }: ThrustAt,
  wakePressure: number | null,
): number {
  if (mode !== 'open wake' || wakePressure === null) return 0;
  return nozzle.wakeAdds?.(ambientPressure, wakePressure) ?? 0;
}

/** What the model has the dead air behind the place where the gas leaves less than the air’s pressure, over that area [Pa]. */
function suctionBehind({ flow, separation, ambientPressure }: ThrustAt, lipAreaRatio: number): number {
  if (flow.state !== 'separated' || separation === undefined) return 0;
  const at = (plateau: number): number =>
    pushOfDeadAir(separation.place, lipAreaRatio, ambientPressure, plateau);
  return at(PLATEAU.best) - at(1);
}
