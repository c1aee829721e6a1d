/**
 * Mass and momentum carried across a curve in the flow, from its nodes.
 *
 *   ṁ = ∫ ρ (q · n) dA,   F_x = ∫ [ p n_x + ρ u (q · n) ] dA,   dA = 2π r dl (axisymmetric) or dl (planar, per metre width)
 *
 * Trapezoidal on the tangential products, second order as the net is.
 */

import { columnAt, type SupersonicTable } from './gasTable.ts';
import { NODE, type Symmetry } from './points.ts';

export interface CarriedFlow {
  /** [kg/s], planar: per metre of width and for the half above the plane of symmetry */ readonly massFlow: number;
  /** Axial momentum flux plus pressure on the curve [N], ambient zero */ readonly axialForce: number;
}

/** Flow across the polyline of `count` nodes starting at offset `first` (stride NODE), from large r to small r. */
export function flowAcross(
  nodes: Float64Array,
  first: number,
  count: number,
  table: SupersonicTable,
  symmetry: Symmetry,
): CarriedFlow {
  let massFlow = 0;
  let axialForce = 0;
  let before = fluxes(nodes, first, table);
  for (let i = 1; i < count; i++) {
    const at = first + i * NODE;
    const here = fluxes(nodes, at, table);
    const dx = nodes[at]! - nodes[at - NODE]!;
    const dr = nodes[at + 1]! - nodes[at - NODE + 1]!;
    // Normal pointing downstream for a curve walked inward: (−dr, dx).
    const w0 = symmetry === 'axisymmetric' ? 2 * Math.PI * nodes[at - NODE + 1]! : 1;
    const w1 = symmetry === 'axisymmetric' ? 2 * Math.PI * nodes[at + 1]! : 1;
    const mass0 = w0 * (-dr * before.x + dx * before.r);
    const mass1 = w1 * (-dr * here.x + dx * here.r);
    // Exact for a linear flux times a linear radius would need Simpson; the trapezium is of the net's own order.
    massFlow += 0.5 * (mass0 + mass1);
    axialForce += 0.5 * (mass0 * before.u + mass1 * here.u + -dr * (w0 * before.p + w1 * here.p));
    before = here;
  }
  return { massFlow, axialForce };
}

interface Fluxes {
  /** ρu */ readonly x: number;
  /** ρv */ readonly r: number;
  readonly u: number;
  readonly p: number;
}

function fluxes(nodes: Float64Array, at: number, table: SupersonicTable): Fluxes {
  const { knots, step, cells } = table;
  const theta = nodes[at + 2]!;
  const nu = nodes[at + 3]!;
  const speed = columnAt(knots.speed, step, cells, nu);
  const density = Math.exp(columnAt(knots.lnDensity, step, cells, nu));
  const u = speed * Math.cos(theta);
  return {
    x: density * u,
    r: density * speed * Math.sin(theta),
    u,
    p: Math.exp(columnAt(knots.lnPressure, step, cells, nu)),
  };
}
