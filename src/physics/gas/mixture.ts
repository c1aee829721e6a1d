/**
 * A mixture compiled for computing: the species that can form from a set of elements, their element
 * matrix and their thermodynamic coefficients in flat arrays, sorted gases first, then substances that
 * can condense (each with its phases, ordered by temperature).
 */
import { ProblemError } from '../../numerics/problem.ts';
import type { SpeciesRecord, ThermoRange } from './records.ts';

/** Coefficients of one species in one range: a1…a7, b1, b2. */
export const COEFFICIENTS = 9;

/** [K] range of the equilibrium: the lower end of the species data and their upper end. */
export const LOWEST_TEMPERATURE = 200;
export const HIGHEST_TEMPERATURE = 6000;
/** [K] down to which the constant-cp continuation below the data is used, for gases of held composition. */
export const LOWEST_CONTINUED_TEMPERATURE = 4;

/** One pure phase of a substance that condenses. */
export interface CondensedPhase {
  readonly name: string;
  readonly phase: 'solid' | 'liquid';
  /** Index among all condensed phases of the mixture. */
  readonly index: number;
  /** [K] where this phase begins and ends to be the stable form of its substance. */
  readonly from: number;
  readonly to: number;
}

/** A chemical substance whose pure phases follow each other with temperature: ice, then water. */
export interface Substance {
  /** Species index in the element matrix (after the gases). */
  readonly index: number;
  readonly phases: readonly CondensedPhase[];
  /** [K] temperatures at which one phase turns into the next. */
  readonly transitions: readonly number[];
  /** [K] highest temperature of its data. */
  readonly highest: number;
  readonly molarMass: number;
  /** Ranges of all phases in order: upper temperature, phase index, coefficients. */
  readonly rangeTo: Float64Array;
  readonly rangePhase: Int32Array;
  readonly coefficients: Float64Array;
}

export interface Mixture {
  readonly elements: readonly string[];
  readonly gases: readonly string[];
  readonly substances: readonly Substance[];
  readonly phases: readonly CondensedPhase[];
  /** Gases and substances together. */
  readonly speciesCount: number;
  /** a[i·E + j]: atoms of element j in one unit of species i. */
  readonly formula: Float64Array;
  /** [kg/mol] of gases and substances. */
  readonly molarMass: Float64Array;
  /** Upper ends of the temperature segments of the gas table [K]; the first segment lies below the data. */
  readonly gasSegmentTo: Float64Array;
  /** One table of 9 coefficients a gas for each segment. */
  readonly gasCoefficients: readonly Float64Array[];
  /** The records it was made from. */
  readonly records: readonly SpeciesRecord[];
}

/** Which species may form: every one of the data, or the short list that is enough for rocket gases. */
export type SpeciesChoice = 'all' | 'core';

export function chooseSpecies(
  records: readonly SpeciesRecord[],
  choice: SpeciesChoice,
): readonly SpeciesRecord[] {
  return choice === 'all' ? records : records.filter((record) => record.core);
}

const compiled = new WeakMap<readonly SpeciesRecord[], Map<string, Mixture>>();

/**
 * The mixture of all `records` that are made of nothing but `elements`. Kept for the same list of records,
 * so asking again costs nothing.
 */
export function compileMixture(records: readonly SpeciesRecord[], elements: Iterable<string>): Mixture {
  const names = [...new Set(elements)].sort();
  const key = names.join(' ');
  let byElements = compiled.get(records);
  if (!byElements) {
    byElements = new Map();
    compiled.set(records, byElements);
  }
  let mixture = byElements.get(key);
  if (!mixture) {
    mixture = buildMixture(records, names);
    byElements.set(key, mixture);
  }
  return mixture;
}

