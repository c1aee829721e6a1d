import { describe, expect, test } from 'vitest';
import { blendReactants, burntReactants, massRatioForEquivalence } from '../../../src/physics/gas/index.ts';
import { burnt, mixed, propellant } from './rows.ts';

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

  test('a mixture ratio is oxidiser over fuel by mass; a side of nothing leaves the other as it is', () => {
    const mixture = burnt('LOX', 'LCH4', 3);
    const [oxidiser, fuel] = [propellant('LOX'), propellant('LCH4')];
    expect(mixture.elements.O).toBeCloseTo(0.75 * oxidiser.elements.O!, 12);
    expect(mixture.elements.C).toBeCloseTo(0.25 * fuel.elements.C!, 12);
    expect(mixture.enthalpy).toBeCloseTo(0.75 * oxidiser.enthalpy + 0.25 * fuel.enthalpy, 6);
    expect(4 / mixture.density!).toBeCloseTo(3 / oxidiser.density! + 1 / fuel.density!, 12);
    expect(burnt('LOX', 'LCH4', 0)).toEqual(fuel);
    const unknown = { ...fuel, density: null };
    expect(burntReactants(oxidiser, unknown, 3).density).toBeNull();
  });

  test('the ratio that leaves nothing over is the same by valence and by the atoms of the products', () => {
    // NH4ClO4 gives HCl, N2, 3/2 H2O and 5/4 O2 to spare; CH2 takes 3/2 O2.
    const perchlorate = {
      elements: { N: 1, H: 4, Cl: 1, O: 4 },
      molarMass: 0.11749,
      enthalpy: 0,
      density: null,
    };
    const ethene = { elements: { C: 1, H: 2 }, molarMass: 0.01403, enthalpy: 0, density: null };
    const ratio = massRatioForEquivalence(
      blendReactants([{ ...perchlorate, share: 1 }]),
      blendReactants([{ ...ethene, share: 1 }]),
      1,
    );
    expect(ratio).toBeCloseTo((1.5 / 1.25) * (0.11749 / 0.01403), 9);
  });
});
