import { describe, expect, test } from 'vitest';
import { nuAtMach, nuAtPressure, tabulateSupersonic } from '../../../src/physics/flow/gasTable.ts';
import { jetAcross, marchJet } from '../../../src/physics/flow/jet/jet.ts';
import { compressAtLip, expandAtLip } from '../../../src/physics/flow/jet/lipWave.ts';
import { NODE, setNodeInto } from '../../../src/physics/flow/points.ts';
import { tubeGas } from '../../../src/physics/flow/streamtubes/index.ts';
import { expandPerfect } from '../../../src/physics/gas/index.ts';
import { edgeByTubes } from '../../../src/physics/plume/jetTubes.ts';

const expansion = expandPerfect({ gamma: 1.2, molarMass: 0.022, temperature: 3500, pressure: 1e7 });
const table = tabulateSupersonic(expansion, 1e-1);
const gas = tubeGas(table);
const exitPressure = expansion.atMach(3).pressure;

function exitPlane(count: number, power: number): Float64Array {
  const nodes = new Float64Array((count + 1) * NODE);
  for (let i = 0; i <= count; i++)
    setNodeInto(nodes, i * NODE, table, 0, i === count ? 0 : 1 - (i / count) ** power, 0, nuAtMach(table, 3));
  return nodes;
}

function radiusAt(edge: readonly { axial: number; radius: number }[], x: number): number {
  const next = edge.findIndex(({ axial }) => axial >= x);
  const [from, to] = [edge[next - 1]!, edge[next]!];
  return from.radius + ((x - from.axial) / (to.axial - from.axial)) * (to.radius - from.radius);
}

function byCharacteristics(ambient: number) {
  const boundaryNu = nuAtPressure(table, ambient);
  const jet = jetAcross(
    { table, symmetry: 'axisymmetric', boundaryNu, axialLimit: 12, weakRise: 1.5 },
    exitPlane(32, 2),
  );
  if (ambient > exitPressure) compressAtLip(jet);
  else expandAtLip(jet, 24);
  marchJet(jet);
  return Array.from({ length: jet.net.lineCount - jet.lipLine }, (_, i) => {
    const at = jet.net.offset(jet.lipLine + i, 0);
    return { axial: jet.net.nodes[at]!, radius: jet.net.nodes[at + 1]! };
  });
}

describe('the edge of a jet, two roads', () => {
  // Characteristics without entropy against streamtubes with it: different equations, one answer where shocks are weak.
  test.each([
    [0.9, 1, 4],
    [1.2, 2, 6],
    [2, 2, 4],
  ])('p_e/p_a = %f: characteristics and streamtubes give one edge', (ratio, near, far) => {
    const tubes = edgeByTubes(gas, 'axisymmetric', exitPlane(24, 1), exitPressure / ratio, 8);
    const net = byCharacteristics(exitPressure / ratio);
    for (const x of [near, 0.5 * (near + far), far]) {
      expect(Math.abs(radiusAt(tubes, x) / radiusAt(net, x) - 1), `x ${x}`).toBeLessThan(4e-3);
    }
  });

  test('a jet far over-expanded ends where the flow turns subsonic behind its shock', () => {
    const edge = edgeByTubes(gas, 'axisymmetric', exitPlane(24, 1), 2 * exitPressure, 8);
    const last = edge[edge.length - 1]!;
    expect(last.axial).toBeGreaterThan(0.5);
    expect(last.axial).toBeLessThan(4);
    expect(last.radius).toBeLessThan(0.95);
  });

  test('a cell closes again: behind its widest place the edge comes back', () => {
    const edge = edgeByTubes(gas, 'axisymmetric', exitPlane(24, 1), exitPressure / 1.2, 12);
    expect(radiusAt(edge, 4.5)).toBeGreaterThan(1.1);
    expect(radiusAt(edge, 8)).toBeLessThan(1.05);
    expect(radiusAt(edge, 10)).toBeGreaterThan(radiusAt(edge, 8));
  });
});
