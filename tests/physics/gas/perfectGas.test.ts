import { describe, expect, test } from 'vitest';
import { expandPerfect } from '../../../src/physics/gas/index.ts';

const gas = (gamma: number) => expandPerfect({ gamma, molarMass: 0.022, temperature: 3500, pressure: 1e7 });

describe('the perfect gas', () => {
  // Ames Research Staff, NACA Report 1135 (1953); γ = 1.4 to more digits than its tables print, other γ of its equations:
  // recomputed from its exact formulas. Tolerance: half of the last digit given.
  test.each([
    [1.4, 0.5, 0.95238, 0.84302, 1.33984],
    [1.4, 1, 0.83333, 0.52828, 1],
    [1.4, 1.5, 0.68966, 0.2724, 1.17617],
    [1.4, 2, 0.55556, 0.1278, 1.6875],
    [1.4, 2.5, 0.44444, 0.058528, 2.63672],
    [1.4, 3, 0.35714, 0.027224, 4.23457],
    [1.4, 4, 0.2381, 0.0065861, 10.71875],
    [1.4, 5, 0.16667, 0.00189, 25],
    [1.4, 8, 0.072464, 1.0243e-4, 190.109],
    [1.4, 10, 0.047619, 2.3563e-5, 535.938],
    [1.2, 2, null, 0.13281, 1.8837],
    [1.2, 3, null, 0.021256, 6.7354],
    [1.2, 4, null, 0.0032371, 28.355],
    [1.25, 2, null, 0.13169, 1.8247],
    [1.25, 3, null, 0.023078, 5.8319],
    [1.3, 3, null, 0.024663, 5.1598],
    [1.3, 4, null, 0.0049765, 15.944],
  ] as const)('γ %f, Mach %f', (gamma, mach, temperature, pressure, area) => {
    const state = gas(gamma).atMach(mach);
    if (temperature !== null) expect(Math.abs(state.temperature / 3500 / temperature - 1)).toBeLessThan(3e-5);
    expect(Math.abs(state.pressure / 1e7 / pressure - 1)).toBeLessThan(5e-5);
    expect(Math.abs(state.areaRatio / area - 1)).toBeLessThan(3e-5);
  });

  // G. P. Sutton, O. Biblarz, Rocket Propulsion Elements, 7th ed., figures 3-6 to 3-8 plot these functions; the numbers are
  // recomputed from its equation 3-30, to a unit in the last digit.
  test.each([
    [1.15, 10, 1.774],
    [1.15, 40, 1.9415],
    [1.2, 10, 1.7423],
    [1.2, 77.5, 1.9349],
    [1.25, 16, 1.7615],
    [1.3, 100, 1.8357],
  ] as const)('γ %f, area ratio %f: vacuum thrust coefficient %f', (gamma, areaRatio, coefficient) => {
    const expansion = gas(gamma);
    const exit = expansion.atAreaRatio(areaRatio, 'supersonic');
    const found = (exit.velocity + exit.pressure / exit.massFlux) / expansion.characteristicVelocity;
    expect(Math.abs(found - coefficient)).toBeLessThan(1e-4);
  });

  test('the worked example of the textbook', () => {
    // Sutton & Biblarz, examples 3-1 and 3-2 (from memory, recomputed): 2.068 MPa, 2222 K, k 1.30, R 345.7 J/(kg K),
    // expanded to sea level. Printed: about 1827 m/s, Ae/At about 3.25, 1107 K, Mach about 2.6.
    const expansion = expandPerfect({
      gamma: 1.3,
      molarMass: 8.31446261815324 / 345.7,
      temperature: 2222,
      pressure: 2.068e6,
    });
    const exit = expansion.atPressure(101325);
    const near = (value: number, expected: number): void =>
      expect(Math.abs(value / expected - 1)).toBeLessThan(0.002);
    near(exit.velocity, 1827);
    near(exit.temperature, 1107);
    near(exit.areaRatio, 3.257);
    near(exit.mach!, 2.589);
    near(expansion.characteristicVelocity, 1313.5);
    near(expansion.throat.pressure, 1.1286e6);
    near(expansion.throat.velocity, 931.8);
  });

  test.each([1.1, 1.2, 1.4, 5 / 3])('γ %f: there and back', (gamma) => {
    const expansion = gas(gamma);
    for (const mach of [0.01, 0.3, 0.9, 1.1, 2, 6]) {
      const { areaRatio, pressure } = expansion.atMach(mach);
      expect(
        Math.abs(expansion.atAreaRatio(areaRatio, mach < 1 ? 'subsonic' : 'supersonic').mach! / mach - 1),
      ).toBeLessThan(1e-11);
      expect(Math.abs(expansion.atPressure(pressure).mach! / mach - 1)).toBeLessThan(1e-9);
    }
  });

  test('refuses what has no meaning, in words', () => {
    expect(() => gas(1)).toThrow(/above 1/);
    expect(() => gas(1.3).atAreaRatio(0.5, 'subsonic')).toThrow(/below 1/);
    expect(() => gas(1.3).atPressure(2e7)).toThrow(/between 0 and the chamber pressure/);
    expect(() => gas(1.3).atMach(-1)).toThrow(/0 or more/);
    expect(() => gas(Number.NaN)).toThrow();
  });
});
