import { ProblemError } from '../../numerics/problem.ts';
import type { Expansion } from '../gas/flow.ts';
import { requireAreaRatio } from './areaRatio.ts';
import { fixedNozzle } from './fixedNozzle.ts';
import type { NozzleLosses, NozzleModel, NozzleSpec } from './model.ts';
import { roundWallOf } from './roundWall.ts';

/** [rad] Steeper cones do not keep the flow on the wall after the throat arc; common practice, no source. */
const STEEPEST_HALF_ANGLE = Math.PI / 4;

/**
 * Share of the momentum that points along the axis when gas leaves a cone as from a point source [–].
 *
 *   λ = (1 + cos α)/2
 *
 * @param halfAngle α [rad]
 * Source: G. P. Sutton, O. Biblarz, Rocket Propulsion Elements, 7th ed., 2001, ch. 3; exact for spherical source flow.
 * Check: α = 15° → 0.98296.
 */
export function divergenceFactorOfCone(halfAngle: number): number {
  return (1 + Math.cos(halfAngle)) / 2;
}

/**
 * Cone: one-dimensional exit state, momentum reduced by the divergence factor.
 *
 * @param losses `none`: the exit flow counts as parallel; whether it fills the nozzle is judged all the same
 * @throws ProblemError `cone-angle-outside-range`, `area-ratio-outside-range`
 */
export function coneNozzle(
  spec: NozzleSpec & { kind: 'cone' },
  expansion: Expansion,
  losses: NozzleLosses = 'default',
): NozzleModel {
  requireAreaRatio(spec.areaRatio);
  requireHalfAngle(spec.halfAngle);
  return fixedNozzle(
    {
      spec,
      wall: roundWallOf(spec),
      divergenceWithoutField: divergenceFactorOfCone(spec.halfAngle),
      lossless: losses === 'none',
      ignoresSeparation: false,
      omitted: ['Gas that has left the wall and jumps back onto it; sideways forces.'],
      models: ['nozzle-cone', 'nozzle-thrust', 'nozzle-separation', 'flow-characteristics'],
    },
    expansion,
  );
}

/** Refuse a half-angle [rad] that is not above 0 and at most 45°. */
export function requireHalfAngle(halfAngle: number): void {
  if (halfAngle > 0 && halfAngle <= STEEPEST_HALF_ANGLE) return;
  throw new ProblemError({
    code: 'cone-angle-outside-range',
    what: `The cone's half-angle is ${((halfAngle * 180) / Math.PI).toFixed(2)}°; it has to be above 0° and at most 45°.`,
    mend: 'Give the angle between wall and axis; 12° to 18° is common, 15° the reference.',
    where: 'nozzle.halfAngle',
    facts: { halfAngle, steepest: STEEPEST_HALF_ANGLE },
  });
}
