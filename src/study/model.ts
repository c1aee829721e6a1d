/** The study as the rest of the program sees it: SI values, resolved `like:`, each value with its text and place. */

import type { Problem } from '../numerics/problem.ts';
import type { CORRELATION_WORDS, CoolantId, WallId } from './coolingForm.ts';
import type { CycleOf } from './cycleForm.ts';
import type { MeasuredInput } from './measured/model.ts';
import type { PackageInput } from './packageForm.ts';
import type { Quantity } from './quantity.ts';
import type { VehicleInput } from './vehicleModel.ts';

export type * from './quantity.ts';
export type * from './vehicleModel.ts';

export type Chemistry =
  | { readonly kind: 'shifting' }
  | { readonly kind: 'frozen' }
  /** Shifting up to the point, frozen from there. */
  | { readonly kind: 'frozenFrom'; readonly areaRatio: Quantity }
  | { readonly kind: 'frozenFrom'; readonly pressure: Quantity };

/** One ingredient: from the data, or described in the study. */
export interface Ingredient {
  /** Id of the data, or the custom name. */ readonly id: string;
  /** Share by mass within its group (oxidiser, fuel, or the whole mixture). */ readonly share: Quantity;
  readonly custom: {
    readonly elements: Readonly<Record<string, number>>;
    /** [J/kg] */ readonly enthalpy: Quantity;
    /** [K] */ readonly temperature: Quantity;
    /** [kg/m³] */ readonly density: Quantity | null;
  } | null;
}

export type Propellants =
  | {
      readonly kind: 'burnt';
      readonly oxidiser: readonly Ingredient[];
      readonly fuel: readonly Ingredient[];
      readonly mixture:
        | { readonly by: 'massRatio'; readonly ratio: Quantity }
        | { readonly by: 'equivalenceRatio'; readonly ratio: Quantity };
    }
  /** Mass fractions of one mixture: solid propellants, monopropellants. */
  | { readonly kind: 'mixed'; readonly parts: readonly Ingredient[] }
  /** A gas brought to a given temperature instead of burnt: cold gas, reactor-heated hydrogen. */
  | { readonly kind: 'heated'; readonly parts: readonly Ingredient[]; readonly temperature: Quantity }
  /** A calorically perfect gas for teaching and checks. */
  | {
      readonly kind: 'perfect';
      readonly gamma: Quantity;
      readonly molarMass: Quantity;
      readonly temperature: Quantity;
    };

export type Size =
  | { readonly by: 'throat'; readonly diameter: Quantity }
  | { readonly by: 'exit'; readonly diameter: Quantity }
  | { readonly by: 'thrust'; readonly thrust: Quantity; readonly at: Ambient }
  /** Taken from another engine of the study. */
  | ({ readonly by: 'same'; readonly what: 'throat' | 'exit' } & { readonly as: string })
  | { readonly by: 'same'; readonly what: 'thrust'; readonly as: string; readonly at: Ambient };

/** Where an engine works. */
export type Ambient =
  | { readonly kind: 'vacuum' }
  | { readonly kind: 'altitude' /** geometric [m] */; readonly altitude: Quantity }
  | { readonly kind: 'pressure'; readonly pressure: Quantity };

