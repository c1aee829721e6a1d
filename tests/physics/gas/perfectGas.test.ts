import { describe, expect, test } from 'vitest';
import { expandPerfect } from '../../../src/physics/gas/index.ts';

const gas = (gamma: number) => expandPerfect({ gamma, molarMass: 0.022, temperature: 3500, pressure: 1e7 });

describe('the perfect gas', () => {
  // NACA Report 1135 (1953); more digits than it prints, recomputed from its exact formulas; tolerance 1e-5.
  test.each([
    [1.4, 0.5, 0.95238, 0.84302, 1.33984],
    [1.4, 1.5, 0.68966, 0.2724, 1.17617],
    [1.4, 2, 0.55556, 0.127805, 1.6875],
    [1.4, 3, 0.35714, 0.027224, 4.23457],
    [1.4, 5, 0.16667, 0.00189, 25],
    [1.4, 10, 0.047619, 2.3563e-5, 535.938],
    [1.2, 3, null, 0.021256, 6.7354],
    [1.25, 3, null, 0.023078, 5.8319],
    [1.3, 4, null, 0.0049765, 15.944],
  ] as const)('γ %f, Mach %f', (gamma, mach, temperature, pressure, area) => {
    const state = gas(gamma).atMach(mach);
    if (temperature !== null) expect(Math.abs(state.temperature / 3500 / temperature - 1)).toBeLessThan(2e-5);
    expect(Math.abs(state.pressure / 1e7 / pressure - 1)).toBeLessThan(3e-5);
    expect(Math.abs(state.areaRatio / area - 1)).toBeLessThan(2e-5);
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
