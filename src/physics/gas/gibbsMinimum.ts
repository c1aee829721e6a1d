/**
 * Newton's method for the composition of least Gibbs energy, for a given set of condensed phases.
 *
 * Unknowns: ln n_j of the gases, ln N (N = Σ n_j), the amounts n_c of the condensed phases, the component potentials
 * π_k, and ln T when not the temperature but the enthalpy or the entropy is held. Stationarity of
 * G + Σ λ (balances) gives, with μ_j/RT = g_j°/RT + ln n_j − ln N + ln(p/p°):
 *
 *   Δln n_j = Δln N + Σ_k a_jk π_k − μ_j/RT + (h_j/RT) Δln T                                            (1)
 *   Σ_j a_jk n_j Δln n_j + Σ_c a_ck Δn_c = b_k − Σ_j a_jk n_j − Σ_c a_ck n_c                            (2)
 *   Σ_j n_j Δln n_j − N Δln N = N − Σ_j n_j                                                             (3)
 *   Σ_k a_ck π_k + (h_c/RT) Δln T = g_c°/RT                                                             (4)
 *   held enthalpy: Σ n_j (h_j/RT) Δln n_j + Σ (h_c/RT) Δn_c + Σ n cp/R Δln T = (h − Σ n h_j)/RT          (5)
 *   held entropy:  the same with s_j/R = h_j/RT − μ_j/RT in place of h/RT on the left, s/R on the right  (6)
 *
 * (1) put into (2), (3), (5) leaves a small dense system in π, Δn_c, Δln N, Δln T.
 * Sources: W. B. White, S. M. Johnson, G. B. Dantzig, J. Chem. Phys. 28 (1958) 751; S. Gordon & B. J. McBride,
 * NASA RP-1311 (1994), ch. 2 and 3, also for the step control; balances in components as in componentBasis.ts.
 * Per kilogram of mixture, amounts in mol/kg.
 */

import { solveDenseInto } from '../../numerics/denseSolve.ts';
import { MOLAR_GAS_CONSTANT } from '../constants.ts';
import { balanceSumsInto } from './balanceSums.ts';
import { type ComponentBasis, chooseComponentsInto, newComponentBasis } from './componentBasis.ts';
import {
  gasPropertiesInto,
  type Mixture,
  type Substance,
  substancePropertiesInto,
  substanceRange,
} from './mixture.ts';

/** What is held besides the pressure: temperature [K], enthalpy [J/kg] or entropy [J/(kg K)]. */
export type Held =
  | { readonly kind: 'temperature'; readonly temperature: number }
  | { readonly kind: 'enthalpy'; readonly enthalpy: number }
  | { readonly kind: 'entropy'; readonly entropy: number };

/** Pressure of the standard state of the data [Pa]. */
export const STANDARD_STATE_PRESSURE = 1e5;

/** A condensed phase that takes part. */
export interface ActivePhase {
  readonly substance: Substance;
  /** Index among the phases of the mixture. */ readonly phase: number;
  /** [mol/kg]; negative while iterating when it wants to vanish */ moles: number;
}

export type NewtonOutcome = 'converged' | 'singular' | 'slow' | 'no-gas' | 'beyond-phase-data';

/** Everything the iteration writes to; made once per mixture, reused for every state. */
export interface GibbsWork {
  readonly mixture: Mixture;
  readonly elementTotals: Float64Array;
  readonly basis: ComponentBasis;
  /** h/RT, g°/RT, cp/R of gases and substances at the current temperature. */
  readonly enthalpy: Float64Array;
  readonly gibbs: Float64Array;
  readonly cp: Float64Array;
  /** Amounts [mol/kg] of gases; entries of substances sum their phases. */ readonly moles: Float64Array;
  readonly lnMoles: Float64Array;
  readonly change: Float64Array;
  /** Per gas n (μ − 1), n h, n e, and their sums over the balances; see balanceSums.ts. */
  readonly excess: Float64Array;
  readonly heat: Float64Array;
  readonly heldBy: Float64Array;
  readonly sums: Float64Array;
  /** Solutions of the two derivative systems, ∂/∂ln T then ∂/∂ln p. */ readonly slopes: Float64Array;
  readonly system: Float64Array;
  readonly solution: Float64Array;
  readonly stride: number;
  readonly active: ActivePhase[];
  temperature: number;
  /** N [mol/kg] */ gasMoles: number;
  pressure: number;
  /** Largest relative miss of an element balance at the end. */ balanceResidual: number;
  /** Squares of the last step's parts, relative to the gas. */ remainder: number;
  iterations: number;
}

