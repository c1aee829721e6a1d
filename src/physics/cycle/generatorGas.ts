/** Gas for a turbine: burnt far off the best mixture so that it stays cool, or a fuel that the walls have heated. */

import { findBracketedRoot } from '../../numerics/bracketedRoot.ts';
import { ProblemError } from '../../numerics/problem.ts';
import {
  burntReactants,
  equilibrate,
  equilibriumState,
  expandBurnt,
  expandHeated,
  massRatioForEquivalence,
  type Reactants,
  type SpeciesRecord,
  workFor,
} from '../gas/index.ts';
import { type TurbineGas, turbineGasOf } from './turbineGas.ts';

/** The two propellants as they are fed, and the species that may form of them. */
export interface FedPropellants {
  readonly oxidiser: Reactants;
  readonly fuel: Reactants;
  readonly species: readonly SpeciesRecord[];
}

/** Of which propellant there is too much. */
export type Excess = 'fuel' | 'oxidiser';

/** Share of the mixture ratio that burns completely, at either end of the search [–]. */
const LEANEST = 0.004;
const NEARLY_COMPLETE = 0.9;
/** [J/kg] some hundredth of a kelvin. */
const HEAT_TOLERANCE = 50;

/**
 * The gas of chemical equilibrium at `temperature`: the mixture ratio at which the propellants burn to just that,
 *
 *   h_fed(r) = h_eq(r, T, p),      r below (fuel in excess) or above (oxidiser in excess) the complete ratio
 *
 * found between bracketing ratios; the composition is then held through the turbine.
 *
 * @param temperature T before the turbine [K]
 * @param pressure    p before the turbine [Pa]
 * @throws ProblemError `turbine-temperature-out-of-reach`, `turbine-gas-wet`
 * Assumes: equilibrium. Fuel-rich hydrocarbons do not reach it (more soot-making species and less methane form), so that their
 * real gas gives less work; see docs/methods/cycle.md.
 */
export function generatorGas(
  fed: FedPropellants,
  excess: Excess,
  temperature: number,
  pressure: number,
): TurbineGas {
  const complete = massRatioForEquivalence(fed.oxidiser, fed.fuel, 1);
  const gasAt = (ratio: number) =>
    expandBurnt(burntReactants(fed.oxidiser, fed.fuel, ratio), fed.species, {
      pressure,
      chemistry: { kind: 'frozen' },
    });
  const ratioOf = (logShare: number): number =>
    excess === 'fuel' ? complete * Math.exp(logShare) : complete / Math.exp(logShare);
  const missing = (logShare: number): number => heatLeft(fed, ratioOf(logShare), temperature, pressure);
  const [from, to] = [Math.log(LEANEST), Math.log(NEARLY_COMPLETE)];
  const [coldest, hottest] = [missing(from), missing(to)];
  if (coldest > 0 || hottest < 0) throw outOfReach(temperature, excess, coldest > 0);
  const { root } = findBracketedRoot(missing, from, to, {
    valueTolerance: HEAT_TOLERANCE,
    widthTolerance: 1e-10,
  });
  const ratio = ratioOf(root);
  const expansion = gasAt(ratio);
  if (Math.abs(expansion.chamber.temperature - temperature) > 1) {
    throw outOfReach(temperature, excess, expansion.chamber.temperature > temperature);
  }
  if (Object.keys(expansion.chamber.composition()).some(isWater)) throw wet(temperature, pressure);
  return turbineGasOf(expansion, ratio);
}

/** Condensed: `H2O(L)` and `H2O(cr)` of the data. */
const isWater = (species: string): boolean => species.startsWith('H2O(');

function wet(temperature: number, pressure: number): ProblemError {
  return new ProblemError({
    code: 'turbine-gas-wet',
    what: `At ${temperature.toPrecision(3)} K and ${(pressure / 1e5).toPrecision(3)} bar the turbine's gas would be wet: water condenses in it.`,
    why: 'How a turbine runs on wet gas is not modelled.',
    mend: 'Take a hotter gas ahead of the turbine, or less pressure there.',
    facts: { temperature, pressure },
  });
}

/** Heat that burning to `temperature` leaves over [J/kg]: above 0, the gas would be hotter. */
function heatLeft(fed: FedPropellants, ratio: number, temperature: number, pressure: number): number {
  const reactants = burntReactants(fed.oxidiser, fed.fuel, ratio);
  const work = workFor(reactants, fed.species);
  equilibrate(work, pressure, { kind: 'temperature', temperature });
  return reactants.enthalpy - equilibriumState(work).enthalpy;
}

