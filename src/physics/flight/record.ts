/** What is kept of a flight: its points, its extremes and its budget. */

import { STANDARD_GRAVITY } from '../constants.ts';
import { type Drive, forcesInto, noForces, STATE } from './forces.ts';
import type { Ascent, FlightPoint, Site, Vehicle } from './model.ts';

export interface FlightRecord {
  point(drive: Drive, stage: number, t: number, y: Float64Array): void;
  halfBurnt(site: Site, y: Float64Array): void;
  /** @param dropped [kg] of what has left the vehicle besides propellant */
  firstStageEnds(y: Float64Array, dropped: number): void;
  ascent(vehicle: Vehicle, y: Float64Array, ideal: number): Ascent;
}

/** The limits are exceeded by more than this share before it is said. */
const EXCEEDED_BY = 0.005;

/** At one time both sides of a jump are kept: a stage or the fairing dropped, an engine started or stopped. */
function differs(a: FlightPoint, b: FlightPoint): boolean {
  return a.stage !== b.stage || a.mass !== b.mass || a.thrust !== b.thrust;
}

/** @param whole keep every point, not the end and the extremes alone */
export function flightRecord(whole: boolean): FlightRecord {
  const forces = noForces();
  const points: FlightPoint[] = [];
  let last: FlightPoint | null = null;
  let greatest: FlightPoint | null = null;
  let mostFelt = 0;
  let start: FlightPoint | null = null;
  let halfAt: number | null = null;
  let firstStage: { readonly impulse: number; readonly burnt: number; readonly end: FlightPoint } | null =
    null;

  function pointAt(drive: Drive, stage: number, t: number, y: Float64Array): FlightPoint {
    forcesInto(drive, t, y, forces);
    const { thrust, drag, upward, along, thrustUp, thrustAlong } = forces;
    const mass = y[STATE.mass]!;
    return {
      time: t,
      stage,
      altitude: y[STATE.radius]! - drive.site.earth.radius,
      downrange: drive.site.earth.radius * y[STATE.angle]!,
      speed: forces.speed,
      inertialSpeed: Math.hypot(y[STATE.radial]!, y[STATE.tangential]!),
      pathAngle: Math.atan2(upward, along),
      mass,
      thrust,
      throttle: forces.throttle,
      ambientPressure: forces.ambientPressure,
      dynamicPressure: forces.dynamicPressure,
      mach: forces.mach,
      felt: Math.hypot(thrust * thrustUp - drag * upward, thrust * thrustAlong - drag * along) / mass,
    };
  }

  return {
    point(drive, stage, t, y) {
      const point = pointAt(drive, stage, t, y);
      start ??= point;
      if (greatest === null || point.dynamicPressure > greatest.dynamicPressure) greatest = point;
      mostFelt = Math.max(mostFelt, point.felt);
      if (whole && (last === null || last.time !== t || differs(last, point))) points.push(point);
      last = point;
    },
    halfBurnt({ earth }, y) {
      halfAt = y[STATE.radius]! - earth.radius;
    },
    firstStageEnds(y, dropped) {
      firstStage = { impulse: y[STATE.impulse]!, burnt: start!.mass - y[STATE.mass]! - dropped, end: last! };
    },
    ascent(vehicle, y, ideal) {
      const end = last!;
      const gravity = y[STATE.gravityLoss]!;
      const drag = y[STATE.dragLoss]!;
      const steering = y[STATE.steeringLoss]!;
      const backPressure = y[STATE.backPressureLoss]!;
      const { impulse, burnt, end: firstStageEnd } = firstStage!;
      const exceeded: string[] = [];
      const { mostAcceleration, mostDynamicPressure } = vehicle;
      if (mostAcceleration !== undefined && mostFelt > mostAcceleration * (1 + EXCEEDED_BY)) {
        exceeded.push(
          `The acceleration reaches ${(mostFelt / STANDARD_GRAVITY).toFixed(1)} g: the engines cannot be throttled further.`,
        );
      }
      if (
        mostDynamicPressure !== undefined &&
        greatest!.dynamicPressure > mostDynamicPressure * (1 + EXCEEDED_BY)
      ) {
        exceeded.push(
          `The dynamic pressure reaches ${(greatest!.dynamicPressure / 1e3).toFixed(1)} kPa: the engines cannot be throttled further.`,
        );
      }
      return {
        points: whole ? points : [end],
        end,
        radialSpeed: y[STATE.radial]!,
        tangentialSpeed: y[STATE.tangential]!,
        budget: {
          ideal,
          gravity,
          drag,
          steering,
          backPressure,
          gained: end.speed,
          rest: ideal - gravity - drag - steering - backPressure - end.speed,
          fromRotation: end.inertialSpeed - end.speed,
        },
        greatestDynamicPressure: greatest!,
        start: start!,
        firstStageEnd,
        mostFelt,
        meanSpecificImpulse: impulse / (burnt * STANDARD_GRAVITY),
        halfPropellantAltitude: halfAt,
        exceeded,
      };
    },
  };
}