export function newGibbsWork(mixture: Mixture, elementTotals: Float64Array): GibbsWork {
  const S = mixture.speciesCount;
  const stride = 2 * mixture.elements.length + 5;
  const work: GibbsWork = {
    mixture,
    elementTotals,
    basis: newComponentBasis(mixture),
    enthalpy: new Float64Array(S),
    gibbs: new Float64Array(S),
    cp: new Float64Array(S),
    moles: new Float64Array(S),
    lnMoles: new Float64Array(S),
    change: new Float64Array(S),
    excess: new Float64Array(S),
    heat: new Float64Array(S),
    heldBy: new Float64Array(S),
    slopes: new Float64Array(2 * stride),
    sums: new Float64Array((mixture.elements.length * (mixture.elements.length + 9)) / 2),
    system: new Float64Array(stride * stride),
    solution: new Float64Array(stride),
    stride,
    active: [],
    temperature: 0,
    gasMoles: 0,
    pressure: 0,
    balanceResidual: 0,
    remainder: 0,
    iterations: 0,
  };
  startCold(work);
  return work;
}

/** The usual first guess: all gases alike, 3 000 K, nothing condensed. */
export function startCold(work: GibbsWork): void {
  const gases = work.mixture.gases.length;
  work.active.length = 0;
  work.moles.fill(0);
  work.gasMoles = 50;
  work.temperature = 3000;
  for (let i = 0; i < gases; i++) {
    work.moles[i] = work.gasMoles / gases;
    work.lnMoles[i] = Math.log(work.moles[i]!);
  }
  work.basis.components.fill(-1);
}

const MOST_ITERATIONS = 250;
/** Gas below this [mol/kg] is no gas any more: a few parts in a million of a usual mixture. */
const LEAST_GAS = 1e-4;
/** A step below this, relative to the gas, is rounding. */
const SMALL_STEP = 1e-14;
/** Squares of the last step, relative to the gas, at which the iteration ends; (h/RT)² magnifies them a thousandfold. */
const REMAINDER = 1e-18;
/** Steps that stop shrinking below this are rounding: two phases side by side share what they hold only to this. */
const ROUNDING_STEP = 1e-8;
/** ln of the mole fraction below which a species no longer limits the step (RP-1311, eq. 3.1 ff.). */
const LN_TRACE = -18.420680743952367;
const LN_ENTER = -9.210340371976182;
/** ln n below which an amount is nothing at all in double precision. */
const LN_NOTHING = -690;

/** Row of a substance's table for a given phase, nearest to the temperature. */
function rowOf(active: ActivePhase, temperature: number): number {
  const { substance, phase } = active;
  let r = substanceRange(substance, temperature, false);
  const rows = substance.rangePhase;
  while (rows[r]! < phase) r++;
  while (rows[r]! > phase) r--;
  return r;
}

/** Write the properties of an active phase at the current temperature to its place in the arrays. */
export function refreshPhase(work: GibbsWork, phase: ActivePhase): void {
  substancePropertiesInto(
    work.enthalpy,
    work.gibbs,
    work.cp,
    phase.substance,
    work.temperature,
    rowOf(phase, work.temperature),
  );
}

