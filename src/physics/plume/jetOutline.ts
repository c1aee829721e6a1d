/**
 * The outline of the jet: by characteristics as far as no strong shock can have reached it, from there by streamtubes, which
 * take shocks. Lengths over throat radius.
 */

import { attempt } from '../../numerics/problem.ts';
import type { SupersonicTable } from '../flow/gasTable.ts';
import {
  type JetFrom,
  jetFromLip,
  type LipCharacteristic,
  lipCharacteristic,
  marchJet,
} from '../flow/jet/jet.ts';
import { compressAtLip, expandAtLip } from '../flow/jet/lipWave.ts';
import type { Jet } from '../flow/jet/model.ts';
import type { TubeGas } from '../flow/streamtubes/index.ts';
import type { LeavingFlow } from '../nozzle/model.ts';
import { lineEven, lineFinerAtLip } from './exitLine.ts';
import { edgeByTubes } from './jetTubes.ts';
import type { JetPoint } from './model.ts';

/** Largest pressure ratio of a shock that is carried as a characteristic: 1 % of the stagnation pressure at γ = 1.2. */
export const WEAK_RISE = 1.5;
/** Rays of the expansion at the lip, at most. */
const RAYS = 24;
/** The march ends this many lip radii behind the lip. */
const REACH = 8;
/** [rad] turn at the lip up to which streamtubes follow it well. */
const STEEPEST_FOR_TUBES = 0.8;
/** Points kept of each of the two parts. */
const MOST_POINTS = 24;
/** Lines behind the lip at most; only a jet that is all but sonic asks for more, and it goes straight on. */
const MOST_LINES = 240;

/** Turns below this are within what the gas table knows [rad]. */
const MATCHED = 1e-5;

/** What of the jet is computed; x from the lip. */
export interface ComputedOutline {
  readonly points: readonly JetPoint[];
  /** [rad] direction of the boundary at its last point */ readonly lastAngle: number;
  readonly firstCrossing: JetPoint | null;
}

export interface OutlineRun {
  readonly table: SupersonicTable;
  readonly leaving: LeavingFlow;
  /** ν on the boundary [rad] if its pressure is reached without loss */ readonly boundaryNu: number;
  /** [Pa] */ readonly boundaryPressure: number;
  /** Prepared when first asked for. */ readonly tubes: () => TubeGas;
  /** Likewise. */ readonly lip: (leaving: LeavingFlow) => LipCharacteristic;
}

/** The edge of the jet. */
export function computeOutline(run: OutlineRun): ComputedOutline {
  const { leaving } = run;
  if (leaving.kind === 'line' && leaving.edge !== undefined && leaving.edge.length > 2)
    return edgeOf(leaving.edge);
  const start = run.lip(leaving);
  const first = byCharacteristics(run, start);
  const isRound = leaving.kind === 'parallel' || !(leaving.isCharacteristic || leaving.endsAtWall);
  const gentle = Math.abs(run.boundaryNu - start.nodes[3]!) < STEEPEST_FOR_TUBES;
  return isRound && gentle ? continued(run, first) : first;
}

/** The characteristic from the lip of a flow that leaves so; the same for every ambient pressure. */
export function lipStart(table: SupersonicTable, leaving: LeavingFlow): LipCharacteristic {
  if (leaving.kind === 'line' && leaving.isCharacteristic)
    return { nodes: lineFinerAtLip(table, leaving), crossing: null };
  const line = lineFinerAtLip(table, leaving);
  return lipCharacteristic(jetFrom(table, leaving, line, line[3]!), line);
}

function jetFrom(
  table: SupersonicTable,
  leaving: LeavingFlow,
  line: Float64Array,
  boundaryNu: number,
): JetFrom {
  return {
    table,
    symmetry: (leaving.kind === 'line' && leaving.symmetry) || 'axisymmetric',
    boundaryNu,
    axialLimit: line[0]! + REACH * line[1]!,
    weakRise: WEAK_RISE,
  };
}

