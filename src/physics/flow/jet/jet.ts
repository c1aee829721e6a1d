/**
 * A jet into still surroundings: characteristics inside, constant pressure on its boundary.
 *
 * On the boundary the pressure is the ambient's, so ν is known; θ comes with the C+ that arrives from inside, and the
 * boundary is the streamline through these points. Each line of the net is a C− from a boundary point inward, as along a
 * wall.
 *
 * Compressions that the boundary sends back run together downstream. The first place where two characteristics of one
 * family meet is reported. From there they go on as one weak shock (path of the characteristic, no entropy rise) as long as
 * the pressure across it rises by less than `weakRise`; a line ends where it would be stronger, and with it everything
 * that such a shock can reach.
 *
 * Source: any text on characteristics, e.g. A. H. Shapiro, Compressible Fluid Flow, vol. 1, 1953, ch. 15; E. S. Love et al.,
 * NASA TR R-6, 1959, for round jets (both from memory). Second order.
 */

import { attempt } from '../../../numerics/problem.ts';
import type { SupersonicTable } from '../gasTable.ts';
import { CharacteristicNet } from '../net.ts';
import { NODE, type Symmetry } from '../points.ts';
import { boundaryPointInto } from './boundaryPoint.ts';
import { completeJetLine } from './jetLine.ts';
import type { Crossing, Jet } from './model.ts';

export interface JetFrom {
  readonly table: SupersonicTable;
  readonly symmetry: Symmetry;
  readonly boundaryNu: number;
  readonly axialLimit: number;
  readonly weakRise: number;
}

/** A jet whose first line is a C− from the lip to the axis; or short of it, and then nothing beyond its end is computed. */
export function jetAlong(from: JetFrom, line: Float64Array): Jet {
  const jet = newJet(from);
  jet.reachesAxis = line[line.length - NODE + 1] === 0;
  const count = line.length / NODE;
  jet.net.nodes.set(line, jet.net.openLine(count));
  jet.net.closeLine(count);
  return jet;
}

/**
 * A jet from a line across the flow, nodes from lip to axis (an exit plane): the C− lines from its nodes one after the
 * other, from the axis up, the last one that from the lip.
 */
export function jetAcross(from: JetFrom, line: Float64Array): Jet {
  const jet = newJet(from);
  const { net } = jet;
  const count = line.length / NODE;
  for (let k = count - 1; k >= 0; k--) {
    const first = net.openLine(count - k + 1);
    net.nodes.set(line.subarray(k * NODE, (k + 1) * NODE), first);
    if (k === count - 1) net.closeLine(1);
    else completeJetLine(jet, first, -1);
  }
  return jet;
}

function newJet(from: JetFrom): Jet {
  return { ...from, net: new CharacteristicNet(), crossing: null, reachesAxis: true, lipLine: 0 };
}

/** The C− from the lip of a jet begun across the flow, before anything happens there: where every ambient pressure begins. */
export interface LipCharacteristic {
  readonly nodes: Float64Array;
  readonly crossing: Crossing | null;
}

/** Find it once; `jetFromLip` begins with it. */
export function lipCharacteristic(from: JetFrom, line: Float64Array): LipCharacteristic {
  const { net, crossing } = jetAcross(from, line);
  const last = net.lineCount - 1;
  const at = net.offset(last, 0);
  return { nodes: net.nodes.slice(at, at + net.lineLength(last) * NODE), crossing };
}

export function jetFromLip(from: JetFrom, { nodes, crossing }: LipCharacteristic): Jet {
  const jet = jetAlong(from, nodes);
  jet.crossing = crossing;
  return jet;
}

/**
 * March lines from the boundary until nothing more can be computed or the boundary passes the axial limit.
 * @returns how many boundary points were found
 */
export function marchJet(jet: Jet, mostLines = 2000): number {
  const { net } = jet;
  for (let made = 0; made < mostLines; made++) {
    const line = net.lineCount - 1;
    const before = net.offset(line, 0);
    if (net.lineLength(line) < 2 || net.nodes[before]! > jet.axialLimit) return made;
    const first = net.openLine(net.lineLength(line) + 1);
    const next = attempt(() =>
      boundaryPointInto(net.nodes, first, jet.table, jet.symmetry, before, before + NODE, jet.boundaryNu),
    );
    // Where the C+ runs beside the boundary or away from it there is no next point.
    if (!next.ok || !(next.value > 0)) return made;
    completeJetLine(jet, first, 1);
  }
  return mostLines;
}
