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
import type { LeavingFlow, WallStation } from './model.ts';
import { computeRoundField, type FieldMesh, type RoundField, WORKING_MESH } from './roundField.ts';
import type { RoundWall } from './roundWall.ts';

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

/** The flow at the wall of a nozzle that flows full; `exit` is the mean state at its area ratio. */
export function wallFlow(
  wall: RoundWall,
  expansion: Expansion,
  exit: FlowState,
  areaRatio: number,
): WallFlow {
  const found = roundField(wall, expansion, exit);
  if (!found.ok) return meanFlow(exit, found.problem.why ?? found.problem.what);
  const field = found.value;
  const last = field.lines.lineCount - 1;
  const lip = field.wall.at(-1)!;
  return {
    lip: { pressure: lip.pressure, mach: lip.mach, from: 'field' },
    stations: field.wall,
    leaving: {
      kind: 'line',
      nodes: field.lines.nodes.slice(
        field.lines.offset(last, 0),
        field.lines.offset(last, 0) + field.lines.lineLength(last) * NODE,
      ),
      isCharacteristic: false,
    },
    thrust: fieldThrust(field, expansion, areaRatio),
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
