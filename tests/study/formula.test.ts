import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { atomicMasses, molarMassOf, parseFormula } from '../../src/study/formula.ts';

const file = (path: string): unknown =>
  JSON.parse(readFileSync(new URL(`../../data/${path}`, import.meta.url), 'utf8'));

const atoms = (formula: string): unknown => {
  const parsed = parseFormula(formula);
  return parsed.ok ? parsed.value : parsed.problem.code;
};

describe('a chemical formula', () => {
  test.each<[string, Record<string, number>]>([
    ['C10H18', { C: 10, H: 18 }],
    ['CH1.95', { C: 1, H: 1.95 }],
    ['(NH4)ClO4', { N: 1, H: 4, Cl: 1, O: 4 }],
    ['(CH3)2N2H2', { C: 2, H: 8, N: 2 }],
    ['C2(H2(O)2)1.5', { C: 2, H: 3, O: 3 }],
    ['CH₃OH', { C: 1, H: 4, O: 1 }],
    ['Al', { Al: 1 }],
    ['HHe', { H: 1, He: 1 }],
    ['C.5H', { C: 0.5, H: 1 }],
    ['CH0', { C: 1 }],
  ])('%s', (formula, expected) => {
    expect(atoms(formula)).toEqual(expected);
  });

  test.each([
    ['', 'formula-unreadable'],
    ['10', 'formula-unreadable'],
    ['(CH', 'formula-unreadable'],
    ['CH)', 'formula-unreadable'],
    ['C-H', 'formula-unreadable'],
    ['c2h6', 'formula-unreadable'],
    ['C0', 'formula-unreadable'],
    ['()', 'formula-unreadable'],
    ['C1e9', 'formula-unreadable'],
    ['C99999999', 'formula-unreadable'],
    [`${'('.repeat(300)}`, 'formula-unreadable'],
    ['UO2', 'element-unknown'],
    ['Hx', 'element-unknown'],
  ])('%s is refused', (formula, code) => {
    expect(atoms(formula)).toBe(code);
  });

  test('atomic masses are those of the species data', () => {
    const { atomicMasses: ofData } = file('species/index.json') as { atomicMasses: Record<string, number> };
    expect(atomicMasses).toEqual(ofData);
  });

  test('the molar mass of every propellant follows from its formula', () => {
    const { propellants } = file('propellants.json') as {
      propellants: { id: string; elements: Record<string, number>; molarMass: number }[];
    };
    for (const row of propellants) {
      // The data state molar masses to 2e-8 kg/mol.
      expect(Math.abs(molarMassOf(row.elements) - row.molarMass), row.id).toBeLessThan(1e-7);
    }
  });

  test('whatever is written is a formula of positive counts or a problem', () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom(...'CHONAl()0123.9e '), maxLength: 20 }), (text) => {
        const parsed = parseFormula(text);
        if (!parsed.ok) return;
        for (const count of Object.values(parsed.value)) {
          expect(count).toBeGreaterThan(0);
          expect(Number.isFinite(count)).toBe(true);
        }
      }),
      { numRuns: 3000 },
    );
  });
});
