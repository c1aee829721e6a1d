/** What happens at the lip, where the pressure falls or rises to that of the surroundings. */

import { ProblemError } from '../../../numerics/problem.ts';
import { NODE, setNodeInto } from '../points.ts';
import { completeJetLine, overtake } from './jetLine.ts';
import type { Jet } from './model.ts';

/** Turns below this are rounding of the gas table [rad]. */
const MATCHED = 1e-7;

/**
 * A centred expansion at the first node of the net's last line, in `rays` lines, outwards. At the corner θ − ν is kept.
 * @throws ProblemError `shock-at-lip` where the pressure outside is the higher one
 */
export function expandAtLip(jet: Jet, rays: number): void {
  const { net, table } = jet;
  const lip = lipNode(jet);
  const turn = jet.boundaryNu - lip[3]!;
  if (turn < -MATCHED) shockAtLip(lip[3]!, jet.boundaryNu);
  for (let ray = 1; turn > MATCHED && ray <= rays; ray++) {
    const turned = turn * (ray / rays);
    const first = net.openLine(net.lineLength(net.lineCount - 1) + 1);
    setNodeInto(net.nodes, first, table, lip[0]!, lip[1]!, lip[2]! + turned, lip[3]! + turned);
    completeJetLine(jet, first, 0);
  }
  jet.lipLine = net.lineCount - 1;
}

/**
 * A weak shock at the lip, carried on the net's last line: θ − ν from ahead, θ + ν from behind. The line ends where the
 * shock is stronger than the jet allows.
 * @returns false where it is too strong at the lip already, and nothing is computed
 */
export function compressAtLip(jet: Jet): boolean {
  const { net, table } = jet;
  const line = net.lineCount - 1;
  const count = net.lineLength(line);
  const old = net.offset(line, 0);
  const lip = lipNode(jet);
  const turn = lip[3]! - jet.boundaryNu;
  const first = net.openLine(count);
  jet.crossing = { axial: lip[0]!, radius: lip[1]!, family: 'C−' };
  setNodeInto(net.nodes, first, table, lip[0]!, lip[1]!, lip[2]! - turn, jet.boundaryNu);
  let made = 1;
  while (made < count && overtake(jet, first + made * NODE, old + made * NODE)) made++;
  if (made < count) jet.reachesAxis = false;
  net.closeLine(made);
  jet.lipLine = net.lineCount - 1;
  return made > 1;
}

function lipNode({ net }: Jet): Float64Array {
  const at = net.offset(net.lineCount - 1, 0);
  return net.nodes.slice(at, at + NODE);
}

function shockAtLip(lipNu: number, boundaryNu: number): never {
  throw new ProblemError({
    code: 'shock-at-lip',
    what: 'The ambient pressure is above that of the flow at the lip: a shock begins at the lip itself.',
    mend: 'Ask at a lower ambient pressure, or for the shock.',
    facts: { lipNu, boundaryNu },
  });
}