/** The fuel alone, as gas of the one species with its atoms, at `temperature` [K]. @throws ProblemError */
export function heatedFuelGas(
  fuel: Reactants,
  species: readonly SpeciesRecord[],
  temperature: number,
  pressure: number,
): TurbineGas {
  const name = gasNameOf(fuel, species);
  const expansion = expandHeated(fuel, species, {
    pressure,
    chemistry: { kind: 'frozen' },
    temperature,
    composition: { [name]: 1 },
  });
  return turbineGasOf(expansion, null);
}

/**
 * Temperature of the fuel after it has taken up `heat` [J/kg]:  h_gas(T) = h_fed + q.
 *
 * @throws ProblemError `expander-too-cold` where the heat does not make a gas of it
 */
export function heatedFuelTemperature(
  fuel: Reactants,
  species: readonly SpeciesRecord[],
  heat: number,
  pressure: number,
): number {
  const name = gasNameOf(fuel, species);
  const missing = (temperature: number): number =>
    expandHeated(fuel, species, {
      pressure,
      chemistry: { kind: 'frozen' },
      temperature,
      composition: { [name]: 1 },
    }).chamber.enthalpy -
    fuel.enthalpy -
    heat;
  if (missing(COLDEST) > 0) throw tooCold(heat);
  if (missing(HOTTEST) < 0) {
    throw new ProblemError({
      code: 'expander-too-hot',
      what: `The walls would heat the fuel above ${HOTTEST} K.`,
      why: 'No turbine and no cooled wall stands that.',
      mend: 'State a turbineInletTemperature: not all of the heat has to reach the turbine.',
      facts: { heat },
    });
  }
  return findBracketedRoot(missing, COLDEST, HOTTEST, { valueTolerance: 1, widthTolerance: 1e-6 }).root;
}

/** [K] Below it the ideal gas of the data says little of a fuel near its saturation; above it no metal turbine turns. */
const COLDEST = 120;
const HOTTEST = 1500;

function gasNameOf(fuel: Reactants, species: readonly SpeciesRecord[]): string {
  const total = Object.values(fuel.elements).reduce((sum, moles) => sum + moles, 0);
  const found = species.filter(({ phase, elements }) => {
    if (phase !== 'gas') return false;
    const atoms = Object.values(elements).reduce((sum, count) => sum + count, 0);
    const names = new Set([...Object.keys(elements), ...Object.keys(fuel.elements)]);
    return [...names].every(
      (element) => Math.abs((elements[element] ?? 0) / atoms - (fuel.elements[element] ?? 0) / total) < 1e-6,
    );
  });
  // Of several with the same proportions (H and H₂) the one that is stable when cool has the most negative energy.
  const stable = found.sort((a, b) => a.hf298 / a.molarMass - b.hf298 / b.molarMass)[0];
  if (stable !== undefined) return stable.name;
  throw new ProblemError({
    code: 'expander-fuel-no-gas',
    what: 'This fuel does not turn into one clean gas when the walls heat it.',
    why: 'An expander drives its turbine with the fuel itself; kerosene and other blends crack and leave soot before they are a gas.',
    mend: 'Use hydrogen, methane or another single substance, or choose another cycle.',
    where: 'cycle.kind',
  });
}

function tooCold(heat: number): ProblemError {
  return new ProblemError({
    code: 'expander-too-cold',
    what: `The walls give each kilogram of fuel ${(heat / 1e3).toPrecision(3)} kJ: too little to make a warm gas of it.`,
    why: 'The heat of the walls grows slower with size than the flow that it has to warm.',
    mend: 'Make the engine smaller, state a turbineInletTemperature, or choose another cycle.',
    facts: { heat },
  });
}

function outOfReach(temperature: number, excess: Excess, tooHot: boolean): ProblemError {
  const of = excess === 'fuel' ? 'fuel' : 'oxidiser';
  return new ProblemError({
    code: 'turbine-temperature-out-of-reach',
    what: `No mixture with ${of} in excess burns to ${temperature.toFixed(0)} K before the turbine.`,
    why: tooHot
      ? `Even with hardly anything to burn the ${of} itself gives a hotter gas.`
      : `Too little burns: the gas stays colder, or turns to liquid.`,
    mend: `State a ${tooHot ? 'higher' : 'lower'} turbineInletTemperature, or the other propellant in excess.`,
    where: 'cycle.turbineInletTemperature',
    facts: { temperature },
  });
}
