/**
 * What the wall feels behind the throat: from the flow field by characteristics where that can be had.
 *
 * The field is two-dimensional: near the wall of a bell the gas has expanded less than in the middle, so that the wall
 * pressure at the lip is one and a half to two times the mean. Whether the flow leaves the wall hangs on the wall's.
 */

import { attempt } from '../../numerics/problem.ts';
import { tableStateAt, tabulateSupersonic } from '../flow/gasTable.ts';
import { NODE } from '../flow/points.ts';
import { throatCharacteristic } from '../flow/startLine.ts';
import { marchAlongWall, type WallPoint } from '../flow/wallMarch.ts';
import type { Expansion, FlowState } from '../gas/flow.ts';
import { bellAnglesOf, parabolaPoints, THROAT_ARC_DOWNSTREAM, THROAT_ARC_UPSTREAM } from './bellShape.ts';
import type { LeavingFlow, NozzleSpec, WallStation } from './model.ts';
import { bezier } from './nozzleWall.ts';
import type { WallAtLip } from './separation.ts';

export interface WallFlow {
  /** The state at the wall of the lip; `mean`: over the exit, since there is no field. */ readonly lip: WallAtLip;
  /** From throat to lip; null where there is no field. */ readonly stations: readonly WallStation[] | null;
  /** The last line of the field, from the lip to the axis; null where there is no field. */
  readonly leaving: LeavingFlow | null;
  /** Why there is no field. */ readonly reason: string | null;
}

type WalledNozzle = NozzleSpec & { kind: 'bell' | 'cone' };

/** Nodes across the throat; on the throat arc; along the rest of the wall. The lip pressure is within 1 % of twice as many. */
const ACROSS = 24;
const ON_ARC = 24;
const ON_WALL = 72;
const TABLE_CELLS = 96;
/** How far below the mean exit pressure the gas table goes [–]: the axis of a bell expands well past its exit. */
const TABLE_DEPTH = 0.004;

/** The flow at the wall of a nozzle that flows full; `exit` is the mean state at its area ratio. */
export function wallFlow(spec: NozzleSpec, expansion: Expansion, exit: FlowState): WallFlow {
  if (spec.kind !== 'bell' && spec.kind !== 'cone')
    return meanFlow(exit, 'the nozzle has no wall of its own');
  const found = attempt(() => fieldFlow(spec, expansion, exit));
  return found.ok ? found.value : meanFlow(exit, found.problem.what);
}

function meanFlow({ pressure, mach }: FlowState, reason: string): WallFlow {
  return { lip: { pressure, mach, from: 'mean' }, stations: null, leaving: null, reason };
}

function fieldFlow(spec: WalledNozzle, expansion: Expansion, exit: FlowState): WallFlow {
  const { throat } = expansion;
  const table = tabulateSupersonic(expansion, TABLE_DEPTH * exit.pressure, TABLE_CELLS);
  const gas = {
    table,
    gamma: throat.isentropicExponent ?? throat.gammaFrozen,
    criticalSpeed: throat.velocity,
  };
  const start = throatCharacteristic(gas, 1, THROAT_ARC_UPSTREAM, ACROSS);
  const { net } = marchAlongWall(table, 'axisymmetric', start, fineWall(spec));
  const atWall = (line: number): number => net.offset(line, 0);
  const lip = tableStateAt(table, net.nodes[atWall(net.lineCount - 1) + 3]!);
  return {
    lip: { pressure: lip.pressure, mach: lip.mach, from: 'field' },
    stations: Array.from({ length: net.lineCount }, (_, line) => {
      const { pressure, mach, temperature } = tableStateAt(table, net.nodes[atWall(line) + 3]!);
      return {
        axial: net.nodes[atWall(line)]!,
        radius: net.nodes[atWall(line) + 1]!,
        pressure,
        mach,
        temperature,
      };
    }),
    leaving: {
      kind: 'line',
      nodes: net.nodes.slice(atWall(net.lineCount - 1), net.nodeCount * NODE),
      isCharacteristic: true,
    },
    reason: null,
  };
}

/** The wall behind the throat in throat radii, finer where it turns. */
function fineWall(spec: WalledNozzle): readonly WallPoint[] {
  const angles = spec.kind === 'bell' ? bellAnglesOf(spec) : null;
  const turn = angles === null ? (spec as NozzleSpec & { kind: 'cone' }).halfAngle : angles.throatAngle;
  const arc = Array.from({ length: ON_ARC }, (_, i): WallPoint => {
    const angle = (turn * (i + 1)) / ON_ARC;
    return {
      axial: THROAT_ARC_DOWNSTREAM * Math.sin(angle),
      radius: 1 + THROAT_ARC_DOWNSTREAM * (1 - Math.cos(angle)),
      angle,
    };
  });
  const shares = Array.from({ length: ON_WALL }, (_, i) => ((i + 1) / ON_WALL) ** 1.3);
  if (spec.kind === 'bell' && angles !== null) {
    const [[x0, r0], [x1, r1], [x2, r2]] = parabolaPoints(spec, angles);
    const rest = shares.map(
      (t): WallPoint => ({
        axial: bezier(x0, x1, x2, t),
        radius: bezier(r0, r1, r2, t),
        angle: Math.atan2((1 - t) * (r1 - r0) + t * (r2 - r1), (1 - t) * (x1 - x0) + t * (x2 - x1)),
      }),
    );
    return [...arc, ...rest];
  }
  const end = arc[ON_ARC - 1]!;
  const length = Math.max(Math.sqrt(spec.areaRatio) - end.radius, 0) / Math.tan(turn);
  const rest = shares.map(
    (t): WallPoint => ({
      axial: end.axial + t * length,
      radius: end.radius + t * length * Math.tan(turn),
      angle: turn,
    }),
  );
  return length > 0 ? [...arc, ...rest] : arc;
}
