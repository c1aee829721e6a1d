/** From the propellants of an engine to the gas that expands. */

import { ProblemError } from '../numerics/problem.ts';
import type { FedPropellants } from '../physics/cycle/index.ts';
import {
  blendReactants,
  burntReactants,
  compileTransport,
  type Expansion,
  expandBurnt,
  expandBurntFromInjector,
  expandHeated,
  expandPerfect,
  massRatioForEquivalence,
  type NozzleChemistry,
  type PropellantRecord,
  type Reactants,
  type SpeciesRecord,
  type TransportData,
} from '../physics/gas/index.ts';
import type { Chemistry, EngineInput, Propellants } from '../study/model.ts';
import { showStated } from './display.ts';
import { blendText, type ResolvedIngredient, resolveIngredient } from './ingredients.ts';
import { elementsKey, type Materials } from './materials.ts';

export interface WorkingGas {
  readonly expansion: Expansion;
  /** The two propellants before they meet; null where there are not two. */ readonly fed: FedPropellants | null;
  /** The same chamber with another chemistry, for the losses; null where there is no chemistry to choose. */
  readonly otherwise: ((chemistry: 'shifting' | 'frozen') => Expansion) | null;
  /** Constants of its viscosity; null where it is not known what the gas is. */ readonly transport: TransportData | null;
  readonly elements: readonly string[];
  /** In words, e.g. `oxygen and methane, mixture ratio 3.50`. */ readonly text: string;
  readonly chemistry: string;
  /** O/F by mass [–]; null where there are not two sides. */ readonly mixtureRatio: number | null;
  /** [kg/m³] as stored */ readonly bulkDensity: number | null;
  readonly records: readonly PropellantRecord[];
  readonly models: readonly string[];
  readonly omitted: readonly string[];
}

/** @throws ProblemError where the propellants cannot be found, do not burn, or leave the range of the data */
export function workingGas(input: EngineInput, materials: Materials): WorkingGas {
  const { propellants } = input;
  switch (propellants.kind) {
    case 'burnt':
      return burntGas(input, propellants, materials);
    case 'mixed':
      return mixedGas(input, propellants, materials);
    case 'heated':
      return heatedGas(input, propellants, materials);
    case 'perfect':
      return perfectGas(input, propellants);
  }
}

/** A heated gas whose chemistry stops in the chamber is held from this share of its pressure on. */
const HELD_FROM = 0.99;

type Of<Kind extends Propellants['kind']> = Extract<Propellants, { kind: Kind }>;

function burntGas(
  input: EngineInput,
  { oxidiser, fuel, mixture }: Of<'burnt'>,
  materials: Materials,
): WorkingGas {
  const oxidisers = oxidiser.map((part) => resolveIngredient(part, materials));
  const fuels = fuel.map((part) => resolveIngredient(part, materials));
  const oxidiserBlend = blendReactants(oxidisers.map(({ part }) => part));
  const fuelBlend = blendReactants(fuels.map(({ part }) => part));
  const mixtureRatio =
    mixture.by === 'massRatio'
      ? mixture.ratio.value
      : massRatioForEquivalence(oxidiserBlend, fuelBlend, mixture.ratio.value);
  const reactants = burntReactants(oxidiserBlend, fuelBlend, mixtureRatio);
  return {
    ...burning(input, reactants, materials),
    text: `${blendText(oxidisers)} with ${blendText(fuels)}, mixture ratio ${showStated('propellants.ratio', mixtureRatio).text}`,
    mixtureRatio,
    fed: {
      oxidiser: asLiquid(oxidiserBlend, oxidisers),
      fuel: asLiquid(fuelBlend, fuels),
      species: speciesFor(reactants, materials),
    },
    records: recordsOf([...oxidisers, ...fuels]),
  };
}

function mixedGas(input: EngineInput, { parts }: Of<'mixed'>, materials: Materials): WorkingGas {
  const resolved = parts.map((part) => resolveIngredient(part, materials));
  const reactants = blendReactants(resolved.map(({ part }) => part));
  return {
    ...burning(input, reactants, materials),
    text: blendText(resolved),
    mixtureRatio: null,
    fed: null,
    records: recordsOf(resolved),
  };
}

