/**
 * Seeded random nozzles of every family over the whole stated range, on perfect and on burnt gases, each run and checked.
 * Invented designs: what is asked of them are laws, not numbers.
 */
import { ProblemError } from '../../src/numerics/problem.ts';
import {
  type Expansion,
  expandBurnt,
  expandPerfect,
  type SpeciesRecord,
} from '../../src/physics/gas/index.ts';
import {
  type NozzleModel,
  type NozzleSpec,
  nozzleModel,
  type ThrustAt,
} from '../../src/physics/nozzle/index.ts';
import { type Random, randomFrom } from './random.ts';

export type NozzleFamily = NozzleSpec['kind'];

/** A gas already expanded: made once, used by many nozzles. */
export interface NozzleGas {
  readonly name: string;
  readonly expansion: Expansion;
}

export interface NozzleCase {
  readonly seed: number;
  readonly gas: NozzleGas;
  readonly spec: NozzleSpec;
  /** Chamber over ambient pressure [–]. */ readonly pressureRatios: readonly number[];
}

export interface NozzleVerdict {
  readonly seed: number;
  readonly family: NozzleFamily;
  /** `solved`, the code of the typed error, or `wrong …` when a law is broken. */ readonly outcome: string;
  readonly detail: string;
}

export const FAMILIES: readonly NozzleFamily[] = [
  'cone',
  'bell',
  'plug',
  'dualBell',
  'extendableSkirt',
  'insert',
  'idealBell',
  'expansionDeflection',
  'ideal',
  'adapting',
];

/** Typed errors that nature or the data stand behind. */
export const PHYSICAL_REASONS: Readonly<Record<string, string>> = {
  'plug-turn-too-large':
    'the flow at the lip would have to come from further out than straight towards the axis',
  'inner-mach-too-large': 'nothing is left for the plug to expand',
  'deflected-flow-chokes':
    'a strong shock inside leaves the flow subsonic: the outer wall turns it back too sharply',
  'expansion-beyond-data': 'the gas cools below what its data cover before the area ratio asked for',
  'temperature-below-range': 'the gas would be colder than its data',
  'flow-outside-table': 'part of the flow would be colder or thinner than the data of the gas',
  'bell-angles-do-not-join':
    'no parabola has these angles at this length: the straight line is steeper or flatter',
  'dual-bell-kink-too-flat':
    'a wall of constant pressure behind so flat a kink bends back before the area ratio',
  'dual-bell-too-long': 'no wall of constant pressure is as long as asked',
  'dual-bell-length-out-of-reach': 'no kink makes a wall of constant pressure of that length',
  'ideal-bell-cannot-be-so': 'no ideal contour cut there is as short or as long as asked',
  'deflection-walls-do-not-join': 'no parabola joins these angles at this length',
  'pintle-too-small': 'the opening inside the throat is too narrow for the gas and the stem',
  'wake-never-closes': 'behind so wide a pintle the flow never meets the axis',
  'insert-does-not-fit': 'the walls of insert and bell would cross',
  'cone-within-throat-arc': 'the lip is reached before the throat arc has turned to the angle',
};

/** Perfect gases over the range of exhausts, and burnt ones of three kinds. */
export function nozzleGases(
  species: readonly SpeciesRecord[],
  burnt: readonly { readonly name: string; readonly reactants: Parameters<typeof expandBurnt>[0] }[],
): readonly NozzleGas[] {
  const perfect = [1.12, 1.16, 1.2, 1.25, 1.3, 1.4].map((gamma) => ({
    name: `perfect ${gamma}`,
    expansion: expandPerfect({ gamma, molarMass: 0.022, temperature: 3400, pressure: 1e7 }),
  }));
  const real = burnt.flatMap(({ name, reactants }) =>
    (['shifting', 'frozen'] as const).map((kind) => ({
      name: `${name} ${kind}`,
      expansion: expandBurnt(reactants, species, { pressure: 1e7, chemistry: { kind } }),
    })),
  );
  return [...perfect, ...real];
}

