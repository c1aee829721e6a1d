/** What surrounds an engine whose whole flow is computed, and where its gas is made to leave the wall. */

import { ProblemError } from '../../numerics/problem.ts';
import {
  airAtGeometricAltitude,
  geometricAltitudeAtPressure,
  HIGHEST_ALTITUDE,
} from '../../physics/air/index.ts';
import type { Contour } from '../../physics/nozzle/index.ts';
import type { FarAir, RoundCase } from '../../physics/wholeFlow/index.ts';
import type { EngineSolution } from '../solution.ts';
import type { FlowPlace } from './places.ts';

/** Thinner air than this share of the pressure at the lip changes nothing that is seen, and costs steps. */
const THINNEST = 1e-3;

export interface CaseAt {
  readonly round: RoundCase;
  readonly thinnest: boolean;
  readonly by: string;
}

export function caseAt(
  solution: EngineSolution,
  contour: Contour,
  { ambientPressure, altitude, flightSpeed = 0 }: FlowPlace,
): CaseAt {
  const { nozzle } = solution;
  const { flow, separation, leavesAt, mode } = nozzle.at(ambientPressure);
  if (flow.state === 'unchoked')
    throw new ProblemError({
      code: 'flow-unchoked',
      what: 'The whole flow is not computed where the throat does not choke.',
      mend: 'Ask at a lower ambient pressure.',
    });
  const least = THINNEST * nozzle.exit.pressure;
  const thinnest = ambientPressure < least;
  const leaves = flow.state === 'separated' ? (separation?.place.axial ?? leavesAt ?? null) : null;
  return {
    round: {
      air: { ...(thinnest ? thinAir(least) : airAt(ambientPressure, altitude)), speed: flightSpeed },
      leavesAt: leaves === null ? null : leaves * contour.throatRadius,
      ...(mode === 'open wake' && { openWake: true }),
    },
    thinnest,
    by: flow.criterion,
  };
}

/** Air of 1976; thinner than that reaches, as warm as at its end. */
function airAt(pressure: number, altitude: number | null): Omit<FarAir, 'speed'> {
  const { density } = airAtGeometricAltitude(altitude ?? geometricAltitudeAtPressure(pressure));
  return { pressure, density };
}

function thinAir(pressure: number): Omit<FarAir, 'speed'> {
  const top = airAtGeometricAltitude(Math.min(HIGHEST_ALTITUDE, 80_000));
  return { pressure, density: (top.density / top.pressure) * pressure };
}
