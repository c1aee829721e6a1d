/**
 * Seeded random chambers and expansions over the whole stated range, each run and checked.
 * Invented mixtures: what is asked of them are laws, not numbers.
 */
import { ProblemError } from '../../src/numerics/problem.ts';
import {
  blendReactants,
  burntReactants,
  type Expansion,
  equilibrate,
  equilibriumState,
  expandBurnt,
  type FlowState,
  type NozzleChemistry,
  type PropellantRecord,
  type Reactants,
  type SpeciesRecord,
  workFor,
} from '../../src/physics/gas/index.ts';
import { type Random, randomFrom } from './random.ts';

export interface GasRows {
  readonly species: readonly SpeciesRecord[];
  readonly propellants: readonly PropellantRecord[];
}

export interface GasCase {
  readonly seed: number;
  readonly origin: string;
  readonly reactants: Reactants;
  /** [Pa] */ readonly pressure: number;
  readonly chemistry: NozzleChemistry;
  readonly areaRatios: readonly { readonly areaRatio: number; readonly side: 'subsonic' | 'supersonic' }[];
  /** Temperature [K] that the chamber must come back to, where the case was made from one. */
  readonly temperature: number | null;
}

/** `solved`, or the code of the typed error; `wrong …` when a law is broken. */
export interface GasVerdict {
  readonly seed: number;
  readonly outcome: string;
  readonly stations: number;
  readonly detail: string;
}

const ELEMENTS = ['H', 'C', 'N', 'O', 'Al', 'Cl', 'F'];
const MASS: Readonly<Record<string, number>> = {
  H: 1.00794e-3,
  C: 12.0107e-3,
  N: 14.0067e-3,
  O: 15.9994e-3,
  Al: 26.981538e-3,
  Cl: 35.453e-3,
  F: 18.9984032e-3,
};

export function makeGasCase(seed: number, rows: GasRows): GasCase | GasVerdict {
  const random = randomFrom(seed);
  const pressure = 10 ** random.between(2, 8);
  const chemistry = pickChemistry(random);
  const areaRatios = Array.from({ length: 3 }, () => ({
    areaRatio: 10 ** random.between(Math.log10(1.05), Math.log10(400)),
    side: random.chance(0.25) ? ('subsonic' as const) : ('supersonic' as const),
  }));
  const base = { seed, pressure, chemistry, areaRatios };
  if (random.chance(0.45)) return { ...base, ...burntCase(random, rows), temperature: null };
  return atomsCase(random, rows, base);
}

function pickChemistry(random: Random): NozzleChemistry {
  const kind = random.between(0, 1);
  if (kind < 0.5) return { kind: 'shifting' };
  if (kind < 0.85) return { kind: 'frozen' };
  return { kind: 'frozenFrom', areaRatio: 10 ** random.between(0.02, 1) };
}

function burntCase(random: Random, rows: GasRows): { origin: string; reactants: Reactants } {
  const oxidisers = rows.propellants.filter((p) => p.role === 'oxidizer');
  const fuels = rows.propellants.filter((p) => p.role === 'fuel');
  const oxidiser = random.pick(oxidisers);
  const fuel = random.pick(fuels);
  const one = (p: PropellantRecord): Reactants => blendReactants([{ ...p, share: 1 }]);
  const side = random.between(0, 1);
  const ratio = side < 0.03 ? 0 : 10 ** random.between(-1.3, 1.6);
  const reactants = side > 0.97 ? one(oxidiser) : burntReactants(one(oxidiser), one(fuel), ratio);
  return {
    origin: `${oxidiser.id}/${fuel.id} ${side > 0.97 ? 'oxidiser alone' : ratio.toPrecision(4)}`,
    reactants,
  };
}

/** Random atoms whose enthalpy is that of a random temperature: the chamber must find its way back to it. */
function atomsCase(
  random: Random,
  rows: GasRows,
  base: Omit<GasCase, 'origin' | 'reactants' | 'temperature'>,
): GasCase | GasVerdict {
  const count = 1 + Math.floor(random.between(0, 5));
  const chosen = random.shuffle(ELEMENTS).slice(0, count);
  const raw = chosen.map(() => 10 ** random.between(-1.5, 1.5));
  const mass = chosen.reduce((sum, element, i) => sum + raw[i]! * MASS[element]!, 0);
  const elements = Object.fromEntries(chosen.map((element, i) => [element, raw[i]! / mass]));
  const temperature = random.between(300, 5800);
  const origin = `${chosen.map((e, i) => `${e}${raw[i]!.toPrecision(3)}`).join(' ')} at ${temperature.toFixed(0)} K`;
  try {
    const work = workFor({ elements, enthalpy: 0, density: null }, rows.species);
    equilibrate(work, base.pressure, { kind: 'temperature', temperature });
    const { enthalpy } = equilibriumState(work);
    return { ...base, origin, reactants: { elements, enthalpy, density: null }, temperature };
  } catch (error) {
    return { ...verdictOf(error, base.seed), detail: `${origin}: ${(error as Error).message}` };
  }
}

