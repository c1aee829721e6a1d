/** What acts on the vehicle at one moment, and how its state changes. */

import type { Site, StagePropulsion, Vehicle } from './model.ts';
import { standardAir } from './standardAir.ts';
import { throttleFor } from './throttle.ts';

/** Places of the state vector. The last five are integrals along the way. */
export const STATE = {
  /** [m] from the centre of the Earth */ radius: 0,
  /** [rad] over the turning ground */ angle: 1,
  /** [m/s] */ radial: 2,
  /** [m/s] inertial */ tangential: 3,
  /** [kg] */ mass: 4,
  /** [m/s] */ gravityLoss: 5,
  dragLoss: 6,
  steeringLoss: 7,
  backPressureLoss: 8,
  /** [N s] */ impulse: 9,
} as const;
export const STATE_SIZE = 10;

/** Direction of the thrust: radially out, at an angle above the local horizontal, or along the way against the ground. */
export type Pointing =
  | { readonly kind: 'up' }
  | { readonly kind: 'along' }
  | { readonly kind: 'angle'; at(time: number): number };

/** Who pushes, which way. Without propulsion the vehicle coasts. */
export interface Drive {
  readonly vehicle: Pick<Vehicle, 'referenceArea' | 'drag' | 'mostAcceleration' | 'mostDynamicPressure'>;
  readonly site: Site;
  readonly propulsion: StagePropulsion | null;
  readonly pointing: Pointing;
}

/** Forces at one moment. The same object is filled again each time. */
export interface Forces {
  throttle: number;
  thrust: number;
  drag: number;
  ambientPressure: number;
  dynamicPressure: number;
  /** null where the air has no speed of sound */ mach: number | null;
  /** against the turning Earth */ speed: number;
  /** radial and tangential part of the direction of flight against the turning Earth */
  upward: number;
  along: number;
  /** and of the thrust */ thrustUp: number;
  thrustAlong: number;
}

export function noForces(): Forces {
  return {
    throttle: 0,
    thrust: 0,
    drag: 0,
    ambientPressure: 0,
    dynamicPressure: 0,
    mach: null,
    speed: 0,
    upward: 1,
    along: 0,
    thrustUp: 1,
    thrustAlong: 0,
  };
}

/** Speed of sound [m/s] that stands for the thin air where the standard defines none: that of 86 km. */
const THIN_AIR_SOUND = 274.1;

/** Forces at time t [s] and state y, written into `forces`. */
export function forcesInto(drive: Drive, t: number, y: Float64Array, forces: Forces): void {
  const { vehicle, site, propulsion, pointing } = drive;
  const radius = y[STATE.radius]!;
  const altitude = radius - site.earth.radius;
  const upSpeed = y[STATE.radial]!;
  const alongSpeed = y[STATE.tangential]! - site.rotation * radius;
  const speed = Math.sqrt(upSpeed * upSpeed + alongSpeed * alongSpeed);
  const upward = speed > 1e-6 ? upSpeed / speed : 1;
  const along = speed > 1e-6 ? alongSpeed / speed : 0;

  const air = (site.air ?? standardAir)(altitude);
  const density = air?.density ?? 0;
  const pressure = air?.pressure ?? 0;
  const sound = air?.soundSpeed ?? null;
  const mach = speed / (sound ?? THIN_AIR_SOUND);
  const dynamicPressure = 0.5 * density * speed * speed;

  let throttle = 0;
  let thrust = 0;
  let free = vehicle.referenceArea;
  if (propulsion !== null) {
    const full = propulsion.thrust(pressure, mach);
    throttle = throttleFor(vehicle, propulsion, y[STATE.mass]!, full, dynamicPressure);
    thrust = throttle === 1 ? full : throttle * propulsion.thrust(pressure / throttle, mach);
    free = Math.max(0, free - propulsion.exitArea);
  }
  forces.drag =
    dynamicPressure * (vehicle.referenceArea * vehicle.drag.body(mach) + free * vehicle.drag.base(mach));
  forces.throttle = throttle;
  forces.thrust = thrust;
  forces.ambientPressure = pressure;
  forces.dynamicPressure = dynamicPressure;
  forces.mach = sound === null ? null : mach;
  forces.speed = speed;
  forces.upward = upward;
  forces.along = along;
  if (pointing.kind === 'up') {
    forces.thrustUp = 1;
    forces.thrustAlong = 0;
  } else if (pointing.kind === 'along') {
    forces.thrustUp = upward;
    forces.thrustAlong = along;
  } else {
    const angle = pointing.at(t);
    forces.thrustUp = Math.sin(angle);
    forces.thrustAlong = Math.cos(angle);
  }
}

/**
 * Motion of a point mass in one plane over a round Earth that turns under it, in polar coordinates (r, θ), inertial velocity
 * (v_r, v_t), and the integrals of the losses:
 *
 *   v_r′ = (F sin ψ − D sin γ)/m − μ/r² + v_t²/r        v_t′ = (F cos ψ − D cos γ)/m − v_r v_t/r        m′ = −s ṁ
 *   gravity (μ/r² − ω² r) sin γ     drag D/m     steering F/m (1 − cos(ψ − γ))     back pressure (s F_vac − F)/m
 *
 * γ: way against the turning ground above the horizontal, ψ: thrust. In the turning frame the Coriolis force does no work, so
 * the speed against the ground is exactly the ideal one less these four.
 */
export function slopeOf(drive: Drive): (t: number, y: Float64Array, slope: Float64Array) => void {
  const forces = noForces();
  const { propulsion, site } = drive;
  return (t, y, slope) => {
    forcesInto(drive, t, y, forces);
    const radius = y[STATE.radius]!;
    const radial = y[STATE.radial]!;
    const tangential = y[STATE.tangential]!;
    const mass = y[STATE.mass]!;
    const { thrust, drag, upward, along, thrustUp, thrustAlong } = forces;
    const gravity = site.earth.gravitationalParameter / (radius * radius);
    slope[STATE.radius] = radial;
    slope[STATE.angle] = tangential / radius - site.rotation;
    slope[STATE.radial] =
      (thrust * thrustUp - drag * upward) / mass - gravity + (tangential * tangential) / radius;
    slope[STATE.tangential] = (thrust * thrustAlong - drag * along) / mass - (radial * tangential) / radius;
    slope[STATE.mass] = propulsion === null ? 0 : -forces.throttle * propulsion.massFlow;
    slope[STATE.gravityLoss] = (gravity - site.rotation * site.rotation * radius) * upward;
    slope[STATE.dragLoss] = drag / mass;
    slope[STATE.steeringLoss] = (thrust / mass) * (1 - (thrustUp * upward + thrustAlong * along));
    slope[STATE.backPressureLoss] =
      propulsion === null ? 0 : (forces.throttle * propulsion.vacuumThrust - thrust) / mass;
    slope[STATE.impulse] = thrust;
  };
}
