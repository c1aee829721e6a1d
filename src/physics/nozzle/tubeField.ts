/**
 * The flow through a round nozzle that flows full, marched in streamtubes: a second road beside the characteristics, with
 * the loss in internal shocks counted.
 */

import { tabulateSupersonic } from '../flow/gasTable.ts';
import { NODE } from '../flow/points.ts';
import { throatCharacteristic } from '../flow/startLine.ts';
import {
  carriedBy,
  frontAlong,
  lossyTable,
  marchTubes,
  type TubeGas,
  type TubeMarch,
  tubeGas,
  wallBoundary,
  wallLine,
} from '../flow/streamtubes/index.ts';
import type { Expansion } from '../gas/flow.ts';
import { THROAT_ARC_UPSTREAM } from './bellShape.ts';
import { arcPoints, type RoundWall } from './roundWall.ts';

export interface TubeField {
  readonly gas: TubeGas;
  /** Sizes in throat radii. */ readonly march: TubeMarch;
  /** Across the start line: mass flow and force, of a throat of 1 m radius. */ readonly entering: ReturnType<
    typeof carriedBy
  >;
  /** Vacuum thrust over p0 A_t by the push on the wall, and by the flow that leaves [–]; null where the march ended early. */
  readonly byWall: number | null;
  readonly byExit: number | null;
  /** Mass flow over the one-dimensional one [–]. */ readonly dischargeCoefficient: number;
}

/** Tubes from axis to wall: the thrust is within 2e-5 of that with twice as many. */
const TUBES = 48;
const TABLE_CELLS = 128;
/** How far below the mean exit pressure the gas table goes, as far as the data reach: the axis expands well past it. */
const TABLE_DEPTH = 1e-5;
/** Pieces of the throat arc and of the wall behind it. */
const ON_ARC = 96;
const ON_WALL = 400;

/**
 * @param exitPressure [Pa] mean over the exit
 * @throws ProblemError where the throat's series or the gas table does not reach
 */
export function computeTubeField(
  wall: RoundWall,
  expansion: Expansion,
  exitPressure: number,
  tubes = TUBES,
): TubeField {
  const { throat, chamber } = expansion;
  const lowest = Math.max(TABLE_DEPTH * exitPressure, 1.001 * expansion.lowestPressure);
  const table = tabulateSupersonic(expansion, lowest, TABLE_CELLS);
  const gas = tubeGas(table, lossyTable(expansion, lowest, TABLE_CELLS));
  const start = throatCharacteristic(
    { table, gamma: throat.isentropicExponent ?? throat.gammaFrozen, criticalSpeed: throat.velocity },
    1,
    THROAT_ARC_UPSTREAM,
    2 * tubes + 1,
  );
  const front = frontAlong(gas, 'axisymmetric', axisFirst(start), tubes);
  const entering = carriedBy(front);
  const curve =
    wall.pace(0) < 1e-9 ? [] : Array.from({ length: ON_WALL }, (_, i) => wall.at((i + 1) / ON_WALL));
  const line = wallLine([{ axial: start[0]!, radius: start[1]! }, ...arcPoints(wall, ON_ARC), ...curve]);
  const march = marchTubes({ gas, front, lower: [{ kind: 'axis' }], upper: [wallBoundary(line)] });
  const whole = march.stopped === null && march.upper.count > 0;
  const scale = Math.PI * chamber.pressure;
  // The force on the wall is told along the axis; forwards is against it.
  const push = whole ? -2 * Math.PI * march.upper.force[march.upper.count - 1]! : 0;
  return {
    gas,
    march,
    entering,
    byWall: whole ? (entering.axialForce + push) / scale : null,
    byExit: whole ? carriedBy(march.front).axialForce / scale : null,
    dischargeCoefficient: entering.massFlow / (Math.PI * throat.massFlux),
  };
}

function axisFirst(nodes: Float64Array): Float64Array {
  const turned = new Float64Array(nodes.length);
  for (let at = 0; at < nodes.length; at += NODE) {
    turned.set(nodes.subarray(at, at + NODE), nodes.length - NODE - at);
  }
  return turned;
}
