/**
 * What a net keeps between two of its lines: mass, axial momentum, energy.
 *
 *   mass       ṁ_out / ṁ_in − 1
 *   momentum   ( F_out − F_in − ∫ p 2πr dr ) / F_out,     F = ∫ [p n_x + ρ u (q·n)] dA across a line
 *   energy     largest | h(p) + V²/2 − h₀ | / (V²/2) at a node of the last line, h(p) from the gas itself
 *
 * The integral is the axial push of everything on the side between the two lines: walls, bases, the ambient on a free
 * boundary. The enthalpy is constant in the equations, so that the last line tells what the gas table loses.
 */

import type { Expansion } from '../gas/flow.ts';
import { flowAcross } from './axialFlow.ts';
import { columnAt, type SupersonicTable } from './gasTable.ts';
import type { CharacteristicNet } from './net.ts';
import type { Symmetry } from './points.ts';

export interface NetBalance {
  /** [–] */ readonly mass: number;
  /** [–] */ readonly momentum: number;
  /** [–] */ readonly energy: number;
}

export interface BalanceBetween {
  readonly net: CharacteristicNet;
  readonly table: SupersonicTable;
  readonly symmetry: Symmetry;
  readonly expansion: Expansion;
  /** Number of the line where the flow enters, and of that where it leaves; both from the side to the axis. */
  readonly from: number;
  readonly to: number;
  /** Push on the side between their first nodes, downstream positive [N], planar: per metre of width */
  readonly sideForce: number;
}

export function netBalance(between: BalanceBetween): NetBalance {
  const { net, table, symmetry, from, to, sideForce } = between;
  const across = (line: number) =>
    flowAcross(net.nodes, net.offset(line, 0), net.lineLength(line), table, symmetry);
  const into = across(from);
  const out = across(to);
  return {
    mass: out.massFlow / into.massFlow - 1,
    momentum: (out.axialForce - into.axialForce - sideForce) / out.axialForce,
    energy: energyMiss(between),
  };
}

/** Push of a constant pressure [Pa] on the side between two distances from the axis [m]. */
export function sideForceOf(pressure: number, symmetry: Symmetry, from: number, to: number): number {
  return pressure * (symmetry === 'planar' ? to - from : Math.PI * (to * to - from * from));
}

function energyMiss({ net, table, expansion, to }: BalanceBetween): number {
  const { knots, step, cells } = table;
  let most = 0;
  for (let i = 0; i < net.lineLength(to); i++) {
    const nu = net.nodes[net.offset(to, i) + 3]!;
    const speed = columnAt(knots.speed, step, cells, nu);
    const { velocity } = expansion.atPressure(Math.exp(columnAt(knots.lnPressure, step, cells, nu)));
    most = Math.max(most, Math.abs((speed / velocity) ** 2 - 1));
  }
  return most;
}

/** Number of the last line that reaches the axis. */
export function lastWholeLine(net: CharacteristicNet): number {
  for (let line = net.lineCount - 1; line > 0; line--) {
    if (net.nodes[net.offset(line, net.lineLength(line) - 1) + 1] === 0) return line;
  }
  return 0;
}
