import type { Expansion } from '../gas/flow.ts';
import { requireAreaRatio } from './areaRatio.ts';
import { bellAnglesOf, halfAngleOfSameLength } from './bellShape.ts';
import { divergenceFactorOfCone } from './coneNozzle.ts';
import { fixedNozzle } from './fixedNozzle.ts';
import type { NozzleLosses, NozzleModel, NozzleSpec } from './model.ts';
import { roundWallOf } from './roundWall.ts';
import { meanExponent } from './tabulatedAngles.ts';

/**
 * Share of the momentum that points along the axis when gas leaves a bell [–].
 *
 *   λ = ½ [1 + cos( (α + θ_e)/2 )]
 *
 * α is the half-angle of the cone of the same length and area ratio, θ_e the wall angle at the lip: the flow
 * angle at the rim lies between the two.
 *
 * @param length share of the 15° cone's length [–]
 * @param lipAngle θ_e [rad]
 * Source: approximation from memory, no page at hand. It closes with G. P. Sutton, O. Biblarz, Rocket Propulsion Elements,
 * 7th ed., 2001, Table 3-4 (from memory): 80 % bells to 0.001 with the lip angles printed there and 0.0015 with the
 * chart's, 70 % bells to 0.003.
 * Check: 80 %, θ_e = 7.5° → 0.987.
 */
export function divergenceFactorOfBell(length: number, lipAngle: number): number {
  return divergenceFactorOfCone((halfAngleOfSameLength(length) + lipAngle) / 2);
}

/**
 * Bell: thrust-optimised parabola; one-dimensional exit state, momentum reduced by the divergence factor.
 *
 * @param losses `none`: the exit flow counts as parallel; whether it fills the nozzle is judged all the same
 * @throws ProblemError where area ratio, length or angles lie outside their ranges
 */
export function bellNozzle(
  asked: NozzleSpec & { kind: 'bell' },
  expansion: Expansion,
  losses: NozzleLosses = 'default',
): NozzleModel {
  requireAreaRatio(asked.areaRatio);
  const exit = expansion.atAreaRatio(asked.areaRatio, 'supersonic');
  const angles = bellAnglesOf(asked, meanExponent(expansion, exit));
  const { lipAngle } = angles;
  const spec = { ...asked, ...angles };
  return fixedNozzle(
    {
      spec,
      wall: roundWallOf(spec),
      divergenceWithoutField: divergenceFactorOfBell(spec.length, lipAngle),
      lossless: losses === 'none',
      ignoresSeparation: false,
      omitted: ['Gas that has left the wall and jumps back onto it; sideways forces.'],
      models: ['nozzle-bell', 'nozzle-thrust', 'nozzle-separation', 'flow-characteristics'],
    },
    expansion,
  );
}
