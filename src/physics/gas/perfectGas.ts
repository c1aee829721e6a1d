/**
 * Expansion of a calorically perfect gas, closed form.
 *
 *   T/T0 = [1 + (γ−1)/2 M²]⁻¹,   p/p0 = (T/T0)^{γ/(γ−1)},   ρ/ρ0 = (T/T0)^{1/(γ−1)}
 *   A/A* = (1/M) { [2/(γ+1)] [1 + (γ−1)/2 M²] }^{(γ+1)/(2(γ−1))}
 *   c* = √(γ R T0) / { γ [2/(γ+1)]^{(γ+1)/(2(γ−1))} }
 *
 * Source: Ames Research Staff, NACA Report 1135 (1953), isentropic flow. Check: γ = 1.4, M = 2 → A/A* = 27/16.
 */

import { ProblemError } from '../../numerics/problem.ts';
import { MOLAR_GAS_CONSTANT } from '../constants.ts';
import { requireStationAreaRatio, requireStationMach, requireStationPressure } from './askedStation.ts';
import type { Expansion, FlowState } from './flow.ts';

export interface PerfectGas {
  /** cp/cv [–], 1 < γ ≤ 5/3 */ readonly gamma: number;
  /** [kg/mol] */ readonly molarMass: number;
  /** stagnation temperature [K] */ readonly temperature: number;
  /** stagnation pressure [Pa] */ readonly pressure: number;
}

/**
 * @throws ProblemError for γ outside 1…5/3 or anything not finite and positive
 */
export function expandPerfect({ gamma, molarMass, temperature, pressure }: PerfectGas): Expansion {
  requirePerfect({ gamma, molarMass, temperature, pressure });
  const R = MOLAR_GAS_CONSTANT / molarMass;
  const cp = (gamma * R) / (gamma - 1);
  const power = gamma / (gamma - 1);
  const machAtPressure = (p: number): number =>
    Math.sqrt((2 / (gamma - 1)) * Math.expm1(-Math.log(p / pressure) / power));
  const areaAtMach = (mach: number): number =>
    ((2 / (gamma + 1)) * (1 + ((gamma - 1) / 2) * mach * mach)) ** ((gamma + 1) / (2 * (gamma - 1))) / mach;
  const state = (mach: number): FlowState => {
    const T = temperature / (1 + ((gamma - 1) / 2) * mach * mach);
    const p = pressure * (T / temperature) ** power;
    const density = p / (R * T);
    const soundSpeed = Math.sqrt(gamma * R * T);
    const velocity = mach * soundSpeed;
    return {
      temperature: T,
      pressure: p,
      density,
      molarMass,
      molarMassGas: molarMass,
      enthalpy: cp * T,
      // Entropy zero at rest: a perfect gas has no absolute scale.
      entropy: 0,
      cpFrozen: cp,
      cpEquilibrium: null,
      isentropicExponent: gamma,
      gammaFrozen: gamma,
      soundSpeed,
      dlnVdlnT: 1,
      dlnVdlnp: -1,
      absent: 'a perfect gas does not react, so there is no equilibrium heat capacity',
      notice: null,
      composition: () => ({}),
      velocity,
      mach,
      massFlux: density * velocity,
      areaRatio: mach > 0 ? areaAtMach(mach) : Number.POSITIVE_INFINITY,
    };
  };
  const throat = state(1);
  return {
    chemistry: 'perfect',
    chamber: state(0),
    throat,
    characteristicVelocity: pressure / throat.massFlux,
    lowestPressure: pressure * 1e-12,
    atPressure(p) {
      requireStationPressure(p, pressure);
      return state(p >= pressure ? 0 : machAtPressure(p));
    },
    atAreaRatio(areaRatio, side) {
      requireStationAreaRatio(areaRatio);
      return state(areaRatio === 1 ? 1 : machAtAreaRatio(areaRatio, side, gamma, areaAtMach));
    },
    atMach(mach) {
      requireStationMach(mach);
      return state(mach);
    },
  };
}

/** Newton on ln M with d ln A/d ln M = (M² − 1)/(1 + (γ−1)/2 M²), kept on its side of Mach 1. */
function machAtAreaRatio(
  areaRatio: number,
  side: 'subsonic' | 'supersonic',
  gamma: number,
  areaAtMach: (mach: number) => number,
): number {
  const lnArea = Math.log(areaRatio);
  const spread = Math.sqrt((4 * lnArea) / (gamma + 1));
  let x =
    side === 'subsonic'
      ? -Math.max(Math.min(spread, 1), lnArea)
      : Math.min(spread, 0.5 + ((gamma - 1) / 2) * lnArea);
  for (let step = 0; step < 100; step++) {
    const mach = Math.exp(x);
    const slope = (mach * mach - 1) / (1 + ((gamma - 1) / 2) * mach * mach);
    let next = x - (Math.log(areaAtMach(mach)) - lnArea) / slope;
    if (side === 'subsonic' ? next >= 0 : next <= 0) next = 0.5 * x;
    if (Math.abs(next - x) > 1) next = x + Math.sign(next - x);
    if (Math.abs(next - x) < 1e-15 * Math.max(1, Math.abs(x))) return Math.exp(next);
    x = next;
  }
  return Math.exp(x);
}

function requirePerfect(gas: PerfectGas): void {
  const wrong = !(gas.gamma > 1 && gas.gamma <= 5 / 3 + 1e-12)
    ? ['gamma', gas.gamma, 'above 1 and at most 5/3']
    : !(gas.molarMass > 0 && Number.isFinite(gas.molarMass))
      ? ['molar mass', gas.molarMass, 'a positive number of kg/mol']
      : !(gas.temperature > 0 && Number.isFinite(gas.temperature))
        ? ['temperature', gas.temperature, 'a positive number of kelvin']
        : !(gas.pressure > 0 && Number.isFinite(gas.pressure))
          ? ['pressure', gas.pressure, 'a positive number of pascal']
          : null;
  if (!wrong) return;
  throw new ProblemError({
    code: 'perfect-gas-invalid',
    what: `The ${wrong[0]} of the perfect gas is ${wrong[1]}.`,
    mend: `Give ${wrong[2]}.`,
    facts: { ...gas },
  });
}
