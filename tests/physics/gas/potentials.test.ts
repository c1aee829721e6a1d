/**
 * The minimum itself, checked without the solver: species functions evaluated here from the data's own coefficients, and
 * chemical potentials that must all be sums of one potential for each element.
 */
import { describe, expect, test } from 'vitest';
import { solveDenseInto } from '../../../src/numerics/denseSolve.ts';
import {
  type EquilibriumState,
  equilibrate,
  equilibriumState,
  type Held,
  type SpeciesRecord,
  workFor,
} from '../../../src/physics/gas/index.ts';
import { burnt, mixed, species } from './rows.ts';

const R = 8.31446261815324;
const records = new Map(species.map((record) => [record.name, record]));

/** h/RT and s/R at standard pressure, NASA/TP-2002-211556 (2002), equations for H° and S° (from memory). */
function functionsOf(record: SpeciesRecord, T: number): { readonly h: number; readonly s: number } {
  const range = record.ranges.find(({ Tmin, Tmax }) => T >= Tmin - 0.1 && T <= Tmax + 0.1)!;
  const [a1, a2, a3, a4, a5, a6, a7] = range.a as [number, number, number, number, number, number, number];
  const [b1, b2] = range.b as [number, number];
  const powers = (T: number, k: number): number => T ** k / k;
  return {
    h:
      -a1 / T ** 2 +
      (a2 * Math.log(T) + b1) / T +
      a3 +
      (a4 * powers(T, 2) + a5 * powers(T, 3) + a6 * powers(T, 4) + a7 * powers(T, 5)) / T,
    s:
      -a1 / (2 * T ** 2) -
      a2 / T +
      a3 * Math.log(T) +
      a4 * powers(T, 1) +
      a5 * powers(T, 2) +
      a6 * powers(T, 3) +
      a7 * powers(T, 4) +
      b2,
  };
}

interface Part {
  readonly record: SpeciesRecord;
  /** [mol/kg] */ readonly moles: number;
  /** μ/RT */ readonly potential: number;
  /** h/RT */ readonly enthalpy: number;
}

function partsOf(state: EquilibriumState): Part[] {
  const total = 1 / state.molarMass;
  return Object.entries(state.composition()).map(([name, share]) => {
    const record = records.get(name)!;
    const { h, s } = functionsOf(record, state.temperature);
    const inGas = (share * total) / state.gasMoles;
    const mixing = record.phase === 'gas' ? Math.log((inGas * state.pressure) / 1e5) : 0;
    return { record, moles: share * total, potential: h - s + mixing, enthalpy: h };
  });
}

/** Least squares for one potential an element; the worst miss of μ/RT over the species. */
function worstMiss(parts: readonly Part[], elements: readonly string[]): number {
  const size = elements.length;
  const stride = size + 1;
  const system = new Float64Array(size * stride);
  for (const { record, potential, moles } of parts) {
    elements.forEach((row, r) => {
      const atoms = record.elements[row] ?? 0;
      elements.forEach((column, c) => {
        system[r * stride + c]! += moles * atoms * (record.elements[column] ?? 0);
      });
      system[r * stride + size]! += moles * atoms * potential;
    });
  }
  const lambda = new Float64Array(size);
  expect(solveDenseInto(lambda, system, size, stride)).toBe(true);
  return Math.max(
    ...parts.map(({ record, potential }) =>
      Math.abs(
        potential -
          elements.reduce((sum, element, k) => sum + (record.elements[element] ?? 0) * lambda[k]!, 0),
      ),
    ),
  );
}

const mixtures = {
  'oxygen, hydrogen 6': burnt('LOX', 'LH2', 6),
  'oxygen, hydrogen 0.8': burnt('LOX', 'LH2', 0.8),
  'oxygen, hydrogen 30': burnt('LOX', 'LH2', 30),
  'oxygen, kerosene 2.3': burnt('LOX', 'RP-1', 2.3),
  'tetroxide, hydrazine 1.2': burnt('N2O4', 'N2H4', 1.2),
  'fluorine, ammonia 3': burnt('LF2', 'NH3', 3),
  'peroxide, ethanol 4': burnt('H2O2-90', 'ethanol', 4),
  'perchlorate, aluminium, binder': mixed({ AP: 0.68, Al: 0.18, HTPB: 0.14 }),
};
const places: readonly (readonly [number, Held])[] = [
  ...[600, 1300, 2200, 3400, 5500].flatMap((temperature) =>
    [1e3, 1e6, 5e7].map((pressure) => [pressure, { kind: 'temperature', temperature }] as const),
  ),
  ...[-4e6, 0, 6e6].map((enthalpy) => [2e6, { kind: 'enthalpy', enthalpy }] as const),
  ...[9e3, 13e3, 17e3].map((entropy) => [3e5, { kind: 'entropy', entropy }] as const),
];

describe.each(Object.entries(mixtures))('%s', (_, reactants) => {
  test('every species is in balance with the elements, nothing is lost, and h, s, g are the sums over the parts', () => {
    const work = workFor(reactants, species);
    let compared = 0;
    for (const [pressure, held] of places) {
      const words = `${JSON.stringify(held)}, ${pressure} Pa`;
      try {
        equilibrate(work, pressure, held);
      } catch {
        // Some of these enthalpies and entropies lie outside the data for some of the mixtures.
        continue;
      }
      compared++;
      const state = equilibriumState(work);
      const parts = partsOf(state);
      const elements = Object.keys(reactants.elements);
      // Shares below 1e-12 are not told; what they hold is below 1e-10 of any element here but for the rarest.
      for (const element of elements) {
        const sum = parts.reduce(
          (atoms, { record, moles }) => atoms + moles * (record.elements[element] ?? 0),
          0,
        );
        expect(Math.abs(sum / reactants.elements[element]! - 1), `${element} at ${words}`).toBeLessThan(1e-9);
      }
      expect(state.balanceResidual, words).toBeLessThan(1e-12);
      // A miss of 1e-9 in μ/RT is 1e-9 of an amount.
      expect(worstMiss(parts, elements), words).toBeLessThan(1e-9);
      const RT = R * state.temperature;
      const enthalpy = RT * parts.reduce((sum, part) => sum + part.moles * part.enthalpy, 0);
      const gibbs = RT * parts.reduce((sum, part) => sum + part.moles * part.potential, 0);
      const scale = state.temperature * state.entropy;
      expect(Math.abs(state.enthalpy - enthalpy) / scale, words).toBeLessThan(1e-10);
      expect(
        Math.abs(state.enthalpy - state.temperature * state.entropy - gibbs) / scale,
        words,
      ).toBeLessThan(1e-10);
      if (held.kind === 'enthalpy')
        expect(Math.abs(state.enthalpy - held.enthalpy) / scale).toBeLessThan(1e-11);
      if (held.kind === 'entropy') expect(Math.abs(state.entropy / held.entropy - 1)).toBeLessThan(1e-11);
    }
    expect(compared).toBeGreaterThan(15);
  });
});

test('the short list of species leaves out nothing that counts', () => {
  // 1e-6 of the temperature: what the traces left out hold.
  const work = (choice: 'all' | 'core') => {
    const reactants = burnt('LOX', 'RP-1', 2.4);
    const space = workFor(reactants, species, choice);
    equilibrate(space, 1e7, { kind: 'enthalpy', enthalpy: reactants.enthalpy });
    return equilibriumState(space);
  };
  const all = work('all');
  const core = work('core');
  expect(core.mixture.speciesCount).toBeLessThan(all.mixture.speciesCount);
  expect(Math.abs(core.temperature / all.temperature - 1)).toBeLessThan(1e-6);
});
