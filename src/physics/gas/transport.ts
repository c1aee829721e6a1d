/**
 * Viscosity and heat conductivity of a gas mixture of given composition, by kinetic theory for dilute gases.
 *
 *   μᵢ = (5/16) √(π mᵢ k T) / (π σᵢ² Ω(T/εᵢ))                      Chapman–Enskog
 *   λᵢ = (μᵢ/Mᵢ) (1.32 c_v,ᵢ + 1.77 R)                               modified Eucken
 *   μ  = Σ xᵢ μᵢ / Σⱼ xⱼ φᵢⱼ,  φᵢⱼ = [1 + (μᵢ/μⱼ)^½ (Mⱼ/Mᵢ)^¼]² / √(8 (1 + Mᵢ/Mⱼ))   Wilke
 *   λ  = ½ [ Σ xᵢ λᵢ + 1 / Σ (xᵢ/λᵢ) ]                                Mathur and others
 *
 * The composition is held: heat carried by reactions is not in λ. Condensed species carry neither.
 *
 * Sources: S. Chapman, T. G. Cowling, The Mathematical Theory of Non-Uniform Gases, 1939; C. R. Wilke, J. Chem. Phys. 18,
 * 1950, 517; S. Mathur, P. K. Tondon, S. C. Saxena, Mol. Phys. 12, 1967, 569; R. A. Svehla, NASA TR R-132, 1962 (constants,
 * and the Eucken form); all formulas from memory.
 */

import { MOLAR_GAS_CONSTANT } from '../constants.ts';
import type { SpeciesRecord, TransportRecord } from './records.ts';

/** Boltzmann's constant [J/K] and Avogadro's [1/mol], exact since the 2019 revision of the SI. */
const BOLTZMANN = 1.380649e-23;
const AVOGADRO = 6.02214076e23;

export interface GasTransport {
  /** μ [Pa s] */ readonly viscosity: number;
  /** λ [W/(m K)], composition held */ readonly conductivity: number;
  /** cp of the gas alone [J/(kg K)], composition held */ readonly heatCapacity: number;
  /** Pr = μ cp/λ [–] */ readonly prandtl: number;
  /** Share of the gas by moles whose viscosity is an estimate from its molar mass [–]. */
  readonly estimated: number;
}

interface TransportSpecies {
  readonly molarMass: number;
  readonly diameter: number | null;
  readonly wellDepth: number;
  readonly record: SpeciesRecord;
}

/** Constants by species name, gases only. */
export type TransportData = ReadonlyMap<string, TransportSpecies>;

export function compileTransport(
  species: readonly SpeciesRecord[],
  rows: readonly TransportRecord[],
): TransportData {
  const constants = new Map(rows.map((row) => [row.species, row]));
  return new Map(
    species
      .filter(({ phase }) => phase === 'gas')
      .map((record) => {
        const row = constants.get(record.name);
        const { molarMass } = record;
        return [
          record.name,
          { molarMass, diameter: row?.diameter ?? null, wellDepth: row?.wellDepth ?? 0, record },
        ] as const;
      }),
  );
}

/**
 * Collision integral Ω^(2,2)* of the Lennard-Jones potential [–].
 *
 *   Ω = 1.16145 T*^−0.14874 + 0.52487 e^(−0.77320 T*) + 2.16178 e^(−2.43787 T*)
 *
 * @param reduced T* = T/(ε/k) [–], fitted for 0.3 … 100; above, the first term alone keeps its power law
 * Source: P. D. Neufeld, A. R. Janzen, R. A. Aziz, J. Chem. Phys. 57, 1972, 1100 (from memory); within 0.1 % of the integral.
 * Check: T* = 1 → 1.593 (the tabulated integral: 1.5926, Monchick & Mason 1961 at zero dipole, from memory).
 */
export function collisionIntegral(reduced: number): number {
  return (
    1.16145 * reduced ** -0.14874 +
    0.52487 * Math.exp(-0.7732 * reduced) +
    2.16178 * Math.exp(-2.43787 * reduced)
  );
}

/**
 * Viscosity [Pa s] of a gas of which nothing but the molar mass is known.
 *
 *   μ = 1.184·10⁻⁷ √M T^0.6,  M in g/mol, T in K
 *
 * Source: D. R. Bartz, Jet Propulsion 27, 1957, 49, as printed in NASA SP-125: 46.6·10⁻¹⁰ M^0.5 T^0.6 lb/(in s), T in °R
 * (from memory).
 */
export function viscosityFromMolarMass(molarMass: number, temperature: number): number {
  return 1.184e-7 * Math.sqrt(1000 * molarMass) * temperature ** 0.6;
}

