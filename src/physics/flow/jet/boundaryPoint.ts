import { ProblemError } from '../../../numerics/problem.ts';
import type { SupersonicTable } from '../gasTable.ts';
import { muAt, type Symmetry, setNodeInto } from '../points.ts';

const TOLERANCE = 1e-12;
const MOST_STEPS = 60;

/**
 * The boundary point reached by the C+ from node `foot`, on the streamline from the boundary point `before`.
 *
 * The pressure there is given, hence ν; θ comes along the C+: dθ = dν − δ sin μ sin θ/r ds. Averaged directions and
 * sources, second order.
 *
 * @param nu on the boundary [rad]
 * @returns length along the boundary [m]; not above 0 where the C+ has passed the point before
 * @throws ProblemError when it does not settle
 */
export function boundaryPointInto(
  nodes: Float64Array,
  at: number,
  table: SupersonicTable,
  symmetry: Symmetry,
  before: number,
  foot: number,
  nu: number,
): number {
  const mu = muAt(table, nu);
  const fTheta = nodes[foot + 2]!;
  const fMu = nodes[foot + 4]!;
  const fr = nodes[foot + 1]!;
  const dx = nodes[foot]! - nodes[before]!;
  const dr = fr - nodes[before + 1]!;
  let theta = nodes[before + 2]!;
  for (let step = 0; step < MOST_STEPS; step++) {
    const flow = 0.5 * (nodes[before + 2]! + theta);
    const wave = 0.5 * (fTheta + fMu + theta + mu);
    const cross = Math.cos(flow) * Math.sin(wave) - Math.sin(flow) * Math.cos(wave);
    const forward = (dx * Math.sin(wave) - dr * Math.cos(wave)) / cross;
    const along = (dx * Math.sin(flow) - dr * Math.cos(flow)) / cross;
    const x = nodes[before]! + forward * Math.cos(flow);
    const r = nodes[before + 1]! + forward * Math.sin(flow);
    let next = fTheta - nodes[foot + 3]! + nu;
    if (symmetry === 'axisymmetric') {
      const here = (Math.sin(theta) / r) * Math.sin(mu);
      const atFoot = fr > 0 ? (Math.sin(fTheta) / fr) * Math.sin(fMu) : here;
      next -= 0.5 * along * (atFoot + here);
    }
    const moved = Math.abs(next - theta);
    theta = next;
    if (step > 0 && moved < TOLERANCE) {
      setNodeInto(nodes, at, table, x, r, theta, nu);
      return forward;
    }
  }
  throw new ProblemError({
    code: 'characteristics-not-converged',
    what: `A point on the boundary of the jet behind (${nodes[before]!.toPrecision(4)}, ${nodes[before + 1]!.toPrecision(4)}) m did not settle.`,
    mend: 'Use a finer net.',
    facts: { axial: nodes[before]!, radius: nodes[before + 1]! },
  });
}
