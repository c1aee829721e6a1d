/** Correlations for channels against values worked from the printed formulas. */

import { expect, test } from 'vitest';
import {
  type CorrelationPlace,
  frictionFactor,
  nusseltOf,
  outsideRange,
} from '../../../src/physics/heat/index.ts';

const bulk = {
  pressure: 1e7,
  enthalpy: 0,
  temperature: 300,
  density: 500,
  heatCapacity: 3000,
  viscosity: 1e-4,
  conductivity: 0.1,
};
const flow = (reynolds: number, prandtl: number, wallTemperature = 300) => ({
  reynolds,
  prandtl,
  along: 1e9,
  bulk,
  wallTemperature,
  wall: () => ({ ...bulk, viscosity: 5e-5, density: 250 }),
});

// Worked by hand from the forms in the header of the source.
test.each([
  [1e5, 5, 437.8, 515.7],
  [1e4, 0.7, 31.61, 29.82],
  [1e6, 10, 3645, 5254],
])('Re %d, Pr %d: Dittus and Boelter %d, Gnielinski %d', (re, pr, dittus, gnielinski) => {
  expect(Math.abs(nusseltOf('dittusBoelter', flow(re, pr)) / dittus - 1)).toBeLessThan(2e-4);
  expect(Math.abs(nusseltOf('gnielinski', flow(re, pr)) / gnielinski - 1)).toBeLessThan(2e-4);
});

test('Taylor is Dittus and Boelter at equal temperatures, and less at a hot wall', () => {
  expect(nusseltOf('taylor', flow(1e5, 1))).toBeCloseTo(nusseltOf('dittusBoelter', flow(1e5, 1)), 9);
  const hot = nusseltOf('taylor', flow(1e5, 1, 900)) / nusseltOf('dittusBoelter', flow(1e5, 1));
  expect(hot).toBeCloseTo(3 ** -0.57, 6);
});

test('Sieder and Tate, and Bishop, read the coolant at the wall', () => {
  expect(nusseltOf('siederTate', flow(1e5, 8))).toBeCloseTo(0.027 * 1e4 * 2 * 2 ** 0.14, 6);
  expect(nusseltOf('bishop', flow(1e5, 1))).toBeCloseTo(0.0069 * 1e5 ** 0.9 * 0.5 ** 0.43, 6);
});

const place: CorrelationPlace = {
  reynolds: 1e5,
  prandtl: 1,
  wallOverBulk: 3,
  reducedPressure: 2,
  wall: 600,
  hottestKnown: 700,
};

test('ranges are told', () => {
  expect(outsideRange('taylor', place)).toBeNull();
  expect(outsideRange('taylor', { ...place, wallOverBulk: 23.5 })).toContain('above 23');
  expect(outsideRange('taylor', { ...place, wallOverBulk: 0.9 })).toContain('colder');
  expect(outsideRange('taylor', { ...place, reducedPressure: 0.9 })).toContain('no gas');
  expect(outsideRange('bishop', place)).toBeNull();
  for (const by of ['bishop', 'siederTate'] as const) {
    expect(outsideRange(by, { ...place, wall: 701 })).toContain('up to 700 K');
  }
  expect(outsideRange('gnielinski', { ...place, wall: 701 })).toBeNull();
  expect(outsideRange('bishop', { ...place, reducedPressure: 0.9 })).toContain('below its critical pressure');
  expect(outsideRange('gnielinski', { ...place, reynolds: 5e4, prandtl: 5 })).toBeNull();
  expect(outsideRange('gnielinski', { ...place, reynolds: 2000, prandtl: 5 })).toContain('below 3000');
  expect(outsideRange('dittusBoelter', { ...place, reynolds: 5e4, prandtl: 500 })).toContain('Prandtl');
});

test('friction: Blasius 0.316/Re^0.25 for smooth channels, laminar 64/Re', () => {
  // Blasius, from memory; the two formulas agree within 2 % at Re 10⁵.
  expect(Math.abs(frictionFactor(1e5, 0) / (0.3164 / 1e5 ** 0.25) - 1)).toBeLessThan(0.02);
  expect(frictionFactor(1000, 0.01)).toBeCloseTo(0.064, 12);
  // L. F. Moody's chart: fully rough at ε/D = 0.01 → 0.0379 (from memory).
  expect(Math.abs(frictionFactor(1e8, 0.01) / 0.0379 - 1)).toBeLessThan(0.01);
});
