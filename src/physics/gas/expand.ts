/** From reactants to an expansion: burnt, heated, with the composition following, held, or held from a point on. */

import { ProblemError } from '../../numerics/problem.ts';
import { equilibrate } from './equilibrium.ts';
import { type EquilibriumState, equilibriumState, foreseeAlongIsentrope } from './equilibriumState.ts';
import { expandAlong } from './expandAlong.ts';
import type { Expansion, FlowState } from './flow.ts';
import { type GibbsWork, newGibbsWork } from './gibbsMinimum.ts';
import { heldGas, heldIsentrope, heldState } from './heldGas.ts';
import type { Isentrope } from './isentrope.ts';
import {
  chooseSpecies,
  compileMixture,
  LOWEST_TEMPERATURE,
  type Mixture,
  type SpeciesChoice,
} from './mixture.ts';
import type { Reactants } from './reactants.ts';
import type { SpeciesRecord } from './records.ts';

/** How the composition moves in the nozzle. `frozenFrom`: it follows up to the place and is held from there. */
export type NozzleChemistry =
  | { readonly kind: 'shifting' }
  | { readonly kind: 'frozen' }
  | { readonly kind: 'frozenFrom'; readonly areaRatio: number }
  | { readonly kind: 'frozenFrom'; readonly pressure: number };

export interface ExpansionOptions {
  /** Stagnation pressure at the nozzle inlet [Pa], 1e2…1e8 (1e-3…1000 bar) */ readonly pressure: number;
  readonly chemistry: NozzleChemistry;
  /** Which species may form; default all of the data. */ readonly species?: SpeciesChoice;
}

/** [Pa] stated range of the chamber pressure: 1e-3 to 1000 bar. */
export const LOWEST_CHAMBER_PRESSURE = 1e2;
export const HIGHEST_CHAMBER_PRESSURE = 1e8;

export function requireChamberPressure(pressure: number): void {
  if (pressure >= LOWEST_CHAMBER_PRESSURE && pressure <= HIGHEST_CHAMBER_PRESSURE) return;
  throw new ProblemError({
    code: 'chamber-pressure-outside',
    what: `The chamber pressure of ${(pressure / 1e5).toPrecision(5)} bar is outside 0.001 to 1000 bar.`,
    why: 'the gas is treated as ideal, which fails far above, and as a continuum, which fails far below',
    mend: 'Give an absolute pressure in that range.',
    facts: { pressure },
  });
}

/** Work space for the atoms of `reactants` with the species of `records`. */
export function workFor(
  reactants: Reactants,
  records: readonly SpeciesRecord[],
  species: SpeciesChoice = 'all',
): GibbsWork {
  const chosen = species === 'all' ? records : coreOf(records);
  requireReactants(reactants);
  const mixture = compileMixture(chosen, elementsOf(reactants));
  return newGibbsWork(mixture, totalsOf(mixture, reactants));
}

const cores = new WeakMap<readonly SpeciesRecord[], readonly SpeciesRecord[]>();

/** The short list of a set of records, the same array each time so that compiled mixtures are found again. */
function coreOf(records: readonly SpeciesRecord[]): readonly SpeciesRecord[] {
  let core = cores.get(records);
  if (!core) {
    core = chooseSpecies(records, 'core');
    cores.set(records, core);
  }
  return core;
}

/** The elements that are there. */
function elementsOf(reactants: Reactants): string[] {
  return Object.keys(reactants.elements).filter((element) => reactants.elements[element] !== 0);
}

/** @throws ProblemError for amounts that are negative, not numbers or all zero, or an enthalpy that is no number */
export function requireReactants({ elements, enthalpy }: Reactants): void {
  const amounts = Object.entries(elements);
  const wrong = amounts.find(([, amount]) => !(amount >= 0 && Number.isFinite(amount)));
  if (!wrong && Number.isFinite(enthalpy) && amounts.some(([, amount]) => amount > 0)) return;
  throw new ProblemError({
    code: 'reactants-invalid',
    what: wrong
      ? `The reactants hold ${wrong[1]} mol/kg of ${wrong[0]}.`
      : Number.isFinite(enthalpy)
        ? 'The reactants hold no atoms.'
        : `The enthalpy of the reactants is ${enthalpy} J/kg.`,
    mend: 'Give each element as moles of atoms per kilogram, 0 or more, and the enthalpy as a number.',
    facts: { enthalpy },
  });
}