export type Nozzle =
  | { readonly kind: 'ideal'; readonly areaRatio: Quantity }
  | { readonly kind: 'cone'; readonly areaRatio: Quantity; readonly halfAngle: Quantity }
  | {
      readonly kind: 'bell';
      readonly areaRatio: Quantity;
      /** share of the 15° cone's length */ readonly length: Quantity;
      readonly throatAngle: Quantity | null;
      readonly lipAngle: Quantity | null;
    }
  | {
      readonly kind: 'idealBell';
      readonly areaRatio: Quantity;
      /** share of the 15° cone's length; null: whole, or by the Mach number */ readonly length: Quantity | null;
      /** Mach number of the whole contour; null: by the length, or whole */ readonly designMach: Quantity | null;
    }
  | { readonly kind: 'adapting'; readonly areaRatio: Quantity }
  | {
      readonly kind: 'plug';
      readonly form: 'annular' | 'linear';
      readonly areaRatio: Quantity;
      /** share of the whole plug's length */ readonly kept: Quantity;
      /** null: the documented default, from gas and area ratio */ readonly innerMach: Quantity | null;
      /** width over height; null: 2, or annular */ readonly aspectRatio: Quantity | null;
      /** null: one throat all round */ readonly modules: Quantity | null;
      readonly moduleShape: 'rectangular' | 'round';
      /** [m] altitude of Mach 1 in flight; null: at rest */ readonly machOne: Quantity | null;
    }
  | {
      readonly kind: 'extendableSkirt';
      readonly areaRatio: Quantity;
      readonly shortAreaRatio: Quantity;
      /** share of the 15° cone's length, skirt out */ readonly length: Quantity;
      readonly throatAngle: Quantity | null;
      readonly lipAngle: Quantity | null;
      /** null: where it is best */ readonly switchAt: Ambient | null;
    }
  | {
      readonly kind: 'insert';
      readonly areaRatio: Quantity;
      readonly insertAreaRatio: Quantity;
      readonly length: Quantity;
      readonly insertLength: Quantity;
      /** null: where it is best */ readonly switchAt: Ambient | null;
    }
  | {
      readonly kind: 'expansionDeflection';
      readonly areaRatio: Quantity;
      readonly pintleAreaRatio: Quantity;
      /** share of the 15° cone's length */ readonly length: Quantity;
      readonly throatAngle: Quantity;
      readonly lipAngle: Quantity;
    }
  | {
      readonly kind: 'dualBell';
      readonly areaRatio: Quantity;
      readonly baseAreaRatio: Quantity;
      /** share of the 15° cone's length of the base */ readonly baseLength: Quantity;
      readonly throatAngle: Quantity | null;
      readonly baseLipAngle: Quantity | null;
      /** share of the 15° cone's length between its ends; null: by the angle */
      readonly extensionLength: Quantity | null;
      /** turn of the wall at the inflection; null: by the length */ readonly inflectionAngle: Quantity | null;
      /** wall pressure at the lip over that behind the inflection, less 1 */ readonly pressureRise: Quantity;
    };

export interface Chamber {
  /** Stagnation pressure [Pa], absolute */ readonly pressure: Quantity;
  /** Where that pressure is meant: at the injector face (the burning loss is then taken off) or at the nozzle inlet. */
  readonly pressureAt: 'injector' | 'nozzle';
  /** Share of the ideal characteristic velocity that is reached */ readonly efficiency: Quantity;
  readonly contractionRatio: Quantity;
  /** L* [m] */ readonly characteristicLength: Quantity;
  /** Converging half-angle [rad] */ readonly convergingAngle: Quantity;
}

/** How the walls are kept from melting. */
export interface Cooling {
  /** A propellant of the engine, or a row of the coolants. */ readonly coolant:
    | 'fuel'
    | 'oxidiser'
    | CoolantId;
  /** of that propellant’s flow */ readonly share: Quantity;
  /** [kg/s] instead of the share; null: by the share */ readonly flow: Quantity | null;
  /** null: as fed */ readonly inletTemperature: Quantity | null;
  /** null: what injector and channels need */ readonly inletPressure: Quantity | null;
  /** null: the usual one, or by the depth */ readonly pressureDrop: Quantity | null;
  /** at the throat; null: by the pressure drop */ readonly channelDepth: Quantity | null;
  /** at the throat; null: by the throat */ readonly channelWidth: Quantity | null;
  /** at the throat */ readonly land: Quantity;
  readonly wall: WallId;
  readonly thickness: Quantity;
  /** of the fuel */ readonly film: Quantity;
  /** area ratio; null: channels to the lip */ readonly skirtFrom: Quantity | null;
  readonly skirtWall: WallId;
  readonly correlation: 'usual' | (typeof CORRELATION_WORDS)[number];
}
/** How the propellants reach the chamber, by kind. */
export type Cycle = CycleOf<Quantity>;

