/** The gases of a field: how much energy they hold at a density and a pressure, as a plane that touches it. */

import { ProblemError } from '../../numerics/problem.ts';
import type { EvenTable } from './evenTable.ts';

/**
 * ρe = κ p + η ρ + ζ near a state: exact at the state itself and along its pressure, so that a pressure follows from an
 * energy without iteration once the state is near. c² = ((κ + 1) p + ζ) / (κ ρ).
 * κ [–], η [J/kg], ζ [J/m³].
 */
export interface Tangent {
  kappa: number;
  eta: number;
  zeta: number;
}

export interface FieldGas {
  /** Write the tangent at a state into `out`. @param density [kg/m³] @param pressure [Pa] */
  tangent(density: number, pressure: number, out: Tangent): void;
  /** The same as numbers, for a kernel: κ of a perfect gas, or a table over ln p and ln p/ρ (see {@link tabledFieldGas}). */
  readonly as: { readonly kappa: number } | { readonly table: EvenTable };
}

/** κ = 1/(γ − 1), η = ζ = 0. @param gamma cp/cv [–], above 1 */
export function perfectFieldGas(gamma: number): FieldGas {
  if (!(gamma > 1) || !Number.isFinite(gamma)) {
    throw new ProblemError({
      code: 'field-gas-gamma',
      what: `A ratio of specific heats of ${gamma} belongs to no gas.`,
      mend: 'Give a value above 1.',
      facts: { gamma },
    });
  }
  const kappa = 1 / (gamma - 1);
  return {
    as: { kappa },
    tangent(_density, _pressure, out) {
      out.kappa = kappa;
      out.eta = 0;
      out.zeta = 0;
    },
  };
}

/**
 * A gas whose energy a unit of mass stands in a table over X = ln p and Y = ln θ, θ = p/ρ:
 *
 *   κ = (e_X + e_Y)/θ,  η = e − e_Y,  ζ = −ρ e_X
 */
export function tabledFieldGas(table: EvenTable): FieldGas {
  return {
    as: { table },
    tangent(density, pressure, out) {
      const theta = pressure / density;
      table.read(Math.log(pressure), Math.log(theta));
      out.kappa = (table.slopeX + table.slopeY) / theta;
      out.eta = table.value - table.slopeY;
      out.zeta = -density * table.slopeX;
    },
  };
}

/** Above this share of another gas a cell is mixed. */
export const MIXED = 1e-9;

/** Two gases in one cell by their shares of the mass: ρe = Y ρe₁ + (1 − Y) ρe₂, both at the cell's density and pressure. */
export function mixedTangent(
  inner: FieldGas,
  outer: FieldGas,
  share: number,
  density: number,
  pressure: number,
  out: Tangent,
): void {
  if (share > 1 - MIXED) {
    inner.tangent(density, pressure, out);
    return;
  }
  outer.tangent(density, pressure, out);
  if (share < MIXED) return;
  const { kappa, eta, zeta } = out;
  inner.tangent(density, pressure, out);
  out.kappa = share * out.kappa + (1 - share) * kappa;
  out.eta = share * out.eta + (1 - share) * eta;
  out.zeta = share * out.zeta + (1 - share) * zeta;
}
