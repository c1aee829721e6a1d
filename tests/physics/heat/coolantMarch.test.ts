/** The coolant's way through its channels: energy, the wall's three resistances, pressure, limits. */

import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { attempt } from '../../../src/numerics/problem.ts';
import {
  type CoolantRecord,
  coolantFluid,
  coolantMarch,
  depthForDrop,
  frictionFactor,
  type HotPoint,
  type Jacket,
  underFilm,
  type WallMaterialRecord,
} from '../../../src/physics/heat/index.ts';

const read = <T>(path: string): T =>
  JSON.parse(readFileSync(new URL(`../../../data/${path}`, import.meta.url), 'utf8')) as T;
const water = coolantFluid(read<CoolantRecord>('coolants/water.json'));
const copper: WallMaterialRecord = {
  id: 'even',
  name: 'a metal of even conductivity',
  family: 'copper',
  conductivity: [[300, 350]],
  density: 8900,
  limit: { temperature: 800, why: 'the metal would soften', source: 'the test' },
  emissivity: 0.6,
  source: 'the test',
};

/** A straight tube, 0.5 m long, girth 0.3 m, the same gas all along; no radiation. */
function tube(uncorrected: number, count = 101): readonly HotPoint[] {
  return Array.from({ length: count }, (_, i) => ({
    axial: (0.5 * i) / (count - 1),
    radius: 0.3 / (2 * Math.PI),
    path: (0.5 * i) / (count - 1),
    girth: 0.3,
    pressure: 5e6,
    temperature: 3000,
    cooling: 1,
    stagnation: 3000,
    recovery: 3000,
    massFlux: 1000,
    diameter: 0.0955,
    uncorrected,
    layerCoefficient: 2000,
    radiating: { water: 0, dioxide: 0 },
  }));
}

const jacket: Jacket = {
  metal: { material: copper, thickness: 1e-3 },
  channels: { width: 1e-3, land: 1e-3, depth: 2e-3 },
  throatGirth: 0.3,
  correlation: 'gnielinski',
  limits: { id: 'water', wall: null, bulk: null },
  roughness: 5e-6,
};
const flow = { fluid: water, massFlow: 3, pressure: 1e7, temperature: 300 };

test('what the walls give is what the coolant takes', () => {
  const { heat, outlet, points } = coolantMarch(tube(3000), jacket, flow);
  const taken = 3 * (outlet.enthalpy - water.enthalpyAt(1e7, 300));
  // Straight steps along the wall: 1 % over a hundred of them.
  expect(Math.abs(taken / heat - 1)).toBeLessThan(0.01);
  expect(points[0]!.coolant).toBeGreaterThan(points.at(-1)!.coolant);
});

/** q = h_g (T_aw − T_wg) = (k/t)(T_wg − T_wc) = h (T_wc − T_c), three resistances in a row (any textbook). */
test('the wall’s flux is that of three resistances in a row', () => {
  const { points } = coolantMarch(tube(3000), jacket, flow, 'layer');
  for (const { recovery, wallHot, wallCold, coolant, heatFlux } of [points[0]!, points[50]!, points[100]!]) {
    expect(heatFlux / (2000 * (recovery - wallHot))).toBeCloseTo(1, 5);
    expect(heatFlux / ((350 / 1e-3) * (wallHot - wallCold))).toBeCloseTo(1, 4);
    const coefficient = heatFlux / (wallCold - coolant);
    const whole = 1 / (1 / 2000 + 1e-3 / 350 + 1 / coefficient);
    expect(heatFlux / (whole * (recovery - coolant))).toBeCloseTo(1, 5);
  }
});

test('pressure falls by f/D ρv²/2 along the way', () => {
  const { pressureDrop } = coolantMarch(tube(1), jacket, flow);
  const [area, diameter] = [0.3 * 0.5 * 2e-3, (2 * 1e-3 * 2e-3) / 3e-3];
  const { density, viscosity } = water.stateAt(1e7, water.enthalpyAt(1e7, 300));
  const flux = 3 / area;
  const friction = frictionFactor((flux * diameter) / viscosity, 5e-6 / diameter);
  const expected = ((friction * 0.5) / diameter) * ((flux * flux) / (2 * density));
  // Cold water is nearly of one density: 1 %.
  expect(Math.abs(pressureDrop / expected - 1)).toBeLessThan(0.01);
});

const methane = coolantFluid(read<CoolantRecord>('coolants/methane.json'));
const light = { fluid: methane, massFlow: 3, pressure: 2e7, temperature: 300 };

