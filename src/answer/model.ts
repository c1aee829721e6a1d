/**
 * The answer to a study: what `plumeline solve --json` prints, what every face shows.
 * SI units; specific impulse in seconds; altitude geometric in metres.
 * What cannot be computed is null and has an entry in `reasons` under the same path.
 */

import type { Problem } from '../numerics/problem.ts';
import type { Budget } from '../physics/nozzle/losses/index.ts';
import type { Contour, FieldBalance, FlowVerdict } from '../physics/nozzle/model.ts';
import type { FieldLines } from '../physics/nozzle/plug/plugField.ts';
import type { ComparedQuantity } from './comparedQuantity.ts';
import type { CycleAnswer, MassAnswer } from './cycle/model.ts';
import type { VehicleAnswer } from './flight/model.ts';
import type { CoolingAnswer, HeatAnswer } from './heat/model.ts';
import type { PlumeAnswer } from './plumeModel.ts';
import type { PublishedCheck, PublishedFigure, PublishedSolve } from './published/model.ts';
import type { EngineSeparation, RowSeparation } from './separation/model.ts';

export type { ComparedQuantity } from './comparedQuantity.ts';
export type {
  PublishedBand,
  PublishedCheck,
  PublishedFigure,
  PublishedRoad,
  PublishedSolve,
} from './published/model.ts';
export type {
  CriterionRow,
  EngineSeparation,
  PlaceOnWall,
  RowSeparation,
  ThrottleRow,
} from './separation/model.ts';

export interface ThrustFigures {
  readonly thrustCoefficient: number | null;
  /** [s] */ readonly specificImpulse: number | null;
  /** [N] */ readonly thrust: number | null;
  /** [N] if the flow filled the nozzle whatever the ambient pressure */ readonly thrustIfFull: number;
}

/** Push of the gas on one surface, the ambient pressure on its outside taken off; forwards positive. */
export interface ThrustPartAnswer {
  /** In plain words: `injector face`, `converging wall`, `nozzle wall`, `plug`, `base`, … */ readonly surface: string;
  /** over p0 A_t [–] */ readonly coefficient: number;
  /** [N] */ readonly force: number;
}

/** How well a flow field keeps what must be kept: see FieldBalance of the nozzle models. */
export type FieldAnswer = Omit<FieldBalance, 'note'> & { readonly note?: string };

/** Where the push acts, and the same thrust found a second way. */
export interface ThrustParts {
  readonly parts: readonly ThrustPartAnswer[];
  /** [N] all surfaces together; null where the thrust has no parts */ readonly sum: number | null;
  /** [N] momentum and pressure across the exit; null where there is no thrust */ readonly boundary:
    | number
    | null;
  /** sum over boundary, less 1 [–]; null where either is */ readonly difference: number | null;
  /** Why there are no parts, or why the two differ by more than 0.3 %; absent: neither. */ readonly note?: string;
}

export interface ConditionRow extends ThrustFigures {
  /** [m] geometric; null for a pressure without an altitude */ readonly altitude: number | null;
  /** [Pa] */ readonly ambientPressure: number;
  /** The thrust by surfaces; empty where it has none. */ readonly thrustParts: readonly ThrustPartAnswer[];
  readonly flow: FlowVerdict;
  /** [Pa] exit pressure that applies here */ readonly exitPressure: number;
  /** Where the gas leaves the wall, by all criteria; absent where there is no wall to leave. */
  readonly separation?: RowSeparation;
  /** Which of two ways of working is in use here; absent where the nozzle has only one. */ readonly mode?: string;
  /** What a plug feels here; absent where the engine has none. */ readonly plug?: PlugRow;
  /** The gas on the plug, for drawing; not in the printed answer. [m] from the throat's plug side. */
  readonly field?: FieldLines;
  /** The same place in either mode, in use or not; absent where the nozzle has only one. */
  readonly modes?: readonly ModeRow[];
}

/** Wall and base of a plug at one place; what does not apply there is absent. */
export interface PlugRow {
  /** Absent where nothing is cut off. */
  readonly base?: {
    /** `open`: the base feels the air; `closed`: it does not. */ readonly wake: 'open' | 'closed';
    /** [Pa] value taken, and the band over the published models */ readonly pressure: number;
    readonly low: number;
    readonly high: number;
  };
  /** Least pressure on the plug over that of the air [–]; absent in vacuum, and where the flow is not computed. */
  readonly leastWall?: number;
  /** The same on the inner cowl [–] */ readonly leastCowl?: number;
  /** The pressure rise on the plug that is nearest to the published onset of separation; absent where there is none. */
  readonly recompression?: {
    /** pressure behind over ahead [–] */ readonly pressureRatio: number;
    /** Mach number ahead [–] */ readonly mach: number;
    /** the rise over the one at which the flow begins to let go, both less 1 [–] */
    readonly shareOfOnset: number;
  };
  /** Absent at rest. */
  readonly flight?: {
    /** of the vehicle [–] */ readonly mach: number;
    /** [Pa] of the air as the plug feels it: value taken, and its band */ readonly pressure: number;
    readonly low: number;
    readonly high: number;
  };
}