/** What oxidiser-and-fuel and one mixture have in common: they burn in the chamber. */
function burning(
  input: EngineInput,
  reactants: Reactants,
  materials: Materials,
): Omit<WorkingGas, 'text' | 'mixtureRatio' | 'records' | 'fed'> {
  const records = speciesFor(reactants, materials);
  const { pressure, pressureAt, contractionRatio } = input.chamber;
  const atInjector = pressureAt === 'injector';
  const expand = (chemistry: NozzleChemistry): Expansion =>
    atInjector
      ? expandBurntFromInjector(reactants, records, {
          injectorPressure: pressure.value,
          contractionRatio: contractionRatio.value,
          chemistry,
        }).expansion
      : expandBurnt(reactants, records, { pressure: pressure.value, chemistry });
  return {
    expansion: expand(nozzleChemistry(input.chemistry)),
    otherwise: (kind) => expand({ kind }),
    transport: compileTransport(records, materials.transport),
    elements: Object.keys(reactants.elements),
    chemistry: chemistryText(input.chemistry),
    bulkDensity: reactants.density,
    models: ['gas-equilibrium', 'gas-expansion', ...(atInjector ? ['gas-burning-chamber'] : [])],
    omitted: [
      'Heat lost through the chamber wall, uneven mixing and unburnt drops, beyond the stated efficiency.',
      atInjector
        ? 'Friction in the chamber.'
        : 'The pressure lost by burning in a chamber of finite width: the stated pressure is that at the nozzle inlet.',
    ],
  };
}

function heatedGas(
  input: EngineInput,
  { parts, temperature }: Of<'heated'>,
  materials: Materials,
): WorkingGas {
  refuseInjectorPressure(input);
  const resolved = parts.map((part) => resolveIngredient(part, materials));
  const reactants = blendReactants(resolved.map(({ part }) => part));
  const records = speciesFor(reactants, materials);
  const pressure = input.chamber.pressure.value;
  const expand = (chemistry: NozzleChemistry): Expansion =>
    expandHeated(reactants, records, {
      pressure,
      chemistry,
      temperature: temperature.value,
      composition: molesAsFed(resolved, records),
    });
  // A gas held as it was fed has another chamber than one that reacts there: no loss lies between the two.
  const otherwise =
    input.chemistry.kind === 'frozen'
      ? null
      : (kind: 'shifting' | 'frozen'): Expansion =>
          expand(kind === 'shifting' ? { kind } : { kind: 'frozenFrom', pressure: HELD_FROM * pressure });
  return {
    expansion: advisedWhenCold(input, () => expand(nozzleChemistry(input.chemistry))),
    otherwise,
    transport: compileTransport(records, materials.transport),
    elements: Object.keys(reactants.elements),
    text: `${blendText(resolved)} at ${showStated('propellants.temperature', temperature.value).text}, heated and not burnt`,
    chemistry: chemistryText(input.chemistry),
    mixtureRatio: null,
    fed: null,
    bulkDensity: null,
    records: recordsOf(resolved),
    models: ['gas-heated', 'gas-expansion'],
    omitted: [
      'How the gas is heated, and what that costs.',
      'Forces between the molecules: the gas is ideal at any pressure.',
    ],
  };
}

function perfectGas(input: EngineInput, { gamma, molarMass, temperature }: Of<'perfect'>): WorkingGas {
  refuseInjectorPressure(input);
  return {
    expansion: expandPerfect({
      gamma: gamma.value,
      molarMass: molarMass.value,
      temperature: temperature.value,
      pressure: input.chamber.pressure.value,
    }),
    otherwise: null,
    transport: null,
    elements: [],
    text: `perfect gas of γ ${showStated('propellants.gamma', gamma.value).text}, ${showStated('propellants.molarMass', molarMass.value).text}, ${showStated('propellants.temperature', temperature.value).text}`,
    chemistry: 'none: a perfect gas does not react',
    mixtureRatio: null,
    fed: null,
    bulkDensity: null,
    records: [],
    models: ['gas-perfect'],
    omitted: [
      'What the gas is made of, its chemistry, and the change of its heat capacity with temperature.',
    ],
  };
}

function speciesFor(reactants: Reactants, materials: Materials): readonly SpeciesRecord[] {
  const records = materials.species.get(elementsKey(reactants.elements));
  if (records === undefined)
    throw new Error(`Species of ${elementsKey(reactants.elements)} were not gathered`);
  refuseWithoutMainProduct(reactants, records);
  return records;
}

