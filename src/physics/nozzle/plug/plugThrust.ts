import type { ThrustAt, ThrustPart } from '../model.ts';
import type { BasePressure } from './basePressure.ts';
import { type PlugSurface, partsAt } from './designForces.ts';

/** What all thrusts of one plug have in common. */
export interface PlugThrustRun {
  /** [Pa] */ readonly stagnationPressure: number;
  readonly areaRatio: number;
  /** Base over throat area [–]. */ readonly baseArea: number;
  /** Lost between modules, over p0 A_t [–]. */ readonly moduleLoss: number;
}

/** Ambient pressure of the air, and what of it the plug feels behind a flying vehicle [Pa]. */
export interface Surroundings {
  readonly ambient: number;
  readonly felt: number;
}

/**
 * Thrust coefficient from the push on each surface, and from the stream at the cut.
 *
 *   C_F = Σ (∫ p dA)/p0 A_t − p_a ε/p0      stream and base: the same, by momentum and pressure across the cut
 *
 * Gas and base feel the surroundings at `felt`, the rest of the vehicle the air itself; the difference on the whole exit area
 * is taken off the lip's surface as a part of its own.
 *
 * @param stream momentum and pressure over `felt` across the flow at the cut, over p0 A_t
 */
export function plugThrust(
  run: PlugThrustRun,
  { ambient, felt }: Surroundings,
  surfaces: readonly PlugSurface[],
  base: BasePressure | null,
  stream: number,
): Pick<ThrustAt, 'parts' | 'boundary' | 'thrustCoefficient'> {
  const { stagnationPressure: p0, baseArea, areaRatio, moduleLoss } = run;
  const onBase = base === null ? 0 : (baseArea * (base.pressure - felt)) / p0;
  const slipstream = ((ambient - felt) * areaRatio) / p0;
  const parts: ThrustPart[] = partsAt(surfaces, felt, p0);
  if (base !== null) parts.push({ surface: 'base', coefficient: onBase });
  if (moduleLoss > 0) parts.push({ surface: 'lost between modules', coefficient: -moduleLoss });
  if (slipstream > 0) parts.push({ surface: 'slipstream', coefficient: -slipstream });
  return {
    parts,
    boundary: stream + onBase - moduleLoss - slipstream,
    thrustCoefficient: parts.reduce((sum, { coefficient }) => sum + coefficient, 0),
  };
}