export function makeNozzleCase(seed: number, gases: readonly NozzleGas[]): NozzleCase {
  const random = randomFrom(seed);
  const family = FAMILIES[seed % FAMILIES.length]!;
  const pressureRatios = [
    10 ** random.between(0.4, 1.3),
    10 ** random.between(1.3, 2),
    10 ** random.between(2, 3.5),
  ];
  return { seed, gas: random.pick(gases), spec: SPECS[family]!(random), pressureRatios };
}

const logBetween = (random: Random, low: number, high: number): number =>
  10 ** random.between(Math.log10(low), Math.log10(high));

/** Area ratios of the whole range that built nozzles have had, and beyond: 2 to 400. */
const areaRatioOf = (random: Random): number => logBetween(random, 2, 400);

const SPECS: Readonly<Record<string, (random: Random) => NozzleSpec>> = {
  ideal: (random) => ({ kind: 'ideal', areaRatio: areaRatioOf(random) }),
  adapting: (random) => ({ kind: 'adapting', areaRatio: areaRatioOf(random) }),
  cone: (random) => ({
    kind: 'cone',
    areaRatio: areaRatioOf(random),
    halfAngle: (random.between(8, 30) * Math.PI) / 180,
  }),
  bell: (random) => ({
    kind: 'bell',
    areaRatio: logBetween(random, 4, 400),
    length: random.between(0.6, 1),
  }),
  plug: (random) => ({
    kind: 'plug',
    form: random.chance(0.5) ? 'annular' : 'linear',
    areaRatio: logBetween(random, 3, 250),
    kept: random.chance(0.2) ? 1 : random.between(0.05, 0.9),
    ...(random.chance(0.3) && { innerMach: random.between(1, 3) }),
  }),
  idealBell: (random) => {
    const areaRatio = logBetween(random, 4, 200);
    if (random.chance(0.2)) return { kind: 'idealBell', areaRatio };
    return { kind: 'idealBell', areaRatio, length: random.between(0.65, 1.1) };
  },
  expansionDeflection: (random) => ({
    kind: 'expansionDeflection',
    areaRatio: logBetween(random, 8, 100),
    pintleAreaRatio: random.between(0.5, 3),
    length: random.between(0.4, 0.8),
    throatAngle: (random.between(40, 70) * Math.PI) / 180,
    lipAngle: (random.between(4, 14) * Math.PI) / 180,
  }),
  dualBell: (random) => {
    const baseAreaRatio = logBetween(random, 6, 60);
    return {
      kind: 'dualBell',
      areaRatio: baseAreaRatio * random.between(1.6, 4),
      baseAreaRatio,
      baseLength: random.between(0.7, 0.9),
      shape: random.chance(0.5)
        ? { kink: (random.between(8, 22) * Math.PI) / 180 }
        : { extensionLength: random.between(0.6, 1) },
      pressureRise: 0,
    };
  },
  extendableSkirt: (random) => {
    const shortAreaRatio = logBetween(random, 8, 80);
    return {
      kind: 'extendableSkirt',
      areaRatio: shortAreaRatio * random.between(1.5, 4),
      shortAreaRatio,
      length: random.between(0.7, 1),
    };
  },
  insert: (random) => {
    const insertAreaRatio = logBetween(random, 6, 60);
    return {
      kind: 'insert',
      areaRatio: insertAreaRatio * random.between(1.6, 4),
      insertAreaRatio,
      length: random.between(0.7, 1),
      insertLength: random.between(0.7, 1),
    };
  },
};

/** Thrust by surfaces and by the boundary may differ by this share. */
const TWICE = 0.003;
/** And by this where it is said why. */
const TOLD = 0.02;
/** How far the mass flow of a field may fail to close. */
const MASS = 0.003;

export function runNozzleCase(made: NozzleCase): NozzleVerdict {
  const { seed, spec, gas } = made;
  const verdict = (outcome: string, detail: string): NozzleVerdict => ({
    seed,
    family: spec.kind,
    outcome,
    detail: `${gas.name}, ${JSON.stringify(spec)}: ${detail}`,
  });
  try {
    const wrong = checkNozzle(nozzleModel(spec, gas.expansion), made);
    return wrong === null ? verdict('solved', '') : verdict(`wrong ${wrong.law}`, wrong.detail);
  } catch (error) {
    if (!(error instanceof ProblemError)) throw error;
    return verdict(error.problem.code, error.problem.what);
  }
}

