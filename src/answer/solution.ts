/** One engine, solved: the live object from which every row, curve and printed answer derives. */

import type { Problem } from '../numerics/problem.ts';
import type { FedPropellants } from '../physics/cycle/index.ts';
import type { Expansion } from '../physics/gas/flow.ts';
import type { PropellantRecord } from '../physics/gas/records.ts';
import type { ChamberPush, PlugChamberPush } from '../physics/nozzle/index.ts';
import type { Contour, NozzleModel } from '../physics/nozzle/model.ts';
import type { PlumeSource } from '../physics/plume/index.ts';
import type { EngineInput } from '../study/model.ts';
import type { EngineCycle } from './cycle/engineCycle.ts';
import type { EngineHeat } from './heat/engineHeat.ts';
import type { LiveCooling } from './heat/liveCooling.ts';
import type { EngineLosses } from './losses.ts';
import type { PositionAnswer, WallPoint } from './model.ts';
import type { PublishedSolve } from './published/model.ts';
import type { SizeError } from './scatter/model.ts';

export interface EngineSolution {
  readonly input: EngineInput;
  /** One line of plain facts, e.g. `bell, area ratio 25`. */ readonly description: string;
  readonly propellants: string;
  readonly chemistry: string;
  /** Mass of oxidiser per mass of fuel [–]; null where there are not two of them. */
  readonly mixtureRatio: number | null;
  readonly expansion: Expansion;
  readonly nozzle: NozzleModel;
  /** c* reached [m/s]: ideal times efficiency. */ readonly characteristicVelocity: number;
  /** [m²] */ readonly throatArea: number;
  /** [m²] */ readonly exitArea: number;
  /** [kg/s] */ readonly massFlow: number;
  /** [kg/m³]; null where a density is unknown. */ readonly bulkDensity: number | null;
  readonly losses: EngineLosses;
  /** What the models' errors make of its size, where that follows from a thrust; found when first asked for. */
  sizeErrors(): readonly SizeError[];
  /** Heat to its walls, found when first asked for. @throws ProblemError where it has none */
  heat(): EngineHeat;
  /** The coolant behind them, likewise. @throws ProblemError where the study says nothing of it, or it cannot be computed */
  cooling(): LiveCooling;
  /** How its propellants are pumped, found when first asked for. @throws ProblemError where the study says nothing of it */
  readonly cycle: () => EngineCycle;
  /** The two propellants before they meet; null where there are not two. */ readonly fed: FedPropellants | null;
  readonly contour: Contour;
  /** Push on injector face and converging wall, found when first asked for. */ chamberPush(): ChamberPush;
  /** The same of a plug engine's ring of chambers; null where there is none. */ ringPush(): PlugChamberPush | null;
  readonly contourIs: 'shape' | 'notional';
  /** Found when first asked for. @throws ProblemError where the gas does not reach so far */
  readonly wall: readonly WallPoint[];
  /** In thick air, then in thin air; empty where the nozzle has one mode. */ readonly positions: readonly PositionAnswer[];
  /** The jet behind it at any ambient pressure. */ readonly plume: PlumeSource;
  /** Rows of the data that were used, for the hazards. */ readonly records: readonly PropellantRecord[];
  readonly models: readonly string[];
  readonly omitted: readonly string[];
  /** What the reader should know about this engine's inputs. */ readonly notes: readonly string[];
  /** What its published rows settle, and why not where they do not; null where they are not asked. */
  readonly publishedSolve: PublishedSolve | null;
  readonly publishedSolveProblem: Problem | null;
}

/** Diameter of a circle of this area: D = √(4A/π) [m]. */
export function diameterOf(area: number): number {
  return Math.sqrt((4 * area) / Math.PI);
}
