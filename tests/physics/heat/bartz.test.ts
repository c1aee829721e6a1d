/** Bartz's equation against hand values and the sample of NASA SP-125. */

import { expect, test } from 'vitest';
import { adiabaticWallTemperature, bartzSigma, bartzUncorrected } from '../../../src/physics/heat/index.ts';

// Throat at γ = 1.2: T₀/T = 1.1. Worked by hand from the formula as D. R. Bartz 1957 gives it (from memory).
test.each([
  [0.2, 1.3836],
  [0.3, 1.3047],
  [0.5, 1.1757],
  [0.8, 1.0311],
])('σ at the throat with a wall at %d of the chamber is %d', (wall, sigma) => {
  expect(bartzSigma(wall, 1.1)).toBeCloseTo(sigma, 4);
});

const INCH = 0.0254;
const POUND = 0.45359237;
const BTU = 1055.056;
const RANKINE = 5 / 9;
const PSI = 6894.757;

/**
 * The throat of the sample engine of D. K. Huzel, D. H. Huang, NASA SP-125, ch. 4 (inputs from memory): 1000 psia, c* 5660 ft/s,
 * D_t 24.9 in, mean arc 11.7 in, μ 4.18·10⁻⁶ lb/(in s), c_p 0.485 Btu/(lb °F), Pr 0.816. By hand in the report's own units
 * 0.026/24.9^0.2 · (μ^0.2 c_p/Pr^0.6) · (1000·32.2/5660)^0.8 · (24.9/11.7)^0.1 = 0.00273 Btu/(in² s °F) before σ.
 */
test('the sample of NASA SP-125, in SI', () => {
  const viscosity = (4.18e-6 * POUND) / INCH;
  const heatCapacity = (0.485 * BTU) / (POUND * RANKINE);
  const massFlux = (1000 * PSI) / (5660 * 0.3048);
  const coefficient = bartzUncorrected(
    { viscosity, heatCapacity, prandtl: 0.816, temperature: 3400 },
    massFlux,
    24.9 * INCH,
    24.9 / 11.7,
  );
  const inches = (coefficient * INCH * INCH * RANKINE) / BTU;
  // 1 %: the hand value has three digits.
  expect(Math.abs(inches / 0.00273 - 1)).toBeLessThan(0.01);
});

test('grows as pressure^0.8 and shrinks as diameter^0.2', () => {
  const gas = { viscosity: 1e-4, heatCapacity: 2000, prandtl: 0.7, temperature: 3500 };
  const base = bartzUncorrected(gas, 5000, 0.2, 2);
  expect(bartzUncorrected(gas, 10_000, 0.2, 2) / base).toBeCloseTo(2 ** 0.8, 12);
  expect(bartzUncorrected(gas, 5000, 0.4, 2) / base).toBeCloseTo(2 ** -0.2, 12);
});

test('a wall without cooling is nearly as hot as the chamber', () => {
  // T_aw/T₀ = [1 + r(γ−1)M²/2]/[1 + (γ−1)M²/2] at γ = 1.2, M = 2, Pr = 0.8: r = 0.9283, (1 + 0.3713)/1.4 = 0.97952.
  expect(adiabaticWallTemperature(3500 / 1.4, 3500, 0.8) / 3500).toBeCloseTo(0.97952, 4);
});