export interface EngineInput {
  readonly id: string;
  readonly name: string;
  /** The engine whose inputs it shares, if `like:` was used. */ readonly like: string | null;
  readonly propellants: Propellants;
  readonly chemistry: Chemistry;
  readonly chamber: Chamber;
  readonly nozzle: Nozzle;
  readonly size: Size;
  readonly losses: 'none' | 'default';
  /** Null where the study says nothing of it. */ readonly cooling: Cooling | null;
  /** Null where the study says nothing of it. */ readonly cycle: Cycle | null;
  /** Figures that somebody published of this engine; never inherited by `like:`. */ readonly published: Published | null;
}

/** Published figures of one engine, and the one input that they may settle. */
export interface Published {
  readonly rows: readonly PublishedRow[];
  readonly solveFor: SolveFor | null;
}

export interface PublishedRow {
  /** Name in the catalogue without its place, e.g. `thrust`, `chamber.pressure`. */ readonly quantity: string;
  readonly value: Quantity;
  /** Half a unit of the last digit that the text gives [SI]. */ readonly rounding: number;
  /** Null where the quantity is the same everywhere. */ readonly at: Ambient | null;
  /** Key of the study's sources, or the citation in words. */
  readonly source: { readonly key: string } | { readonly words: string };
  readonly path: string;
}

/** Inputs that published figures may settle. */
export type SettledInput = 'areaRatio' | 'chamberPressure' | 'throatDiameter' | 'massFlow' | 'efficiency';

export interface SolveFor {
  readonly input: SettledInput;
  /** True where the study states that input too: then it is only compared, else the engine takes what is found. */
  readonly stated: boolean;
  readonly path: string;
}

export interface SentenceInput {
  readonly id: string;
  readonly say: string;
  /** Meant to be said; false: kept to be discussed, such as a half-truth. */ readonly said: boolean;
  /** The test that decides it, as written; not evaluated by this layer. */ readonly holds: string | null;
  readonly sources: readonly string[];
}

/** Something that no computation decides: history, dates, records. */
export interface ReportedFact {
  readonly id: string;
  readonly say: string;
  readonly value: Quantity | null;
  /** Where or when it holds, in words. */ readonly at: string | null;
  /** Keys of the study’s sources as cited; empty or unknown ones are told by the check. */
  readonly sources: readonly string[];
  readonly disagree: Disagreement | null;
  readonly path: string;
}

/** Two sources that do not say the same, and which of them is followed. */
export interface Disagreement {
  readonly values: readonly [ReportedValue, ReportedValue];
  /** 1 or 2 */ readonly chosen: 1 | 2;
  readonly because: string;
}

export interface ReportedValue {
  readonly value: Quantity;
  /** Key of the study’s sources, as cited. */ readonly source: string;
}

/** A likeness from daily life, and what of it can be tested. */
export interface AnalogyInput {
  readonly id: string;
  readonly say: string;
  /** Meant to be said; false: kept to be discussed. */ readonly said: boolean;
  readonly stands: readonly StandsFor[];
  readonly legs: readonly LegInput[];
  /** Where the likeness holds, in words. */ readonly holdsFor: string;
  readonly breaksWhere: readonly BreakInput[];
  readonly sources: readonly string[];
  readonly path: string;
}

/** What stands for what. */
export interface StandsFor {
  readonly this: string;
  readonly for: string;
  /** Quantity of the catalogue that it is tied to, as written. */ readonly relation: string | null;
}

/** One thing that the likeness makes people believe. */
export interface LegInput {
  readonly say: string;
  /** The point of the likeness; wrong, it must not be told. */ readonly main: boolean;
  /** A test, as written; not evaluated by this layer. */ readonly holds: string | null;
  readonly as: LegCourse | null;
  readonly path: string;
}

