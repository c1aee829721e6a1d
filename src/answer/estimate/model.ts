/** A first estimate of an engine whose inputs move: what is quickly known of it, and what comes of that. SI units. */

import type { Contour, NozzleSpec } from '../../physics/nozzle/index.ts';
import type { EngineInput } from '../../study/model.ts';
import type { ConditionRow, EngineAnswer, WallPoint } from '../model.ts';

/**
 * One-dimensional flow from the chamber to the exit, in steps of s = √(−ln(p/p₀)), in which speed and temperature run
 * smoothly from rest on.
 */
export interface MeanFlow {
  readonly s: readonly number[];
  /** [K] */ readonly temperature: readonly number[];
  /** [m/s] */ readonly velocity: readonly number[];
  readonly mach: readonly (number | null)[];
  /** A/A*; infinite at rest */ readonly areaRatio: readonly number[];
  /** Which of the steps is the throat. */ readonly throat: number;
}

/** The mean flow where a nozzle ends. */
export interface MeanExit {
  readonly areaRatio: number;
  /** p_e/p₀ */ readonly share: number;
  /** [K] */ readonly temperature: number;
  /** [m/s] */ readonly velocity: number;
  readonly mach: number | null;
}

/** What is known of an engine at its inputs within a few milliseconds: its gas by the full model, its flow in one dimension. */
export interface EngineBasis {
  readonly input: EngineInput;
  readonly description: string;
  readonly propellants: string;
  readonly chemistry: string;
  readonly chamber: Omit<EngineAnswer['chamber'], 'composition'>;
  readonly throat: { readonly pressure: number; readonly temperature: number };
  /** [m/s] ideal */ readonly characteristicVelocity: number;
  readonly flow: MeanFlow;
  /** Where it ends in thin air; in thick air as well, where that is another place. */
  readonly exits: { readonly thin: MeanExit; readonly thick: MeanExit | null };
  /** λ by formula on the momentum of the mean flow [–] */ readonly divergence: number;
  /** Where a formula gives the wall: with its angles; null: the flow shapes it. */ readonly spec: NozzleSpec | null;
  /** What another cut of a plug changes from the basis before; absent: none. */ readonly recut?: Recut;
}

/** A plug cut elsewhere, on the gas before: tables over p_a/p₀, and its shape at the size before. */
export interface Recut {
  readonly share: readonly number[];
  /** ΔC_F [–]; null where the flow on it cannot be computed. */ readonly added: readonly (number | null)[];
  /** Base pressure over that before; null where one of them has no base. */ readonly base: readonly (
    | number
    | null
  )[];
  /** Mass flow over that before, for the wall's layer [–]. */ readonly massFlow: number;
  readonly contour: Contour;
  readonly wall: readonly WallPoint[];
}

/** An engine as answered in full. */
export interface AnsweredEngine {
  readonly answer: EngineAnswer;
  /** By falling ambient pressure. */ readonly rows: readonly ConditionRow[];
  readonly vacuum: ConditionRow;
}

/** How an engine's gas and shape follow from those of the full answer before. */
export interface Likeness {
  /** New length over old. */ readonly length: number;
  /** New chamber pressure over old. */ readonly pressure: number;
  /** The flow is the one before up to this axial place of the new one [m]; absent: all of it. */ readonly upTo?: number;
}

/**
 * A first estimate. Of the answer these are estimated: description, gas, characteristic velocity, throat, exit, area ratio,
 * mass flow, divergence factor, thrust figures and parts, rows, matched, contour, wall, positions, plume. All else is as it
 * was before and no part of the estimate.
 */
export interface EstimatedEngine extends AnsweredEngine {
  /** Row for row of the answer before, worked out when asked for: `rows` holds but some of them. */
  rowAt(index: number): EstimatedRow;
  readonly likeness: Likeness;
  /** False: the shape is still the one before, since only the full answer knows the new one. */ readonly isShaped: boolean;
}

export interface EstimatedRow {
  readonly row: ConditionRow;
  /** Of the row before whose flow stands in for this one's; that after the last stands for the vacuum. */
  readonly like: number;
}
