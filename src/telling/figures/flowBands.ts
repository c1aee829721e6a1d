/** A block of a computed field as bands of a ramp on both sides of the axis. */

import type { FlowField, Shown } from '../../answer/flow/index.ts';
import type { PictureBlock } from '../../physics/wholeFlow/index.ts';
import { RAMPS, type Ramp } from '../look/flowRamps.ts';
import type { Box } from '../scene/box.ts';
import { type Point, polyline } from '../scene/pathData.ts';
import type { Paint, SceneNode } from '../scene/scene.ts';
import { fieldBands, type Pieces } from './fieldBands.ts';
import { flowLines } from './flowPlane.ts';
import type { At } from './flowWalls.ts';

/** Change of ln ρ over a lip radius in equal ratios, from pale to ink. */
const GRADIENT_STEPS = 12;
const GRADIENT = { first: 0.5, last: 40 };
const GRADIENT_RAMP: Ramp = {
  tint: 'pressure',
  steps: GRADIENT_STEPS,
  stepOf: (value) =>
    Math.min(
      GRADIENT_STEPS,
      Math.max(
        0,
        1 +
          Math.floor(
            (GRADIENT_STEPS * Math.log(value / GRADIENT.first)) / Math.log(GRADIENT.last / GRADIENT.first),
          ),
      ),
    ),
  startOf: (step) => GRADIENT.first * (GRADIENT.last / GRADIENT.first) ** ((step - 1) / GRADIENT_STEPS),
  isStrong: () => false,
};

/** Width of the stroke that closes the seams between pieces of a band [px]. */
const SEAM = 1;

export function bandNodes(
  block: PictureBlock,
  { lip }: FlowField,
  shown: Shown,
  at: At,
  box: Box,
): readonly SceneNode[] {
  const ramp = shown === 'density gradient' ? GRADIENT_RAMP : RAMPS[shown];
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
    const colour: Paint = shown === 'density gradient' ? 'ink' : `${ramp.tint}-${step}`;
    const opacity = shown === 'density gradient' ? step / GRADIENT_STEPS : 1;
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
