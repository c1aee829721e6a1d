import type { Symmetry } from '../flow/points.ts';
import type { Expansion, FlowState } from '../gas/flow.ts';
import type { PlugSpec } from './plug/spec.ts';
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

/** A body that stands in or around the outer wall, e.g. a pintle, a plug, a skirt drawn up. */
export interface ContourBody {
  /** In plain words, e.g. `skirt`, `insert`, `pintle`. */ readonly name: string;
  /** Whether the outline closes upon itself about the axis (a solid body) or is a sheet of metal. */
  readonly solid: boolean;
  /** Still gas instead of metal, e.g. a wake. */ readonly isStillGas?: true;
  /** Half of the cut, [m] from the throat plane and from the axis. */
  readonly outline: readonly { readonly axial: number; readonly radius: number }[];
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
  /** What else is there besides the outer wall; absent: nothing. */ readonly bodies?: readonly ContourBody[];
  /** The plug's side of a plug engine; then `wall` is the outer side, chamber and cowl. */ readonly plug?: PlugContour;
  /** Of an expansion–deflection nozzle. */ readonly pintle?: PintleContour;
}

/** The throat round a pintle. */
export interface PintleContour {
  /** [m] between outer wall and pintle on the throat line */ readonly throatGap: number;
  /** [m] radius of the outer wall's arc ahead of it */ readonly throatArc: number;
}

/** The inner side of a plug engine, and its measures. */
export interface PlugContour {
  readonly form: 'annular' | 'linear';
  /** From the injector face along the plug to the cut; axial distance from the throat's plug side [m]. */
  readonly wall: readonly ContourPoint[];
  /** [m] width of the throat */ readonly throatGap: number;
  /** [m] radius of the walls' arcs into the throat */ readonly throatArc: number;
  /** [rad] flow direction in the throat, negative towards the axis */ readonly throatAngle: number;
  /** [m]; linear: half the height lip to lip */ readonly lipRadius: number;
  /** [m] of the whole plug behind the lip's first ray */ readonly wholeLength: number;
  /** [m] that is kept of it */ readonly keptLength: number;
  /** [m]; linear: half the base's height; 0 where the plug is whole */ readonly baseRadius: number;
  /** [m²] */ readonly baseArea: number;
  /** [m]; absent where annular */ readonly width?: number;
  /** [m²] wetted plug, throat to cut */ readonly plugArea: number;
  /** [m²] wetted inner cowl, throat to lip */ readonly cowlArea: number;
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
      /** [rad]; absent: that of the greatest vacuum thrust */ readonly throatAngle?: number;
      /** [rad]; absent: that of the greatest vacuum thrust */ readonly lipAngle?: number;
    }
  | IdealBellSpec
  | { readonly kind: 'adapting'; readonly areaRatio: number }
  | PlugSpec
  | ExtendableSkirtSpec
  | InsertSpec
  | DualBellSpec
  | ExpansionDeflectionSpec;

/** The contour that turns the flow parallel to the axis, whole or cut at an area ratio. */
export interface IdealBellSpec {
  readonly kind: 'idealBell';
  /** at the lip, where the contour is cut */ readonly areaRatio: number;
  /** share of the 15° cone's length [–]; absent with `designMach` absent as well: whole */ readonly length?: number;
  /** Mach number for which the whole contour is made [–]; instead of the length */ readonly designMach?: number;
}

/** A bell whose rear part, the skirt, is drawn up round its front part at first and slides out at a given ambient. */
export interface ExtendableSkirtSpec {
  readonly kind: 'extendableSkirt';
  /** of the whole bell, skirt out */ readonly areaRatio: number;
  /** where the wall is cut: of the bell with its skirt drawn up */ readonly shortAreaRatio: number;
  /** share of the 15° cone's length of the whole bell [–] */ readonly length: number;
  /** [rad]; absent: that of the greatest vacuum thrust */ readonly throatAngle?: number;
  /** [rad] of the whole bell; absent: that of the greatest vacuum thrust */ readonly lipAngle?: number;
  /** [Pa] at which it slides out; absent: the best */ readonly switchAmbient?: number;
}

/** A bell with a second one behind a kink of its wall, which the gas fills only in thin air. */
export interface DualBellSpec {
  readonly kind: 'dualBell';
  /** of the whole */ readonly areaRatio: number;
  /** where the wall kinks: of the base, the first bell */ readonly baseAreaRatio: number;
  /** share of the 15° cone's length of the base [–] */ readonly baseLength: number;
  /** [rad] just behind the throat; absent: that of the greatest vacuum thrust */ readonly throatAngle?: number;
  /** [rad] at the end of the base; absent: that of the greatest vacuum thrust */ readonly baseLipAngle?: number;
  /** What shapes the extension: its length as a share of the 15° cone's between its ends, or the kink [rad]. */
  readonly shape: { readonly extensionLength: number } | { readonly kink: number };
  /** Wall pressure at the lip over that behind the kink, less 1 [–]; 0: constant */ readonly pressureRise: number;
}

/** Annular throat round a pintle, turned outwards; the gas expands round the pintle's edge, along an outer wall. */
export interface ExpansionDeflectionSpec {
  readonly kind: 'expansionDeflection';
  readonly areaRatio: number;
  /** area of the pintle at the throat over that of the throat [–] */ readonly pintleAreaRatio: number;
  /** share of the 15° cone's length of the same area ratio [–] */ readonly length: number;
  /** [rad] outwards, of the flow in the throat */ readonly throatAngle: number;
  /** [rad] of the outer wall */ readonly lipAngle: number;
}

