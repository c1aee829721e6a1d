/** A gas of held composition: its own laws, and the closed form where the data make it a perfect gas. */
import { describe, expect, test } from 'vitest';
import { heldGas, heldState, heldStateAtEntropy } from '../../../src/physics/gas/heldGas.ts';
import {
  equilibrate,
  equilibriumState,
  expandHeated,
  expandPerfect,
  workFor,
} from '../../../src/physics/gas/index.ts';
import { burnt, mixed, propellant, species } from './rows.ts';

const R = 8.31446261815324;

/** The gas of an equilibrium at 3000 K and 50 bar, held. */
function held(reactants: Parameters<typeof workFor>[0]) {
  const work = workFor(reactants, species);
  equilibrate(work, 5e6, { kind: 'temperature', temperature: 3000 });
  const { mixture, moles } = equilibriumState(work);
  return heldGas({ mixture, moles });
}
const gases = {
  'oxygen, hydrogen 5': held(burnt('LOX', 'LH2', 5)),
  'oxygen, kerosene 2.4': held(burnt('LOX', 'RP-1', 2.4)),
  'perchlorate, aluminium, binder': held(mixed({ AP: 0.68, Al: 0.18, HTPB: 0.14 })),
};

describe.each(Object.entries(gases))('%s, held', (_, gas) => {
  test.each([90, 260, 620, 1450, 2900])(
    'at %f K: cp is dh/dT, T ds is dh, a² is (∂p/∂ρ)_s',
    (temperature) => {
      const pressure = 3e5;
      const here = heldState(gas, temperature, pressure);
      const dT = 1e-4 * temperature;
      const hot = heldState(gas, temperature + dT, pressure);
      const cold = heldState(gas, temperature - dT, pressure);
      // Central differences: the third derivative leaves some 1e-8, rounding 1e-9.
      expect(Math.abs((hot.enthalpy - cold.enthalpy) / (2 * dT) / here.cpFrozen - 1)).toBeLessThan(1e-7);
      expect(
        Math.abs(((hot.entropy - cold.entropy) / (2 * dT)) * (temperature / here.cpFrozen) - 1),
      ).toBeLessThan(1e-7);
      const up = heldStateAtEntropy(gas, here.entropy, pressure * 1.0001, temperature);
      const down = heldStateAtEntropy(gas, here.entropy, pressure / 1.0001, temperature);
      const squared = (up.pressure - down.pressure) / (up.density - down.density);
      expect(Math.abs(here.soundSpeed! ** 2 / squared - 1)).toBeLessThan(1e-7);
      const exponent = (2 * Math.log(1.0001)) / Math.log(up.density / down.density);
      expect(Math.abs(here.isentropicExponent! / exponent - 1)).toBeLessThan(1e-7);
      expect(here.gammaFrozen).toBe(here.isentropicExponent);
      // Volume of an ideal gas: ∂lnV/∂lnT = 1, ∂lnV/∂lnp = −1; and ds = −R/M dp/p at constant temperature.
      expect([here.dlnVdlnT, here.dlnVdlnp, here.cpEquilibrium]).toEqual([1, -1, null]);
      const halved = heldState(gas, temperature, pressure / 2);
      expect(halved.entropy - here.entropy).toBeCloseTo((R / here.molarMassGas) * Math.LN2, 9);
      expect(halved.density / here.density).toBeCloseTo(0.5, 14);
      expect(halved.enthalpy).toBe(here.enthalpy);
    },
  );

  test('goes on below 200 K with the heat capacity of 200 K, without a step, and says so', () => {
    const edge = heldState(gas, 200, 1e5);
    const below = heldState(gas, 200 - 1e-7, 1e5);
    const above = heldState(gas, 200 + 1e-7, 1e5);
    expect(above.enthalpy - below.enthalpy).toBeCloseTo(2e-7 * edge.cpFrozen, 5);
    expect(above.entropy - below.entropy).toBeCloseTo((2e-7 * edge.cpFrozen) / 200, 8);
    expect(below.notice).toMatch(/below 200 K.*constant-cp continuation/);
    expect(edge.notice ?? '').not.toMatch(/continuation/);
    const farBelow = heldState(gas, 120, 1e5);
    if (gas.transitions.length > 0) return;
    // The gases alone: cp stays, and h and s follow from it.
    expect(farBelow.cpFrozen / edge.cpFrozen).toBeCloseTo(1, 12);
    expect(edge.enthalpy - farBelow.enthalpy).toBeCloseTo(80 * edge.cpFrozen, 3);
    expect(edge.entropy - farBelow.entropy).toBeCloseTo(edge.cpFrozen * Math.log(200 / 120), 7);
  });
});

describe('a monatomic gas', () => {
  const helium = propellant('GHe');

  // Helium's cp in the data is 5/2 R at every temperature of use, below 200 K too: the closed form of NACA Report 1135.
  test.each([300, 2500])('helium from %f K is the perfect gas of γ = 5/3', (temperature) => {
    const real = expandHeated(helium, species, {
      pressure: 2e6,
      temperature,
      chemistry: { kind: 'frozen' },
      composition: { He: 1 },
    });
    const perfect = expandPerfect({ gamma: 5 / 3, molarMass: 0.004002602, temperature, pressure: 2e6 });
    expect(real.characteristicVelocity / perfect.characteristicVelocity).toBeCloseTo(1, 11);
    expect(real.throat.pressure / perfect.throat.pressure).toBeCloseTo(1, 10);
    for (const [areaRatio, side] of [
      [30, 'subsonic'],
      [2, 'subsonic'],
      [1.01, 'subsonic'],
      [1.01, 'supersonic'],
      [8, 'supersonic'],
      [60, 'supersonic'],
    ] as const) {
      const mine = real.atAreaRatio(areaRatio, side);
      const closed = perfect.atAreaRatio(areaRatio, side);
      for (const key of ['temperature', 'pressure', 'density', 'velocity', 'mach'] as const)
        expect(mine[key]! / closed[key]!, `${key} at ${areaRatio}`).toBeCloseTo(1, 9);
    }
  });

  test('a mass of it counts, not a number: any amount of moles is the same gas', () => {
    const speed = (amount: number): number =>
      expandHeated(helium, species, {
        pressure: 2e6,
        temperature: 300,
        chemistry: { kind: 'frozen' },
        composition: { He: amount },
      }).characteristicVelocity;
    expect(speed(7) / speed(1)).toBeCloseTo(1, 14);
  });
});

test('a held solid and liquid share the heat of fusion by the lever rule while the temperature stands', () => {
  const gas = gases['perchlorate, aluminium, binder'];
  const melting = gas.transitions.find((T) => Math.abs(T - 2327) < 1)!;
  const solid = heldState(gas, melting, 1e5, 0);
  const liquid = heldState(gas, melting, 1e5, 1);
  // Equal Gibbs energy: Δh = T Δs.
  expect((liquid.enthalpy - solid.enthalpy) / (melting * (liquid.entropy - solid.entropy))).toBeCloseTo(1, 8);
  const between = heldStateAtEntropy(gas, 0.3 * liquid.entropy + 0.7 * solid.entropy, 1e5, melting);
  expect(between.temperature).toBe(melting);
  expect([between.soundSpeed, between.isentropicExponent, between.dlnVdlnT]).toEqual([null, null, null]);
  expect(between.absent).toMatch(/melts or freezes and pins the temperature at 2327.0 K/);
  const { 'Al2O3(L)': wet, 'Al2O3(a)': dry } = between.composition();
  expect(wet! / (wet! + dry!)).toBeCloseTo(0.3, 8);
});
