/**
 * Element balances written in components: as many abundant, independent species as there are elements.
 *
 * In the atoms themselves the balance matrix Σ a aᵀ n becomes singular when nearly everything is one species (cold
 * steam): the balances then differ only in amounts far below rounding. Written in the most abundant independent species
 * each balance has a scale of its own. Source of the idea: W. R. Smith & R. W. Missen, Chemical Reaction Equilibrium
 * Analysis, Wiley 1982 (optimised stoichiometric basis); from memory.
 */

import type { Mixture } from './mixture.ts';

export interface ComponentBasis {
  /** a'[i·E + k]: units of component k in species i. */ readonly formula: Float64Array;
  /** Units of component k in the mixture [mol/kg]. */ readonly totals: Float64Array;
  /** Species index of each component. */ readonly components: Int32Array;
  readonly order: Int32Array;
  readonly reduced: Float64Array;
  readonly pivots: Int32Array;
  readonly inverse: Float64Array;
}

export function newComponentBasis(mixture: Mixture): ComponentBasis {
  const E = mixture.elements.length;
  const S = mixture.speciesCount;
  return {
    formula: new Float64Array(S * E),
    totals: new Float64Array(E),
    components: new Int32Array(E).fill(-1),
    order: new Int32Array(E),
    reduced: new Float64Array(E * E),
    pivots: new Int32Array(E),
    inverse: new Float64Array(E * 2 * E),
  };
}

/** A row counts as independent when more than this of it is left after elimination. */
const INDEPENDENT = 1e-9;

/**
 * Choose the most abundant independent species (`amounts` [mol/kg] of all species) as components and rewrite formula
 * and totals in them. `elementTotals` [mol/kg] in the order of mixture.elements.
 * @returns false when the species do not span the elements
 */
export function chooseComponentsInto(
  basis: ComponentBasis,
  mixture: Mixture,
  amounts: Float64Array,
  elementTotals: Float64Array,
): boolean {
  const E = mixture.elements.length;
  const S = mixture.speciesCount;
  const { formula: F } = mixture;
  const { reduced, pivots, order } = basis;
  let found = 0;
  while (found < E) {
    let best = -1;
    let most = -1;
    for (let i = 0; i < S; i++) {
      if (!(amounts[i]! > most)) continue;
      let taken = false;
      for (let k = 0; k < found; k++) if (order[k] === i) taken = true;
      if (taken || !isIndependent(F, i, E, reduced, pivots, found)) continue;
      best = i;
      most = amounts[i]!;
    }
    if (best < 0) return false;
    reduceRow(F, best, E, reduced, pivots, found);
    order[found++] = best;
  }
  let same = true;
  for (let k = 0; k < E; k++) if (basis.components[k] !== order[k]) same = false;
  if (same) return true;
  basis.components.set(order);
  rewrite(basis, mixture, elementTotals);
  return true;
}

function isIndependent(
  F: Float64Array,
  i: number,
  E: number,
  reduced: Float64Array,
  pivots: Int32Array,
  found: number,
): boolean {
  const row = found * E;
  for (let j = 0; j < E; j++) reduced[row + j] = F[i * E + j]!;
  for (let k = 0; k < found; k++) {
    const factor = reduced[row + pivots[k]!]!;
    if (factor !== 0) for (let j = 0; j < E; j++) reduced[row + j]! -= factor * reduced[k * E + j]!;
  }
  for (let j = 0; j < E; j++) if (Math.abs(reduced[row + j]!) > INDEPENDENT) return true;
  return false;
}

function reduceRow(
  F: Float64Array,
  i: number,
  E: number,
  reduced: Float64Array,
  pivots: Int32Array,
  found: number,
): void {
  isIndependent(F, i, E, reduced, pivots, found);
  const row = found * E;
  let pivot = 0;
  for (let j = 1; j < E; j++) if (Math.abs(reduced[row + j]!) > Math.abs(reduced[row + pivot]!)) pivot = j;
  const scale = 1 / reduced[row + pivot]!;
  for (let j = 0; j < E; j++) reduced[row + j]! *= scale;
  pivots[found] = pivot;
}

/** formula·C⁻¹ and totals·C⁻¹, C the components' own formulas. */
function rewrite(basis: ComponentBasis, mixture: Mixture, elementTotals: Float64Array): void {
  const E = mixture.elements.length;
  const W = 2 * E;
  const M = basis.inverse;
  M.fill(0);
  for (let r = 0; r < E; r++) {
    for (let j = 0; j < E; j++) M[r * W + j] = mixture.formula[basis.components[r]! * E + j]!;
    M[r * W + E + r] = 1;
  }
  for (let c = 0; c < E; c++) {
    let p = c;
    for (let r = c + 1; r < E; r++) if (Math.abs(M[r * W + c]!) > Math.abs(M[p * W + c]!)) p = r;
    for (let j = 0; p !== c && j < W; j++) {
      const keep = M[c * W + j]!;
      M[c * W + j] = M[p * W + j]!;
      M[p * W + j] = keep;
    }
    const scale = 1 / M[c * W + c]!;
    for (let j = 0; j < W; j++) M[c * W + j]! *= scale;
    for (let r = 0; r < E; r++) {
      const factor = M[r * W + c]!;
      if (r === c || factor === 0) continue;
      for (let j = 0; j < W; j++) M[r * W + j]! -= factor * M[c * W + j]!;
    }
  }
  // M = [1 | C⁻¹], and C⁻¹ maps atoms to components: a' = a C⁻¹.
  for (let i = 0; i < mixture.speciesCount; i++) {
    for (let k = 0; k < E; k++) {
      let sum = 0;
      for (let j = 0; j < E; j++) sum += mixture.formula[i * E + j]! * M[j * W + E + k]!;
      basis.formula[i * E + k] = Math.abs(sum) < 1e-13 ? 0 : sum;
    }
  }
  for (let k = 0; k < E; k++) {
    let sum = 0;
    for (let j = 0; j < E; j++) sum += elementTotals[j]! * M[j * W + E + k]!;
    basis.totals[k] = sum;
  }
}
