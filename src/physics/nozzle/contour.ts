import { ProblemError } from '../../numerics/problem.ts';
import { requireAreaRatio } from './areaRatio.ts';
import { chamberWall } from './chamberWall.ts';
import { requireHalfAngle } from './coneNozzle.ts';
import type { ChamberShape, Contour, NozzleSpec } from './model.ts';
import { type NozzleWall, nozzleWall } from './nozzleWall.ts';

/**
 * Wall of chamber and nozzle, to scale, from the injector face to the lip. The throat plane is at 0.
 *
 * For `ideal` and `adapting`, which have no wall of their own, the nozzle is a notional 15° cone of the same area ratio.
 *
 * @param throatRadius [m]
 * @throws ProblemError where spec or chamber shape cannot be drawn
 */
export function chamberAndNozzleContour(
  spec: NozzleSpec,
  throatRadius: number,
  chamberShape: ChamberShape,
): Contour {
  requireAreaRatio(spec.areaRatio);
  if (spec.kind === 'cone') requireHalfAngle(spec.halfAngle);
  requireThroatRadius(throatRadius);
  return contourWith(nozzleWall(spec, throatRadius), throatRadius, chamberShape);
}

/**
 * Contour of a nozzle whose wall behind the throat is known: where the gas shapes it, the model of the nozzle knows it.
 *
 * @param nozzle wall from throat to lip [m]
 * @param throatRadius [m]
 * @throws ProblemError where the chamber's shape cannot be drawn
 */
export function contourWith(nozzle: NozzleWall, throatRadius: number, chamberShape: ChamberShape): Contour {
  requireThroatRadius(throatRadius);
  const chamber = chamberWall(chamberShape, throatRadius);
  const lip = nozzle.points.at(-1)!;
  return {
    wall: [...chamber.points, ...nozzle.points],
    nozzleLength: lip.axial,
    totalLength: chamber.length + lip.axial,
    throatRadius,
    exitRadius: lip.radius,
    chamberRadius: chamber.chamberRadius,
    chamberLength: chamber.length,
    steepestAngle: nozzle.steepestAngle,
    lipAngle: nozzle.lipAngle,
    nozzleArea: nozzle.area,
    chamberArea: chamber.area,
  };
}

function requireThroatRadius(throatRadius: number): void {
  if (throatRadius > 0 && Number.isFinite(throatRadius)) return;
  throw new ProblemError({
    code: 'size-not-positive',
    what: `The throat radius is ${throatRadius} m; it has to be above 0.`,
    mend: 'Give a positive throat size.',
    where: 'size.throat',
    facts: { throatRadius },
  });
}
