/** A vehicle, its stages, the way up, and what is found about it. SI units; angles in radians. */

/** Engines of one stage taken together, at full throttle. */
export interface StagePropulsion {
  /**
   * Thrust [N] at an outside pressure [Pa] and a flight Mach number [–].
   * At part throttle s it is s F(p_a/s): gas and nozzle depend on chamber over outside pressure alone.
   */
  thrust(ambientPressure: number, mach: number): number;
  /** [kg/s] */ readonly massFlow: number;
  /** [N] in vacuum, what losses are reckoned from */ readonly vacuumThrust: number;
  /** Least flow over full flow [–], 0 … 1 */ readonly lowestThrottle: number;
  /** [m²] all exits together, for the base drag */ readonly exitArea: number;
}

export interface Stage {
  readonly propulsion: StagePropulsion;
  /** [kg] without propellant, engines included */ readonly dryMass: number;
  /** [kg] that may be burnt */ readonly propellantMass: number;
  /** [s] without thrust before its engines start; the stage below is dropped at its beginning */
  readonly coastBefore: number;
}

/** Drag coefficients over the flight Mach number, on the vehicle's reference area. */
export interface DragModel {
  /** Nose, skin and waves [–] */ body(mach: number): number;
  /** Suction on the part of the base that no jet fills, on that part's area [–] */ base(
    mach: number,
  ): number;
}

export interface Vehicle {
  /** From the ground up. */ readonly stages: readonly Stage[];
  /** [m²] largest cross-section */ readonly referenceArea: number;
  readonly drag: DragModel;
  /** [kg] dropped at its altitude [m]; absent: none */
  readonly fairing?: { readonly mass: number; readonly dropAltitude: number };
  /** [m/s²] throttled to stay below it; absent: none */ readonly mostAcceleration?: number;
  /** [Pa] throttled to stay below it; absent: none */ readonly mostDynamicPressure?: number;
}

/** A round body with its gravity. */
export interface Earth {
  /** [m] */ readonly radius: number;
  /** GM [m³/s²] */ readonly gravitationalParameter: number;
}

/** Air that the vehicle meets. */
export interface FlightAir {
  /** [kg/m³] */ readonly density: number;
  /** [Pa] */ readonly pressure: number;
  /** [m/s]; null where it is not defined */ readonly soundSpeed: number | null;
}

/** Where the flight begins, on a round Earth that turns under it in one plane. */
export interface Site {
  readonly earth: Earth;
  /** [m] above mean sea level */ readonly altitude: number;
  /** [rad/s] of the Earth about the normal of the flight's plane: ω cos i */ readonly rotation: number;
  /** Air over the altitude [m]; null: none left. Absent: the standard atmosphere. */
  readonly air?: (altitude: number) => FlightAir | null;
}

/** Where the flight is to end. */
export interface Orbit {
  /** [m] above mean sea level, of the point where the engines stop, horizontal flight there */ readonly altitude: number;
  /** [m] of the highest point; equal to `altitude` for a circle */ readonly apogee: number;
}

/** How the vehicle is steered. */
export interface Steering {
  /** [m/s] of climb at which it leaves the vertical */ readonly kickSpeed: number;
  /** [rad] from the vertical, held until the way points there; then thrust along the way */ readonly kickAngle: number;
  /** [m] from which on the upper law holds; absent: from the first stage's end */ readonly upperFrom?: number;
  /** Upper law: tangent of the thrust's angle above the horizontal = start + rate · time since its beginning. */
  readonly upper: { readonly start: number /** [1/s] */; readonly rate: number };
}

/** One moment of the way up. */
export interface FlightPoint {
  /** [s] */ readonly time: number;
  /** Stage at work or about to be, from 0. */ readonly stage: number;
  /** [m] */ readonly altitude: number;
  /** [m] along the ground */ readonly downrange: number;
  /** [m/s] against the turning Earth */ readonly speed: number;
  /** [m/s] inertial */ readonly inertialSpeed: number;
  /** [rad] of the way above the horizontal, against the turning Earth */ readonly pathAngle: number;
  /** [kg] */ readonly mass: number;
  /** [N] */ readonly thrust: number;
  /** [–] */ readonly throttle: number;
  /** [Pa] */ readonly ambientPressure: number;
  /** [Pa] */ readonly dynamicPressure: number;
  /** [–]; null where the air has no speed of sound */ readonly mach: number | null;
  /** [m/s²] thrust less drag over mass, as a scale on board reads it */ readonly felt: number;
}

/** Where the velocity that the propellant could give in vacuum went. [m/s] */
export interface VelocityBudget {
  /** g₀ I_sp,vac ln(m₀/m₁), stage by stage */ readonly ideal: number;
  readonly gravity: number;
  readonly drag: number;
  readonly steering: number;
  readonly backPressure: number;
  /** Gained, against the turning Earth. */ readonly gained: number;
  /** ideal − losses − gained: what the integration leaves open */ readonly rest: number;
  /** Inertial speed at the end less that against the Earth there. */ readonly fromRotation: number;
}

export interface Ascent {
  readonly points: readonly FlightPoint[];
  readonly end: FlightPoint;
  /** [m/s] at the end, inertial: upwards and along */ readonly radialSpeed: number;
  readonly tangentialSpeed: number;
  readonly budget: VelocityBudget;
  readonly greatestDynamicPressure: FlightPoint;
  readonly start: FlightPoint;
  readonly firstStageEnd: FlightPoint;
  /** [m/s²] greatest, as a scale on board reads it */ readonly mostFelt: number;
  /** Of the first stage: ∫F dt/(g₀ ∫ṁ dt) [s], and the altitude [m] with half its propellant burnt. */
  readonly meanSpecificImpulse: number;
  readonly halfPropellantAltitude: number | null;
  /** Limits that throttling could not keep, in words. */ readonly exceeded: readonly string[];
}
