/**
 * Sharp corners of a wall from which the flow turns away. A cell there cannot hold the fan that stands at the corner, and
 * leaves a layer of gas with lost stagnation pressure along all the wall behind. As P. Woodward and P. Colella (1984) did at
 * the corner of their step, the cells just behind it take pressure and speed from the cell just ahead by the isentrope and
 * the total enthalpy, at their own density and direction: mass stays conserved.
 */

import { type Field, type GasPair, putPoint } from './field.ts';
import { mixedTangent, type Tangent } from './fieldGas.ts';
import { cellFrom, type SideName } from './sideGeometry.ts';

export interface SharpCorner {
  readonly block: number;
  readonly side: SideName;
  /** First cell behind it along the side, in the sense of the flow, which is that of the growing index. */ readonly at: number;
}

/** Cells behind the corner that are mended, in the row at the wall and in the next. */
export const MENDED = [2, 1] as const;
/** Steps of ln p along the isentrope. */
export const ISENTROPE_STEPS = 4;
/** Shares of gas further apart than this are another gas. */
export const ALIKE = 1e-3;

export function mendCorners(fields: readonly Field[], corners: readonly SharpCorner[], gases: GasPair): void {
  const tangent: Tangent = { kappa: 1, eta: 0, zeta: 0 };
  for (const { block, side, at } of corners) {
    const field = fields[block]!;
    const from = cellFrom(field.mesh, side, at - 1, 0);
    for (const [depth, count] of MENDED.entries())
      for (let k = 0; k < count; k++)
        mend(field, from, cellFrom(field.mesh, side, at + k, depth), gases, tangent);
  }
}

function mend(field: Field, from: number, at: number, gases: GasPair, tangent: Tangent): void {
  const { pressure, density, u, v, share } = field;
  const [rho, own] = [density[at]!, share[at]!];
  // A shock, or another gas: nothing of this holds.
  if (!(rho < density[from]!) || Math.abs(own - share[from]!) > ALIKE) return;
  const p = alongIsentrope(density[from]!, pressure[from]!, rho, own, gases, tangent);
  mixedTangent(gases.inner, gases.outer, own, rho, p, tangent);
  const whole = enthalpyIn(field, from) + (u[from]! * u[from]! + v[from]! * v[from]!) / 2;
  const square = 2 * (whole - ((tangent.kappa + 1) * p + tangent.zeta) / rho - tangent.eta);
  const before = Math.hypot(u[at]!, v[at]!);
  if (!(square > 0) || !(before > 0) || !(p > 0)) return;
  const factor = Math.sqrt(square) / before;
  putPoint(
    field,
    at,
    { density: rho, u: u[at]! * factor, v: v[at]! * factor, pressure: p, share: own },
    gases,
    tangent,
  );
}

/** [J/kg] */
function enthalpyIn({ kappa, eta, zeta, pressure, density }: Field, at: number): number {
  return ((kappa[at]! + 1) * pressure[at]! + zeta[at]!) / density[at]! + eta[at]!;
}

/** Pressure at another density: d ln p / d ln ρ = ρ c²/p, by midpoints. */
function alongIsentrope(
  from: number,
  pressure: number,
  to: number,
  share: number,
  { inner, outer }: GasPair,
  tangent: Tangent,
): number {
  const step = Math.log(to / from) / ISENTROPE_STEPS;
  const slopeAt = (rho: number, p: number): number => {
    mixedTangent(inner, outer, share, rho, p, tangent);
    return ((tangent.kappa + 1) * p + tangent.zeta) / (tangent.kappa * p);
  };
  let [rho, p] = [from, pressure];
  for (let n = 0; n < ISENTROPE_STEPS; n++) {
    const half = p * Math.exp((slopeAt(rho, p) * step) / 2);
    p *= Math.exp(slopeAt(rho * Math.exp(step / 2), half) * step);
    rho *= Math.exp(step);
  }
  return p;
}