/** A gas of constant γ: viscosity from the molar mass, Pr = 4γ/(9γ − 5) (Eucken). */
export function estimatedTransport(molarMass: number, gamma: number, temperature: number): GasTransport {
  const viscosity = viscosityFromMolarMass(molarMass, temperature);
  const heatCapacity = (gamma / (gamma - 1)) * (MOLAR_GAS_CONSTANT / molarMass);
  const prandtl = (4 * gamma) / (9 * gamma - 5);
  return {
    viscosity,
    conductivity: (viscosity * heatCapacity) / prandtl,
    heatCapacity,
    prandtl,
    estimated: 1,
  };
}

/** Species below this share of the moles change neither property by more than their share. */
const NEGLIGIBLE = 1e-5;

/**
 * @param composition mole fractions by species name; what is not a gas of `data` (condensed species) is left out
 * @param temperature T [K]
 * @throws Error where no gas is left: a slip of the programmer
 */
export function transportOf(
  composition: Readonly<Record<string, number>>,
  temperature: number,
  data: TransportData,
): GasTransport {
  const found: { readonly share: number; readonly of: TransportSpecies }[] = [];
  let total = 0;
  for (const [name, share] of Object.entries(composition)) {
    const of = data.get(name);
    if (of === undefined || share < NEGLIGIBLE) continue;
    found.push({ share, of });
    total += share;
  }
  if (total <= 0) throw new Error('A gas without gases has no viscosity');
  const n = found.length;
  const x = new Float64Array(n);
  const mass = new Float64Array(n);
  const mu = new Float64Array(n);
  let lambdaSum = 0;
  let lambdaInverse = 0;
  let cp = 0;
  let molarMass = 0;
  let estimated = 0;
  for (let i = 0; i < n; i++) {
    const { share, of } = found[i]!;
    x[i] = share / total;
    mass[i] = of.molarMass;
    mu[i] = viscosityOf(of, temperature);
    const cpOverR = heatCapacityOverR(of.record, temperature);
    const lambda = ((mu[i]! * MOLAR_GAS_CONSTANT) / of.molarMass) * (1.32 * (cpOverR - 1) + 1.77);
    lambdaSum += x[i]! * lambda;
    lambdaInverse += x[i]! / lambda;
    cp += x[i]! * cpOverR * MOLAR_GAS_CONSTANT;
    molarMass += x[i]! * of.molarMass;
    if (of.diameter === null) estimated += x[i]!;
  }
  const viscosity = viscosityWilke(x, mass, mu);
  const conductivity = (lambdaSum + 1 / lambdaInverse) / 2;
  const heatCapacity = cp / molarMass;
  return {
    viscosity,
    conductivity,
    heatCapacity,
    prandtl: (viscosity * heatCapacity) / conductivity,
    estimated,
  };
}

function viscosityOf({ molarMass, diameter, wellDepth }: TransportSpecies, temperature: number): number {
  if (diameter === null) return viscosityFromMolarMass(molarMass, temperature);
  const omega = collisionIntegral(temperature / wellDepth);
  const crossSection = Math.PI * diameter * diameter * omega;
  return ((5 / 16) * Math.sqrt((Math.PI * BOLTZMANN * temperature * molarMass) / AVOGADRO)) / crossSection;
}

function viscosityWilke(x: Float64Array, mass: Float64Array, mu: Float64Array): number {
  let viscosity = 0;
  for (let i = 0; i < x.length; i++) {
    let denominator = 0;
    for (let j = 0; j < x.length; j++) {
      const root = 1 + Math.sqrt(mu[i]! / mu[j]!) * Math.sqrt(Math.sqrt(mass[j]! / mass[i]!));
      denominator += (x[j]! * root * root) / Math.sqrt(8 * (1 + mass[i]! / mass[j]!));
    }
    viscosity += (x[i]! * mu[i]!) / denominator;
  }
  return viscosity;
}

/** cp/R by the species' polynomial; held at its ends beyond them. */
function heatCapacityOverR({ ranges }: SpeciesRecord, temperature: number): number {
  const lowest = ranges[0]!.Tmin;
  const highest = ranges[ranges.length - 1]!.Tmax;
  const T = Math.min(Math.max(temperature, lowest), highest);
  const { a } = ranges.find(({ Tmax }) => T <= Tmax)!;
  return a[0]! / (T * T) + a[1]! / T + a[2]! + T * (a[3]! + T * (a[4]! + T * (a[5]! + T * a[6]!)));
}
