import { describe, expect, test } from 'vitest';
import {
  aluminaDiameter,
  kineticsLoss,
  type LagStation,
  lossBudget,
  particleLagLoss,
} from '../../../../src/physics/nozzle/losses/index.ts';

describe('slow chemistry', () => {
  // Bands of G. P. Sutton, O. Biblarz, 7th ed. (from memory): hydrogen 0.1–1 %, kerosene 0.5–2 %.
  test.each([
    [['H', 'O'], 0.001, 0.01],
    [['H', 'C', 'O'], 0.005, 0.02],
    [['H', 'N', 'O'], 0.001, 0.02],
  ])('of %s', (elements, low, high) => {
    expect(kineticsLoss(elements, 0.04)).toMatchObject({ low, high, share: (low + high) / 2 });
    expect(kineticsLoss(elements, null)).toMatchObject({ low, high });
  });

  test('is never more than what frozen flow loses, and nothing where that loses nothing', () => {
    expect(kineticsLoss(['C', 'O'], 0.008)).toMatchObject({ low: 0.005, high: 0.008 });
    expect(kineticsLoss(['N'], 0)).toMatchObject({ low: 0, high: 0, share: 0 });
    expect(kineticsLoss(['N'], -1e-9).share).toBe(0);
  });
});

describe('drops that lag', () => {
  const stations = Array.from({ length: 400 }, (_, i): LagStation => {
    const t = i / 399;
    return {
      path: t,
      temperature: 3500 - 1500 * t,
      velocity: 100 + 2500 * t,
      density: 5 * Math.exp(-4 * t),
      viscosity: 9e-5,
      conductivity: 0.4,
      prandtl: 0.5,
    };
  });

  test('none without drops, and next to none with the smallest', () => {
    expect(particleLagLoss(stations, 0, 1e-6)).toBe(0);
    expect(particleLagLoss(stations, 0.3, 1e-8)).toBeLessThan(1e-5);
  });

  // Stokes drag and small lag: u − u_p = τ u du/dx, τ = ρ_p d²/(18 μ), so that the loss goes with d².
  test('small drops lose as the square of their diameter and in proportion to their mass', () => {
    const [small, large] = [particleLagLoss(stations, 0.3, 1e-7), particleLagLoss(stations, 0.3, 2e-7)];
    expect(large / small).toBeGreaterThan(3.5);
    expect(large / small).toBeLessThan(4.1);
    expect(particleLagLoss(stations, 0.15, 1e-7) / small).toBeCloseTo(0.5, 9);
  });

  test('the lag itself is that of the closed form for small drops', () => {
    const diameter = 1e-7;
    const tau = (2800 * diameter ** 2) / (18 * 9e-5);
    const cooling = (2800 * diameter ** 2 * 1888) / (6 * 2 * 0.4);
    let entropy = 0;
    for (let i = 1; i < stations.length; i++) {
      const { temperature, velocity } = stations[i]!;
      const du = 2500 / 399;
      const dT = 1500 / 399;
      entropy += (tau * velocity * 2500 * du) / temperature;
      entropy += (1888 * cooling * velocity * 1500 * dT) / temperature ** 2;
    }
    const expected = (2000 * 0.3 * entropy) / 2600 ** 2;
    expect(particleLagLoss(stations, 0.3, diameter) / expected).toBeCloseTo(1, 1);
  });

  test('the mean diameter grows slowly with the throat: 3.63 µm behind one inch', () => {
    expect(aluminaDiameter(0.0254)).toBeCloseTo(3.6304e-6, 12);
    expect(aluminaDiameter(0.254) / aluminaDiameter(0.0254)).toBeCloseTo(10 ** 0.2932, 9);
  });
});

describe('the budget', () => {
  test('efficiency acts on what the nozzle leaves', () => {
    const half = { name: 'a', specificImpulse: 10, band: { low: 0.02, high: 0.03 }, source: 'x' };
    const { items, delivered } = lossBudget(400, [half], { value: 0.98, low: 0.97, high: 0.99, source: 'y' });
    expect(delivered).toBeCloseTo(0.98 * 390, 9);
    expect(items.at(-1)!.name).toBe('incomplete combustion');
    expect(items.at(-1)!.low).toBeCloseTo((0.01 * 390) / 400, 12);
    expect(items.at(-1)!.high).toBeCloseTo((0.03 * 390) / 400, 12);
  });
});
