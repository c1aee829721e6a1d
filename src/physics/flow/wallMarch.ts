/**
 * The flow along a given wall: C− lines from successive wall points, marched downstream.
 *
 * Each wall point is solved backwards (its C+ comes from a foot on the previous line), so the net is as fine as the wall
 * is divided. Old nodes whose C+ has struck the wall before the new point are passed over.
 */

import { ProblemError } from '../../numerics/problem.ts';
import type { SupersonicTable } from './gasTable.ts';
import { completeLine, type InternalShock, type March } from './lineMarch.ts';
import { CharacteristicNet } from './net.ts';
import { NODE, type Symmetry, wallFromSegmentInto } from './points.ts';

/** One wall point: axial [m], radius [m], angle [rad]. */
export interface WallPoint {
  readonly axial: number;
  readonly radius: number;
  readonly angle: number;
}

export interface MarchedFlow {
  readonly net: CharacteristicNet;
  readonly shock: InternalShock | null;
}

/**
 * March the flow along a given wall.
 *
 * Where a new C− line overtakes the previous one, the two run on together as a weak shock: the new line's nodes then lie
 * on the old ones; θ − ν, which a weak shock of this family leaves unchanged to third order in its strength, is taken
 * from ahead, θ + ν from the new line. Its path is that of the first characteristic overtaken, its entropy rise (third
 * order as well) is left out. `shock` tells where it begins and how strong it gets, `flowAcross` what is lost in balance.
 *
 * @param start nodes from wall to axis, a C− (see throatCharacteristic)
 * @param wall points downstream of the start line's wall node, in order
 * @param linesToAxis lines behind the start line that are carried on to the axis; the others end on the C+ of the last axis node
 * @throws ProblemError when a point cannot be solved
 */
export function marchAlongWall(
  table: SupersonicTable,
  symmetry: Symmetry,
  start: Float64Array,
  wall: readonly WallPoint[],
  linesToAxis = wall.length,
): MarchedFlow {
  const startCount = start.length / NODE;
  const net = new CharacteristicNet(startCount * (wall.length + 2));
  net.nodes.set(start, net.openLine(startCount));
  net.closeLine(startCount);
  const march: March = { net, table, symmetry, shock: null, reachesAxis: true };
  wall.forEach((point, i) => {
    if (i >= linesToAxis) march.reachesAxis = false;
    marchOneLine(march, point);
  });
  return { net, shock: march.shock };
}

function marchOneLine(march: March, point: WallPoint): void {
  const { net, table, symmetry } = march;
  const line = net.lineCount - 1;
  const count = net.lineLength(line);
  const old = net.offset(line, 0);
  const first = net.openLine(count + 1);
  const nodes = net.nodes;
  nodes[first] = point.axial;
  nodes[first + 1] = point.radius;
  nodes[first + 2] = point.angle;
  const foot = solveWallPoint(nodes, first, table, symmetry, old, count);
  completeLine(march, first, foot);
}

/** Find the segment of the previous line from which the C+ of the new wall point comes. */
function solveWallPoint(
  nodes: Float64Array,
  first: number,
  table: SupersonicTable,
  symmetry: Symmetry,
  old: number,
  count: number,
): number {
  for (let j = 0; j + 1 < count; j++) {
    const share = wallFromSegmentInto(
      nodes,
      first,
      table,
      symmetry,
      nodes,
      old + j * NODE,
      old + (j + 1) * NODE,
    );
    if (share <= 1 + 1e-12) return j;
  }
  throw new ProblemError({
    code: 'wall-step-too-long',
    what: `The wall point at x = ${nodes[first]!.toPrecision(4)} m lies beyond everything that the previous line can reach.`,
    mend: 'Divide the wall more finely.',
    facts: { axial: nodes[first]! },
  });
}
