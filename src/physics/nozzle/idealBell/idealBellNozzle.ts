import type { Expansion } from '../../gas/flow.ts';
import { requireAreaRatio } from '../areaRatio.ts';
import { divergenceFactorOfCone } from '../coneNozzle.ts';
import { contourWith } from '../contour.ts';
import { fixedNozzle } from '../fixedNozzle.ts';
import type { IdealBellSpec, NozzleLosses, NozzleModel } from '../model.ts';
import { idealNozzleWall, idealRoundWall } from './idealWall.ts';
import { idealContour } from './shape.ts';

/**
 * Ideal bell: the contour that turns the flow parallel to the axis, whole or cut.
 *
 * The contour comes from the gas by characteristics; the flow field on which thrust and wall pressure rest is then
 * computed along it as along any wall, so that it also tests the contour.
 *
 * @throws ProblemError `ideal-bell-cannot-be-so`, `area-ratio-outside-range`, or where the contour cannot be had
 * Source: the construction of every text on ideal nozzles, e.g. J. D. Anderson, Modern Compressible Flow, ch. 11 (from
 * memory); cut ideal contours: J. Ahlberg, S. Hamilton, D. Migdal, E. Nilson, ARS Journal 31(5), 1961 (from memory).
 */
export function idealBellNozzle(
  spec: IdealBellSpec,
  expansion: Expansion,
  losses: NozzleLosses = 'default',
): NozzleModel {
  requireAreaRatio(spec.areaRatio);
  const exit = expansion.atAreaRatio(spec.areaRatio, 'supersonic');
  const shape = idealContour(spec, expansion, exit.pressure);
  return fixedNozzle(
    {
      spec,
      wall: idealRoundWall(shape),
      divergenceWithoutField: divergenceFactorOfCone(shape.wall.at(-1)!.angle),
      lossless: losses === 'none',
      ignoresSeparation: false,
      contour: (throatRadius, chamber) =>
        contourWith(idealNozzleWall(shape, throatRadius), throatRadius, chamber),
      omitted: [
        'The little wider wall that makes room for the boundary layer.',
        'Thrust of a nozzle whose flow has left the wall.',
      ],
      models: ['nozzle-ideal-bell', 'nozzle-thrust', 'nozzle-separation', 'flow-characteristics'],
    },
    expansion,
  );
}
