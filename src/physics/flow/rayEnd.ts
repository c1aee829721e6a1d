/** Where a ray that carries a given flow ends. */

import { flowAcross } from './axialFlow.ts';
import type { SupersonicTable } from './gasTable.ts';
import { NODE, type Symmetry, setNodeInto } from './points.ts';

/**
 * Move the last node along its segment to where the segment carries `massFlow`; beyond it, by continuing straight.
 * @param inward 1 for a ray walked towards the axis, −1 for one walked outward
 * @param mostBeyond segments by which the wall may lie beyond the last node
 */
export function endAtWall(
  nodes: Float64Array,
  at: number,
  table: SupersonicTable,
  symmetry: Symmetry,
  massFlow: number,
  inward: 1 | -1,
  mostBeyond: number,
): void {
  const before = nodes.slice(at - NODE, at);
  const end = nodes.slice(at, at + NODE);
  const carries = (share: number): boolean => {
    const between = (k: number): number => before[k]! + share * (end[k]! - before[k]!);
    if (between(1) <= 0) return true;
    setNodeInto(nodes, at, table, between(0), between(1), between(2), between(3));
    return inward * flowAcross(nodes, at - NODE, 2, table, symmetry).massFlow >= massFlow;
  };
  let low = 0;
  let high = 1;
  while (high < mostBeyond && !carries(high)) {
    low = high;
    high *= 1.5;
  }
  for (let i = 0; i < 60; i++) {
    const share = 0.5 * (low + high);
    if (carries(share)) high = share;
    else low = share;
  }
  carries(low);
}
