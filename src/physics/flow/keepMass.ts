import { flowAcross } from './axialFlow.ts';
import type { SupersonicTable } from './gasTable.ts';
import { NODE, type Symmetry, setNodeInto } from './points.ts';

/**
 * Shift ν evenly along a line so that it carries the mass flow; returns by how much it missed it [–].
 *
 *   d ln(ρq) = −√(M² − 1) dν
 *
 * What a smeared shock or the interpolation loses from line to line would add up; the shift is far below the error of a
 * step and keeps the flow from drifting.
 *
 * @param massFlow [kg/s]
 * @throws ProblemError where the shifted flow leaves the gas table
 */
export function keepMass(
  nodes: Float64Array,
  first: number,
  count: number,
  table: SupersonicTable,
  symmetry: Symmetry,
  massFlow: number,
): number {
  const miss = flowAcross(nodes, first, count, table, symmetry).massFlow / massFlow - 1;
  let weight = 0;
  let sum = 0;
  for (let at = first; at < first + count * NODE; at += NODE) {
    const share = symmetry === 'axisymmetric' ? nodes[at + 1]! : 1;
    weight += share;
    sum += share / Math.tan(nodes[at + 4]!);
  }
  const shift = (miss * weight) / sum;
  for (let at = first; at < first + count * NODE; at += NODE) {
    setNodeInto(nodes, at, table, nodes[at]!, nodes[at + 1]!, nodes[at + 2]!, nodes[at + 3]! + shift);
  }
  return miss;
}
