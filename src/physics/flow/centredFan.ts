/**
 * A centred expansion: C− lines that leave one corner, each with the flow turned a little further.
 *
 * At the corner itself θ − ν keeps the value it has before the corner (a Prandtl–Meyer turn, exact in round flow as well,
 * since the corner has no extent).
 */

import { completeLine, type March } from './lineMarch.ts';
import { NODE, setNodeInto } from './points.ts';

/**
 * Turn the flow at the first node of the net's last line by `turn` [rad] away from the axis, in `rays` lines.
 * The rays are closer together at the start, where a sonic flow expands fastest.
 * @throws ProblemError when a point cannot be solved or the flow leaves the gas table
 */
export function marchFan(march: March, turn: number, rays: number): void {
  const { net, table } = march;
  const corner = net.nodes.slice(net.offset(net.lineCount - 1, 0), net.offset(net.lineCount - 1, 0) + NODE);
  for (let ray = 1; ray <= rays; ray++) {
    const turned = turn * (ray / rays) ** 1.5;
    const first = net.openLine(net.lineLength(net.lineCount - 1) + 1);
    setNodeInto(net.nodes, first, table, corner[0]!, corner[1]!, corner[2]! + turned, corner[3]! + turned);
    completeLine(march, first, 0);
  }
}