/** What is true of a plug wherever it flies. */
export interface PlugAnswer {
  /** Mach number at the lip before its fan [–] */ readonly innerMach: number;
  /** [rad] by which the lip's fan turns the flow */ readonly lipTurn: number;
  /** chamber over exit pressure [–] at which the exit flow is uniform and at the air's pressure */
  readonly designPressureRatio: number;
  /** largest distance from the approximate wall by straight rays, over the lip radius [–]; 0 where linear */
  readonly straightRayDeparture: number;
  /** [Pa] up to which the air's pressure does not reach the plug */ readonly untouchedBelow: number;
  /** [Pa] of the air at which the wake behind the base closes on the way up; absent where nothing is cut off. */
  readonly wakeClosesAt?: number;
  readonly modules?: {
    /** of the vacuum thrust, value taken and band [–] */ readonly loss: number;
    readonly low: number;
    readonly high: number;
    /** share of the ring between the exits [–] */ readonly gap: number;
  };
}

/** What a nozzle of two modes would do in one of them. */
export interface ModeRow extends ThrustFigures {
  readonly mode: string;
  readonly flow: FlowVerdict;
}

/** A pressure of the surroundings and the altitude that has it; null above the air model or in no air. */
export interface AmbientPlace {
  /** [Pa] */ readonly ambientPressure: number;
  /** [m] geometric */ readonly altitude: number | null;
}

/** Where a nozzle of two modes goes over from one to the other. */
export interface ChangeAnswer extends AmbientPlace {
  /** Mode in thick air. */ readonly thick: string;
  /** Mode in thin air and in vacuum. */ readonly thin: string;
  /** One sentence: how the value was found. */ readonly how: string;
  /** From thin to thick air, what published models or their scatter make of it; absent: one value only. */
  readonly band?: { readonly low: AmbientPlace; readonly high: AmbientPlace };
  /** The same on the way back down; absent: where it came from. */
  readonly back?: { readonly low: AmbientPlace; readonly high: AmbientPlace };
  readonly estimates: readonly ({ readonly by: string } & AmbientPlace)[];
}

/** Wall and bodies of a nozzle of two modes in one of them. */
export interface PositionAnswer {
  readonly mode: string;
  readonly contour: Contour;
  readonly wall: readonly WallPoint[];
}

export interface WallPoint {
  /** [m] from the throat plane */ readonly axial: number;
  /** [m] */ readonly radius: number;
  /** [Pa] */ readonly pressure: number;
  readonly mach: number | null;
  /** [K] */ readonly temperature: number;
  /** [m/s] */ readonly velocity: number;
  /** [Pa] mean over the cross-section, one-dimensional */ readonly meanPressure: number;
}

/** The layer of slowed gas on the wall; null where the nozzle has no wall. */
export interface WallLayer {
  /** [N] thrust that it takes */ readonly thrustLost: number;
  /** [m] momentum thickness at the lip */ readonly momentumThickness: number;
  /** [m] by which it displaces the flow at the throat; below 0 where the cold wall draws the gas in */
  readonly throatDisplacement: number;
  /** [–] mass flow over that without the layer */ readonly discharge: number;
  /** [W] heat that the wall takes, injector to lip */ readonly heatFlow: number;
  /** [K] supposed of the wall on the gas side */ readonly wallTemperature: number;
}

/** From the ideal to the delivered specific impulse in vacuum, flowing full: ideal − Σ items = delivered. */
export interface LossBudget extends Budget {
  /** Why there is no layer is in `reasons`. */ readonly layer: WallLayer | null;
}

export interface Reason {
  /** Path of the null value inside the engine, e.g. `altitudes[0].thrust`. */ readonly path: string;
  readonly reason: string;
  readonly mend: string;
}

