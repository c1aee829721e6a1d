/**
 * The edge of the jet where shocks have formed in it: streamtubes marched from the exit, axis on one side, constant pressure
 * on the other. Shocks spread over some tubes and cost what they must; the march ends where the flow turns subsonic behind
 * one, as at a Mach disk.
 */

import type { Symmetry } from '../flow/points.ts';
import { NODE } from '../flow/points.ts';
import { frontAlong, marchTubes, pressureBoundary, type TubeGas } from '../flow/streamtubes/index.ts';
import type { JetPoint } from './model.ts';

/** Tubes across the flow: the edge is within 0.3 % of that by characteristics where both are there. */
const TUBES = 24;
const MOST_STEPS = 600;

/**
 * @param line nodes across the exit, lip first, axis last
 * @param axialEnd where the march may end, x from the lip, in the line's own length
 * @returns points of the edge downstream of the lip, x from the lip
 */
export function edgeByTubes(
  gas: TubeGas,
  symmetry: Symmetry,
  line: Float64Array,
  ambientPressure: number,
  axialEnd: number,
): readonly JetPoint[] {
  const lipX = line[0]!;
  const { upper } = marchTubes({
    gas,
    front: frontAlong(gas, symmetry, axisFirst(line), TUBES),
    lower: [{ kind: 'axis' }],
    upper: [pressureBoundary(gas, ambientPressure)],
    axialEnd: lipX + axialEnd,
    mostSteps: MOST_STEPS,
  });
  return Array.from({ length: upper.count }, (_, i) => ({ axial: upper.x[i]! - lipX, radius: upper.r[i]! }));
}

function axisFirst(line: Float64Array): Float64Array {
  const turned = new Float64Array(line.length);
  for (let at = 0; at < line.length; at += NODE) {
    turned.set(line.subarray(at, at + NODE), line.length - NODE - at);
  }
  return turned;
}