function buildMixture(records: readonly SpeciesRecord[], elements: readonly string[]): Mixture {
  const allowed = new Set(elements);
  const fitting = records.filter((record) =>
    Object.entries(record.elements).every(([element, atoms]) => atoms === 0 || allowed.has(element)),
  );
  const gasRecords = fitting.filter((record) => record.phase === 'gas');
  const held = new Set(fitting.flatMap((record) => Object.keys(record.elements)));
  for (const element of elements)
    if (!held.has(element))
      throw new ProblemError({
        code: 'element-without-species',
        what: `No species of the data holds the element ${element} together with ${elements.join(', ')} alone.`,
        mend: 'Add species of this element, or leave the element out of the mixture.',
        facts: { element },
      });
  const { substances, phases } = buildSubstances(
    fitting.filter((record) => record.phase !== 'gas'),
    gasRecords.length,
  );
  const speciesCount = gasRecords.length + substances.length;
  const formula = new Float64Array(speciesCount * elements.length);
  const molarMass = new Float64Array(speciesCount);
  const fill = (i: number, record: SpeciesRecord): void => {
    elements.forEach((element, j) => {
      formula[i * elements.length + j] = record.elements[element] ?? 0;
    });
    molarMass[i] = record.molarMass;
  };
  gasRecords.forEach((record, i) => {
    fill(i, record);
  });
  for (const substance of substances) {
    const name = substance.phases[0]!.name;
    fill(substance.index, fitting.find((record) => record.name === name)!);
  }
  const breaks = new Set<number>([LOWEST_TEMPERATURE]);
  for (const record of gasRecords) for (const range of record.ranges) breaks.add(range.Tmax);
  const gasSegmentTo = Float64Array.from([...breaks].filter((T) => T >= LOWEST_TEMPERATURE)).sort();
  const gasCoefficients = [...gasSegmentTo].map((to, s) => {
    const table = new Float64Array(gasRecords.length * COEFFICIENTS);
    gasRecords.forEach((record, i) => {
      table.set(s === 0 ? continuedBelow(record) : rangeEndingAt(record, to), i * COEFFICIENTS);
    });
    return table;
  });
  return {
    elements,
    gases: gasRecords.map((record) => record.name),
    substances,
    phases,
    speciesCount,
    formula,
    molarMass,
    gasSegmentTo,
    gasCoefficients,
    records,
  };
}

/** Coefficients of the range that covers the temperatures just below `to`. */
function rangeEndingAt(record: SpeciesRecord, to: number): number[] {
  const range =
    record.ranges.find((r) => r.Tmin < to && to <= r.Tmax) ?? record.ranges[record.ranges.length - 1]!;
  return [...range.a, ...range.b];
}

/**
 * Constant-cp continuation below a record's lowest temperature T0 (at least 200 K for gases):
 * cp(T) = cp(T0), h and s continuous at T0. In the nine-coefficient form: a3 = cp/R, b1 = T0 (h/RT − cp/R),
 * b2 = s/R − cp/R ln T0.
 */
function continuedBelow(record: SpeciesRecord): number[] {
  const range = record.ranges.find((r) => r.Tmax > LOWEST_TEMPERATURE)!;
  return constantCpFrom(range, Math.max(range.Tmin, LOWEST_TEMPERATURE));
}

function constantCpFrom(range: ThermoRange, T: number): number[] {
  const [a1, a2, a3, a4, a5, a6, a7] = range.a as [number, number, number, number, number, number, number];
  const [b1, b2] = range.b as [number, number];
  const lnT = Math.log(T);
  const cp = a1 / T ** 2 + a2 / T + a3 + T * (a4 + T * (a5 + T * (a6 + T * a7)));
  const h =
    -a1 / T ** 2 + (a2 * lnT) / T + a3 + T * (a4 / 2 + T * (a5 / 3 + T * (a6 / 4 + (T * a7) / 5))) + b1 / T;
  const s =
    -a1 / (2 * T ** 2) - a2 / T + a3 * lnT + T * (a4 + T * (a5 / 2 + T * (a6 / 3 + (T * a7) / 4))) + b2;
  return [0, 0, cp, 0, 0, 0, 0, T * (h - cp), s - cp * lnT];
}

function formulaKey(record: SpeciesRecord): string {
  return Object.entries(record.elements)
    .filter(([, atoms]) => atoms !== 0)
    .map(([element, atoms]) => `${element}${atoms}`)
    .sort()
    .join(' ');
}

