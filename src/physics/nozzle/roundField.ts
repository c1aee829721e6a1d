/**
 * The flow field of a round nozzle that flows full, throat to lip: one a nozzle, from which everything else comes.
 *
 *   start    the C− from the wall at the throat plane to the axis, in the transonic series
 *   arc      C− lines from wall points of the throat arc (direct net)
 *   rest     lines across the flow up to the exit plane, characteristics traced back (inverse net)
 *
 * Sizes in throat radii.
 */

import { type CarriedFlow, flowAcross } from '../flow/axialFlow.ts';
import { marchAcross } from '../flow/crossMarch.ts';
import { cutAcross } from '../flow/cutAcross.ts';
import { type SupersonicTable, tableStateAt, tabulateSupersonic } from '../flow/gasTable.ts';
import type { CharacteristicNet } from '../flow/net.ts';
import type { ShockTrace } from '../flow/shockTrace.ts';
import { throatCharacteristic } from '../flow/startLine.ts';
import { marchAlongWall, type WallPoint } from '../flow/wallMarch.ts';
import type { Expansion } from '../gas/flow.ts';
import { THROAT_ARC_UPSTREAM } from './bellShape.ts';
import type { WallStation } from './model.ts';
import { arcPoints, type RoundWall } from './roundWall.ts';

/** How fine a field is. */
export interface FieldMesh {
  /** Nodes across the throat. */ readonly start: number;
  /** Largest turn between two points of the throat arc [rad]. */ readonly arcStep: number;
  /** Nodes across the flow behind the arc. */ readonly across: number;
  /** Step along the wall over the spacing across [–]. */ readonly stride: number;
}

/** Mass closes to 0.05 %, momentum to 0.1 %, the lip pressure to 0.3 % of a net twice as fine. */
export const WORKING_MESH: FieldMesh = { start: 24, arcStep: Math.PI / 144, across: 61, stride: 3 };

export interface RoundField {
  readonly table: SupersonicTable;
  /** C− lines from the throat arc. */ readonly arc: CharacteristicNet;
  /** Lines across the flow from the arc's end to the lip. */ readonly lines: CharacteristicNet;
  /** Across the start line; mass flow [kg/s], force [N] of a throat of 1 m radius. */ readonly entering: CarriedFlow;
  /** Across the last line, likewise. */ readonly leaving: CarriedFlow;
  /** ∫ p dA_x on the wall from the throat on [N], likewise. */ readonly wallForce: number;
  /** The gas at the wall, throat to lip. */ readonly wall: readonly WallStation[];
  /** Mass flow that had to be put right along the way, over the mass flow [–]. */ readonly drift: number;
  readonly shock: ShockTrace | null;
}

const TABLE_CELLS = 96;
/** How far below the mean exit pressure the gas table goes [–], as far as the gas's data reach: the axis expands well past it. */
const TABLE_DEPTH = 1e-7;
/** The first steps behind the arc are shorter, where the wall's curvature jumps: this share, growing by that factor. */
const FIRST_STEP = 0.25;
const GROWTH = 1.1;
/** Lines of the arc's net whose axis node the cut may end on. */
const CUT_LINE = 3;
const FEWEST_ON_ARC = 8;

/**
 * Compute the field.
 * @param exitPressure [Pa] mean over the exit, for the depth of the gas table
 * @throws ProblemError where the field cannot be had, with the physical reason
 */
export function computeRoundField(
  wall: RoundWall,
  expansion: Expansion,
  exitPressure: number,
  mesh: FieldMesh = WORKING_MESH,
): RoundField {
  const { throat } = expansion;
  const deepest = Math.max(TABLE_DEPTH * exitPressure, 1.001 * expansion.lowestPressure);
  const table = tabulateSupersonic(expansion, deepest, TABLE_CELLS);
  const gas = {
    table,
    gamma: throat.isentropicExponent ?? throat.gammaFrozen,
    criticalSpeed: throat.velocity,
  };
  const start = throatCharacteristic(gas, 1, THROAT_ARC_UPSTREAM, mesh.start);
  const entering = flowAcross(start, 0, mesh.start, table, 'axisymmetric');
  const onArc = Math.max(FEWEST_ON_ARC, Math.ceil(wall.turn / mesh.arcStep));
  const arc = marchAlongWall(table, 'axisymmetric', start, arcPoints(wall, onArc), CUT_LINE).net;
  const cut = cutAcross(arc, table, CUT_LINE, mesh.across);
  const { net, drift, shock } = marchAcross(
    table,
    'axisymmetric',
    cut,
    wallSteps(wall, mesh),
    entering.massFlow,
  );
  const last = net.lineCount - 1;
  const stations = [...stationsOf(arc, table, 0), ...stationsOf(net, table, 1)];
  return {
    table,
    arc,
    lines: net,
    entering,
    leaving: flowAcross(net.nodes, net.offset(last, 0), mesh.across, table, 'axisymmetric'),
    wallForce: forceOn(stations),
    wall: stations,
    drift,
    shock,
  };
}

/** Wall points behind the arc, their distance in keeping with the radius. */
function wallSteps(wall: RoundWall, { across, stride }: FieldMesh): readonly WallPoint[] {
  if (wall.pace(0) < 1e-9) return [];
  const shares: number[] = [];
  let share = 0;
  let part = FIRST_STEP;
  while (share < 1) {
    share += (stride * part * wall.at(share).radius) / ((across - 1) * wall.pace(share));
    part = Math.min(1, part * GROWTH);
    shares.push(share);
  }
  return shares.map((at, i) => wall.at(i === shares.length - 1 ? 1 : at / share));
}

function stationsOf(net: CharacteristicNet, table: SupersonicTable, from: number): WallStation[] {
  return Array.from({ length: net.lineCount - from }, (_, i) => {
    const at = net.offset(from + i, 0);
    const { pressure, mach, temperature } = tableStateAt(table, net.nodes[at + 3]!);
    return { axial: net.nodes[at]!, radius: net.nodes[at + 1]!, pressure, mach, temperature };
  });
}

/** ∫ p d(π r²) along the wall, linear between stations. */
function forceOn(wall: readonly WallStation[]): number {
  let force = 0;
  for (let i = 1; i < wall.length; i++) {
    const from = wall[i - 1]!;
    const to = wall[i]!;
    force += Math.PI * (to.radius ** 2 - from.radius ** 2) * 0.5 * (from.pressure + to.pressure);
  }
  return force;
}
