/**
 * The wall on which the gas has a given pressure: a free boundary, or the extension of a dual bell.
 *
 * Its points follow one streamline from the first node of the net's last line. At each new point the pressure, hence ν, is
 * given; θ comes along the C+ from the line before, and the place from the mean direction of the streamline:
 *
 *   θ = ν(p) + (θ − ν)_foot + source term,     x = x₀ + s cos θ̄,     r = r₀ + s sin θ̄
 *
 * Source: the free-pressure boundary point of every text on characteristics, e.g. M. J. Zucrow, J. D. Hoffman, Gas
 * Dynamics, vol. 2, 1977 (from memory). Second order, as the net.
 */

import { ProblemError } from '../../numerics/problem.ts';
import { completeLine, type March } from './lineMarch.ts';
import { NODE, wallFromSegmentInto } from './points.ts';

export interface PressureWall {
  /** ν [rad] at the wall where its radius is r [m] */ nuAt(radius: number): number;
  /** Where the wall ends [m]. */ readonly lastRadius: number;
  /** Length of a step along the wall [m]. */ readonly step: number;
  readonly mostSteps: number;
}

/** θ is settled when it moves less than this [rad]: far below the truncation error of any mesh in use. */
const TOLERANCE = 1e-10;
const MOST_CORRECTORS = 60;
/** The last step ends on the last radius to this share of it. */
const LANDING = 1e-9;

/**
 * March outwards to `lastRadius`; one line of the net a step.
 * @returns whether the wall got there: false where it bent back to the axis, or needed more steps
 * @throws ProblemError when a point cannot be solved or the flow leaves the gas table
 */
export function marchPressureWall(march: March, wall: PressureWall): boolean {
  const { net } = march;
  for (let step = 0; step < wall.mostSteps; step++) {
    const line = net.lineCount - 1;
    const before = net.offset(line, 0);
    const count = net.lineLength(line);
    const first = net.openLine(count + 1);
    let length = wall.step;
    let foot = boundaryPoint(march, first, before, count, wall, length);
    const isLast = net.nodes[first + 1]! >= wall.lastRadius * (1 - LANDING);
    for (let i = 0; isLast && i < 20; i++) {
      const rise = net.nodes[first + 1]! - net.nodes[before + 1]!;
      const wanted = wall.lastRadius - net.nodes[before + 1]!;
      if (Math.abs(rise - wanted) < LANDING * wall.lastRadius) break;
      length *= wanted / rise;
      foot = boundaryPoint(march, first, before, count, wall, length);
    }
    completeLine(march, first, foot);
    if (isLast) return true;
    if (!(net.nodes[first + 2]! > 0)) return false;
  }
  return false;
}

function outOfReach(nodes: Float64Array, at: number): ProblemError {
  return new ProblemError({
    code: 'pressure-wall-out-of-reach',
    what: `The wall of given pressure near (${nodes[at]!.toPrecision(4)}, ${nodes[at + 1]!.toPrecision(4)}) m lies beyond everything that the line before can reach.`,
    why: 'the net upstream ends where an internal shock met the axis',
    mend: 'Make the wall shorter, or its pressure nearer to the one before it.',
    facts: { axial: nodes[at]!, radius: nodes[at + 1]! },
  });
}

/** Write the node at `first`, `length` along the streamline from the node at `before`; returns the foot's segment. */
function boundaryPoint(
  { net, table, symmetry }: March,
  first: number,
  before: number,
  count: number,
  wall: PressureWall,
  length: number,
): number {
  const { nodes } = net;
  const fromAngle = nodes[before + 2]!;
  let theta = fromAngle;
  let segment = 0;
  for (let i = 0; i < MOST_CORRECTORS; i++) {
    const mean = 0.5 * (fromAngle + theta);
    nodes[first] = nodes[before]! + length * Math.cos(mean);
    nodes[first + 1] = nodes[before + 1]! + length * Math.sin(mean);
    nodes[first + 2] = theta;
    const share = (j: number): number =>
      wallFromSegmentInto(nodes, first, table, symmetry, nodes, before + j * NODE, before + (j + 1) * NODE);
    while (share(segment) > 1 + 1e-12) if (++segment + 1 >= count) throw outOfReach(nodes, first);
    const moved = wall.nuAt(nodes[first + 1]!) - nodes[first + 3]!;
    theta += moved;
    if (Math.abs(moved) < TOLERANCE) return segment;
  }
  throw new ProblemError({
    code: 'pressure-wall-not-settled',
    what: `The wall of given pressure did not settle near (${nodes[first]!.toPrecision(4)}, ${nodes[first + 1]!.toPrecision(4)}) m.`,
    mend: 'Use shorter steps along the wall, or a wall pressure nearer to the one before it.',
    facts: { axial: nodes[first]!, radius: nodes[first + 1]! },
  });
}
