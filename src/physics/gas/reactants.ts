/** What is fed to the chamber, per kilogram: atoms, enthalpy, density. */

import { ProblemError } from '../../numerics/problem.ts';

export interface Reactants {
  /** [mol of atoms per kg] by element symbol; only elements that are there. */
  readonly elements: Readonly<Record<string, number>>;
  /** [J/kg] on the scale of the species data */ readonly enthalpy: number;
  /** [kg/m³] as stored, volumes added; null when a part's density is not known */ readonly density:
    | number
    | null;
}

/** One part of a blend. */
export interface ReactantPart {
  /** Atoms per formula unit. */ readonly elements: Readonly<Record<string, number>>;
  /** [kg/mol] of the formula unit */ readonly molarMass: number;
  /** [J/kg] */ readonly enthalpy: number;
  /** [kg/m³] */ readonly density: number | null;
  /** Share by mass [–] */ readonly share: number;
}

/**
 * Blend parts by mass. Enthalpies add (no heat of mixing), volumes add.
 * @throws ProblemError when shares are negative or don't add up to 1 within 1e-9
 */
export function blendReactants(parts: readonly ReactantPart[]): Reactants {
  const sum = parts.reduce((total, part) => total + part.share, 0);
  const wrong = parts.some((part) => !(part.share >= 0));
  if (wrong || !(Math.abs(sum - 1) < 1e-9)) {
    throw new ProblemError({
      code: 'shares-do-not-add-up',
      what: `The mass shares of a blend add up to ${(100 * sum).toFixed(4)} %${wrong ? ', and one of them is not 0 or more' : ''}.`,
      mend: 'Give shares by mass that add up to 100 %.',
      facts: { sum },
    });
  }
  const elements: Record<string, number> = {};
  let enthalpy = 0;
  let volume: number | null = 0;
  for (const part of parts) {
    if (part.share === 0) continue;
    const moles = part.share / part.molarMass;
    for (const [element, atoms] of Object.entries(part.elements)) {
      if (atoms > 0) elements[element] = (elements[element] ?? 0) + moles * atoms;
    }
    enthalpy += part.share * part.enthalpy;
    volume = volume === null || part.density === null ? null : volume + part.share / part.density;
  }
  return { elements, enthalpy, density: volume === null ? null : 1 / volume };
}

/** Oxidiser and fuel at `massRatio` = oxidiser over fuel by mass [–]. */
export function burntReactants(oxidiser: Reactants, fuel: Reactants, massRatio: number): Reactants {
  if (!(massRatio >= 0 && Number.isFinite(massRatio))) {
    throw new ProblemError({
      code: 'mixture-ratio-invalid',
      what: `The mixture ratio is ${massRatio}.`,
      mend: 'Give the mass of oxidiser over the mass of fuel, 0 or more.',
      facts: { massRatio },
    });
  }
  const fuelShare = 1 / (1 + massRatio);
  const oxidiserShare = massRatio / (1 + massRatio);
  const elements: Record<string, number> = {};
  for (const [side, share] of [
    [oxidiser, oxidiserShare],
    [fuel, fuelShare],
  ] as const) {
    if (share === 0) continue;
    for (const [element, moles] of Object.entries(side.elements)) {
      elements[element] = (elements[element] ?? 0) + share * moles;
    }
  }
  const { density: oxidiserDensity } = oxidiser;
  const { density: fuelDensity } = fuel;
  return {
    elements,
    enthalpy: oxidiserShare * oxidiser.enthalpy + fuelShare * fuel.enthalpy,
    density:
      oxidiserDensity === null || fuelDensity === null
        ? null
        : 1 / (oxidiserShare / oxidiserDensity + fuelShare / fuelDensity),
  };
}

/** Valences by which a mixture is called stoichiometric: to CO2, H2O, Al2O3, HCl, HF, N2. */
const VALENCE: Readonly<Record<string, number>> = {
  C: 4,
  H: 1,
  Al: 3,
  O: -2,
  Cl: -1,
  F: -1,
  N: 0,
  He: 0,
  Ar: 0,
};

/** Σ valence · moles per kg: positive = wants oxidiser, negative = offers it. */
function openValence(reactants: Reactants): number {
  let sum = 0;
  for (const [element, moles] of Object.entries(reactants.elements)) {
    const valence = VALENCE[element];
    if (valence === undefined) {
      throw new ProblemError({
        code: 'element-without-valence',
        what: `There is no rule for how ${element} burns, so an equivalence ratio has no meaning.`,
        mend: 'Give the mixture as a ratio by mass.',
        facts: { element },
      });
    }
    sum += valence * moles;
  }
  return sum;
}

/**
 * Mixture ratio by mass at an equivalence ratio φ (fuel over oxidiser, relative to stoichiometric; φ > 1 is fuel-rich).
 *
 *   O/F = V_fuel / (φ · (−V_oxidiser)),      V = Σ valence · mol of atoms per kg
 *
 * Valence method with C +4, H +1, Al +3, O −2, Cl −1, F −1, N 0 (common practice, no source; Cl and F take up hydrogen).
 * Check: CH4 + 2 O2 → O/F = 2 · 31.9988 / 16.04246 = 3.9893 at φ = 1.
 */
export function massRatioForEquivalence(oxidiser: Reactants, fuel: Reactants, phi: number): number {
  if (!(phi > 0 && Number.isFinite(phi))) {
    throw new ProblemError({
      code: 'equivalence-ratio-invalid',
      what: `The equivalence ratio is ${phi}.`,
      mend: 'Give a positive number; 1 is the exact chemical ratio, above it fuel is left over.',
      facts: { phi },
    });
  }
  const wants = openValence(fuel);
  const offers = -openValence(oxidiser);
  if (!(wants > 0) || !(offers > 0)) {
    throw new ProblemError({
      code: 'mixture-cannot-burn',
      what:
        wants > 0
          ? 'The oxidiser offers no oxygen, chlorine or fluorine to spare.'
          : 'The fuel has nothing left to burn.',
      mend: 'Check which side is the oxidiser and which the fuel, or give the ratio by mass.',
      facts: { fuelValence: wants, oxidiserValence: -offers },
    });
  }
  return wants / (phi * offers);
}
