import { describe, expect, test } from 'vitest';
import { nuAtMach, type SupersonicTable, tabulateSupersonic } from '../../../src/physics/flow/gasTable.ts';
import { meetAxisInto, meetInto, NODE, setNodeInto } from '../../../src/physics/flow/points.ts';
import { type Expansion, expandPerfect } from '../../../src/physics/gas/index.ts';

const expansion: Expansion = expandPerfect({
  gamma: 1.3,
  molarMass: 0.022,
  temperature: 3000,
  pressure: 5e6,
});
const table: SupersonicTable = tabulateSupersonic(expansion, 5e6 * 1e-5);

/** Exact spherical (or cylindrical) source: A/A* grows as (R/R*)², or as R/R*. */
function sourceNu(radius: number, power: 1 | 2): number {
  return nuAtMach(table, expansion.atAreaRatio(radius ** power, 'supersonic').mach!);
}

/** March a triangle from an arc of the exact source flow and return the miss of ν at its tip. */
function tipMiss(cells: number, symmetry: 'planar' | 'axisymmetric'): number {
  const power = symmetry === 'planar' ? 1 : 2;
  const radius = 1.6;
  const spread = 0.3;
  const middle = 0.5;
  let row = new Float64Array((cells + 1) * NODE);
  for (let i = 0; i <= cells; i++) {
    // From the upper end of the arc to the lower.
    const angle = middle + spread / 2 - (spread * i) / cells;
    const at = i * NODE;
    setNodeInto(
      row,
      at,
      table,
      radius * Math.cos(angle),
      radius * Math.sin(angle),
      angle,
      sourceNu(radius, power),
    );
  }
  for (let left = cells; left > 0; left--) {
    const next = new Float64Array(left * NODE);
    for (let i = 0; i < left; i++) {
      meetInto(next, i * NODE, table, symmetry, row, i * NODE, row, (i + 1) * NODE);
    }
    row = next;
  }
  const r = Math.hypot(row[0]!, row[1]!);
  expect(Math.abs(row[2]! - middle)).toBeLessThan(1e-3);
  return Math.abs(row[3]! - sourceNu(r, power));
}

describe('unit processes', () => {
  test('uniform flow stays uniform', () => {
    const nodes = new Float64Array(3 * NODE);
    const nu = nuAtMach(table, 2.4);
    setNodeInto(nodes, 0, table, 0, 1, 0, nu);
    setNodeInto(nodes, NODE, table, 0, 0.5, 0, nu);
    meetInto(nodes, 2 * NODE, table, 'axisymmetric', nodes, 0, nodes, NODE);
    expect(Math.abs(nodes[2 * NODE + 2]!)).toBeLessThan(1e-12);
    expect(Math.abs(nodes[2 * NODE + 3]! - nu)).toBeLessThan(1e-12);
    // The Mach lines of uniform flow are straight: they meet half-way, at tan μ.
    const mach = 2.4;
    expect(nodes[2 * NODE]!).toBeCloseTo(0.25 * Math.sqrt(mach * mach - 1), 7);
  });

  test.each(['planar', 'axisymmetric'] as const)('source flow is met at second order (%s)', (symmetry) => {
    const misses = [8, 16, 32, 64].map((cells) => tipMiss(cells, symmetry));
    expect(misses[3]!).toBeLessThan(2e-5);
    for (let i = 1; i < misses.length; i++) {
      const order = Math.log2(misses[i - 1]! / misses[i]!);
      expect(order).toBeGreaterThan(1.8);
      expect(order).toBeLessThan(2.4);
    }
  });

  test('a simple wave keeps its invariant on the way to the plane of symmetry', () => {
    const nodes = new Float64Array(2 * NODE);
    setNodeInto(nodes, 0, table, 0, 1, 0.1, nuAtMach(table, 2));
    meetAxisInto(nodes, NODE, table, 'planar', nodes, 0);
    expect(nodes[NODE + 3]!).toBeCloseTo(0.1 + nuAtMach(table, 2), 12);
    expect(nodes[NODE + 1]!).toBe(0);
  });

  test('an expansion beyond the gas table is refused in words', () => {
    const nodes = new Float64Array(3 * NODE);
    const nu = nuAtMach(table, 4);
    setNodeInto(nodes, 0, table, 0, 1, 1, nu);
    setNodeInto(nodes, NODE, table, 0, 0.5, -1, nu);
    expect(() => meetInto(nodes, 2 * NODE, table, 'planar', nodes, 0, nodes, NODE)).toThrow(/outside 0…/);
  });
});
