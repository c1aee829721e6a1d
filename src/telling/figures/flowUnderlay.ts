/** A computed field laid over an engine cut open, hanging down: gas and air to the scale of the drawing, its walls over them. */

import type { FlowField, Shown } from '../../answer/flow/index.ts';
import type { Layout } from '../look/formats.ts';
import type { Box } from '../scene/box.ts';
import { type Point, polyline } from '../scene/pathData.ts';
import type { SceneNode } from '../scene/scene.ts';
import { bandNodes } from './flowBands.ts';
import { separationNodes } from './flowSeparation.ts';
import { streamlineNodes } from './flowStreamlines.ts';
import { type At, wallNodes } from './flowWalls.ts';

export interface FlowPlacing {
  /** [px/m] */ readonly scale: number;
  /** [px] the axis, and what lies at `top` */ readonly axisX: number;
  readonly topY: number;
  /** [m] from the throat plane */ readonly top: number;
  /** [px] what is seen */ readonly box: Box;
}

export interface FlowUnderlay {
  /** Ground, gas and air, lines that run with them; may fade at the edges. */ readonly gas: readonly SceneNode[];
  /** Walls, and where gas may leave them. */ readonly over: readonly SceneNode[];
}

export function flowUnderlay(
  field: FlowField,
  shown: Shown,
  { scale, axisX, topY, top, box }: FlowPlacing,
  style: Pick<Layout, 'line'>,
  streamlines: number | null,
): FlowUnderlay {
  const at: At = (axial, radius) => ({ x: axisX + scale * radius, y: topY + scale * (axial - top) });
  return {
    gas: [
      ...field.blocks.map((block): SceneNode => ({ kind: 'path', d: outlineOf(block, at), fill: 'paper' })),
      ...field.blocks.flatMap((block) => bandNodes(block, field, shown, at, box)),
      ...(streamlines === null ? [] : streamlineNodes(field, streamlines, at, style)),
    ],
    over: [...wallNodes(field, at, style), ...separationNodes(field, at, style)],
  };
}

/** Both sides of the axis, so that nothing drawn before shines through where the gas has no tint. */
function outlineOf({ ni, nj, axial, radius }: FlowField['blocks'][number], at: At): string {
  const edge: number[] = [];
  for (let i = 0; i <= ni; i++) edge.push(i);
  for (let j = 1; j <= nj; j++) edge.push(j * (ni + 1) + ni);
  for (let i = ni - 1; i >= 0; i--) edge.push(nj * (ni + 1) + i);
  for (let j = nj - 1; j > 0; j--) edge.push(j * (ni + 1));
  return [1, -1]
    .map((side) =>
      polyline(
        edge.map((k): Point => at(axial[k]!, side * radius[k]!)),
        true,
      ),
    )
    .join('');
}
