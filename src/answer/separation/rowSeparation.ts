import { STANDARD_GRAVITY } from '../../physics/constants.ts';
import type { SeparationAt, Span, WallPlace } from '../../physics/nozzle/index.ts';
import type { EngineSolution } from '../solution.ts';
import type { PlaceOnWall, RowSeparation } from './model.ts';

/** The separation at one outside pressure in SI units: places [m], thrust [N], mass flow [kg/s]. */
export function rowSeparation(solution: EngineSolution, at: SeparationAt): RowSeparation {
  const { thrustCoefficient, massFlowShare, massFlowShares, note, sideLoads } = at;
  const unchoked = massFlowShares.low < 1 || massFlowShares.high < 1;
  // The same loss as of the best value: see conditionAt.
  const lost = massFlowShare * solution.losses.coefficientLost;
  const force = solution.expansion.chamber.pressure * solution.throatArea;
  const thrust = thrustCoefficient && {
    low: (thrustCoefficient.low - lost) * force,
    high: (thrustCoefficient.high - lost) * force,
  };
  return {
    case: at.case,
    place: placeOnWall(solution, at.place),
    earliest: placeOnWall(solution, at.earliest),
    latest: placeOnWall(solution, at.latest),
    counted: at.counted,
    lettingGo: at.lettingGo,
    ...(thrust && { thrust }),
    ...(thrust &&
      massFlowShare > 0 && {
        specificImpulse: times(thrust, 1 / (solution.massFlow * massFlowShare * STANDARD_GRAVITY)),
      }),
    massFlow: massFlowShare * solution.massFlow,
    ...(unchoked && { massFlows: times(massFlowShares, solution.massFlow) }),
    ...(note !== null && { note }),
    ...(sideLoads !== null && { sideLoads }),
  };
}

export function placeOnWall(
  { contour }: EngineSolution,
  { axial, areaRatio, mach, pressure }: WallPlace,
): PlaceOnWall {
  return { axial: axial * contour.throatRadius, areaRatio, ...(mach !== null && { mach }), pressure };
}

function times({ low, high }: Span, factor: number): Span {
  return { low: low * factor, high: high * factor };
}
