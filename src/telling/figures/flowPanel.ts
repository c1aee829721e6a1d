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
  const bands = field.blocks.flatMap((block) => bandNodes(block, field, shown, at, picture));
  const foot = picture.y + picture.height + 1.4 * layout.type.small;
  const keyWidth = Math.min(box.width, 30 * layout.type.label);
  return [
    { kind: 'group', name: 'flow', clip, children: [...bands, ...wallNodes(field, at, layout)] },
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

/** The field as large as the box allows, from where the gas comes in to where the cells are fine no more. */
function placing(
  field: FlowField,
  box: Box,
  { upright }: Layout,
): { readonly at: At; readonly scale: number; readonly clip: string } {
  const { lip, seen, blocks } = field;
  const from = blocks[0]!.axial[0]!;
  const to = lip.axial + seen;
  const [length, breadth] = upright ? [box.height, box.width] : [box.width, box.height];
  const scale = Math.min(length / (to - from), breadth / 2 / (BESIDE * lip.radius));
  const clip = upright
    ? { ...box, height: Math.min(box.height, scale * (to - from)) }
    : { ...box, width: Math.min(box.width, scale * (to - from)) };
  const axis = upright ? box.x + box.width / 2 : box.y + box.height / 2;
  return {
    scale,
    clip: rectangle(clip.x, clip.y, clip.width, clip.height),
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

/** The wall of the nozzle as strong as metal, its outside and base thin: they are not stated; the axis. */
function wallNodes({ blocks, lip, leaves }: FlowField, at: At, { line }: Layout): readonly SceneNode[] {
  const [nozzle, , beside] = blocks;
  const inner = border(nozzle!, nozzle!.nj).filter(([axial]) => leaves === null || axial <= leaves.axial);
  const left = leaves === null ? [] : border(nozzle!, nozzle!.nj).filter(([axial]) => axial >= leaves.axial);
  const outer = beside === undefined ? [] : [...border(beside, 0), [lip.axial, lip.radius] as const];
  return [1, -1].flatMap((side) => {
    const path = (places: readonly (readonly [number, number])[]): string =>
      polyline(places.map(([axial, radius]) => at(axial, side * radius)));
    return [
      { kind: 'path' as const, d: path(outer), stroke: 'ink-3' as const, strokeWidth: line.leader },
      ...(left.length < 2
        ? []
        : [
            {
              kind: 'path' as const,
              d: path(left),
              stroke: 'ink' as const,
              strokeWidth: line.leader,
              dash: [2 * line.metal, line.metal],
            },
          ]),
      {
        kind: 'path' as const,
        d: path(inner),
        stroke: 'ink' as const,
        strokeWidth: 0.7 * line.metal,
        join: 'round' as const,
      },
    ];
  });
}

function border({ ni, axial, radius }: PictureBlock, j: number): readonly (readonly [number, number])[] {
  return Array.from(
    { length: ni + 1 },
    (_, i) => [axial[j * (ni + 1) + i]!, radius[j * (ni + 1) + i]!] as const,
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