interface Wrong {
  readonly law: string;
  readonly detail: string;
}

function checkNozzle(model: NozzleModel, { spec, gas, pressureRatios }: NozzleCase): Wrong | null {
  const p0 = gas.expansion.chamber.pressure;
  const rows = [0, ...pressureRatios.map((ratio) => p0 / ratio)]
    .sort((a, b) => a - b)
    .map((p) => model.at(p));
  const ideal = idealVacuum(gas.expansion, spec.areaRatio);
  const vacuum = rows[0]!.thrustCoefficient;
  if (vacuum === null) return { law: 'vacuum thrust', detail: rows[0]!.absent ?? 'no reason' };
  // No nozzle of this area ratio can beat the ideal one; 0.3 % is what the fields themselves are good for.
  if (!(vacuum > 0.6 * ideal && vacuum < 1.003 * ideal)) {
    return { law: 'vacuum thrust', detail: `${vacuum} against the ideal ${ideal}` };
  }
  // Where the two roads to the thrust part, the field's own balance says why; on a plug with strong waves the answer does.
  const told = model.balance()?.note != null || spec.kind === 'plug';
  for (const row of rows) {
    const wrong = checkTwice(row, told);
    if (wrong !== null) return wrong;
  }
  return checkOrder(rows) ?? checkField(model, spec);
}

function idealVacuum(expansion: Expansion, areaRatio: number): number {
  const exit = expansion.atAreaRatio(areaRatio, 'supersonic');
  return (exit.massFlux * exit.velocity + exit.pressure) * (areaRatio / expansion.chamber.pressure);
}

function checkTwice(row: ThrustAt, told: boolean): Wrong | null {
  const { thrustCoefficient: value, parts, boundary, ambientPressure } = row;
  if (value === null) return row.absent === null ? { law: 'absence without reason', detail: '' } : null;
  if (!Number.isFinite(value)) return { law: 'number', detail: `${value}` };
  if (parts.length === 0) {
    return row.partsAbsent === null ? { law: 'parts without reason', detail: '' } : null;
  }
  const sum = parts.reduce((total, { coefficient }) => total + coefficient, 0);
  const scale = Math.max(Math.abs(value), 0.5);
  if (Math.abs(sum - value) > 1e-6 * scale) {
    return { law: 'sum of parts', detail: `${sum} against ${value} at ${ambientPressure} Pa` };
  }
  if (boundary !== null && Math.abs(boundary - value) > (told ? TOLD : TWICE) * scale) {
    return { law: 'thrust twice', detail: `${value} and ${boundary} at ${ambientPressure} Pa` };
  }
  return null;
}

/** More ambient pressure never gives more thrust while the flow fills the nozzle; what is left of it behind the place where it lets go is a band. */
function checkOrder(rows: readonly ThrustAt[]): Wrong | null {
  const given = rows.filter(
    ({ thrustCoefficient, flow }) => thrustCoefficient !== null && flow.state !== 'separated',
  );
  for (let i = 1; i < given.length; i++) {
    const [less, more] = [given[i - 1]!, given[i]!];
    if (more.thrustCoefficient! > less.thrustCoefficient! + 0.002) {
      return {
        law: 'order of thrust',
        detail: `${less.thrustCoefficient} at ${less.ambientPressure} Pa, ${more.thrustCoefficient} at ${more.ambientPressure} Pa`,
      };
    }
  }
  return null;
}

function checkField(model: NozzleModel, spec: NozzleSpec): Wrong | null {
  if (spec.kind === 'ideal' || spec.kind === 'adapting') return null;
  const stations = model.wallStations();
  if (stations === null) return { law: 'wall without field', detail: '' };
  if (!stations.every(({ pressure }) => pressure > 0 && Number.isFinite(pressure))) {
    return { law: 'wall pressure', detail: '' };
  }
  const balance = model.balance();
  if (balance === null) return null;
  if (Math.abs(balance.mass) > MASS && balance.note === null) {
    return { law: 'mass balance', detail: `${balance.mass}` };
  }
  return null;
}
