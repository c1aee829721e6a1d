/**
 * What flows along the wall behind the throat: from the flow field by characteristics where that can be had.
 *
 * The field is two-dimensional: near the wall of a bell the gas has expanded less than in the middle, so that the wall
 * pressure at the lip is one and a half to two times the mean. Whether the flow leaves the wall hangs on the wall's.
 */

import { attempt, type Problem } from '../../numerics/problem.ts';
import { NODE } from '../flow/points.ts';
import type { Expansion, FlowState } from '../gas/flow.ts';
import { type FieldThrust, fieldThrust } from './fieldThrust.ts';
import type { FieldBalance, LeavingFlow, WallStation } from './model.ts';
import { computeRoundField, type FieldMesh, type RoundField, WORKING_MESH } from './roundField.ts';
import type { RoundWall } from './roundWall.ts';
import { tubeFlow } from './tubeFlow.ts';

/** The state that the wall feels at the lip. */
export interface WallAtLip {
  /** [Pa] */ readonly pressure: number;
  readonly mach: number | null;
  /** `mean`: no flow field could be had, the mean over the exit stands in. */ readonly from:
    | 'field'
    | 'mean';
}

export interface WallFlow {
  /** The state at the wall of the lip; `mean`: over the exit, since there is no field. */ readonly lip: WallAtLip;
  /** From throat to lip; null where there is no field. */ readonly stations: readonly WallStation[] | null;
  /** The last line of the field, from the lip to the axis; null where there is no field. */
  readonly leaving: LeavingFlow | null;
  /** Thrust by the field; null where there is none. */ readonly thrust: FieldThrust | null;
  /** Why there is no field. */ readonly reason: string | null;
}

/** Tried in turn: shorter steps carry the strong waves of shallow cones, coarser lines the sharp turn of steep ones. */
const MESHES: readonly FieldMesh[] = [
  WORKING_MESH,
  { ...WORKING_MESH, stride: 1.5 },
  { ...WORKING_MESH, across: 31, stride: 1.5 },
  { ...WORKING_MESH, across: 31 },
];

/** A field of characteristics counts where its two ways to the thrust agree this well, and no more mass was put right [–]. */
const SOUND = { momentum: 0.003, massPutRight: 0.01 };
/** Where nothing else can be had it counts up to this disagreement [–], which its balance tells. */
const MOST_MOMENTUM = 0.01;

/**
 * The flow at the wall of a nozzle that flows full; `exit` is the mean state at its area ratio.
 *
 * By characteristics; where they give out, or an internal shock is too strong to be carried without its loss, in
 * streamtubes; where these end as well, the mean.
 */
export function wallFlow(
  wall: RoundWall,
  expansion: Expansion,
  exit: FlowState,
  areaRatio: number,
): WallFlow {
  const found = roundField(wall, expansion, exit);
  const flow = found.ok ? flowOf(found.value, fieldThrust(found.value, expansion, areaRatio)) : null;
  const balance = flow?.thrust?.balance;
  if (flow !== null && balance !== undefined && isSound(balance)) return flow;
  const tubes = attempt(() => tubeFlow(wall, expansion, exit, areaRatio));
  if (tubes.ok && isSound(tubes.value.thrust.balance))
    return { ...tubes.value, lip: lipOf(tubes.value.stations), reason: null };
  if (flow !== null && Math.abs(balance!.momentum) <= MOST_MOMENTUM) return flow;
  const problem = found.ok ? null : found.problem;
  return meanFlow(
    exit,
    problem?.why ??
      problem?.what ??
      'an internal shock is too strong to be carried, and the field does not close',
  );
}

function isSound({ momentum, massPutRight = 0 }: FieldBalance): boolean {
  return Math.abs(momentum) <= SOUND.momentum && Math.abs(massPutRight) <= SOUND.massPutRight;
}

function lipOf(stations: readonly WallStation[]): WallAtLip {
  const { pressure, mach } = stations.at(-1)!;
  return { pressure, mach, from: 'field' };
}

function flowOf({ lines, wall }: RoundField, thrust: FieldThrust): WallFlow {
  const last = lines.lineCount - 1;
  const first = lines.offset(last, 0);
  return {
    lip: lipOf(wall),
    stations: wall,
    leaving: {
      kind: 'line',
      nodes: lines.nodes.slice(first, first + lines.lineLength(last) * NODE),
      isCharacteristic: false,
    },
    thrust,
    reason: null,
  };
}

/** No field: the mean over the exit stands in. */
export function meanFlow({ pressure, mach }: FlowState, reason: string): WallFlow {
  return {
    lip: { pressure, mach, from: 'mean' },
    stations: null,
    leaving: null,
    thrust: null,
    reason,
  };
}

type FoundField =
  | { readonly ok: true; readonly value: RoundField }
  | { readonly ok: false; readonly problem: Problem };

/** The field on the first mesh that carries it; the problem told is that of the working mesh. */
export function roundField(wall: RoundWall, expansion: Expansion, exit: FlowState): FoundField {
  const first = attempt(() => computeRoundField(wall, expansion, exit.pressure));
  if (first.ok) return first;
  for (const mesh of MESHES.slice(1)) {
    const next = attempt(() => computeRoundField(wall, expansion, exit.pressure, mesh));
    if (next.ok) return next;
  }
  return first;
}
