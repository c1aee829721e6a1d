/** A computed field in bands of a ramp on both sides of the axis, the walls over it; the flow runs to the right, or down. */

import type { FlowField, Shown } from '../../answer/flow/index.ts';
import type { Layout } from '../look/formats.ts';
import { formatLength } from '../numbers/formatNumber.ts';
import type { Box } from '../scene/box.ts';
import { rectangle, segment } from '../scene/pathData.ts';
import { group, type SceneNode } from '../scene/scene.ts';
import { bandNodes } from './flowBands.ts';
import { driftNodes } from './flowDrift.ts';
import { separationNodes } from './flowSeparation.ts';
import { marksOf, shockMarks } from './flowShocks.ts';
import { streamlineNodes } from './flowStreamlines.ts';
import { type At, wallNodes } from './flowWalls.ts';
import { pressureKey, pressureKeyHeight } from './pressureKey.ts';

/** Lip radii that are shown beside the axis at least. */
const BESIDE = 1.6;

/** What lies over the field. */
export interface OverFlow {
  /** Lines along which the gas flows; none: absent. */ readonly streamlines?: number;
  /** Specks carried by the gas, at this share of the time between two of them on a line; absent: none. */
  readonly drift?: number;
  /** [m] shown behind the lip, the same in every picture of a row; absent: as the field asks for. */
  readonly reach?: number;
  /** [px/m], likewise; absent: as large as there is room. */ readonly scale?: number;
  /** Marks of shocks at the edge; absent: they are there. */ readonly marks?: boolean;
}

export function flowPanel(
  field: FlowField,
  shown: Shown,
  box: Box,
  layout: Layout,
  {
    streamlines,
    drift,
    reach = reachOf(field),
    scale = scaleIn(box, field, layout, reach),
    marks = true,
  }: OverFlow = {},
): readonly SceneNode[] {
  const key = keyHeight(layout);
  const picture = pictureIn(box, layout);
  const { at, clip } = placing(field, picture, layout, reach, scale);
  const bands = field.blocks.flatMap((block) => bandNodes(block, field, shown, at, clip));
  const foot = picture.y + picture.height + 1.4 * layout.type.small;
  const keyWidth = Math.min(box.width, 30 * layout.type.label);
  return [
    {
      kind: 'group',
      name: 'flow',
      clip: rectangle(clip.x, clip.y, clip.width, clip.height),
      children: [
        ...bands,
        ...(streamlines === undefined ? [] : streamlineNodes(field, streamlines, at, layout)),
        ...(drift === undefined ? [] : driftNodes(field, drift, at, layout)),
        ...wallNodes(field, at, layout),
        ...separationNodes(field, at, layout),
      ],
    },
    ...(marks ? shockMarks(field, at, clip, layout) : []),
    group('scale', rulerNodes(box.x, foot, scale, box.width, layout)),
    group(
      'key',
      pressureKey(
        { x: box.x + box.width - keyWidth, y: box.y + box.height - key, width: keyWidth, height: key },
        field.ambientPressure,
        layout,
        shown,
      ),
    ),
  ];
}

const keyHeight = ({ type }: Layout): number => pressureKeyHeight(type.small) + 0.4 * type.label;

/** Ruler and key stand below. */
const pictureIn = (box: Box, layout: Layout): Box => ({
  ...box,
  height: box.height - keyHeight(layout) - 1.8 * layout.type.small,
});

/** Lip radii shown behind the lip at least, and what stands on the axis with so much room behind it. */
const LEAST_REACH = 5;
const ROOM_BEHIND = 1.3;

/** [m] behind the lip: all that is marked there, within the fine part of the mesh; of every moment of a flow through time alike. */
function reachOf(field: FlowField): number {
  const marked = field.moment === undefined ? marksOf(field).map(({ behind }) => behind) : [];
  return Math.min(field.seen, Math.max(LEAST_REACH * field.lip.radius, ROOM_BEHIND * Math.max(0, ...marked)));
}

/** How far beyond the fine cells a picture may go, where it has room, over their reach. */
const BEYOND = 1.7;

/** [m] axial where a picture begins: where the gas comes in. */
const beginOf = ({ lip, blocks }: FlowField): number =>
  Math.min(blocks[0]!.axial[0]!, lip.axial - 0.25 * lip.radius);

/** [px/m] at which a field has room in the box of a panel, from where the gas comes in to its reach [m] behind the lip. */
export function scaleIn(box: Box, field: FlowField, layout: Layout, reach: number): number {
  const { width, height } = pictureIn(box, layout);
  const [length, breadth] = layout.upright ? [height, width] : [width, height];
  const { lip } = field;
  return Math.min(length / (lip.axial + reach - beginOf(field)), breadth / 2 / (BESIDE * lip.radius));
}

/** From where the gas comes in to where the cells are fine no more, or further. */
function placing(
  field: FlowField,
  box: Box,
  { upright }: Layout,
  reach: number,
  scale: number,
): { readonly at: At; readonly clip: Box } {
  const { lip, blocks } = field;
  const from = beginOf(field);
  const length = upright ? box.height : box.width;
  const end = Math.max(...blocks.flatMap(({ axial }) => axial.at(-1)!));
  const shown = Math.min(length, scale * (Math.min(end, lip.axial + BEYOND * reach) - from));
  const clip = upright ? { ...box, height: shown } : { ...box, width: shown };
  const axis = upright ? box.x + box.width / 2 : box.y + box.height / 2;
  return {
    clip,
    at: (axial, radius) =>
      upright
        ? { x: axis + scale * radius, y: box.y + scale * (axial - from) }
        : { x: box.x + scale * (axial - from), y: axis - scale * radius },
  };
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
