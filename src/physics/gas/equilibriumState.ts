/** The state of an equilibrium, with the derivatives that a flow needs. */

import { solveDenseInto } from '../../numerics/denseSolve.ts';
import { MOLAR_GAS_CONSTANT } from '../constants.ts';
import type { GasState } from './flow.ts';
import { type GibbsWork, refreshPhase, STANDARD_STATE_PRESSURE } from './gibbsMinimum.ts';
import { gasPropertiesInto, type Mixture } from './mixture.ts';

/** Mole fractions below this are left out of a composition. */
const LEAST_SHARE = 1e-12;

/** An equilibrium taken out of its work space; `gasMoles`, `phases` in mol/kg. */
export interface EquilibriumState extends GasState {
  readonly mixture: Mixture;
  readonly moles: Float64Array;
  readonly phases: readonly { readonly phase: number; readonly substance: number; readonly moles: number }[];
  readonly gasMoles: number;
  /** Largest relative miss of an element balance. */ readonly balanceResidual: number;
}

/**
 * Take the converged state out of `work`.
 *
 *   h = R T (Σ n_j h_j/RT + Σ n_c h_c/RT),   s = R (Σ n_j (s_j°/R − ln n_j + ln N − ln p/p°) + Σ n_c s_c/R)
 *   ρ = p / (N R T),   γ_s = −1 / [ (∂lnV/∂lnp)_T + N R/cp · (∂lnV/∂lnT)_p² ],   a² = γ_s N R T
 *
 * Source: S. Gordon & B. J. McBride, NASA RP-1311 (1994), eqs. 2.50–2.75 (numbers from memory).
 */
export function equilibriumState(work: GibbsWork): EquilibriumState {
  const { mixture, moles, lnMoles, enthalpy, gibbs, cp, active, temperature, gasMoles, pressure } = work;
  // The last step moved the temperature a little after the properties were read.
  gasPropertiesInto(enthalpy, gibbs, cp, mixture, temperature);
  const gases = mixture.gases.length;
  const lnRatio = Math.log(pressure / STANDARD_STATE_PRESSURE) - Math.log(gasMoles);
  let h = 0;
  let s = 0;
  let cpFrozen = 0;
  for (let i = 0; i < gases; i++) {
    const n = moles[i]!;
    if (n < 1e-300) continue;
    h += n * enthalpy[i]!;
    s += n * (enthalpy[i]! - gibbs[i]! - lnMoles[i]! - lnRatio);
    cpFrozen += n * cp[i]!;
  }
  let condensedMoles = 0;
  for (const phase of active) {
    condensedMoles += phase.moles;
    const [hc, sc, cpc] = phaseProperties(work, phase);
    h += phase.moles * hc;
    s += phase.moles * sc;
    cpFrozen += phase.moles * cpc;
  }
  const pinned = hasTwins(work);
  const slopes = pinned ? null : derivatives(work);
  const R = MOLAR_GAS_CONSTANT;
  const cpEquilibrium = slopes ? R * slopes.cp : null;
  const gammaS = slopes
    ? -1 / (slopes.dlnVdlnp + ((gasMoles * R) / (R * slopes.cp)) * slopes.dlnVdlnT * slopes.dlnVdlnT)
    : null;
  const kept = moles.slice();
  const phases = active.map(({ phase, substance, moles: n }) => ({
    phase,
    substance: substance.index,
    moles: n,
  }));
  return {
    temperature,
    pressure,
    density: pressure / (gasMoles * R * temperature),
    molarMass: 1 / (gasMoles + condensedMoles),
    molarMassGas: 1 / gasMoles,
    enthalpy: R * temperature * h,
    entropy: R * s,
    cpFrozen: R * cpFrozen,
    cpEquilibrium,
    isentropicExponent: gammaS,
    gammaFrozen: cpFrozen / (cpFrozen - gasMoles),
    soundSpeed: gammaS === null ? null : Math.sqrt(gammaS * gasMoles * R * temperature),
    dlnVdlnT: slopes ? slopes.dlnVdlnT : null,
    dlnVdlnp: slopes ? slopes.dlnVdlnp : null,
    absent: pinned
      ? `two phases of one substance stand together and pin the temperature at ${temperature.toFixed(1)} K`
      : null,
    notice: null,
    mixture,
    moles: kept,
    phases,
    gasMoles,
    balanceResidual: work.balanceResidual,
    composition: () => shares(mixture, kept, phases, gasMoles + condensedMoles),
  };
}