function byCharacteristics(
  { table, leaving, boundaryNu: asked }: OutlineRun,
  start: LipCharacteristic,
): ComputedOutline {
  const lipX = start.nodes[0]!;
  const lipNu = start.nodes[3]!;
  const boundaryNu = Math.abs(asked - lipNu) < MATCHED ? lipNu : asked;
  const jet = jetFromLip(jetFrom(table, leaving, start.nodes, boundaryNu), start);
  if (boundaryNu >= lipNu) {
    expandAtLip(jet, raysFor(boundaryNu - lipNu));
    if (marchJet(jet, MOST_LINES) === 0) return straightEdge(jet, lipX);
  } else if (compressAtLip(jet)) marchJet(jet, MOST_LINES);
  return boundaryOf(jet, lipX);
}

/** The outline with what streamtubes add beyond its end, at one with it where they meet. */
function continued(run: OutlineRun, first: ComputedOutline): ComputedOutline {
  const line = lineEven(run.table, run.leaving);
  const end = first.points[first.points.length - 1]!;
  const reach = REACH * line[1]!;
  if (end.axial > 0.95 * reach) return first;
  const marched = attempt(() => edgeByTubes(run.tubes(), 'axisymmetric', line, run.boundaryPressure, reach));
  // Where the flow beside the boundary would be subsonic at once there is nothing to add.
  const edge = marched.ok ? marched.value : [];
  const from = edge.findIndex(({ axial }) => axial > end.axial);
  const rest = from < 0 ? [] : edge.slice(from);
  if (rest.length < LEAST_POINTS) return first;
  const match = end.radius / rest[0]!.radius;
  const points = rest.map(({ axial, radius }) => ({ axial, radius: radius * match }));
  const last = points[points.length - 1]!;
  const before = points[points.length - LEAST_POINTS]!;
  return {
    points: [...thinned(first.points), ...thinned(points)],
    lastAngle: Math.atan2(last.radius - before.radius, last.axial - before.axial),
    firstCrossing: first.firstCrossing,
  };
}

/** Fewer points are not worth a join, and give no direction. */
const LEAST_POINTS = 4;

/** Evenly by number, the first and the last kept. */
function thinned(points: readonly JetPoint[]): readonly JetPoint[] {
  if (points.length <= MOST_POINTS) return points;
  const step = (points.length - 1) / (MOST_POINTS - 1);
  return Array.from({ length: MOST_POINTS }, (_, i) => points[Math.round(i * step)]!);
}

/** Rays of at most a few degrees each, and never more than are worth their time. */
function raysFor(turn: number): number {
  return Math.min(RAYS, Math.max(4, Math.ceil(turn / 0.02)));
}

/** An edge that the nozzle's own model has. */
function edgeOf(edge: readonly JetPoint[]): ComputedOutline {
  const lip = edge[0]!;
  const [before, last] = [edge[edge.length - 2]!, edge[edge.length - 1]!];
  return {
    points: edge.map(({ axial, radius }) => ({ axial: axial - lip.axial, radius })),
    lastAngle: Math.atan2(last.radius - before.radius, last.axial - before.axial),
    firstCrossing: null,
  };
}

function boundaryOf({ net, lipLine, crossing }: Jet, lipX: number): ComputedOutline {
  const points: JetPoint[] = [];
  for (let line = lipLine; line < net.lineCount; line++) {
    const at = net.offset(line, 0);
    points.push({ axial: net.nodes[at]! - lipX, radius: net.nodes[at + 1]! });
  }
  return {
    points,
    lastAngle: net.nodes[net.offset(net.lineCount - 1, 0) + 2]!,
    firstCrossing: crossing && { axial: crossing.axial - lipX, radius: crossing.radius },
  };
}

/** Lip radii over which an edge that no characteristic from inside reaches is followed. */
const UNREACHED = 2;

/** In a near vacuum the C+ next to the edge run away from it: nothing turns it, it goes straight on. */
function straightEdge(jet: Jet, lipX: number): ComputedOutline {
  const { points, lastAngle, firstCrossing } = boundaryOf(jet, lipX);
  const lip = points[0]!;
  // Turned by more than half a circle it would meet the nozzle from outside: nothing is drawn of that.
  if (Math.sin(lastAngle) <= 0) return { points: [lip], lastAngle, firstCrossing };
  const length = UNREACHED * lip.radius;
  const end = {
    axial: lip.axial + length * Math.cos(lastAngle),
    radius: lip.radius + length * Math.sin(lastAngle),
  };
  return { points: [lip, end], lastAngle, firstCrossing };
}
