import { expect, test } from 'vitest';
import { generatorGas, heatedFuelGas, heatedFuelTemperature } from '../../../src/physics/cycle/index.ts';
import { burntReactants, expandBurnt } from '../../../src/physics/gas/index.ts';
import { problemCode } from '../problemCode.ts';
import { fedWith } from './fed.ts';

// The J-2’s generator ran at 0.94 and about 1200 °F (from memory).
test('hydrogen and oxygen at 920 K', async () => {
  const gas = generatorGas(await fedWith('LOX', 'LH2'), 'fuel', 920, 50e5);
  expect(Math.abs(gas.mixtureRatio! / 0.94 - 1)).toBeLessThan(0.03);
  // Nearly all hydrogen and water: M = (1 + r)/(1/2.016) of unreacted hydrogen, for each water takes the place of one hydrogen.
  expect(gas.molarMass / (2.016e-3 * (1 + gas.mixtureRatio!))).toBeCloseTo(1, 3);
});

test.each([
  ['LOX', 'RP-1', 'fuel', 1060],
  ['LOX', 'RP-1', 'oxidiser', 750],
  ['LOX', 'LCH4', 'fuel', 900],
  ['N2O4', 'UDMH', 'oxidiser', 750],
] as const)('%s with %s, %s in excess, burns to %d K', async (oxidiser, fuel, excess, temperature) => {
  const fed = await fedWith(oxidiser, fuel);
  const gas = generatorGas(fed, excess, temperature, 100e5);
  const again = expandBurnt(burntReactants(fed.oxidiser, fed.fuel, gas.mixtureRatio!), fed.species, {
    pressure: 100e5,
    chemistry: { kind: 'shifting' },
  });
  expect(Math.abs(again.chamber.temperature - temperature)).toBeLessThan(0.1);
  expect(gas.idealWork(1)).toBe(0);
  expect(gas.idealWork(20)).toBeGreaterThan(gas.idealWork(10));
});

// Fuel-rich kerosene gas of D. K. Huzel, D. H. Huang, NASA SP-125, 1971 (from memory): cp 0.657 Btu/(lb °R), γ 1.124 at 1450 °F.
test('equilibrium gives kerosene gas more work than published, by what its band allows', async () => {
  const gas = generatorGas(await fedWith('LOX', 'RP-1'), 'fuel', 1061, 68e5);
  const published = 0.657 * 4186.8 * 1061 * (1 - 20 ** -(0.124 / 1.124));
  const share = published / gas.idealWork(20);
  expect(share).toBeGreaterThan(0.77);
  expect(share).toBeLessThan(1);
});

test('a monopropellant cannot be kept that cool by too much of itself', async () => {
  const fed = await fedWith('N2O4', 'MMH');
  expect(problemCode(() => generatorGas(fed, 'fuel', 900, 100e5))).toBe('turbine-temperature-out-of-reach');
});

// Ideal gas from the data; h(300 K) of hydrogen over the liquid at 20.27 K: 9.012 kJ/mol to 298.15 K by the same tables.
test('hydrogen warmed by its walls', async () => {
  const { fuel, species } = await fedWith('LOX', 'LH2');
  const heat = 9012 / 2.01588e-3;
  expect(heatedFuelTemperature(fuel, species, heat, 100e5)).toBeCloseTo(298.15, 0);
  expect(heatedFuelGas(fuel, species, 300, 100e5).molarMass).toBeCloseTo(2.01588e-3, 8);
  expect(problemCode(() => heatedFuelTemperature(fuel, species, 0.2e6, 100e5))).toBe('expander-too-cold');
  expect(problemCode(() => heatedFuelTemperature(fuel, species, 50e6, 100e5))).toBe('expander-too-hot');
});

test('kerosene drives no expander', async () => {
  const { fuel, species } = await fedWith('LOX', 'RP-1');
  expect(problemCode(() => heatedFuelGas(fuel, species, 600, 100e5))).toBe('expander-fuel-no-gas');
});

// Steam tables (from memory): water boils at 2.46 bar at 400 K; at 60 bar the gas of 400 K would be 4 % water or more.
test('a gas in which water condenses is refused', async () => {
  const fed = await fedWith('LOX', 'LH2');
  expect(problemCode(() => generatorGas(fed, 'fuel', 300, 60e5))).toBe('turbine-gas-wet');
  expect(problemCode(() => generatorGas(fed, 'fuel', 400, 60e5))).toBe('turbine-gas-wet');
  expect(generatorGas(fed, 'fuel', 450, 60e5).temperature).toBeCloseTo(450, 0);
});