/** Two elements whose compound would be the main product must have one in the data, or every number would be wrong. */
function refuseWithoutMainProduct({ elements }: Reactants, records: readonly SpeciesRecord[]): void {
  const holdsBoth = (of: Readonly<Record<string, number>>) => (of.Al ?? 0) > 0 && (of.F ?? 0) > 0;
  if (!holdsBoth(elements) || records.some((record) => holdsBoth(record.elements))) return;
  throw new ProblemError({
    code: 'main-product-not-in-data',
    what: 'The mixture holds aluminium and fluorine, and the species data has no compound of the two.',
    why: 'they would be most of what leaves the chamber, so that every number would be wrong without them',
    mend: 'Burn the aluminium with oxygen or perchlorate, or use fluorine with a fuel without aluminium.',
    where: 'propellants',
  });
}

/** What is stored as a gas has no density to be pumped with. */
function asLiquid(blend: Reactants, parts: readonly ResolvedIngredient[]): Reactants {
  return parts.some(({ record }) => record?.phase === 'gas') ? { ...blend, density: null } : blend;
}

function recordsOf(resolved: readonly ResolvedIngredient[]): readonly PropellantRecord[] {
  return resolved.flatMap(({ record }) => record ?? []);
}

function nozzleChemistry(chemistry: Chemistry): NozzleChemistry {
  if (chemistry.kind !== 'frozenFrom') return chemistry;
  return 'areaRatio' in chemistry
    ? { kind: 'frozenFrom', areaRatio: chemistry.areaRatio.value }
    : { kind: 'frozenFrom', pressure: chemistry.pressure.value };
}

function chemistryText(chemistry: Chemistry): string {
  switch (chemistry.kind) {
    case 'shifting':
      return 'shifting: the composition follows the expansion';
    case 'frozen':
      return 'frozen: the composition of the chamber is kept';
    case 'frozenFrom': {
      const where =
        'areaRatio' in chemistry
          ? `area ratio ${showStated('chemistry.areaRatio', chemistry.areaRatio.value).text}`
          : showStated('chemistry.pressure', chemistry.pressure.value).text;
      return `shifting to ${where}, frozen from there`;
    }
  }
}

/** Moles of each fed gas: the species of the data with the atoms of the ingredient. */
function molesAsFed(
  resolved: readonly ResolvedIngredient[],
  records: readonly SpeciesRecord[],
): Readonly<Record<string, number>> {
  const moles: Record<string, number> = {};
  for (const { name, part } of resolved) {
    const species = records.find(
      (record) => record.phase === 'gas' && sameFormula(record.elements, part.elements),
    );
    if (species === undefined) {
      throw new ProblemError({
        code: 'gas-not-one-species',
        what: `“${name}” is not one species of the gas data, so it cannot be heated as it is.`,
        mend: 'Use chemistry: shifting, which lets it turn into what it becomes at that temperature, or name a single gas such as hydrogen, nitrogen or helium.',
      });
    }
    moles[species.name] = (moles[species.name] ?? 0) + part.share / part.molarMass;
  }
  return moles;
}

function sameFormula(a: Readonly<Record<string, number>>, b: Readonly<Record<string, number>>): boolean {
  const elements = new Set([...Object.keys(a), ...Object.keys(b)]);
  return [...elements].every((element) => (a[element] ?? 0) === (b[element] ?? 0));
}

function refuseInjectorPressure(input: EngineInput): void {
  if (input.chamber.pressureAt !== 'injector') return;
  throw new ProblemError({
    code: 'injector-pressure-without-burning',
    what: 'The pressure is stated at the injector, but nothing burns in this chamber.',
    why: 'The loss between injector and nozzle is worked out for burning propellants only.',
    mend: 'State the pressure at the nozzle inlet: pressureAt: nozzle.',
    where: `${input.chamber.pressure.path}At`,
  });
}

/** A gas that has cooled out of the equilibrium data does not react any more: say which word asks for that. */
export function advisedWhenCold<T>(input: EngineInput, compute: () => T): T {
  try {
    return compute();
  } catch (error) {
    const cold = ['temperature-below-range', 'expansion-beyond-data'];
    if (
      !(error instanceof ProblemError) ||
      input.propellants.kind !== 'heated' ||
      input.chemistry.kind !== 'shifting' ||
      !cold.includes(error.problem.code)
    ) {
      throw error;
    }
    throw new ProblemError({
      ...error.problem,
      mend: 'Add chemistry: frozen to this engine: a gas this cold does not react, and then the model reaches further down.',
    });
  }
}