/** Iterate to the minimum for the active phases of `work` at `pressure` [Pa]. */
export function minimiseGibbs(work: GibbsWork, pressure: number, held: Held): NewtonOutcome {
  const { mixture } = work;
  const gases = mixture.gases.length;
  const E = mixture.elements.length;
  const lnPressure = Math.log(pressure / STANDARD_STATE_PRESSURE);
  work.pressure = pressure;
  if (held.kind === 'temperature') work.temperature = held.temperature;
  // Substances that are not active now left no amount behind.
  for (const substance of mixture.substances) work.moles[substance.index] = 0;
  for (const { substance, moles } of work.active) {
    if (moles > 0) work.moles[substance.index]! += moles;
  }
  let least = Number.POSITIVE_INFINITY;
  let idle = 0;
  for (let step = 0; step < MOST_ITERATIONS; step++) {
    work.iterations++;
    if (step % 5 === 0 && !chooseComponentsInto(work.basis, mixture, work.moles, work.elementTotals)) {
      return 'singular';
    }
    gasPropertiesInto(work.enthalpy, work.gibbs, work.cp, mixture, work.temperature);
    const size = buildSystem(work, lnPressure, held);
    if (!solveDenseInto(work.solution, work.system, size, work.stride)) return 'singular';
    const largest = applyStep(work, lnPressure, held.kind !== 'temperature', size, gases, E);
    if (!(work.gasMoles > LEAST_GAS) || !(largest >= 0)) return 'no-gas';
    idle = largest < 0.5 * least ? 0 : idle + 1;
    if (largest < least) least = largest;
    if (idle >= 6 && largest < ROUNDING_STEP) return 'converged';
    // Newton converges quadratically: what a full step leaves undone is about its square.
    if (largest < SMALL_STEP || (largest < 1 && work.remainder < REMAINDER)) return 'converged';
  }
  return 'slow';
}

/** Fill equations (2)–(6); returns the number of unknowns: components, phases, ln N, and ln T when it is free. */
function buildSystem(work: GibbsWork, lnPressure: number, held: Held): number {
  const { mixture, basis, system: A, stride, moles, lnMoles, enthalpy, gibbs, cp, active } = work;
  const { sums, excess, heat, heldBy } = work;
  const gases = mixture.gases.length;
  const E = mixture.elements.length;
  const C = active.length;
  const freeT = held.kind !== 'temperature';
  const size = E + C + 1 + (freeT ? 1 : 0);
  const total = E + C;
  const last = size - 1;
  const byEnthalpy = held.kind === 'enthalpy';
  const a = basis.formula;
  const lnRatio = lnPressure - Math.log(work.gasMoles);
  for (let r = 0; r < size; r++) A.fill(0, r * stride, r * stride + size + 1);
  let sum = 0;
  let balance = 0;
  let heatSum = 0;
  let heldSum = 0;
  let capacity = 0;
  let right = 0;
  for (let i = 0; i < gases; i++) {
    const n = moles[i]!;
    const h = enthalpy[i]!;
    const mu = gibbs[i]! + lnMoles[i]! + lnRatio;
    const e = byEnthalpy ? h : h - mu;
    const r = n * (mu - 1);
    const nh = n * h;
    const ne = n * e;
    excess[i] = r;
    heat[i] = nh;
    heldBy[i] = ne;
    sum += n;
    balance += r;
    heatSum += nh;
    heldSum += ne;
    capacity += n * cp[i]! + ne * h;
    right += e * r;
  }
  balanceSumsInto(sums, E, gases, a, moles, excess, heat, heldBy);
  const triangle = (E * (E + 1)) / 2;
  for (let k = 0, at = 0; k < E; k++) {
    for (let m = k; m < E; m++, at++) {
      A[k * stride + m] = sums[at]!;
      A[m * stride + k] = sums[at]!;
    }
    A[k * stride + total] = sums[triangle + k]!;
    A[total * stride + k] = sums[triangle + k]!;
    A[k * stride + size] = basis.totals[k]! + sums[triangle + E + k]!;
    if (freeT) {
      A[k * stride + last] = sums[triangle + 2 * E + k]!;
      A[last * stride + k] = sums[triangle + 3 * E + k]!;
    }
  }
  if (freeT) {
    A[total * stride + last] = heatSum;
    A[last * stride + total] = heldSum;
    A[last * stride + last] = capacity;
    A[last * stride + size] = right;
  }
  A[total * stride + total] = sum - work.gasMoles;
  A[total * stride + size] = balance + work.gasMoles;
  for (let c = 0; c < C; c++) {
    const phase = active[c]!;
    const i = phase.substance.index;
    refreshPhase(work, phase);
    const col = E + c;
    for (let k = 0; k < E; k++) {
      const ak = a[i * E + k]!;
      A[k * stride + col] = ak;
      A[col * stride + k] = ak;
      A[k * stride + size]! -= ak * phase.moles;
    }
    A[col * stride + size] = gibbs[i]!;
    if (freeT) {
      const h = enthalpy[i]!;
      const e = byEnthalpy ? h : h - gibbs[i]!;
      A[col * stride + last] = h;
      A[last * stride + col] = e;
      A[last * stride + last]! += phase.moles * cp[i]!;
      A[last * stride + size]! -= phase.moles * e;
    }
  }
  if (held.kind === 'enthalpy') {
    A[last * stride + size]! += held.enthalpy / (MOLAR_GAS_CONSTANT * work.temperature);
  } else if (held.kind === 'entropy') {
    A[last * stride + size]! += held.entropy / MOLAR_GAS_CONSTANT;
  }
  return size;
}

