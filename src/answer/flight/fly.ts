/** A vehicle of the study on its way up: to its orbit, or to the highest point with its payload. */

import { airAtGeometricAltitude } from '../../physics/air/index.ts';
import {
  type Ascent,
  EARTH,
  EARTH_ROTATION,
  flyAscent,
  mostToOrbit,
  type Orbit,
  payloadAt,
  type Site,
  type Steering,
  slenderDrag,
  type ToOrbit,
  type Vehicle,
} from '../../physics/flight/index.ts';
import type { VehicleInput } from '../../study/model.ts';
import { type Moved, type SolutionOf, stageOf } from './stages.ts';

export interface Flown {
  readonly input: VehicleInput;
  readonly vehicle: Vehicle;
  readonly payload: number;
  readonly ascent: Ascent;
  /** Null where no orbit is asked for. */ readonly toOrbit: ToOrbit | null;
}

/** From where on a lone stage is steered by the upper law [m]: the air is thin. Common practice, no source. */
const LONE_STAGE_LAW_FROM = 40_000;
/** Straight up all the way: never fast enough to leave the vertical, never high enough for the upper law. */
const STRAIGHT_UP: Steering = {
  kickSpeed: Infinity,
  kickAngle: 0,
  upperFrom: Infinity,
  upper: { start: 0, rate: 0 },
};

/**
 * @param exchangedFor the vehicle's own engine of the first stage, where another one stands in for it: what the study holds
 *   equal is then held
 * @param near the answer for a vehicle that is nearly the same
 * @throws ProblemError with what keeps it from flying
 */
export function fly(
  input: VehicleInput,
  solutionOf: SolutionOf,
  exchangedFor: string | null = null,
  near: ToOrbit | null = null,
  moved: Moved = {},
): Flown {
  const vehicle = physicsVehicle(input, solutionOf, exchangedFor, moved);
  const site = siteOf(input);
  const { goal, steering } = input;
  const kickSpeed = steering.turnSpeed.value;
  if (goal.is === 'height') {
    const payload = goal.payload.value;
    const bend = steering.bend?.value ?? 0;
    const law = bend === 0 ? STRAIGHT_UP : { ...STRAIGHT_UP, kickSpeed, kickAngle: bend };
    const ascent = flyAscent(vehicle, payload, site, law, { record: true, toHighestPoint: true });
    return { input, vehicle, payload, ascent, toOrbit: null };
  }
  const orbit: Orbit = { altitude: goal.altitude.value, apogee: goal.apogee?.value ?? goal.altitude.value };
  const before = { kickSpeed, ...(vehicle.stages.length === 1 && { upperFrom: LONE_STAGE_LAW_FROM }) };
  const toOrbit =
    steering.bend === null
      ? mostToOrbit(vehicle, site, orbit, before, near ?? undefined)
      : payloadAt(vehicle, site, orbit, { ...before, kickAngle: steering.bend.value }, near ?? undefined);
  const ascent = flyAscent(vehicle, toOrbit.payload, site, toOrbit.steering, { record: true });
  return { input, vehicle, payload: toOrbit.payload, ascent, toOrbit };
}

function siteOf({ launch }: VehicleInput): Site {
  const inclination = launch.inclination?.value ?? launch.latitude.value;
  return {
    earth: EARTH,
    altitude: launch.altitude.value,
    rotation: EARTH_ROTATION * Math.cos(inclination),
  };
}

function physicsVehicle(
  input: VehicleInput,
  solutionOf: SolutionOf,
  exchangedFor: string | null,
  moved: Moved,
): Vehicle {
  const { drag, fairing, limits, launch } = input;
  const padPressure = airAtGeometricAltitude(launch.altitude.value).pressure;
  const stages = input.stages.map((stage, i) =>
    stageOf(stage, i, input, solutionOf, padPressure, exchangedFor, moved),
  );
  const none = (): number => 0;
  return {
    stages,
    referenceArea: drag.area.value,
    drag: drag.table === 'none' ? { body: none, base: none } : withFactor(drag.factor.value),
    ...(fairing && { fairing: { mass: fairing.mass.value, dropAltitude: fairing.dropAltitude.value } }),
    ...(limits.acceleration && { mostAcceleration: limits.acceleration.value }),
    ...(limits.dynamicPressure && { mostDynamicPressure: limits.dynamicPressure.value }),
  };
}

function withFactor(factor: number): Vehicle['drag'] {
  const drag = slenderDrag(factor);
  return { body: (mach) => drag.body(mach), base: (mach) => factor * drag.base(mach) };
}
