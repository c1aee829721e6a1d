/**
 * Where a cold gas would begin to condense.
 *
 * Vapour pressure by the integrated Clausius–Clapeyron relation through the normal boiling point, with the heat of
 * vaporisation there, and below the triple point with the heat of sublimation through the triple point:
 *
 *   ln(p_sat/p_ref) = (L/R) (1/T_ref − 1/T)
 *
 * Boiling points, triple points and heats: CRC Handbook of Chemistry and Physics (from memory, rounded). Within about
 * 15 % of p_sat between triple and boiling point, coarser far below: enough to say *that* a gas has passed saturation,
 * not by how much. A fast nozzle flow may stay supersaturated well past this point.
 */

import { MOLAR_GAS_CONSTANT } from '../constants.ts';

interface Saturation {
  readonly label: string;
  /** [K], [Pa], [J/mol] for the branch above the triple point */ readonly boiling: readonly [
    number,
    number,
    number,
  ];
  /** [K], [Pa], [J/mol] for the branch below it */ readonly triple: readonly [number, number, number];
}

const ATM = 101325;

const SATURATION: Readonly<Record<string, Saturation>> = {
  N2: { label: 'nitrogen', boiling: [77.36, ATM, 5570], triple: [63.15, 12520, 6290] },
  O2: { label: 'oxygen', boiling: [90.19, ATM, 6820], triple: [54.36, 146, 8200] },
  H2: { label: 'hydrogen', boiling: [20.28, ATM, 904], triple: [13.8, 7042, 1028] },
  He: { label: 'helium', boiling: [4.22, ATM, 83], triple: [4.22, ATM, 83] },
  Ar: { label: 'argon', boiling: [87.3, ATM, 6430], triple: [83.81, 68890, 7790] },
  CO2: { label: 'carbon dioxide', boiling: [216.58, 518500, 15300], triple: [216.58, 518500, 25230] },
  H2O: { label: 'steam', boiling: [373.12, ATM, 40660], triple: [273.16, 611.7, 51060] },
  CH4: { label: 'methane', boiling: [111.67, ATM, 8190], triple: [90.69, 11696, 9700] },
  NH3: { label: 'ammonia', boiling: [239.82, ATM, 23330], triple: [195.4, 6060, 31200] },
  CO: { label: 'carbon monoxide', boiling: [81.6, ATM, 6040], triple: [68.13, 15400, 7600] },
};

/** Vapour pressure [Pa] over liquid or solid at temperature [K]; null where the table has no such gas. */
export function saturationPressure(species: string, temperature: number): number | null {
  const row = SATURATION[species];
  if (!row) return null;
  const [T, p, L] = temperature >= row.triple[0] ? row.boiling : row.triple;
  return p * Math.exp((L / MOLAR_GAS_CONSTANT) * (1 / T - 1 / temperature));
}

/** Words when a gas of the mixture stands above its saturation pressure, else null. */
export function saturationNotice(
  gases: readonly string[],
  moles: Float64Array,
  gasMoles: number,
  temperature: number,
  pressure: number,
): string | null {
  const past: string[] = [];
  gases.forEach((name, i) => {
    const n = moles[i]!;
    if (n < 1e-4 * gasMoles) return;
    const limit = saturationPressure(name, temperature);
    if (limit !== null && (n / gasMoles) * pressure > limit) past.push(SATURATION[name]!.label);
  });
  if (past.length === 0) return null;
  return `${past.join(', ')} past saturation: condensation of a held gas is not modelled`;
}
