import { describe, expect, test } from 'vitest';
import { ProblemError } from '../../../src/numerics/problem.ts';
import {
  blendReactants,
  expandBurnt,
  expandHeated,
  massRatioForEquivalence,
} from '../../../src/physics/gas/index.ts';
import { burnt, mixed, propellant, species } from './rows.ts';

function codeOf(run: () => unknown): string {
  try {
    run();
  } catch (error) {
    if (!(error instanceof ProblemError)) throw error;
    expect(error.problem.what.length).toBeGreaterThan(20);
    expect(error.problem.mend.length).toBeGreaterThan(10);
    return error.problem.code;
  }
  return 'none';
}

describe('reactants', () => {
  test('stoichiometric ratios by valence', () => {
    // CH4 + 2 O2 and 2 H2 + O2, from atomic masses.
    expect(massRatioForEquivalence(propellant('LOX'), propellant('LCH4'), 1)).toBeCloseTo(
      (2 * 31.9988) / 16.04246,
      4,
    );
    expect(massRatioForEquivalence(propellant('LOX'), propellant('LH2'), 1)).toBeCloseTo(
      31.9988 / 4.03176,
      4,
    );
    expect(massRatioForEquivalence(propellant('LOX'), propellant('LH2'), 2)).toBeCloseTo(
      31.9988 / 8.06352,
      4,
    );
  });

  test('a blend adds masses, enthalpies and volumes', () => {
    const blend = mixed({ ethanol: 0.75, water: 0.25 });
    expect(
      blend.elements.C! * 12.0107e-3 + blend.elements.H! * 1.00794e-3 + blend.elements.O! * 15.9994e-3,
    ).toBeCloseTo(1, 6);
    expect(1 / blend.density!).toBeCloseTo(
      0.75 / propellant('ethanol').density! + 0.25 / propellant('water').density!,
      12,
    );
    expect(blend.enthalpy).toBeCloseTo(
      0.75 * propellant('ethanol').enthalpy + 0.25 * propellant('water').enthalpy,
      3,
    );
  });

  test('what cannot be done is said by name', () => {
    const hot = { pressure: 1e7, chemistry: { kind: 'shifting' } } as const;
    const part = { elements: { H: 2 }, molarMass: 0.002, enthalpy: 0, density: null };
    expect(codeOf(() => blendReactants([{ ...part, share: 0.7 }]))).toBe('shares-do-not-add-up');
    expect(codeOf(() => burnt('LOX', 'LH2', -1))).toBe('mixture-ratio-invalid');
    expect(codeOf(() => massRatioForEquivalence(propellant('LOX'), propellant('LH2'), 0))).toBe(
      'equivalence-ratio-invalid',
    );
    expect(codeOf(() => massRatioForEquivalence(propellant('LH2'), propellant('LOX'), 1))).toBe(
      'mixture-cannot-burn',
    );
    expect(codeOf(() => expandBurnt(propellant('LOX'), species, hot))).toBe('mixture-cannot-burn');
    expect(codeOf(() => expandBurnt(propellant('water'), species, hot))).toBe('mixture-cannot-burn');
    expect(codeOf(() => expandBurnt(burnt('LOX', 'LH2', 6), species, { ...hot, pressure: 2e8 }))).toBe(
      'chamber-pressure-outside',
    );
    expect(codeOf(() => expandBurnt(burnt('LOX', 'LH2', 6), species, { ...hot, pressure: 10 }))).toBe(
      'chamber-pressure-outside',
    );
    const heated = { ...hot, temperature: 7000 };
    expect(codeOf(() => expandHeated(propellant('GH2'), species, heated))).toBe('temperature-above-range');
    const frozen = { ...hot, temperature: 300, chemistry: { kind: 'frozen' } } as const;
    expect(codeOf(() => expandHeated(propellant('GH2'), species, frozen))).toBe('composition-not-given');
    expect(
      codeOf(() => expandHeated(propellant('GH2'), species, { ...frozen, composition: { Xe: 1 } })),
    ).toBe('species-not-a-gas');
    const expansion = expandBurnt(burnt('LOX', 'LH2', 2), species, hot);
    expect(codeOf(() => expansion.atAreaRatio(1e9, 'supersonic'))).toBe('expansion-beyond-data');
    expect(codeOf(() => expansion.atAreaRatio(0.9, 'supersonic'))).toBe('area-ratio-below-one');
    expect(codeOf(() => expansion.atMach(60))).toBe('mach-beyond-data');
  });
});
