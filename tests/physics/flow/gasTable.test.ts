import { describe, expect, test } from 'vitest';
import {
  nuAtMach,
  nuAtPressure,
  tableStateAt,
  tabulateSupersonic,
} from '../../../src/physics/flow/gasTable.ts';
import { expandPerfect } from '../../../src/physics/gas/index.ts';

const gas = (gamma: number) => expandPerfect({ gamma, molarMass: 0.022, temperature: 3500, pressure: 1e7 });

/** Closed form for a perfect gas: NACA Report 1135 (1953), Prandtl–Meyer expansion. */
function prandtlMeyer(mach: number, gamma: number): number {
  const k = Math.sqrt((gamma + 1) / (gamma - 1));
  const s = Math.sqrt(mach * mach - 1);
  return k * Math.atan(s / k) - Math.atan(s);
}

describe('the supersonic gas table', () => {
  // Degrees, recomputed from the exact formula to more digits than the printed tables carry.
  test.each([
    [1.4, 1.5, 11.905],
    [1.4, 2, 26.38],
    [1.4, 3, 49.757],
    [1.4, 5, 76.92],
    [1.2, 3, 63.654],
    [1.25, 2, 30],
    [1.3, 4, 75.21],
  ])('γ %f: Mach %f turns by %f° from sonic', (gamma, mach, degrees) => {
    const table = tabulateSupersonic(gas(gamma), 1e7 * 1e-5);
    expect((nuAtMach(table, mach) * 180) / Math.PI).toBeCloseTo(degrees, 2);
  });

  test('agrees with the closed form to 1e-7 from just above sonic to Mach 6', () => {
    const expansion = gas(1.23);
    const table = tabulateSupersonic(expansion, 1e7 * 1e-6);
    for (const mach of [1.001, 1.01, 1.1, 1.4, 2, 3, 4, 5, 6]) {
      const nu = prandtlMeyer(mach, 1.23);
      const state = tableStateAt(table, nu);
      const exact = expansion.atMach(mach);
      expect(Math.abs(state.mach / mach - 1)).toBeLessThan(1e-7);
      expect(Math.abs(state.pressure / exact.pressure - 1)).toBeLessThan(1e-7);
      expect(Math.abs(state.density / exact.density - 1)).toBeLessThan(1e-7);
      expect(Math.abs(state.speed / exact.velocity - 1)).toBeLessThan(1e-7);
      expect(Math.abs(nuAtPressure(table, exact.pressure) - nu)).toBeLessThan(1e-7);
    }
  });

  test.each([
    [20, 2e-8],
    [48, 1e-9],
    [96, 4e-11],
  ])('with %i panels its angle misses the closed form by less than %f of itself', (panels, most) => {
    for (const gamma of [1.13, 1.23, 1.4])
      for (const lowest of [1e4, 10]) {
        const expansion = gas(gamma);
        const exact = prandtlMeyer(expansion.atPressure(lowest).mach!, gamma);
        const { nuMax } = tabulateSupersonic(expansion, lowest, 80, panels);
        expect(Math.abs(nuMax / exact - 1)).toBeLessThan(most);
      }
  });

  test('refuses a state outside its range in words', () => {
    const table = tabulateSupersonic(gas(1.3), 1e5);
    expect(() => tableStateAt(table, table.nuMax * 1.1)).toThrow(/outside 0…/);
    expect(() => tableStateAt(table, -0.1)).toThrow(/subsonic|outside/);
  });
});