export interface EngineAnswer {
  readonly id: string;
  readonly name: string;
  /** One line of plain facts, e.g. `bell, area ratio 25`. */ readonly description: string;
  readonly propellants: string;
  readonly chemistry: string;
  readonly chamber: {
    /** [Pa] */ readonly pressure: number;
    /** [K] */ readonly temperature: number;
    /** [kg/mol] */ readonly molarMass: number;
    readonly isentropicExponent: number | null;
    /** Mole fractions by species name. Empty for a perfect gas. */ readonly composition: Record<
      string,
      number
    >;
    /** [kg/m³] of the stored propellants as burnt; null where a density is unknown */ readonly bulkDensity:
      | number
      | null;
  };
  /** [m/s] delivered: ideal times efficiency */ readonly characteristicVelocity: number;
  readonly throat: { readonly pressure: number; readonly temperature: number; readonly diameter: number };
  readonly exit: {
    readonly pressure: number;
    readonly temperature: number;
    readonly mach: number | null;
    readonly diameter: number;
    /** [m/s] */ readonly velocity: number;
  };
  readonly areaRatio: number;
  /** [kg/s] */ readonly massFlow: number;
  readonly divergenceFactor: number;
  /** Mass flow over that of one-dimensional flow through the same throat [–]. */ readonly dischargeCoefficient: number;
  /** How well the flow field keeps what must be kept; null: there is no field. */ readonly field: FieldAnswer | null;
  readonly vacuum: ThrustFigures;
  readonly seaLevel: ThrustFigures;
  /** Where the push acts, in vacuum and at sea level; each row below has its parts as well. */
  readonly thrustParts: { readonly vacuum: ThrustParts; readonly seaLevel: ThrustParts };
  /** [Pa] ambient at which the exit matches it, and its altitude [m], null above the air model or in no air */
  readonly matched: { readonly ambientPressure: number; readonly altitude: number | null };
  readonly altitudes: readonly ConditionRow[];
  readonly ambients: readonly ConditionRow[];
  /** From injector face to lip. Metres. */ readonly contour: Contour;
  /**
   * `shape`: the wall of this nozzle. `notional`: the model has no wall of its own (ideal, adapting);
   * drawn as a 15° cone of the same area ratio, dashed, and said so.
   */
  readonly contourIs: 'shape' | 'notional';
  /** One-dimensional mean state along the contour, injector face to lip, and the pressure on the wall. */ readonly wall: readonly WallPoint[];
  /** Absent where the engine has no plug. */ readonly plug?: PlugAnswer;
  /** Absent where the nozzle has one mode. */ readonly change?: ChangeAnswer;
  /** In thick air, then in thin air; empty where the nozzle has one mode. */ readonly positions: readonly PositionAnswer[];
  /** The jet behind the nozzle. */ readonly plume: PlumeAnswer;
  /** At sea level by every criterion, and over the throttle; absent where there is no wall to leave. */
  readonly separation?: EngineSeparation;
  /** Where the specific impulse in vacuum goes, flowing full. */ readonly losses: LossBudget;
  /** Heat to walls of a supposed temperature; null: no wall, see the reasons. */ readonly heat: HeatAnswer | null;
  /** The coolant behind them; null where it cannot be computed, absent where the study says nothing of it. */
  readonly cooling?: CoolingAnswer | null;
  /** How the propellants are pumped and what it costs; absent where the study says nothing of it. */ readonly cycle?: CycleAnswer;
  /** Dry mass by published relations; absent as the cycle, null where they do not reach. */ readonly mass?: MassAnswer | null;
  readonly models: readonly string[];
  readonly omitted: readonly string[];
  /** What the reader should know about the inputs, e.g. two that contradict each other. */
  readonly notes: readonly string[];
  /** What the models’ published scatter leaves open, by quantity: thrust and specific impulse in vacuum and at sea level. */
  readonly bands: Record<string, { readonly low: number; readonly high: number; readonly from: string }>;
  /** Published rows of the study beside what the models give. */ readonly published: readonly PublishedFigure[];
  /** Those rows held against each other, contradictions first. */ readonly publishedChecks: readonly PublishedCheck[];
  /** The input that they settle; absent where the study asks for none. */ readonly publishedSolve?: PublishedSolve;
  readonly reasons: readonly Reason[];
}

export interface Comparison {
  readonly base: string;
  readonly other: string;
  /** What is equal between the two, in words, e.g. `throat area`, `chamber pressure`. */ readonly heldEqual: readonly string[];
  readonly differs: readonly string[];
  readonly quantities: readonly ComparedQuantity[];
  /** Altitudes [m] where the specific impulses cross. */ readonly crossings: readonly number[];
  readonly answer: ShortAnswer;
}

/** A few verdict words and at most two sentences, numbers rounded for speech. */
export interface ShortAnswer {
  readonly verdict: string;
  readonly text: string;
}

export interface StudyAnswer {
  readonly format: 'plumeline answer 1';
  readonly program: { readonly name: 'plumeline'; readonly version: string };
  readonly caution: string;
  readonly question: string;
  /** Engines that could be computed, by id. */ readonly engines: Record<string, EngineAnswer>;
  /** Engines that could not, by id. */ readonly failed: Record<string, Problem>;
  /** That of the comparison; of a lone engine, about that engine. */ readonly shortAnswer: ShortAnswer;
  readonly comparison: Comparison | null;
  /** What the engines do for the vehicles of the study. */ readonly vehicles: readonly VehicleAnswer[];
  /** Not computed by this version, said so. */ readonly notModelled: readonly string[];
  readonly hazards: readonly string[];
}

/** What is known before the vehicles are flown. */
export type EnginesAnswer = Omit<StudyAnswer, 'vehicles'>;
