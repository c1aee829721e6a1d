/** Lines along which the gas of a computed field flows, an equal part of the exhaust between each two. */

import type { FlowField } from '../../answer/flow/index.ts';
import { type Streamline, streamlines } from '../../physics/wholeFlow/index.ts';
import type { Layout } from '../look/formats.ts';
import { type Point, polyline } from '../scene/pathData.ts';
import type { SceneNode } from '../scene/scene.ts';
import type { At } from './flowWalls.ts';

/** Lines on each side of the axis. */
export const USUAL_STREAMLINES = 7;
/** Points closer together than this are one [px]. */
const NEAR = 2.5;

/** Each field’s lines are followed once. */
const followed = new WeakMap<FlowField, Map<number, readonly Streamline[]>>();

export function streamlinesOf(field: FlowField, count: number): readonly Streamline[] {
  const known = followed.get(field) ?? new Map<number, readonly Streamline[]>();
  followed.set(field, known);
  const before = known.get(count);
  if (before !== undefined) return before;
  const found = streamlines(field.blocks, count, field.lip.axial + REACH * field.seen);
  known.set(count, found);
  return found;
}

/** As far as a picture may go, over the reach of the fine cells. */
const REACH = 1.7;

/** Ink with paper beside it: seen on the palest and on the darkest gas. */
export function streamlineNodes(
  field: FlowField,
  count: number,
  at: At,
  { line }: Pick<Layout, 'line'>,
): readonly SceneNode[] {
  return streamlinesOf(field, count).flatMap(({ axial, radius }) =>
    [1, -1].map(
      (side): SceneNode => ({
        kind: 'path',
        d: polyline(thinned(axial.map((x, k) => at(x, side * radius[k]!)))),
        stroke: 'ink',
        strokeWidth: 0.8 * line.leader,
        ring: 1.2 * line.leader,
        join: 'round',
      }),
    ),
  );
}

function thinned(points: readonly Point[]): readonly Point[] {
  const kept: Point[] = [];
  points.forEach((point, k) => {
    const last = kept.at(-1);
    const isEnd = k === points.length - 1;
    if (last === undefined || isEnd || Math.hypot(point.x - last.x, point.y - last.y) >= NEAR)
      kept.push(point);
  });
  return kept;
}
