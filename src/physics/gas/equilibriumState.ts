/** The state of an equilibrium, with the derivatives that a flow needs. */

import { solveDenseInto } from '../../numerics/denseSolve.ts';
import { MOLAR_GAS_CONSTANT } from '../constants.ts';
import { balanceSumsInto } from './balanceSums.ts';
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
  const R = MOLAR_GAS_CONSTANT;
  const pinned = pinnedBy(work);
  const slopes = pinned ? null : derivatives(work);
  const cpEquilibrium = slopes ? R * slopes.cp : null;
  const gammaS = slopes ? isentropicExponent(slopes, gasMoles) : null;
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
    absent:
      pinned ??
      (slopes ? null : 'the equilibrium stands at a phase change, where its derivatives have no value'),
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

/**
 * Why the pressure alone fixes the temperature, by the phase rule: two phases of one substance, or as many condensed
 * substances as elements. Heat then turns one into another at that temperature; null when it does not.
 */
function pinnedBy({ active, mixture, temperature }: GibbsWork): string | null {
  const at = `pin the temperature at ${temperature.toFixed(1)} K`;
  const substances = new Set(active.map((phase) => phase.substance)).size;
  if (substances < active.length) return `two phases of one substance stand together and ${at}`;
  if (substances >= mixture.elements.length) {
    return `as many condensed substances as elements stand beside the gas and ${at} for this pressure`;
  }
  return null;
}

function isentropicExponent({ dlnVdlnT, dlnVdlnp, cp }: Slopes, gasMoles: number): number {
  return -1 / (dlnVdlnp + (gasMoles / cp) * dlnVdlnT * dlnVdlnT);
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
 * Derivatives of the equilibrium from its own linear system, with the right-hand sides of ∂/∂ln T and ∂/∂ln p at once:
 *
 *   ∂ln n_j = ∂ln N + Σ a π' + h_j/RT  (∂ln T),      ∂ln n_j = ∂ln N + Σ a π' − 1  (∂ln p)
 *
 * Both solutions stay in `work.slopes`, from which `foreseeAlongIsentrope` starts the next state.
 */
function derivatives(work: GibbsWork): Slopes | null {
  const { mixture, basis, moles, enthalpy, cp, active, system: A, stride, slopes: out } = work;
  const { sums, excess, heat, heldBy } = work;
  const gases = mixture.gases.length;
  const E = mixture.elements.length;
  const total = E + active.length;
  const size = total + 1;
  let heatSum = 0;
  let sum = 0;
  for (let i = 0; i < gases; i++) {
    const n = moles[i]!;
    const nh = n * enthalpy[i]!;
    excess[i] = n;
    heat[i] = nh;
    heldBy[i] = 0;
    heatSum += nh;
    sum += n;
  }
  balanceSumsInto(sums, E, gases, basis.formula, moles, excess, heat, heldBy);
  const triangle = (E * (E + 1)) / 2;
  for (let r = 0; r < size; r++) A.fill(0, r * stride, r * stride + size + 2);
  for (let k = 0, at = 0; k < E; k++) {
    for (let m = k; m < E; m++, at++) {
      A[k * stride + m] = sums[at]!;
      A[m * stride + k] = sums[at]!;
    }
    const carried = sums[triangle + k]!;
    A[k * stride + total] = carried;
    A[total * stride + k] = carried;
    A[k * stride + size] = -sums[triangle + 2 * E + k]!;
    A[k * stride + size + 1] = carried;
  }
  A[total * stride + size] = -heatSum;
  A[total * stride + size + 1] = sum;
  active.forEach((phase, c) => {
    const i = phase.substance.index;
    const col = E + c;
    for (let k = 0; k < E; k++) {
      A[k * stride + col] = basis.formula[i * E + k]!;
      A[col * stride + k] = basis.formula[i * E + k]!;
    }
    A[col * stride + size] = -enthalpy[i]!;
  });
  if (!solveDenseInto(out, A, size, stride, 2)) return null;
  const dlnN = out[total]!;
  let capacity = 0;
  for (let i = 0; i < gases; i++) {
    const h = enthalpy[i]!;
    let d = dlnN + h;
    for (let k = 0; k < E; k++) d += basis.formula[i * E + k]! * out[k]!;
    capacity += moles[i]! * cp[i]! + heat[i]! * d;
  }
  active.forEach((phase, c) => {
    const i = phase.substance.index;
    capacity += phase.moles * cp[i]! + enthalpy[i]! * out[E + c]!;
  });
  const found = { dlnVdlnT: 1 + dlnN, dlnVdlnp: -1 + out[size + total]!, cp: capacity };
  // A stable state has a positive heat capacity and sound speed squared; anything else is rounding in a singular system.
  return capacity > 0 && isentropicExponent(found, sum) > 0 ? found : null;
}

/** Steps in ln p beyond this are not foreseen: the first derivative no longer helps. */
const FARTHEST_FORESEEN = 0.7;

/**
 * Move `work` from the state just taken out of it to where the first derivatives along its isentrope put it at another
 * pressure [Pa], so that Newton starts near the answer.
 */
export function foreseeAlongIsentrope(work: GibbsWork, from: EquilibriumState, pressure: number): void {
  const step = Math.log(pressure / from.pressure);
  const known =
    from.cpEquilibrium !== null && work.pressure === from.pressure && work.temperature === from.temperature;
  if (!known || !(Math.abs(step) < FARTHEST_FORESEEN)) return;
  const { mixture, basis, moles, lnMoles, enthalpy, active, slopes, gasMoles } = work;
  const gases = mixture.gases.length;
  const E = mixture.elements.length;
  const total = E + active.length;
  const size = total + 1;
  // (∂ ln T/∂ ln p)_s = N R/cp · (∂ ln V/∂ ln T)_p
  const warming = ((gasMoles * MOLAR_GAS_CONSTANT) / from.cpEquilibrium!) * from.dlnVdlnT!;
  const along = (k: number): number => slopes[size + k]! + warming * slopes[k]!;
  const lnN = along(total) * step;
  for (let k = 0; k < E; k++) work.solution[k] = along(k) * step;
  for (let i = 0; i < gases; i++) {
    let d = lnN + (warming * enthalpy[i]! - 1) * step;
    for (let k = 0; k < E; k++) d += basis.formula[i * E + k]! * work.solution[k]!;
    // A trace that would leap is left where it is: Newton has its own way with those.
    if (!(Math.abs(d) < 3)) continue;
    lnMoles[i]! += d;
    moles[i] = Math.exp(lnMoles[i]!);
  }
  active.forEach((phase, c) => {
    const next = phase.moles + along(E + c) * step;
    if (next > 0) phase.moles = next;
  });
  work.gasMoles = gasMoles * Math.exp(lnN);
  work.temperature *= Math.exp(warming * step);
}
