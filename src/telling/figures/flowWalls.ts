/** The walls of a computed field, where no gas is. */

import type { FlowField } from '../../answer/flow/index.ts';
import type { Layout } from '../look/formats.ts';
import { type Point, polyline } from '../scene/pathData.ts';
import type { SceneNode } from '../scene/scene.ts';

/** Where a place of the field lies on a drawing; a radius below nothing is on the other side of the axis. */
export type At = (axial: number, radius: number) => Point;

/** Walls as strong as metal, what no study states thin, what the gas is made to leave dashed. */
export function wallNodes(
  { walls }: FlowField,
  at: At,
  { line }: Pick<Layout, 'line'>,
): readonly SceneNode[] {
  const looks = {
    wall: { stroke: 'ink', strokeWidth: 0.7 * line.metal, join: 'round' },
    left: { stroke: 'ink', strokeWidth: line.leader, dash: [2 * line.metal, line.metal] },
    notional: { stroke: 'ink-3', strokeWidth: line.leader },
  } as const;
  return walls
    .filter((wall) => wall.line.length > 1)
    .flatMap((wall) =>
      [1, -1].map(
        (side): SceneNode => ({
          kind: 'path',
          d: polyline(wall.line.map(([axial, radius]) => at(axial, side * radius))),
          ...looks[wall.kind],
        }),
      ),
    );
}