function buildSubstances(records: readonly SpeciesRecord[], firstIndex: number) {
  const groups = new Map<string, SpeciesRecord[]>();
  for (const record of records) {
    const group = groups.get(formulaKey(record));
    if (group) group.push(record);
    else groups.set(formulaKey(record), [record]);
  }
  const phases: CondensedPhase[] = [];
  const substances = [...groups.values()].map((group, g): Substance => {
    const ordered = group.toSorted((p, q) => p.ranges[0]!.Tmin - q.ranges[0]!.Tmin);
    const to: number[] = [];
    const phaseOf: number[] = [];
    const coefficients: number[] = [];
    const own = ordered.map((record, k): CondensedPhase => {
      const index = phases.length;
      const lowest = record.ranges[0]!.Tmin;
      if (k === 0) {
        to.push(lowest);
        phaseOf.push(index);
        coefficients.push(...constantCpFrom(record.ranges[0]!, lowest));
      }
      for (const range of record.ranges) {
        to.push(range.Tmax);
        phaseOf.push(index);
        coefficients.push(...range.a, ...range.b);
      }
      const phase: CondensedPhase = {
        name: record.name,
        phase: record.phase === 'solid' ? 'solid' : 'liquid',
        index,
        from: k === 0 ? 0 : lowest,
        to: record.ranges[record.ranges.length - 1]!.Tmax,
      };
      phases.push(phase);
      return phase;
    });
    const phasesOwn = joinWhereEqual(own, to, phaseOf, coefficients);
    for (const phase of phasesOwn) phases[phase.index] = phase;
    return {
      index: firstIndex + g,
      phases: phasesOwn,
      transitions: phasesOwn.slice(1).map((phase) => phase.from),
      highest: own[own.length - 1]!.to,
      molarMass: ordered[0]!.molarMass,
      rangeTo: Float64Array.from(to),
      rangePhase: Int32Array.from(phaseOf),
      coefficients: Float64Array.from(coefficients),
    };
  });
  return { substances, phases };
}

/**
 * Let each phase end and the next begin where their Gibbs energies are equal, which in the data is within a fraction of a
 * kelvin of the temperature that separates their ranges (ice and water differ by 3e-4 RT there). Only so do both stand
 * together at exactly one temperature.
 */
function joinWhereEqual(
  own: readonly CondensedPhase[],
  to: number[],
  phaseOf: readonly number[],
  coefficients: readonly number[],
): CondensedPhase[] {
  const joined = own.map((phase) => ({ ...phase }));
  for (let k = 0; k + 1 < joined.length; k++) {
    const lower = joined[k]!;
    const upper = joined[k + 1]!;
    const lastRow = phaseOf.lastIndexOf(lower.index);
    const firstRow = phaseOf.indexOf(upper.index);
    const gap = (T: number): number => gibbsOf(coefficients, lastRow, T) - gibbsOf(coefficients, firstRow, T);
    const T = equalNear(gap, upper.from);
    joined[k] = { ...lower, to: T };
    joined[k + 1] = { ...upper, from: T };
    to[lastRow] = T;
  }
  return joined;
}

/** Secant from a nominal temperature; keeps the nominal one when the root is not within 1 % of it. */
function equalNear(gap: (T: number) => number, nominal: number): number {
  let a = nominal * 0.9999;
  let b = nominal;
  let fa = gap(a);
  let fb = gap(b);
  for (let step = 0; step < 30 && fa !== fb; step++) {
    const next = b - (fb * (b - a)) / (fb - fa);
    if (!(Math.abs(next - nominal) < 0.01 * nominal)) return nominal;
    if (Math.abs(next - b) < 1e-13 * nominal) return next;
    a = b;
    fa = fb;
    b = next;
    fb = gap(b);
  }
  return b;
}

/** g°/RT of row `r` of a substance's coefficients. */
function gibbsOf(c: readonly number[], r: number, T: number): number {
  const k = r * COEFFICIENTS;
  const lnT = Math.log(T);
  const h =
    -c[k]! / T ** 2 +
    (c[k + 1]! * lnT) / T +
    c[k + 2]! +
    T * (c[k + 3]! / 2 + T * (c[k + 4]! / 3 + T * (c[k + 5]! / 4 + (T * c[k + 6]!) / 5))) +
    c[k + 7]! / T;
  const s =
    -c[k]! / (2 * T ** 2) -
    c[k + 1]! / T +
    c[k + 2]! * lnT +
    T * (c[k + 3]! + T * (c[k + 4]! / 2 + T * (c[k + 5]! / 3 + (T * c[k + 6]!) / 4))) +
    c[k + 8]!;
  return h - s;
}