/** Mole fractions by name, gas and condensed together. */
export function shares(
  mixture: Mixture,
  moles: Float64Array,
  phases: readonly { readonly phase: number; readonly moles: number }[],
  total: number,
): Record<string, number> {
  const named: Record<string, number> = {};
  mixture.gases.forEach((name, i) => {
    const share = moles[i]! / total;
    if (share > LEAST_SHARE) named[name] = share;
  });
  for (const { phase, moles: n } of phases) {
    if (n / total > LEAST_SHARE) named[mixture.phases[phase]!.name] = n / total;
  }
  return named;
}

function hasTwins(work: GibbsWork): boolean {
  const seen = new Set(work.active.map((phase) => phase.substance));
  return seen.size < work.active.length;
}

function phaseProperties(work: GibbsWork, phase: GibbsWork['active'][number]): [number, number, number] {
  const i = phase.substance.index;
  refreshPhase(work, phase);
  return [work.enthalpy[i]!, work.enthalpy[i]! - work.gibbs[i]!, work.cp[i]!];
}

interface Slopes {
  readonly dlnVdlnT: number;
  readonly dlnVdlnp: number;
  /** cp/R [mol/kg] */ readonly cp: number;
}

/**
 * Derivatives of the equilibrium from its own linear system, with the right-hand sides of ∂/∂ln T and ∂/∂ln p:
 *
 *   ∂ln n_j = ∂ln N + Σ a π' + h_j/RT  (∂ln T),      ∂ln n_j = ∂ln N + Σ a π' − 1  (∂ln p)
 */
function derivatives(work: GibbsWork): Slopes | null {
  const byT = slopeSystem(work, true);
  if (!byT) return null;
  const { mixture, basis, moles, enthalpy, cp, active } = work;
  const gases = mixture.gases.length;
  const E = mixture.elements.length;
  const C = active.length;
  const dlnN = byT[E + C]!;
  let total = 0;
  for (let i = 0; i < gases; i++) {
    const n = moles[i]!;
    if (n < 1e-300) continue;
    const h = enthalpy[i]!;
    let d = dlnN + h;
    for (let k = 0; k < E; k++) d += basis.formula[i * E + k]! * byT[k]!;
    total += n * (cp[i]! + h * d);
  }
  active.forEach((phase, c) => {
    const i = phase.substance.index;
    total += phase.moles * cp[i]! + enthalpy[i]! * byT[E + c]!;
  });
  const byP = slopeSystem(work, false);
  if (!byP) return null;
  return { dlnVdlnT: 1 + dlnN, dlnVdlnp: -1 + byP[E + C]!, cp: total };
}

function slopeSystem(work: GibbsWork, byTemperature: boolean): Float64Array | null {
  const { mixture, basis, moles, enthalpy, active, system: A, stride } = work;
  const gases = mixture.gases.length;
  const E = mixture.elements.length;
  const C = active.length;
  const total = E + C;
  const size = total + 1;
  for (let r = 0; r < size; r++) A.fill(0, r * stride, r * stride + size + 1);
  for (let i = 0; i < gases; i++) {
    const n = moles[i]!;
    if (n < 1e-300) continue;
    const right = byTemperature ? -n * enthalpy[i]! : n;
    for (let k = 0; k < E; k++) {
      const ak = basis.formula[i * E + k]!;
      if (ak === 0) continue;
      for (let m = 0; m < E; m++) A[k * stride + m]! += ak * n * basis.formula[i * E + m]!;
      A[k * stride + total]! += ak * n;
      A[total * stride + k]! += ak * n;
      A[k * stride + size]! += ak * right;
    }
    A[total * stride + size]! += right;
  }
  active.forEach((phase, c) => {
    const i = phase.substance.index;
    const col = E + c;
    for (let k = 0; k < E; k++) {
      A[k * stride + col] = basis.formula[i * E + k]!;
      A[col * stride + k] = basis.formula[i * E + k]!;
    }
    A[col * stride + size] = byTemperature ? -enthalpy[i]! : 0;
  });
  const solution = new Float64Array(size);
  return solveDenseInto(solution, A, size, stride) ? solution : null;
}
