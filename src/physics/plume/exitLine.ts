/** The line across the flow from which a jet is computed. */

import { ProblemError } from '../../numerics/problem.ts';
import { nuAtMach, type SupersonicTable } from '../flow/gasTable.ts';
import { NODE, setNodeInto } from '../flow/points.ts';
import type { LeavingFlow } from '../nozzle/model.ts';

/** Nodes of a parallel exit flow. */
const ACROSS = 22;

/** Nodes from lip to axis, closer together towards the lip: for characteristics, which come fastest from there. */
export function lineFinerAtLip(table: SupersonicTable, leaving: LeavingFlow): Float64Array {
  return leaving.kind === 'line'
    ? finerAtLip(coarser(leaving.nodes), table)
    : parallelLine(table, leaving, 2);
}

/** Nodes from lip to axis, evenly for a parallel flow: for streamtubes. */
export function lineEven(table: SupersonicTable, leaving: LeavingFlow): Float64Array {
  return leaving.kind === 'line' ? leaving.nodes : parallelLine(table, leaving, 1);
}

function parallelLine(
  table: SupersonicTable,
  leaving: LeavingFlow & { kind: 'parallel' },
  power: 1 | 2,
): Float64Array {
  const { mach } = leaving.state;
  if (mach === null) {
    throw new ProblemError({
      code: 'no-sound-speed',
      what: 'The gas has no single sound speed at the exit, so the jet has no characteristics.',
      why: leaving.state.absent ?? 'two phases of one substance stand together there',
      mend: 'Use chemistry: frozen.',
    });
  }
  const nu = nuAtMach(table, mach);
  const nodes = new Float64Array((ACROSS + 1) * NODE);
  for (let i = 0; i <= ACROSS; i++) {
    const r = i === ACROSS ? 0 : leaving.radius * (1 - (i / ACROSS) ** power);
    setNodeInto(nodes, i * NODE, table, 0, r, 0, nu);
  }
  return nodes;
}

/** More nodes than this do not move the edge by a tenth of a per cent. */
const MOST_ACROSS = 32;

/** Every second, third … node, the ends kept. */
function coarser(line: Float64Array): Float64Array {
  const last = line.length / NODE - 1;
  const segments = Math.min(last, MOST_ACROSS);
  const taken = new Float64Array((segments + 1) * NODE);
  for (let i = 0; i <= segments; i++) {
    const from = Math.round((i * last) / segments) * NODE;
    taken.set(line.subarray(from, from + NODE), i * NODE);
  }
  return taken;
}

/** Into how many parts the first segments of a line from the field are divided: near the lip the jet changes fastest. */
const PARTS = [6, 4, 3, 2, 2];

function finerAtLip(line: Float64Array, table: SupersonicTable): Float64Array {
  const count = line.length / NODE;
  const parts = (segment: number): number => PARTS[segment] ?? 1;
  let total = 1;
  for (let i = 0; i + 1 < count; i++) total += parts(i);
  const fine = new Float64Array(total * NODE);
  fine.set(line.subarray(0, NODE));
  let at = NODE;
  for (let i = 0; i + 1 < count; i++) {
    const from = i * NODE;
    const between = (k: number, share: number): number =>
      line[from + k]! + share * (line[from + NODE + k]! - line[from + k]!);
    for (let part = 1; part < parts(i); part++) {
      const share = part / parts(i);
      setNodeInto(
        fine,
        at,
        table,
        between(0, share),
        between(1, share),
        between(2, share),
        between(3, share),
      );
      at += NODE;
    }
    fine.set(line.subarray(from + NODE, from + 2 * NODE), at);
    at += NODE;
  }
  return fine;
}