/**
 * Dimensionless properties of every gas at `temperature`, written into the three arrays:
 * enthalpy h/RT, Gibbs function at standard pressure (h − Ts)/RT, heat capacity cp/R.
 *
 * One pass over the table; the powers of T are shared. Source of the form: B. J. McBride, M. J. Zehe,
 * S. Gordon, NASA/TP-2002-211556 (2002), eqs. for cp°, H°, S°.
 */
export function gasPropertiesInto(
  enthalpy: Float64Array,
  gibbs: Float64Array,
  cp: Float64Array,
  mixture: Mixture,
  temperature: number,
): void {
  const segments = mixture.gasSegmentTo;
  let segment = 0;
  while (segment < segments.length - 1 && temperature > segments[segment]!) segment++;
  const c = mixture.gasCoefficients[segment]!;
  const count = mixture.gases.length;
  const T = temperature;
  const u = 1 / T;
  const lnT = Math.log(T);
  const uu = u * u;
  const T2 = T * T;
  const T3 = T2 * T;
  const T4 = T2 * T2;
  const h2 = lnT * u;
  const h4 = T / 2;
  const h5 = T2 / 3;
  const h6 = T3 / 4;
  const h7 = T4 / 5;
  const g1 = -uu / 2;
  const g2 = (lnT + 1) * u;
  const g3 = 1 - lnT;
  const g4 = -T / 2;
  const g5 = -T2 / 6;
  const g6 = -T3 / 12;
  const g7 = -T4 / 20;
  for (let i = 0, k = 0; i < count; i++, k += 9) {
    const a1 = c[k]!;
    const a2 = c[k + 1]!;
    const a3 = c[k + 2]!;
    const a4 = c[k + 3]!;
    const a5 = c[k + 4]!;
    const a6 = c[k + 5]!;
    const a7 = c[k + 6]!;
    const b1u = c[k + 7]! * u;
    enthalpy[i] = b1u + a3 - a1 * uu + a2 * h2 + a4 * h4 + a5 * h5 + a6 * h6 + a7 * h7;
    gibbs[i] = b1u - c[k + 8]! + a1 * g1 + a2 * g2 + a3 * g3 + a4 * g4 + a5 * g5 + a6 * g6 + a7 * g7;
    cp[i] = a3 + a1 * uu + a2 * u + a4 * T + a5 * T2 + a6 * T3 + a7 * T4;
  }
}

/**
 * Row of a substance's table that applies at `temperature`; exactly at a boundary the lower one,
 * or the upper one when `upper` is true.
 */
export function substanceRange(substance: Substance, temperature: number, upper: boolean): number {
  const to = substance.rangeTo;
  let r = 0;
  while (r < to.length - 1 && (temperature > to[r]! || (upper && temperature === to[r]!))) r++;
  return r;
}

/** As {@link gasPropertiesInto}, for the range `r` of one substance, at its place in the arrays. */
export function substancePropertiesInto(
  enthalpy: Float64Array,
  gibbs: Float64Array,
  cp: Float64Array,
  substance: Substance,
  temperature: number,
  r: number,
): void {
  const c = substance.coefficients;
  const k = r * COEFFICIENTS;
  const T = temperature;
  const lnT = Math.log(T);
  const u = 1 / T;
  const a1 = c[k]! * u * u;
  const a2 = c[k + 1]! * u;
  const a3 = c[k + 2]!;
  const a4 = c[k + 3]! * T;
  const a5 = c[k + 4]! * T * T;
  const a6 = c[k + 5]! * T * T * T;
  const a7 = c[k + 6]! * T * T * T * T;
  const h = -a1 + a2 * lnT + a3 + a4 / 2 + a5 / 3 + a6 / 4 + a7 / 5 + c[k + 7]! * u;
  const s = -a1 / 2 - a2 + a3 * lnT + a4 + a5 / 2 + a6 / 3 + a7 / 4 + c[k + 8]!;
  const i = substance.index;
  enthalpy[i] = h;
  gibbs[i] = h - s;
  cp[i] = a1 + a2 + a3 + a4 + a5 + a6 + a7;
}
