/** The outline of the jet by characteristics, as far as no strong shock can have reached it. Lengths over throat radius. */

import { ProblemError } from '../../numerics/problem.ts';
import { nuAtMach, type SupersonicTable } from '../flow/gasTable.ts';
import { type JetFrom, jetAcross, jetAlong, marchJet } from '../flow/jet/jet.ts';
import { compressAtLip, expandAtLip } from '../flow/jet/lipWave.ts';
import type { Jet } from '../flow/jet/model.ts';
import { NODE, setNodeInto } from '../flow/points.ts';
import type { LeavingFlow } from '../nozzle/model.ts';
import type { JetPoint } from './model.ts';

/** Largest pressure ratio of a shock that is carried as a characteristic: 1 % of the stagnation pressure at γ = 1.2. */
export const WEAK_RISE = 1.5;
/** Nodes of a parallel exit flow, closer together towards the lip; rays of the expansion there. */
const ACROSS = 22;
const RAYS = 24;
/** The march ends this many lip radii behind the lip. */
const REACH = 8;
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

/** The boundary of the jet that leaves as `leaving`, with the Prandtl–Meyer angle `asked` [rad] on its boundary. */
export function computeOutline(table: SupersonicTable, leaving: LeavingFlow, asked: number): ComputedOutline {
  if (leaving.kind === 'line' && leaving.edge !== undefined && leaving.edge.length > 2)
    return edgeOf(leaving.edge);
  const line = lineOf(table, leaving);
  const lipNu = line[3]!;
  const boundaryNu = Math.abs(asked - lipNu) < MATCHED ? lipNu : asked;
  const lipX = line[0]!;
  const radius = line[1]!;
  const from: JetFrom = {
    table,
    symmetry: (leaving.kind === 'line' && leaving.symmetry) || 'axisymmetric',
    boundaryNu,
    axialLimit: lipX + REACH * radius,
    weakRise: WEAK_RISE,
  };
  const jet =
    leaving.kind === 'line' && leaving.isCharacteristic ? jetAlong(from, line) : jetAcross(from, line);
  if (boundaryNu >= lipNu) {
    expandAtLip(jet, raysFor(boundaryNu - lipNu));
    if (marchJet(jet, MOST_LINES) === 0) return straightEdge(jet, lipX);
  } else if (compressAtLip(jet)) marchJet(jet, MOST_LINES);
  return boundaryOf(jet, lipX);
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

function lineOf(table: SupersonicTable, leaving: LeavingFlow): Float64Array {
  if (leaving.kind === 'line') return finerAtLip(leaving.nodes, table);
  const { mach } = leaving.state;
  if (mach === null) {
    throw new ProblemError({
      code: 'no-sound-speed',
      what: 'The gas has no single sound speed at the exit, so the jet has no characteristics.',
      why: leaving.state.absent ?? 'two phases of one substance stand together there',
      mend: 'Use chemistry: frozen.',
    });
  }
  const nu = nuAtMach(table, mach);
  const nodes = new Float64Array((ACROSS + 1) * NODE);
  for (let i = 0; i <= ACROSS; i++) {
    const r = i === ACROSS ? 0 : leaving.radius * (1 - (i / ACROSS) ** 2);
    setNodeInto(nodes, i * NODE, table, 0, r, 0, nu);
  }
  return nodes;
}

/** Into how many parts the first segments of a line from the field are divided: near the lip the jet changes fastest. */
const PARTS = [6, 4, 3, 2, 2];

function finerAtLip(line: Float64Array, table: SupersonicTable): Float64Array {
  const count = line.length / NODE;
  const parts = (segment: number): number => PARTS[segment] ?? 1;
  let total = 1;
  for (let i = 0; i + 1 < count; i++) total += parts(i);
  const fine = new Float64Array(total * NODE);
  fine.set(line.subarray(0, NODE));
  let at = NODE;
  for (let i = 0; i + 1 < count; i++) {
    const from = i * NODE;
    const between = (k: number, share: number): number =>
      line[from + k]! + share * (line[from + NODE + k]! - line[from + k]!);
    for (let part = 1; part < parts(i); part++) {
      const share = part / parts(i);
      setNodeInto(
        fine,
        at,
        table,
        between(0, share),
        between(1, share),
        between(2, share),
        between(3, share),
      );
      at += NODE;
    }
    fine.set(line.subarray(from + NODE, from + 2 * NODE), at);
    at += NODE;
  }
  return fine;
}
