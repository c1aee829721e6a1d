/**
 * What a shock needs to know of the gas: pressure over density, and the sound speed, by flow speed at constant total
 * enthalpy.
 *
 *   h + V²/2 = h₀      q(V²) = p/ρ      a² = γ_s q
 *
 * For a gas of fixed composition q hangs on the enthalpy alone, so that the values of the isentrope hold behind shocks of
 * any strength, exactly. Where the composition shifts it also hangs a little on the pressure; then q is that of the
 * isentrope at the same enthalpy.
 */

import type { Expansion } from '../../gas/flow.ts';

export interface ShockGas {
  /** V² at each knot [m²/s²], ascending from 0 */ readonly speedSquared: Float64Array;
  /** p/ρ [m²/s²] */ readonly quotient: Float64Array;
  /** γ_s [–] */ readonly exponent: Float64Array;
  /** h₀ [J/kg] */ readonly totalEnthalpy: number;
}

const KNOTS = 40;

/** Tabulate from rest to `lowestPressure` [Pa]. */
export function shockGasOf(expansion: Expansion, lowestPressure: number): ShockGas {
  const depth = Math.log(expansion.chamber.pressure / lowestPressure);
  const speedSquared = new Float64Array(KNOTS);
  const quotient = new Float64Array(KNOTS);
  const exponent = new Float64Array(KNOTS);
  for (let i = 0; i < KNOTS; i++) {
    const share = i / (KNOTS - 1);
    const state =
      i === 0
        ? expansion.chamber
        : expansion.atPressure(expansion.chamber.pressure * Math.exp(-depth * share * share));
    speedSquared[i] = state.velocity ** 2;
    quotient[i] = state.pressure / state.density;
    exponent[i] = state.isentropicExponent ?? state.gammaFrozen;
  }
  return { speedSquared, quotient, exponent, totalEnthalpy: expansion.chamber.enthalpy };
}

/** p/ρ [m²/s²] at V² [m²/s²]. */
export function quotientAt(gas: ShockGas, speedSquared: number): number {
  return between(gas.speedSquared, gas.quotient, speedSquared);
}

/** Sound speed [m/s] at V² [m²/s²]. */
export function soundSpeedAt(gas: ShockGas, speedSquared: number): number {
  return Math.sqrt(between(gas.speedSquared, gas.exponent, speedSquared) * quotientAt(gas, speedSquared));
}

/** Cubic through the two knots on either side (four in all); it goes on past the last knot with its end's cubic. */
function between(x: Float64Array, y: Float64Array, at: number): number {
  let low = 0;
  let high = x.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (x[middle]! <= at) low = middle;
    else high = middle;
  }
  const first = Math.min(Math.max(low - 1, 0), x.length - 4);
  let sum = 0;
  for (let j = first; j < first + 4; j++) {
    let weight = 1;
    for (let k = first; k < first + 4; k++) if (k !== j) weight *= (at - x[k]!) / (x[j]! - x[k]!);
    sum += weight * y[j]!;
  }
  return sum;
}
