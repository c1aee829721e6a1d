import type { SupersonicTable } from '../../../../src/physics/flow/gasTable.ts';
import { tabulateSupersonic } from '../../../../src/physics/flow/gasTable.ts';
import { NODE, setNodeInto } from '../../../../src/physics/flow/points.ts';
import { type TubeGas, tubeGas } from '../../../../src/physics/flow/streamtubes/index.ts';
import type { Expansion } from '../../../../src/physics/gas/flow.ts';
import { expandPerfect } from '../../../../src/physics/gas/perfectGas.ts';

export const STAGNATION_PRESSURE = 1e7;

export interface PerfectTubes {
  readonly expansion: Expansion;
  readonly table: SupersonicTable;
  readonly gas: TubeGas;
}

export function perfectTubes(gamma: number): PerfectTubes {
  const expansion = expandPerfect({
    gamma,
    molarMass: 0.029,
    temperature: 3000,
    pressure: STAGNATION_PRESSURE,
  });
  const table = tabulateSupersonic(expansion, STAGNATION_PRESSURE * 1e-5);
  return { expansion, table, gas: tubeGas(table) };
}

/** Nodes along a line; `at` gives x, r, θ, ν at a share of it. */
export function nodesAlong(
  table: SupersonicTable,
  count: number,
  at: (share: number) => readonly [number, number, number, number],
): Float64Array {
  const nodes = new Float64Array((count + 1) * NODE);
  for (let i = 0; i <= count; i++) setNodeInto(nodes, i * NODE, table, ...at(i / count));
  return nodes;
}