function totalsOf(mixture: Mixture, reactants: Reactants): Float64Array {
  return Float64Array.from(mixture.elements, (element) => reactants.elements[element] ?? 0);
}

/**
 * Burn `reactants` at constant pressure and expand the products.
 * @throws ProblemError when the mixture does not burn or leaves the range of the data
 */
export function expandBurnt(
  reactants: Reactants,
  records: readonly SpeciesRecord[],
  { pressure, chemistry, species = 'all' }: ExpansionOptions,
): Expansion {
  requireChamberPressure(pressure);
  const work = workFor(reactants, records, species);
  burn(work, reactants, pressure);
  return expandFrom(work, equilibriumState(work), chemistry);
}

/** Equilibrium at the reactants' enthalpy, with the words of a mixture that does not burn. */
export function burn(work: GibbsWork, reactants: Reactants, pressure: number): void {
  try {
    equilibrate(work, pressure, { kind: 'enthalpy', enthalpy: reactants.enthalpy });
  } catch (error) {
    if (
      error instanceof ProblemError &&
      ['temperature-below-range', 'no-gas-left'].includes(error.problem.code)
    ) {
      throw new ProblemError({
        code: 'mixture-cannot-burn',
        what: `The mixture does not burn to a hot gas: its products would be below ${LOWEST_TEMPERATURE} K or condensed.`,
        why: error.problem.what,
        mend: 'Check the propellants and the mixture ratio; for a gas that is not burnt, give it a temperature instead.',
        facts: { enthalpy: reactants.enthalpy, pressure },
      });
    }
    throw error;
  }
}

export interface HeatedOptions extends ExpansionOptions {
  /** [K] */ readonly temperature: number;
  /** Moles by species name of the gas as fed; needed when the composition is held. */
  readonly composition?: Readonly<Record<string, number>>;
}

/**
 * Bring a gas to a temperature instead of burning it, and expand it. `frozen`: the composition as fed, held throughout;
 * otherwise the gas reaches equilibrium at that temperature first.
 */
export function expandHeated(
  reactants: Reactants,
  records: readonly SpeciesRecord[],
  options: HeatedOptions,
): Expansion {
  const { pressure, temperature, chemistry, species = 'all' } = options;
  requireChamberPressure(pressure);
  requireHeatedTemperature(temperature);
  if (chemistry.kind === 'frozen') return expandAsFed(reactants, records, options);
  const work = workFor(reactants, records, species);
  equilibrate(work, pressure, { kind: 'temperature', temperature });
  return expandFrom(work, equilibriumState(work), chemistry);
}

function requireHeatedTemperature(temperature: number): void {
  if (temperature > 0 && Number.isFinite(temperature)) return;
  throw new ProblemError({
    code: 'heated-temperature-invalid',
    what: `The gas is to be heated to ${temperature} K.`,
    mend: 'Give an absolute temperature above 0 K.',
    facts: { temperature },
  });
}

function expandAsFed(
  reactants: Reactants,
  records: readonly SpeciesRecord[],
  { pressure, temperature, composition }: HeatedOptions,
): Expansion {
  if (!composition) {
    throw new ProblemError({
      code: 'composition-not-given',
      what: 'A held composition was asked for, but not said which.',
      mend: 'Name the gas by its species, or use shifting chemistry.',
    });
  }
  requireReactants(reactants);
  const mixture = compileMixture(records, elementsOf(reactants));
  const moles = new Float64Array(mixture.speciesCount);
  const total = Object.entries(composition).reduce((mass, [name, n]) => {
    const i = mixture.gases.indexOf(name);
    if (i < 0) {
      throw new ProblemError({
        code: 'species-not-a-gas',
        what: `${name} is not among the gases of the species data for ${mixture.elements.join(', ')}.`,
        mend: `Use one of: ${mixture.gases.slice(0, 12).join(', ')}.`,
        facts: { species: name },
      });
    }
    if (!(n >= 0 && Number.isFinite(n))) {
      throw new ProblemError({
        code: 'composition-invalid',
        what: `The composition holds ${n} mol of ${name}.`,
        mend: 'Give an amount of 0 or more.',
        facts: { species: name, amount: n },
      });
    }
    moles[i] = n;
    return mass + n * mixture.molarMass[i]!;
  }, 0);
  for (let i = 0; i < moles.length; i++) moles[i]! /= total;
  const gas = heldGas({ mixture, moles });
  return expandAlong(heldIsentrope(gas, heldState(gas, temperature, pressure), 'frozen'));
}