/** Momentum along a duct of one section: p₁ − p₂ = ∫(f/D)(ρv²/2) ds + G (v₂ − v₁), G = ρv (any textbook). */
test('a coolant that grows lighter loses what friction takes and what its speed takes', () => {
  const shape = { width: 1e-3, land: 1e-3, depth: 2.4e-3 };
  const { points, pressureDrop } = coolantMarch(tube(3000), { ...jacket, channels: shape }, light);
  const [area, diameter] = [0.3 * 0.5 * 2.4e-3, (2 * 1e-3 * 2.4e-3) / 3.4e-3];
  const flux = 3 / area;
  const friction = points.map(({ pressure, coolant, velocity }) => {
    const { viscosity } = methane.stateAt(pressure, methane.enthalpyAt(pressure, coolant));
    return (
      (frictionFactor((flux * diameter) / viscosity, 5e-6 / diameter) / diameter) * ((flux * velocity) / 2)
    );
  });
  const taken = friction.slice(1).reduce((sum, each, i) => sum + ((each + friction[i]!) / 2) * 0.005, 0);
  const push = flux * (points[0]!.velocity - points.at(-1)!.velocity);
  // The speed takes a good part of it, half of that because the pressure falls; steps of 5 mm: 1 %.
  expect(push / pressureDrop).toBeGreaterThan(0.1);
  expect(Math.abs(pressureDrop / (taken + push) - 1)).toBeLessThan(0.01);
});

test('channels choke on a light coolant, and say so', () => {
  const codeOf = (work: () => unknown): string | null => {
    const outcome = attempt(work);
    return outcome.ok ? null : outcome.problem.code;
  };
  const through = (depth: number) => (): unknown =>
    coolantMarch(tube(3000), { ...jacket, channels: { width: 1e-3, land: 1e-3, depth } }, light);
  expect(codeOf(through(2.4e-3))).toBeNull();
  expect(codeOf(through(1.2e-3))).toBe('coolant-chokes');
  const depth =
    (drop: number, pressure = 2e7) =>
    (): unknown =>
      depthForDrop(tube(3000), jacket, { width: 1e-3, land: 1e-3 }, { ...light, pressure }, drop);
  expect(codeOf(depth(4e6))).toBeNull();
  expect(codeOf(depth(1.9e7))).toBe('coolant-chokes');
  // What stops even the deepest channel is told, not that none is deep enough.
  expect(codeOf(depth(1e6, 9e7))).toBe('coolant-pressure-outside-table');
  expect(codeOf(depth(1e6, 4.6e6))).toBe('coolant-near-critical');
});

test('a depth is found for a wanted pressure drop', () => {
  const depth = depthForDrop(tube(3000), jacket, { width: 1e-3, land: 1e-3 }, flow, 1e6);
  const { pressureDrop } = coolantMarch(
    tube(3000),
    { ...jacket, channels: { width: 1e-3, land: 1e-3, depth } },
    flow,
  );
  expect(Math.abs(pressureDrop / 1e6 - 1)).toBeLessThan(0.02);
});

test('water that would boil is held at its boiling point, and the heat still told', () => {
  const { spentAt, capacity, heat, capacityBy, outlet } = coolantMarch(tube(8000), jacket, {
    ...flow,
    massFlow: 0.35,
    pressure: 3e6,
  });
  expect(spentAt).not.toBeNull();
  expect(capacityBy).toBe('it would boil');
  expect(capacity).toBeLessThan(heat);
  expect(outlet.enthalpy).toBeCloseTo(water.boilingEnthalpy(outlet.pressure)!, 0);
});

test('where neither face may be hotter, less can pass than arrives at a hard place', () => {
  const hard = coolantMarch(tube(40_000), jacket, flow).points[50]!;
  const mild = coolantMarch(tube(2000), jacket, flow).points[50]!;
  expect(hard.margin!).toBeLessThan(1);
  expect(hard.wallHot).toBeGreaterThan(800);
  expect(mild.margin!).toBeGreaterThan(1);
  expect(mild.wallHot).toBeLessThan(800);
});

test('a film is warmed as its heat balance says, to the gas’s temperature at most', () => {
  const points = tube(3000);
  const film = { fluid: water, massFlow: 0.2, temperature: 300, pressure: 3e7 };
  const under = underFilm(points, film, 800);
  expect(under[0]!.recovery).toBe(300);
  expect(under[100]!.recovery).toBeLessThanOrEqual(3000);
  under.slice(1).forEach((point, i) => {
    expect(point.recovery).toBeGreaterThanOrEqual(under[i]!.recovery);
  });
  // First centimetre: η ṁ Δh = h_g (T_aw − T_f) A, with the film still cold; 5 %: it warms a little on the way.
  const sigma = (0.5 * (800 / 3000) + 0.5) ** -0.68;
  const gained = water.enthalpyAt(3e7, under[2]!.recovery) - water.enthalpyAt(3e7, 300);
  expect(Math.abs((0.5 * 0.2 * gained) / (3000 * sigma * 2700 * 0.3 * 0.01) - 1)).toBeLessThan(0.05);
});

/**
 * L. J. Krzycki, How to Design, Build and Test Small Liquid-Fuel Rocket Engines, 1967 (from memory): 3 Btu/(in² s) on 22.4 in² of jacket is
 * 67.1 Btu/s; water that may warm by 40 °F must flow at 1.68 lb/s.
 */
test('a worked jacket: 67 Btu/s warm 1.68 lb/s of water by 40 °F', () => {
  const heat = 67.1 * 1055.056;
  const [cold, warm] = [294.3, 294.3 + 40 * (5 / 9)];
  const flowOfWater = heat / (water.enthalpyAt(2e6, warm) - water.enthalpyAt(2e6, cold));
  // 1 %: the book takes 1 Btu/(lb °F).
  expect(Math.abs(flowOfWater / 0.45359237 / 1.68 - 1)).toBeLessThan(0.01);
});