/** A bell in which a smaller one stands at first, on the same throat, and is dropped at a given ambient. */
export interface InsertSpec {
  readonly kind: 'insert';
  /** of the bell without its insert */ readonly areaRatio: number;
  /** of the insert */ readonly insertAreaRatio: number;
  /** share of the 15° cone's length of the bell [–] */ readonly length: number;
  /** share of the 15° cone's length of the insert [–] */ readonly insertLength: number;
  /** [Pa] at which it drops away; absent: the best */ readonly switchAmbient?: number;
}

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
  /** What the lines of the net missed of the mass flow on the way, put right line by line, over the mass flow [–]; absent: nothing */
  readonly massPutRight?: number;
  /** Thrust by surfaces less thrust by the boundary, in vacuum, over the latter [–] */ readonly momentum: number;
  /** Largest departure of the total enthalpy at the boundary, over the kinetic energy there [–] */
  readonly energy: number;
  /** Nodes of the field. */ readonly nodes: number;
  /** Where not characteristics but streamtubes carry the field: an internal shock too strong for the former. */
  readonly by?: 'streamtubes';
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
  /** Which of two ways of working applies, in the words of `change`; absent: the nozzle has only one. */
  readonly mode?: string;
  readonly flow: FlowVerdict;
  /** Where the gas leaves the wall, and what follows; absent where the model has no wall to leave. */
  readonly separation?: SeparationAt;
  /** Axial distance over the throat radius at which the gas leaves the wall, of models that tell no more of it; absent: it does not. */
  readonly leavesAt?: number;
  /** The exit state that applies at this ambient pressure (the adapting bound moves it). */ readonly exit: FlowState;
}

/** The flow as it leaves the nozzle, for the jet behind it; sizes over the throat radius. */
export type LeavingFlow =
  | {
      readonly kind: 'parallel';
      readonly state: FlowState;
      /** [–] */ readonly radius: number;
    }
  | {
      readonly kind: 'line';
      /** Nodes of the flow net from the lip to the axis (x, r, θ, ν, μ, see flow/points.ts). */
      readonly nodes: Float64Array;
      /** The line is a C− from the lip; false: a line across the flow, such as the exit plane. */
      readonly isCharacteristic: boolean;
      /** The line ends on an inner wall, a plug's, instead of the axis. */ readonly endsAtWall?: true;
      /** Absent: round. */ readonly symmetry?: Symmetry;
      /** The free edge, where the nozzle's own model has it; from the lip on. */
      readonly edge?: readonly { readonly axial: number; readonly radius: number }[];
    };

/** One of the two ways in which a nozzle works that changes on its way up. */
export interface NozzleMode {
  /** In plain words, e.g. `skirt drawn up`, `open wake`. */ readonly name: string;
  /** Thrust in this mode, whether or not it is the one in use there. */ at(
    ambientPressure: number,
  ): ThrustAt;
  /** The gas at the wall in this mode. */ wallStations(): readonly WallStation[] | null;
  /** As of the nozzle, in this mode. */ leaving?(ambientPressure: number): LeavingFlow | null;
  /** As of the nozzle, in this mode. */ separation?(): WallSeparation | null;
  /** Wall and bodies in this mode; absent: those of the nozzle itself. */
  contour?(throatRadius: number, chamberShape: ChamberShape): Contour;
}

/** Where a nozzle goes over from one mode to the other. */
export interface ModeChange {
  /** In thick air. */ readonly thick: NozzleMode;
  /** In thin air and in vacuum. */ readonly thin: NozzleMode;
  /** [Pa] ambient pressure at and above which `thick` holds on the way up: the value taken */
  readonly ambientPressure: number;
  /** [Pa] what published models or scatter make of it; null: it is stated or computed without scatter. */
  readonly band: { readonly low: number; readonly high: number } | null;
  /** [Pa] the same on the way back, where the flow remembers; null: where it came from. */
  readonly back: { readonly low: number; readonly high: number } | null;
  /** Each model's value [Pa]; empty where there is one way only. */
  readonly estimates: readonly { readonly by: string; readonly ambientPressure: number }[];
  /** One sentence: how the value was found. */ readonly how: string;
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
  /** @param flightMach of the vehicle, for a nozzle whose gas feels the slipstream; absent: at rest */
  at(ambientPressure: number, flightMach?: number): ThrustAt;
  /** [Pa] ambient pressure at which the exit pressure matches it */ readonly matchedAmbient: number;
  /** The gas at the wall from throat to lip by the flow field; null where there is none. Found once, when asked for. */
  wallStations(): readonly WallStation[] | null;
  /** Likewise along the inner side of the cowl, throat to lip, where the gas has a second wall; absent: it has none. */
  cowlStations?(): readonly WallStation[];
  /** Closure of the flow field; null where there is none. Found once, when asked for. */
  balance(): FieldBalance | null;
  /**
   * The flow as it leaves a nozzle that it fills; null or absent: the model has none, so no jet behind it is computed.
   * Found once, when asked for.
   */
  leaving?(ambientPressure: number): LeavingFlow | null;
  /** Where and when the gas leaves the wall, by every criterion; absent where there is no wall. Found once, when asked for. */
  separation?(): WallSeparation | null;
  /** Wall and bodies where the gas shapes them; absent: `chamberAndNozzleContour` of the spec knows them. */
  contour?(throatRadius: number, chamberShape: ChamberShape): Contour;
  /**
   * Thrust coefficient, its base aside, that an open wake at another pressure than the air's adds [–]; null where no flow is
   * found; absent: it has no such wake. Pressures in Pa.
   */
  wakeAdds?(ambientPressure: number, wakePressure: number): number | null;
  /** Its two modes and where it goes over; absent: it has one mode. */ readonly change?: ModeChange;
  /** What this model leaves out, in plain words. */ readonly omitted: readonly string[];
  /** Names of the models used, keys of docs/methods. */ readonly models: readonly string[];
}
