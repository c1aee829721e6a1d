/** What the answer says of gas that leaves the wall. What doesn't apply is absent. */

import type { CriterionId, FlowCase, Span } from '../../physics/nozzle/index.ts';

/** One place of the wall. */
export interface PlaceOnWall {
  /** [m] from the throat plane */ readonly axial: number;
  /** local area over the throat's [–] */ readonly areaRatio: number;
  /** at the wall [–]; absent where the gas has no sound speed */ readonly mach?: number;
  /** [Pa] on the wall just upstream */ readonly pressure: number;
}

/** The gas on the wall at one outside pressure. */
export interface RowSeparation {
  readonly case: FlowCase;
  /** Where the gas leaves the wall by the deciding criterion; the lip where it stays. */ readonly place: PlaceOnWall;
  /** By that of all criteria which lets go furthest upstream, and furthest downstream. */
  readonly earliest: PlaceOnWall;
  readonly latest: PlaceOnWall;
  /** Criteria that count here, and those of them that let the gas go. */
  readonly counted: number;
  readonly lettingGo: number;
  /** [N] over all criteria that count */ readonly thrust?: Span;
  /** [s] the same, at the best value of the mass flow */ readonly specificImpulse?: Span;
  /** [kg/s] best value: less than the engine's where the throat doesn't choke */ readonly massFlow: number;
  /** [kg/s]; where the throat may not choke */ readonly massFlows?: Span;
  readonly note?: string;
  readonly sideLoads?: string;
}

/** One criterion at sea level. */
export interface CriterionRow {
  readonly id: CriterionId;
  readonly name: string;
  readonly source: string;
  readonly range: string;
  readonly counts: boolean;
  /** Why it doesn't count. */ readonly why?: string;
  /** p_sep/p_a [–] */ readonly ratio?: number;
  readonly place?: PlaceOnWall;
  /** [Pa] outside pressure up to which the gas stays on to the lip */ readonly limitAmbient?: number;
  /** chamber pressure over the design's [–] */ readonly lowestFullThrottle?: number;
}

/** The ring where the gas lets go, at one chamber pressure, at sea level. */
export interface ThrottleRow {
  /** chamber pressure over the design's [–] */ readonly share: number;
  readonly case: FlowCase;
  /** while the chamber pressure rises, and while it falls */
  readonly rising: PlaceOnWall;
  readonly falling: PlaceOnWall;
  readonly earliest: PlaceOnWall;
  readonly latest: PlaceOnWall;
}

export interface EngineSeparation {
  /** The criterion that gives the best values, and what to know of it at sea level. */ readonly deciding: string;
  readonly criteria: readonly CriterionRow[];
  readonly seaLevel: RowSeparation;
  /** Least chamber pressure over the design's that flows full at sea level [–]; above 1: not even at full thrust. */
  readonly lowestFullThrottle: Span & { readonly best: number; readonly bestRising: number };
  readonly throttle: readonly ThrottleRow[];
  /** How the gas at other chamber pressures was got. */ readonly throttleNote: string;
}
