import type { Expansion, FlowState } from '../gas/flow.ts';
import type { SeparationAt, WallSeparation } from './separation/model.ts';
import type { WallStation } from './wallStation.ts';

export type { WallStation } from './wallStation.ts';

/** A wall as a list of points; axial distance from the throat plane [m], radius [m], wall angle [rad]. */
export interface ContourPoint {
  readonly axial: number;
  readonly radius: number;
  readonly angle: number;
  /** Which piece of the wall this point belongs to. */
  readonly part: 'chamber' | 'converging' | 'throat' | 'nozzle';
}

export interface Contour {
  /** From the injector face to the lip, at most 1 % of the throat radius from the true curve. */
  readonly wall: readonly ContourPoint[];
  /** [m] throat to lip */ readonly nozzleLength: number;
  /** [m] injector face to lip */ readonly totalLength: number;
  /** [m] */ readonly throatRadius: number;
  /** [m] */ readonly exitRadius: number;
  /** [m] */ readonly chamberRadius: number;
  /** [m] cylindrical plus converging part */ readonly chamberLength: number;
  /** [rad] steepest wall angle after the throat */ readonly steepestAngle: number;
  /** [rad] wall angle at the lip */ readonly lipAngle: number;
  /** [m²] wetted wall, throat to lip */ readonly nozzleArea: number;
  /** [m²] wetted wall, injector face to throat, face excluded */ readonly chamberArea: number;
}

/** Size of the chamber; both have published defaults. */
export interface ChamberShape {
  /** Chamber area over throat area [–] */ readonly contractionRatio: number;
  /** Characteristic length L* = chamber volume over throat area [m] */ readonly characteristicLength: number;
  /** Half-angle of the converging cone [rad] */ readonly convergingAngle: number;
}

export type NozzleSpec =
  | { readonly kind: 'ideal'; readonly areaRatio: number }
  | { readonly kind: 'cone'; readonly areaRatio: number /** [rad] */; readonly halfAngle: number }
  | {
      readonly kind: 'bell';
      readonly areaRatio: number;
      /** share of the 15° cone's length [–], 0.6…1 */ readonly length: number;
      /** [rad]; absent: from the published chart */ readonly throatAngle?: number;
      /** [rad]; absent: from the published chart */ readonly lipAngle?: number;
    }
  | { readonly kind: 'adapting'; readonly areaRatio: number };

/** Whether a model takes off the nozzle's own losses (divergence). */
export type NozzleLosses = 'default' | 'none';

export type FlowRegime = 'full' | 'near the limit' | 'separated' | 'unchoked';

export interface FlowVerdict {
  readonly state: FlowRegime;
  /** The published criterion by which it was judged, e.g. "Schmucker 1973". */
  readonly criterion: string;
  /** [Pa] wall pressure at the lip (mean exit pressure in one-dimensional models) */ readonly lipPressure: number;
  /** [Pa] pressure below which the criterion says the flow leaves the wall */ readonly separationPressure: number;
}

/** Push of the gas on one surface, the ambient pressure on its outside taken off. */
export interface ThrustPart {
  /** In plain words, e.g. `nozzle wall`, `plug`, `base`; `CHAMBER_SURFACE` for all that lies ahead of the throat. */
  readonly surface: string;
  /** ∫ (p − p_a) dA_x over the surface, over p0 A_t, forwards positive [–] */ readonly coefficient: number;
}

/** Injector face and converging wall together: how they share it hangs on the chamber's width, see chamberParts. */
export const CHAMBER_SURFACE = 'chamber and converging wall';

/** How well a computed flow field keeps what must be kept. */
export interface FieldBalance {
  /** Mass flow out over mass flow in, less 1 [–] */ readonly mass: number;
  /** Thrust by surfaces less thrust by the boundary, in vacuum, over the latter [–] */ readonly momentum: number;
  /** Largest departure of the total enthalpy at the boundary, over the kinetic energy there [–] */
  readonly energy: number;
  /** Nodes of the field. */ readonly nodes: number;
  /** Why one of the above is larger than it should be; null: none is. */ readonly note: string | null;
}

/** Thrust of one engine at one ambient pressure, per unit of chamber pressure times throat area. */
export interface ThrustAt {
  /** [Pa] */ readonly ambientPressure: number;
  /** C_F of attached flow [–] */ readonly thrustCoefficientIfFull: number;
  /** C_F, best value of this model [–]; null where the model has none */ readonly thrustCoefficient:
    | number
    | null;
  /** Why the value above is null. */ readonly absent: string | null;
  /** The thrust by surfaces; empty where there is none. */ readonly parts: readonly ThrustPart[];
  /** Why the thrust has no parts; null where it has. */ readonly partsAbsent: string | null;
  /** C_F by the exit or boundary control volume [–]: the same thrust, found a second way; null where there is no thrust. */
  readonly boundary: number | null;
  readonly flow: FlowVerdict;
  /** Where the gas leaves the wall, and what follows; absent where the model has no wall to leave. */
  readonly separation?: SeparationAt;
  /** The exit state that applies at this ambient pressure (the adapting bound moves it). */ readonly exit: FlowState;
}

/** A nozzle on a given gas. Size-free: multiply by p0 · A_throat for newtons. */
export interface NozzleModel {
  readonly spec: NozzleSpec;
  readonly expansion: Expansion;
  /** Full-flow exit state at the spec's area ratio. */ readonly exit: FlowState;
  /** Factor on the momentum term for the divergence of the exit flow [–], 1 = parallel. */
  readonly divergenceFactor: number;
  /** Mass flow over that of one-dimensional flow through the same throat [–]; 1 where there is no field. */
  readonly dischargeCoefficient: number;
  at(ambientPressure: number): ThrustAt;
  /** [Pa] ambient pressure at which the exit pressure matches it */ readonly matchedAmbient: number;
  /** The gas at the wall from throat to lip by the flow field; null where there is none. Found once, when asked for. */
  wallStations(): readonly WallStation[] | null;
  /** Closure of the flow field; null where there is none. Found once, when asked for. */
  balance(): FieldBalance | null;
  /** Where and when the gas leaves the wall, by every criterion; absent where there is no wall. Found once, when asked for. */
  separation?(): WallSeparation | null;
  /** What this model leaves out, in plain words. */ readonly omitted: readonly string[];
  /** Names of the models used, keys of docs/methods. */ readonly models: readonly string[];
}
