/** Streams, fins, radiation, throats, films and skirts, each against a closed form or a chart. */

import { expect, test } from 'vitest';
import {
  beyondRows,
  channelAt,
  finFactor,
  gapError,
  gasEmissivity,
  type HotPoint,
  hydraulicDiameter,
  radiatingTemperature,
  wallConductivity,
} from '../../../src/physics/heat/index.ts';

test('a ring is twice its gap wide, a full duct its diameter', () => {
  const ring = Math.PI * (0.5 ** 2 - 0.48 ** 2);
  expect(hydraulicDiameter('outside', 0.5, ring, 0)).toBeCloseTo(0.04, 12);
  expect(hydraulicDiameter('inside', 0.48, ring, 0)).toBeCloseTo(0.04, 12);
  expect(hydraulicDiameter('full', 0.1, 0, 0)).toBe(0.2);
  // To the root of a rounding.
  expect(hydraulicDiameter('outside', 0.1, Math.PI * 0.01, 0)).toBeCloseTo(0.2, 7);
  expect(hydraulicDiameter('plane', 1, 0.02, 2)).toBeCloseTo(0.02, 12);
});

test('a tenth of a millimetre: 1 % of a 10 mm gap, 0.1 % of the area of a 200 mm throat', () => {
  expect(gapError({ form: 'gap', gap: 0.01 }, 1e-4).area).toBeCloseTo(0.01, 12);
  expect(gapError({ form: 'round', diameter: 0.2 }, 1e-4).area).toBeCloseTo(0.00100025, 8);
  expect(gapError({ form: 'gap', gap: 0.01 }, 1e-4).pressure).toBeCloseTo(1 / 1.01 - 1, 12);
});

test('fins: short ones count whole, long ones as endless fins', () => {
  const shape = { width: 1e-3, land: 1e-3, depth: 1e-3 };
  const here = channelAt(shape, 1, 1);
  expect(here).toMatchObject({ width: 1e-3, land: 1e-3, depth: 1e-3 });
  expect(finFactor(here, 1e-3, 300)).toBeCloseTo(1.5, 6);
  // tanh → 1: both flanks take 2 h/m = √(2 h k land), so that h_eff s = h w + √(2 h k land).
  const [h, k] = [1e5, 20];
  const endless = (1e-3 + Math.sqrt(2 * h * k * 1e-3) / h) / 2e-3;
  expect(finFactor({ ...here, depth: 0.1 }, h, k)).toBeCloseTo(endless, 6);
});

test('channels split and deepen where the wall widens, and deepen where it narrows', () => {
  const shape = { width: 1e-3, land: 1e-3, depth: 2e-3 };
  expect(channelAt(shape, 3, 1).width).toBeCloseTo(1.5e-3, 12);
  expect(channelAt(shape, 3, 1).depth).toBeCloseTo(6e-3, 12);
  expect(channelAt(shape, 3, 1).area).toBeCloseTo(9e-3, 12);
  expect(channelAt(shape, 0.5, 1).depth).toBeCloseTo(4e-3, 12);
  expect(channelAt(shape, 0.5, 1).area).toBeCloseTo(1e-3, 12);
});

// H. C. Hottel's charts at 1000 K and one bar metre (from memory): water 0.35 to 0.40 at low share, carbon dioxide 0.17 to 0.19.
test('emissivity of water vapour and carbon dioxide as on the charts', () => {
  const water = gasEmissivity({ water: 0.01, dioxide: 0 }, 1000, 1e5, 100);
  const dioxide = gasEmissivity({ water: 0, dioxide: 0.01 }, 1000, 1e5, 100);
  expect(water).toBeGreaterThan(0.34);
  expect(water).toBeLessThan(0.41);
  expect(dioxide).toBeGreaterThan(0.16);
  expect(dioxide).toBeLessThan(0.2);
  expect(gasEmissivity({ water: 0, dioxide: 0 }, 1000, 1e5, 100)).toBe(0);
});

const point: HotPoint = {
  axial: 0,
  radius: 0.2,
  path: 0,
  girth: 1.2,
  pressure: 1e4,
  temperature: 1500,
  cooling: 2,
  stagnation: 3000,
  recovery: 2800,
  massFlux: 100,
  diameter: 0.4,
  uncorrected: 300,
  layerCoefficient: 300,
  radiating: { water: 0, dioxide: 0 },
};

test('a skirt sends out what arrives', () => {
  const wall = radiatingTemperature(point, 0.8);
  const sigma = (0.5 * (wall / 3000) * 2 + 0.5) ** -0.68 * 2 ** -0.12;
  const arrives = 300 * sigma * (2800 - wall);
  expect(arrives / (0.8 * 5.670374e-8 * wall ** 4)).toBeCloseTo(1, 6);
  expect(radiatingTemperature({ ...point, uncorrected: 30 }, 0.8)).toBeLessThan(wall);
});

test('conductivity is straight between its rows', () => {
  const material = {
    id: 'x',
    name: 'x',
    family: 'copper',
    conductivity: [
      [300, 400],
      [500, 300],
    ],
    density: 1,
    limit: { temperature: 800, why: '', source: '' },
    emissivity: 1,
    source: '',
  } as const;
  expect([200, 300, 400, 500, 900].map((t) => wallConductivity(material, t))).toEqual([
    400, 400, 350, 300, 300,
  ]);
  expect(beyondRows(material, 300, 500)).toBeNull();
  expect(beyondRows(material, 299, 500)).toEqual({ from: 300, to: 500 });
  expect(beyondRows(material, 300, 501)).toEqual({ from: 300, to: 500 });
});
