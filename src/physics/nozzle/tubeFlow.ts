/**
 * The flow along a round nozzle's wall in streamtubes, where the characteristics do not carry it: a shock too strong to be
 * taken as a weak one, behind a sharp turn or in a shallow cone.
 */

import { ProblemError } from '../../numerics/problem.ts';
import { nuAtPressure, tableStateAt } from '../flow/gasTable.ts';
import { NODE } from '../flow/points.ts';
import { carriedBy, speedAtPressure, tubeStateAt } from '../flow/streamtubes/index.ts';
import type { Expansion, FlowState } from '../gas/flow.ts';
import { type FieldThrust, thrustFrom } from './fieldThrust.ts';
import type { LeavingFlow, WallStation } from './model.ts';
import type { RoundWall } from './roundWall.ts';
import { computeTubeField, type TubeField } from './tubeField.ts';

export interface TubeFlow {
  readonly stations: readonly WallStation[];
  readonly leaving: LeavingFlow;
  readonly thrust: FieldThrust;
}

/** Two places of the wall nearer than this are one [–]: the march takes far more steps than a wall needs. */
const APART = 0.01;

/** @throws ProblemError where the march ends before the lip, with its reason */
export function tubeFlow(
  wall: RoundWall,
  expansion: Expansion,
  exit: FlowState,
  areaRatio: number,
): TubeFlow {
  const field = computeTubeField(wall, expansion, exit.pressure);
  const { march, byWall, byExit, entering } = field;
  if (march.stopped !== null) throw new ProblemError(march.stopped);
  if (byWall === null || byExit === null) throw noLip();
  const unit = Math.PI * expansion.chamber.pressure;
  const chamber = entering.axialForce / unit;
  return {
    stations: stationsOf(field, wall),
    leaving: { kind: 'line', nodes: lastLine(field), isCharacteristic: false },
    thrust: thrustFrom(
      {
        dischargeCoefficient: field.dischargeCoefficient,
        chamber,
        nozzleWall: byWall - chamber,
        boundary: byExit,
      },
      expansion,
      areaRatio,
      {
        mass: carriedBy(march.front).massFlow / entering.massFlow - 1,
        momentum: byWall / byExit - 1,
        energy: 0,
        nodes: march.steps * march.front.count,
        by: 'streamtubes',
        note: null,
      },
    ),
  };
}

/** The samples stand in the middle of the march's steps; throat and lip take the state of the nearest. */
function stationsOf({ gas, march: { upper } }: TubeField, wall: RoundWall): readonly WallStation[] {
  const stations: WallStation[] = [];
  for (let i = 0; i < upper.count; i++) {
    const last = stations.at(-1);
    const far = last === undefined || Math.hypot(upper.x[i]! - last.axial, upper.r[i]! - last.radius) > APART;
    if (!far && i < upper.count - 1) continue;
    const lnSigma = upper.lnSigma[i]!;
    const pressure = Math.exp(upper.lnP[i]!);
    const { mach, temperature } = tubeStateAt(gas, speedAtPressure(gas, pressure, lnSigma), lnSigma);
    stations.push({ axial: upper.x[i]!, radius: upper.r[i]!, pressure, mach, temperature });
  }
  const { axial, radius } = wall.at(1);
  return [{ ...stations[0]!, axial: 0, radius: 1 }, ...stations, { ...stations.at(-1)!, axial, radius }];
}

/** Nodes from the lip to the axis, the loss in shocks left out: ν of each tube's pressure. */
function lastLine({ gas, march: { front } }: TubeField): Float64Array {
  const { count } = front;
  const nodes = new Float64Array((count + 2) * NODE);
  const put = (node: number, x: number, r: number, theta: number, lnP: number): void => {
    const nu = nuAtPressure(gas.table, Math.exp(lnP));
    nodes.set([x, r, theta, nu, tableStateAt(gas.table, nu).mu], node * NODE);
  };
  put(0, front.x[count]!, front.r[count]!, front.theta[count - 1]!, front.lnP[count - 1]!);
  for (let j = count - 1; j >= 0; j--) {
    const x = 0.5 * (front.x[j]! + front.x[j + 1]!);
    const r = 0.5 * (front.r[j]! + front.r[j + 1]!);
    put(count - j, x, r, front.theta[j]!, front.lnP[j]!);
  }
  put(count + 1, front.x[0]!, 0, 0, front.lnP[0]!);
  return nodes;
}

function noLip(): ProblemError {
  return new ProblemError({
    code: 'tubes-short-of-lip',
    what: 'The streamtubes end before the lip.',
    why: 'the flow could not be followed along the whole wall',
    mend: 'Use a contour that turns less sharply.',
  });
}