/** Codes that say: outside what the data or nature allow. All others are failures of the method. */
export const PHYSICAL_REASONS: Readonly<Record<string, string>> = {
  'mixture-cannot-burn':
    'the products would be below 200 K or wholly condensed: such a mixture is no rocket gas',
  'temperature-above-range': 'the gas would be hotter than 6000 K, where the species data end',
  'expansion-beyond-data': 'the reacting gas cools below 200 K before the area ratio asked for',
  'no-gas-left': 'everything condenses at that temperature and pressure',
  'condensed-beyond-data':
    'a substance would condense above the highest temperature of its data (water at 600 K)',
  'temperature-below-range': 'the reacting gas would be colder than 200 K',
};

function verdictOf(error: unknown, seed: number): GasVerdict {
  if (!(error instanceof ProblemError)) throw error;
  return { seed, outcome: error.problem.code, stations: 0, detail: error.message };
}

export function runGasCase(made: GasCase | GasVerdict, rows: GasRows): GasVerdict {
  if ('outcome' in made) return made;
  const { seed, reactants, pressure, chemistry, areaRatios } = made;
  let expansion: Expansion;
  try {
    expansion = expandBurnt(reactants, rows.species, { pressure, chemistry });
  } catch (error) {
    return { ...verdictOf(error, seed), detail: `${made.origin}: ${(error as Error).message}` };
  }
  const wrong = checkChamber(made, expansion);
  if (wrong) return { seed, outcome: `wrong ${wrong}`, stations: 0, detail: made.origin };
  let stations = 0;
  let ended: GasVerdict | null = null;
  for (const { areaRatio, side } of areaRatios) {
    try {
      const state = expansion.atAreaRatio(areaRatio, side);
      if (!hasNumbersOrReason(state)) return { seed, outcome: 'wrong number', stations, detail: made.origin };
      const misses: [string, number, number][] = [
        ['area', Math.abs(state.areaRatio / areaRatio - 1), 1e-8],
        ['entropy', Math.abs(state.entropy / expansion.chamber.entropy - 1), 1e-9],
        [
          'energy',
          Math.abs(state.enthalpy + state.velocity ** 2 / 2 - expansion.chamber.enthalpy) /
            (Math.abs(expansion.chamber.enthalpy) + 1e5),
          // The data's own steps where two ranges meet (3e-7 of h/RT at 1000 K) bound this.
          1e-7,
        ],
      ];
      const broken = misses.find(([, miss, allowed]) => !(miss < allowed));
      if (broken) {
        return {
          seed,
          outcome: `wrong ${broken[0]}`,
          stations,
          detail: `${made.origin} ${side} ${areaRatio}: ${broken[1]}`,
        };
      }
      stations++;
    } catch (error) {
      ended = { ...verdictOf(error, seed), detail: `${made.origin}: ${(error as Error).message}` };
      if (!(ended.outcome in PHYSICAL_REASONS)) return ended;
    }
  }
  return ended && stations === 0 ? ended : { seed, outcome: 'solved', stations, detail: made.origin };
}

/** Numbers throughout; what has no value is absent, and only with the reason. */
function hasNumbersOrReason(state: FlowState): boolean {
  const { temperature, pressure, density, velocity, enthalpy, entropy } = state;
  const { soundSpeed, isentropicExponent, cpEquilibrium, mach, dlnVdlnT, dlnVdlnp } = state;
  const positive = [soundSpeed, isentropicExponent, cpEquilibrium, mach];
  // Not the expansivity: a gas that condenses on being heated shrinks.
  const derivatives = [...positive, dlnVdlnT, dlnVdlnp];
  return (
    [temperature, pressure, density, velocity, enthalpy, entropy].every(Number.isFinite) &&
    derivatives.every((value) => (value === null ? state.absent !== null : Number.isFinite(value))) &&
    positive.every((value) => value === null || value > 0)
  );
}

function checkChamber(made: GasCase, expansion: Expansion): string | null {
  const { chamber, throat } = expansion;
  if (!hasNumbersOrReason(throat)) return 'number';
  if (!Number.isFinite(expansion.characteristicVelocity)) return 'characteristic velocity';
  const scale = Math.abs(made.reactants.enthalpy) + 1e5;
  if (!(Math.abs(chamber.enthalpy - made.reactants.enthalpy) < 1e-9 * scale)) return 'chamber enthalpy';
  if (made.temperature !== null && chamber.absent === null) {
    // Coming back to the temperature: as sharp as the heat capacity allows.
    if (!(Math.abs(chamber.temperature / made.temperature - 1) < 1e-7)) return 'way back to the temperature';
  }
  // The throat is where the mass flux is greatest, wherever M = 1 may lie: a phase change can make several tops.
  for (const share of [0.999, 0.98, 0.94, 0.9, 0.86, 0.82, 0.78, 1.001, 1.02, 1.06, 1.1, 1.14, 1.18]) {
    const pressure = throat.pressure * share;
    if (pressure >= chamber.pressure || !reaches(expansion, pressure)) continue;
    if (expansion.atPressure(pressure).massFlux > throat.massFlux * (1 + 1e-8)) return 'throat';
  }
  return null;
}

function reaches(expansion: Expansion, pressure: number): boolean {
  try {
    expansion.atPressure(pressure);
    return true;
  } catch (error) {
    if (error instanceof ProblemError) return false;
    throw error;
  }
}
