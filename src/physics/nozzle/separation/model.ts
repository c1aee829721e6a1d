/** What is said of gas that leaves the wall of a nozzle: criteria, places, and what follows at one ambient pressure. */

/** What the flow of a nozzle does at one ambient pressure, from vacuum to the chamber's own pressure and above. */
export type FlowCase =
  | 'underexpanded'
  | 'matched'
  | 'overexpanded'
  | 'near the limit'
  | 'separated'
  | 'shock in the throat'
  | 'unchoked'
  | 'subsonic jet'
  | 'no outflow';

/** From the least to the greatest value that published models give. */
export interface Span {
  readonly low: number;
  readonly high: number;
}

/** One place of the wall; sizes over the throat's. */
export interface WallPlace {
  /** from the throat plane, over the throat radius [–] */ readonly axial: number;
  /** local area over the throat's [–] */ readonly areaRatio: number;
  /** at the wall [–]; null where the gas has no sound speed */ readonly mach: number | null;
  /** [Pa] on the wall just upstream */ readonly pressure: number;
}

/** The gas on a wall at one ambient pressure. */
export interface SeparationAt {
  readonly case: FlowCase;
  /** Where the gas leaves the wall by the deciding criterion; the lip where it stays on to the lip. */
  readonly place: WallPlace;
  /** The furthest upstream and the furthest downstream of the places by all criteria that count here. */
  readonly earliest: WallPlace;
  readonly latest: WallPlace;
  /** How many criteria count here, and how many of them let the gas go before the lip. */
  readonly counted: number;
  readonly lettingGo: number;
  /** C_F by all criteria that count and the published span of the pressure behind the place [–]; null with the best value. */
  readonly thrustCoefficient: Span | null;
  /** Mass flow over that of the choked throat [–]: 1 while it chokes, best value 0 where nothing flows out. */
  readonly massFlowShare: number;
  /** The same between a bare throat and a wall on which the gas stays, one-dimensional. */ readonly massFlowShares: Span;
  /** How the numbers were got, where that is not as usual; null: nothing to add. */ readonly note:
    | string
    | null;
  /** What to know of sideways forces; null where no criterion lets the gas go. */ readonly sideLoads:
    | string
    | null;
}

/** What a wall gives at one ambient pressure. */
export interface OffDesign {
  /** C_F, best value [–]; null: see `absent` */ readonly coefficient: number | null;
  /** C_F less that of full flow: the push of the wall behind the place [–] */ readonly gain: number;
  readonly absent: string | null;
  readonly separation: SeparationAt;
}

/** Key of a criterion, stable. */
export type CriterionId =
  | 'summerfield'
  | 'schilling'
  | 'kaltBadal'
  | 'schmucker'
  | 'stark'
  | 'zukoski'
  | 'shockMachRatio';

/** One criterion at the lip of a nozzle, and whether it counts at an ambient pressure. */
export interface CriterionAt {
  readonly id: CriterionId;
  /** e.g. `Schmucker 1973` */ readonly name: string;
  readonly source: string;
  /** In words: what it was fitted to, and from where we know. */ readonly range: string;
  /** Whether it counts here; if not, why. */ readonly counts: boolean;
  readonly why: string | null;
  /** p_sep/p_a at its place [–]; null where it has no value (the gas has no Mach number) */
  readonly ratio: number | null;
  /** Where it lets the gas go, the lip where it doesn't; null as above. */ readonly place: WallPlace | null;
  /** [Pa] ambient pressure up to which it keeps the gas on to the lip */ readonly limitAmbient:
    | number
    | null;
  /** Least chamber pressure over the design's at which the nozzle flows full at this ambient [–], gas scaled. */
  readonly lowestFullThrottle: number | null;
}

/** The place of separation at one chamber pressure; see `alongThrottle`. */
export interface ThrottlePoint {
  /** Chamber pressure over the design's [–] */ readonly share: number;
  /** While the chamber pressure rises, and while it falls; they differ where the pressure along the wall is not falling throughout. */
  readonly rising: WallPlace;
  readonly falling: WallPlace;
  readonly earliest: WallPlace;
  readonly latest: WallPlace;
  readonly case: FlowCase;
}

/** What one criterion that counts makes of the thrust at one ambient pressure. */
export interface GainByCriterion {
  readonly id: CriterionId;
  /** e.g. `Schmucker 1973` */ readonly name: string;
  readonly isDeciding: boolean;
  /** Where it lets the gas go; the lip where it doesn't. */ readonly place: WallPlace;
  /** C_F less that of full flow [–], by the published span of the pressure behind the place. */
  readonly gain: Span & { readonly best: number };
}

/** Least throttle that flows full at an ambient pressure, chamber pressure over the design's [–]; above 1: never full there. */
export interface FullThrottle extends Span {
  readonly best: number;
  /** To fill the nozzle while the chamber pressure rises. */ readonly bestRising: number;
  /** By each criterion that counts where it just holds the gas on to the lip, the deciding one first. */
  readonly byCriterion: readonly {
    readonly name: string;
    readonly share: number;
    readonly rising: number;
  }[];
}

/** The separation of one nozzle's wall, tabulated once; every call afterwards is cheap. */
export interface WallSeparation {
  /** The deciding criterion at an ambient pressure, and what to know of it there. */
  deciding(ambientPressure: number): string;
  /** Pressure on the wall at the lip, flowing full [Pa]. */ readonly lipPressure: number;
  /** [Pa] wall pressure at the lip below which the deciding criterion lets the gas go */
  separationPressure(ambientPressure: number): number;
  /** @param coefficientIfFull C_F if the gas stayed on the wall, at the same ambient pressure [–] */
  at(ambientPressure: number, coefficientIfFull: number): OffDesign;
  criteria(ambientPressure: number): readonly CriterionAt[];
  /** The criteria that count at an ambient pressure at which the throat chokes, the deciding one among them. */
  byCriterion(ambientPressure: number): readonly GainByCriterion[];
  /** [Pa] at the lip, as `separationPressure`, by each of them. */
  separationPressures(
    ambientPressure: number,
  ): readonly { readonly name: string; readonly pressure: number }[];
  alongThrottle(ambientPressure: number, shares: readonly number[]): readonly ThrottlePoint[];
  lowestFullThrottle(ambientPressure: number): FullThrottle;
}
