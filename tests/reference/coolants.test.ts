/**
 * Coolant tables against CoolProp between their nodes. The points are made by scripts/reference/make_coolant_tables.py and are not in the
 * tables. Largest errors stand where a fluid is nearest to its critical point, where its heat capacity peaks within one step.
 */

import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { type CoolantRecord, coolantFluid } from '../../src/physics/heat/index.ts';

interface Points {
  readonly columns: readonly ['pressure', 'enthalpy', ...string[]];
  readonly fluids: Readonly<Record<string, Readonly<Record<'liquid' | 'dense', readonly number[][]>>>>;
}

const read = <T>(path: string): T => JSON.parse(readFileSync(new URL(path, import.meta.url), 'utf8')) as T;
const reference = read<Points>('coolant-points.json');
const properties = ['temperature', 'density', 'heatCapacity', 'viscosity', 'conductivity'] as const;

/** Mean and largest error allowed [–]: a little above today's. */
const ALLOWED = {
  temperature: { mean: 1.5e-4, largest: 2e-3 },
  density: { mean: 4e-4, largest: 8e-3 },
  heatCapacity: { mean: 7e-3, largest: 0.18 },
  viscosity: { mean: 6e-4, largest: 1.5e-2 },
  conductivity: { mean: 1.5e-3, largest: 4e-2 },
} as const;

test.each(Object.keys(reference.fluids))('%s', (id) => {
  const fluid = coolantFluid(read<CoolantRecord>(`../../data/coolants/${id}.json`));
  for (const kind of ['liquid', 'dense'] as const) {
    const points = reference.fluids[id]![kind];
    expect(points).toHaveLength(30);
    properties.forEach((property, k) => {
      const errors = points.map(([pressure, enthalpy, ...values]) =>
        Math.abs(fluid.stateAt(pressure!, enthalpy!)[property] / values[k]! - 1),
      );
      const mean = errors.reduce((a, b) => a + b, 0) / errors.length;
      const largest = Math.max(...errors);
      expect(mean, `${property}, ${kind}, mean`).toBeLessThan(ALLOWED[property].mean);
      expect(largest, `${property}, ${kind}, largest`).toBeLessThan(ALLOWED[property].largest);
    });
  }
});

test('temperature and enthalpy are inverse', () => {
  const fluid = coolantFluid(read<CoolantRecord>('../../data/coolants/methane.json'));
  for (const temperature of [110, 200, 350, 600]) {
    const enthalpy = fluid.enthalpyAt(1.2e7, temperature);
    expect(fluid.stateAt(1.2e7, enthalpy).temperature).toBeCloseTo(temperature, 6);
  }
});

// E. W. Lemmon and others, NIST Chemistry WebBook (from memory): water boils at 453.03 K under 10 bar.
test('water boils at 453 K under 10 bar', () => {
  const fluid = coolantFluid(read<CoolantRecord>('../../data/coolants/water.json'));
  const boiling = fluid.boilingEnthalpy(1e6)!;
  expect(Math.abs(fluid.stateAt(1e6, boiling).temperature - 453.03)).toBeLessThan(0.3);
  expect(fluid.boilingEnthalpy(3e7)).toBeNull();
});

test('what lies outside says so', () => {
  const fluid = coolantFluid(read<CoolantRecord>('../../data/coolants/methane.json'));
  expect(() => fluid.stateAt(4.6e6, 0)).toThrow(/too near its critical pressure/);
  expect(() => fluid.stateAt(1e9, 0)).toThrow(/not tabulated/);
  expect(() => fluid.enthalpyAt(1e6, 200)).toThrow(/no liquid/);
  expect(() => fluid.stateAt(1e7, 5e6)).toThrow(/would boil, or leave its table/);
});
