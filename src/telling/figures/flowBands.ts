/** A block of a computed field as bands of a ramp on both sides of the axis. */

import type { FlowField, Shown } from '../../answer/flow/index.ts';
import type { PictureBlock } from '../../physics/wholeFlow/index.ts';
import { gradientOpacity, rampOf } from '../look/gradientRamp.ts';
import type { Box } from '../scene/box.ts';
import { type Point, polyline } from '../scene/pathData.ts';
import type { Paint, SceneNode } from '../scene/scene.ts';
import { fieldBands, type Pieces } from './fieldBands.ts';
import { flowLines } from './flowPlane.ts';
import type { At } from './flowWalls.ts';

/** Width of the stroke that closes the seams between pieces of a band [px]. */
const SEAM = 1;

export function bandNodes(
  block: PictureBlock,
  { lip }: FlowField,
  shown: Shown,
  at: At,
  box: Box,
): readonly SceneNode[] {
  const ramp = rampOf(shown);
  const lines = flowLines(block, shown, lip.radius);
  const paths = new Map<number, string>();
  for (const side of [1, -1]) {
    const placed = lines.map((line) =>
      line.map(({ axial, radius, value }) => ({ ...at(axial, side * radius), value })),
    );
    for (const [step, pieces] of fieldBands(placed, ramp).bands) {
      paths.set(step, (paths.get(step) ?? '') + pathWithin(pieces, box));
    }
  }
  return [...paths].map(([step, d]): SceneNode => {
    const colour: Paint = shown === 'density gradient' ? 'ink' : `${shown}-${step}`;
    const opacity = shown === 'density gradient' ? gradientOpacity(step) : 1;
    return {
      kind: 'path',
      d,
      fill: colour,
      // Half-clear strokes would show where pieces meet.
      ...(opacity === 1 ? { stroke: colour, strokeWidth: SEAM } : { fillOpacity: opacity }),
    };
  });
}

/** Of the polygons those that have a corner in the box. */
function pathWithin({ xy, ends }: Pieces, { x, y, width, height }: Box): string {
  let d = '';
  let from = 0;
  for (const end of ends) {
    const points: Point[] = [];
    for (let k = from; k < end; k += 2) points.push({ x: xy[k]!, y: xy[k + 1]! });
    from = end;
    if (points.some((p) => p.x >= x && p.x <= x + width && p.y >= y && p.y <= y + height))
      d += polyline(points, true);
  }
  return d;
}
