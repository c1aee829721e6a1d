/** A computed field in bands of a ramp on both sides of the axis, the walls over it; the flow runs to the right, or down. */

import type { FlowField, Shown } from '../../answer/flow/index.ts';
import type { PictureBlock } from '../../physics/wholeFlow/index.ts';
import { RAMPS, type Ramp } from '../look/flowRamps.ts';
import type { Layout } from '../look/formats.ts';
import { formatLength } from '../numbers/formatNumber.ts';
import type { Box } from '../scene/box.ts';
import { type Point, polyline, rectangle, segment } from '../scene/pathData.ts';
import { group, type Paint, type SceneNode } from '../scene/scene.ts';
import { fieldBands, type Pieces } from './fieldBands.ts';
import { flowLines } from './flowPlane.ts';
import { pressureKey, pressureKeyHeight } from './pressureKey.ts';

/** Change of ln ρ over a lip radius in equal ratios, from pale to ink. */
const GRADIENT_STEPS = 12;
const GRADIENT = { first: 0.5, last: 40 };
const gradientStart = (step: number): number =>
  GRADIENT.first * (GRADIENT.last / GRADIENT.first) ** ((step - 1) / GRADIENT_STEPS);
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
  startOf: gradientStart,
  isStrong: () => false,
};

/** Width of the stroke that closes the seams between pieces of a band [px]. */
const SEAM = 1;
/** Lip radii that are shown beside the axis at least. */
const BESIDE = 1.6;

export function flowPanel(field: FlowField, shown: Shown, box: Box, layout: Layout): readonly SceneNode[] {
  const key =
    shown === 'density gradient' ? 0 : pressureKeyHeight(layout.type.small) + 0.4 * layout.type.label;
  const picture: Box = { ...box, height: box.height - key - 1.8 * layout.type.small };
  const { at, scale, clip } = placing(field, picture, layout);
  const bands = field.blocks.flatMap((block) => bandNodes(block, field, shown, at, clip));
  const foot = picture.y + picture.height + 1.4 * layout.type.small;
  const keyWidth = Math.min(box.width, 30 * layout.type.label);
  return [
    {
      kind: 'group',
      name: 'flow',
      clip: rectangle(clip.x, clip.y, clip.width, clip.height),
      children: [...bands, ...wallNodes(field, at, layout)],
    },
    group('scale', rulerNodes(box.x, foot, scale, box.width, layout)),
    ...(key === 0
      ? []
      : [
          group(
            'key',
            pressureKey(
              { x: box.x + box.width - keyWidth, y: box.y + box.height - key, width: keyWidth, height: key },
              field.ambientPressure,
              layout,
              shown === 'mach' ? 'mach' : 'pressure',
            ),
          ),
        ]),
  ];
}

type At = (axial: number, radius: number) => Point;

/** How far beyond the fine cells a picture may go, where it has room, over their reach. */
const BEYOND = 1.7;

/** The field as large as the box allows, from where the gas comes in to where the cells are fine no more, or further. */
function placing(
  field: FlowField,
  box: Box,
  { upright }: Layout,
): { readonly at: At; readonly scale: number; readonly clip: Box } {
  const { lip, seen, blocks } = field;
  const from = Math.min(blocks[0]!.axial[0]!, lip.axial - 0.25 * lip.radius);
  const [length, breadth] = upright ? [box.height, box.width] : [box.width, box.height];
  const scale = Math.min(length / (lip.axial + seen - from), breadth / 2 / (BESIDE * lip.radius));
  const end = Math.max(...blocks.flatMap(({ axial }) => axial.at(-1)!));
  const shown = Math.min(length, scale * (Math.min(end, lip.axial + BEYOND * seen) - from));
  const clip = upright ? { ...box, height: shown } : { ...box, width: shown };
  const axis = upright ? box.x + box.width / 2 : box.y + box.height / 2;
  return {
    scale,
    clip,
    at: (axial, radius) =>
      upright
        ? { x: axis + scale * radius, y: box.y + scale * (axial - from) }
        : { x: box.x + scale * (axial - from), y: axis - scale * radius },
  };
}

function bandNodes(
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

/** Walls as strong as metal, what no study states thin, what the gas is made to leave dashed. */
function wallNodes({ walls }: FlowField, at: At, { line }: Layout): readonly SceneNode[] {
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

/** A length of 1, 2 or 5 units, about a fifth of the width. */
function rulerNodes(
  x: number,
  y: number,
  scale: number,
  width: number,
  { type, line }: Layout,
): readonly SceneNode[] {
  const wanted = width / 5 / scale;
  const power = 10 ** Math.floor(Math.log10(wanted));
  const length = [5, 2, 1].map((step) => step * power).find((each) => each <= wanted) ?? power;
  const end = x + scale * length;
  const tick = 0.3 * type.small;
  return [
    {
      kind: 'path',
      d: segment(x, y - tick, x, y + tick) + segment(x, y, end, y) + segment(end, y - tick, end, y + tick),
      stroke: 'ink',
      strokeWidth: line.leader,
    },
    {
      kind: 'text',
      x: end + 0.5 * type.small,
      y: y + 0.33 * type.small,
      text: formatLength(length, 1),
      size: type.small,
      weight: 400,
      anchor: 'start',
      fill: 'ink',
    },
  ];
}