/** How a quantity goes with an input. */
export interface LegCourse {
  /** Expression, as written. */ readonly of: string;
  /** Input, surroundings or throttle that moves, as written. */ readonly over: string;
  /** Ends of the range, as written; null: the range that is worth looking at. */ readonly from:
    | string
    | null;
  readonly to: string | null;
  readonly goes: Course;
}

export type Course =
  | { readonly is: 'up' | 'down'; readonly text: string }
  /** Neither up nor down by more than this share of its middle. */
  | { readonly is: 'unchanged'; readonly within: number; readonly text: string }
  /** In proportion to this power of the input. */
  | { readonly is: 'power'; readonly exponent: number; readonly tolerance: number; readonly text: string };

export interface BreakInput {
  readonly say: string;
  /** A test that holds where it breaks, as written. */ readonly when: string | null;
}

export interface SourceInput {
  readonly id: string;
  readonly title: string;
  readonly author: string | null;
  readonly year: number | null;
  readonly where: string | null;
}

/** A value that moves over a range. */
export interface SweptInput {
  /** `altitude`, `ambientPressure`, `throttle`, `time`, an input below the engine, or its path in the study. */ readonly over: string;
  /** [SI]; null: where the range worth looking over begins */ readonly from: Quantity | null;
  /** [SI]; null: where it ends */ readonly to: Quantity | null;
  /** Null: by how far the ends are apart. */ readonly steps: 'even' | 'ratios' | null;
  readonly path: string;
}

/** Curves over one input. */
export interface SweepInput {
  readonly id: string;
  readonly title: string | null;
  /** Expressions as written; not evaluated by this layer. */ readonly of: readonly string[];
  readonly range: SweptInput;
  /** The input moves on these alone; null: where the study states it. */ readonly engines:
    | readonly string[]
    | null;
  readonly points: number | null;
  readonly path: string;
}

/** One expression over two inputs. */
export interface MapInput {
  readonly id: string;
  readonly title: string | null;
  readonly of: string;
  readonly across: SweptInput;
  readonly up: SweptInput;
  readonly engines: readonly string[] | null;
  readonly points: number | null;
  readonly path: string;
}

/** What an input would have to be for a comparison to hold. */
export interface NeedInput {
  readonly id: string;
  readonly title: string | null;
  /** The comparison as written; not evaluated by this layer. */ readonly so: string;
  readonly range: SweptInput;
  /** The input moves on these alone; null: where the study states it. */ readonly engines:
    | readonly string[]
    | null;
  readonly path: string;
}

export interface Study {
  /** Version of the file form. */ readonly format: number;
  readonly question: string;
  readonly engines: readonly EngineInput[];
  readonly vehicles: readonly VehicleInput[];
  /** Engines set against each other, first is the base of "more" and "less"; null: the first two. */
  readonly compare: { readonly base: string; readonly other: string } | null;
  /** Extra ambient conditions of interest, besides the standard list. */ readonly altitudes: readonly Quantity[];
  readonly ambients: readonly Quantity[];
  readonly sentences: readonly SentenceInput[];
  readonly facts: readonly ReportedFact[];
  readonly analogies: readonly AnalogyInput[];
  readonly sweeps: readonly SweepInput[];
  readonly maps: readonly MapInput[];
  readonly needs: readonly NeedInput[];
  /** Measured points to set beside what is computed. */ readonly measured: readonly MeasuredInput[];
  /** What is asked of the package; absent: the usual one. */ readonly package?: PackageInput;
  readonly sources: readonly SourceInput[];
}

/** A place in a text file; line and column count from 1. */
export interface Place {
  readonly line: number;
  readonly column: number;
}

/** A problem found in a study file, with its place. */
export interface StudyProblem extends Problem {
  readonly file: string;
  readonly place: Place | null;
  readonly path: string;
}

export type StudyOutcome =
  | { readonly ok: true; readonly study: Study; readonly warnings: readonly StudyProblem[] }
  | { readonly ok: false; readonly problems: readonly StudyProblem[] };