/** Equation (1) with a step length that keeps the iteration sane; returns the largest step, relative to the gas. */
function applyStep(
  work: GibbsWork,
  lnPressure: number,
  freeT: boolean,
  size: number,
  gases: number,
  E: number,
): number {
  const { basis, solution, moles, lnMoles, enthalpy, gibbs, change, active } = work;
  const C = active.length;
  const a = basis.formula;
  const N = work.gasMoles;
  const lnN = Math.log(N);
  const dlnN = solution[E + C]!;
  const dlnT = freeT ? solution[size - 1]! : 0;
  const common = dlnN - lnPressure + lnN;
  let limit = 5 * (Math.abs(dlnN) > Math.abs(dlnT) ? Math.abs(dlnN) : Math.abs(dlnT));
  let entering = 1;
  let largest = Math.abs(dlnN) + Math.abs(dlnT);
  let remainder = largest * largest;
  const perGas = 1 / N;
  for (let i = 0; i < gases; i++) {
    let d = common - gibbs[i]! - lnMoles[i]! + enthalpy[i]! * dlnT;
    const at = i * E;
    for (let k = 0; k < E; k++) d += a[at + k]! * solution[k]!;
    change[i] = d;
    const size = d > 0 ? d : -d;
    let moved = size * moles[i]! * perGas;
    let left = (size < 1 ? size : 1) * moved;
    const lnShare = lnMoles[i]! - lnN;
    if (lnShare > LN_TRACE) {
      if (d > limit) limit = d;
    } else if (d > 0) {
      const may = (LN_ENTER - lnShare) / (d - dlnN);
      if (may > 0 && may < entering) entering = may;
      if (d > 0.1) {
        // What the species will be after the step counts, not the nothing that it is now.
        const after = lnShare + d;
        moved = Math.exp(after < 0 ? after : 0);
        left = moved;
      }
    }
    if (moved > largest) largest = moved;
    if (left > remainder) remainder = left;
  }
  for (let c = 0; c < C; c++) {
    const moved = Math.abs(solution[E + c]!) / (N + Math.abs(active[c]!.moles));
    if (moved > largest) largest = moved;
    if (moved * moved > remainder) remainder = moved * moved;
  }
  work.remainder = remainder;
  let length = limit > 2 ? 2 / limit : 1;
  if (entering < length) length = entering;
  for (let i = 0; i < gases; i++) {
    const d = length * change[i]!;
    const value = lnMoles[i]! + d;
    lnMoles[i] = value > LN_NOTHING ? value : LN_NOTHING;
    // For a small step the series is exact to rounding and much cheaper than the exponential.
    moles[i] = d < 1e-4 && d > -1e-4 ? moles[i]! * (1 + d * (1 + d * (0.5 + d / 6))) : Math.exp(lnMoles[i]!);
  }
  for (let c = 0; c < C; c++) {
    active[c]!.moles += length * solution[E + c]!;
    moles[active[c]!.substance.index] = 0;
  }
  for (let c = 0; c < C; c++) {
    const { substance, moles: n } = active[c]!;
    if (n > 0) moles[substance.index]! += n;
  }
  work.gasMoles = N * Math.exp(length * dlnN);
  work.temperature *= Math.exp(length * dlnT);
  return length < 1 ? Math.max(largest, 1) : largest;
}
