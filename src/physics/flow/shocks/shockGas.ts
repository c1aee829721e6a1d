/**
 * What a shock needs to know of the gas: pressure over density, and the sound speed, at constant total enthalpy.
 *
 *   h + V²/2 = h₀      q = p/ρ      a² = γ_s q
 *
 * For a gas of fixed composition q and γ_s hang on the enthalpy alone, so that the values of the isentrope hold behind shocks
 * of any strength, exactly. Where the composition shifts they hang a little on the pressure too: a second isentrope from
 * the same enthalpy at a lower stagnation pressure gives the change with ln σ, taken as linear, σ the share of
 * the stagnation pressure left: ln σ = ln p − ln p_isentrope(V).
 */

import { attempt } from '../../../numerics/problem.ts';
import type { Expansion } from '../../gas/flow.ts';

export interface ShockGas {
  /** V² at each knot [m²/s²], ascending from 0 */ readonly speedSquared: Float64Array;
  /** p/ρ [m²/s²] on the isentrope */ readonly quotient: Float64Array;
  /** γ_s [–] on the isentrope */ readonly exponent: Float64Array;
  /** ln(p/Pa) on the isentrope */ readonly lnPressure: Float64Array;
  /** Change of the quotient and of the exponent per unit of ln σ; null where the composition is fixed. */
  readonly shift: { readonly quotient: Float64Array; readonly exponent: Float64Array } | null;
}

const KNOTS = 40;
/** Stagnation pressure of the second isentrope over the chamber's: in the middle of what shocks at a lip and a disk leave. */
const SHARE_LEFT = 0.2;

type Isentrope = Omit<ShockGas, 'shift'>;

/** Tabulate from rest to `lowestPressure` [Pa]. */
export function shockGasOf(expansion: Expansion, lowestPressure: number): ShockGas {
  const first = isentropeOf(expansion, lowestPressure);
  const { afterLoss } = expansion;
  if (afterLoss === undefined) return { ...first, shift: null };
  const second = attempt(() =>
    isentropeOf(afterLoss(SHARE_LEFT * expansion.chamber.pressure), SHARE_LEFT * lowestPressure),
  );
  return { ...first, shift: second.ok ? shiftOf(first, second.value) : null };
}

function isentropeOf(expansion: Expansion, lowestPressure: number): Isentrope {
  const depth = Math.log(expansion.chamber.pressure / lowestPressure);
  const speedSquared = new Float64Array(KNOTS);
  const quotient = new Float64Array(KNOTS);
  const exponent = new Float64Array(KNOTS);
  const lnPressure = new Float64Array(KNOTS);
  for (let i = 0; i < KNOTS; i++) {
    const share = i / (KNOTS - 1);
    const state =
      i === 0
        ? expansion.chamber
        : expansion.atPressure(expansion.chamber.pressure * Math.exp(-depth * share * share));
    speedSquared[i] = state.velocity ** 2;
    quotient[i] = state.pressure / state.density;
    exponent[i] = state.isentropicExponent ?? state.gammaFrozen;
    lnPressure[i] = Math.log(state.pressure);
  }
  return { speedSquared, quotient, exponent, lnPressure };
}

function shiftOf(first: Isentrope, second: Isentrope): ShockGas['shift'] {
  const lnShare = Math.log(SHARE_LEFT);
  const change = (of: 'quotient' | 'exponent'): Float64Array =>
    first[of].map(
      (value, i) => (between(second.speedSquared, second[of], first.speedSquared[i]!) - value) / lnShare,
    );
  return { quotient: change('quotient'), exponent: change('exponent') };
}

/** p/ρ [m²/s²] at V² [m²/s²] and pressure [Pa]. */
export function quotientAt(gas: ShockGas, speedSquared: number, pressure: number): number {
  return valueAt(gas, 'quotient', speedSquared, pressure);
}

/** Sound speed [m/s] at V² [m²/s²] and pressure [Pa]. */
export function soundSpeedAt(gas: ShockGas, speedSquared: number, pressure: number): number {
  return Math.sqrt(
    valueAt(gas, 'exponent', speedSquared, pressure) * quotientAt(gas, speedSquared, pressure),
  );
}

function valueAt(gas: ShockGas, of: 'quotient' | 'exponent', speedSquared: number, pressure: number): number {
  const value = between(gas.speedSquared, gas[of], speedSquared);
  if (gas.shift === null) return value;
  const lnSigma = Math.log(pressure) - between(gas.speedSquared, gas.lnPressure, speedSquared);
  // On the isentrope itself ln σ is nothing but what interpolation makes of it.
  return value + Math.min(lnSigma, 0) * between(gas.speedSquared, gas.shift[of], speedSquared);
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