/** Expand an equilibrium that `work` is in. */
export function expandFrom(
  work: GibbsWork,
  chamber: EquilibriumState,
  chemistry: NozzleChemistry,
): Expansion {
  const shifting = shiftingIsentrope(work, chamber);
  if (chemistry.kind === 'shifting') {
    return expandAlong(shifting, (pressure) => shiftingAfterLoss(work, chamber, pressure));
  }
  if (chemistry.kind === 'frozen') return expandAlong(frozenIsentrope(chamber, 'frozen'));
  return expandAlong(frozenFromIsentrope(shifting, chemistry));
}

/** Equilibrium at the chamber's enthalpy and a lower stagnation pressure [Pa], and the flow from there. */
function shiftingAfterLoss(work: GibbsWork, chamber: EquilibriumState, pressure: number): Expansion {
  const other = newGibbsWork(work.mixture, work.elementTotals);
  equilibrate(other, pressure, { kind: 'enthalpy', enthalpy: chamber.enthalpy });
  return expandFrom(other, equilibriumState(other), { kind: 'shifting' });
}

function shiftingIsentrope(work: GibbsWork, chamber: EquilibriumState): Isentrope {
  let lowest: number | null = null;
  let last = chamber;
  const at = (pressure: number): EquilibriumState => {
    foreseeAlongIsentrope(work, last, pressure);
    equilibrate(work, pressure, { kind: 'entropy', entropy: chamber.entropy });
    last = equilibriumState(work);
    return last;
  };
  return {
    chemistry: 'shifting',
    chamber,
    at,
    kindOf: (state) =>
      (state as EquilibriumState).phases
        .map(({ phase }) => phase)
        .sort((a, b) => a - b)
        .join(' '),
    lowestPressure() {
      lowest ??= pressureOfLowestTemperature(at, chamber);
      return lowest;
    },
  };
}

/** Bisect ln p for the lowest pressure at which the equilibrium still is within the data. */
function pressureOfLowestTemperature(
  at: (pressure: number) => EquilibriumState,
  chamber: EquilibriumState,
): number {
  const reaches = (lnP: number): boolean => {
    try {
      at(Math.exp(lnP));
      return true;
    } catch (error) {
      if (error instanceof ProblemError) return false;
      throw error;
    }
  };
  let high = Math.log(chamber.pressure);
  let low = high;
  while (low > high - 60) {
    low -= 2;
    if (!reaches(low)) break;
    high = low;
  }
  while (high - low > 1e-6) {
    const middle = 0.5 * (low + high);
    if (reaches(middle)) high = middle;
    else low = middle;
  }
  return Math.exp(high);
}

function frozenIsentrope(from: EquilibriumState, chemistry: 'frozen' | 'frozenFrom'): Isentrope {
  const gas = heldGas({ mixture: from.mixture, moles: from.moles });
  const twins = from.absent !== null;
  // Where two phases stand together the share that has turned is that of the equilibrium; the entropy carries it.
  const rest = twins ? from : heldState(gas, from.temperature, from.pressure);
  return heldIsentrope(gas, { ...rest, entropy: from.entropy, enthalpy: from.enthalpy }, chemistry);
}

/** Follow the equilibrium down to the place, hold the composition below it. */
function frozenFromIsentrope(
  shifting: Isentrope,
  where: { readonly areaRatio: number } | { readonly pressure: number },
): Isentrope {
  const place: FlowState =
    'pressure' in where
      ? expandAlong(shifting).atPressure(where.pressure)
      : expandAlong(shifting).atAreaRatio(where.areaRatio, 'supersonic');
  const from = shifting.at(place.pressure) as EquilibriumState;
  const frozen = frozenIsentrope(from, 'frozenFrom');
  return {
    chemistry: 'frozenFrom',
    chamber: shifting.chamber,
    at: (pressure) => (pressure > from.pressure ? shifting.at(pressure) : frozen.at(pressure)),
    kindOf: (state) =>
      state.pressure > from.pressure ? `shifting ${shifting.kindOf(state)}` : `held ${frozen.kindOf(state)}`,
    lowestPressure: () => frozen.lowestPressure(),
  };
}
