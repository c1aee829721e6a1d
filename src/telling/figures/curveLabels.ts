/** Room for the words of curves: beside a curve, apart from it with a line, or round a place on it. */

import type { EngineStyle } from '../look/engineStyles.ts';
import type { LineSizes, TypeSizes } from '../look/formats.ts';
import type { Box } from '../scene/box.ts';
import { type Point, segment } from '../scene/pathData.ts';
import type { SceneNode } from '../scene/scene.ts';
import { lineSample, type Words, wordsAt, wordsSize } from './marks.ts';
import type { PanelStyle } from './overAltitudeAxes.ts';
import { type Candidate, IN_THE_WAY, type LabelRoom } from './placeLabels.ts';

/** What is drawn of a curve. */
export interface Lined {
  /** Pieces between gaps. */ readonly pieces: readonly (readonly Point[])[];
  /** Where it has no value of its own: what stands in for it. */
  readonly ifFull: readonly (readonly Point[])[];
}

export function boxOfMark(point: Point, radius: number): Box {
  return { x: point.x - radius, y: point.y - radius, width: 2 * radius, height: 2 * radius };
}

/** An open ring round a place where something is equal, or best. */
export function ring(point: Point, line: LineSizes): SceneNode {
  return {
    kind: 'circle',
    x: point.x,
    y: point.y,
    radius: 1.15 * line.marker,
    stroke: 'ink',
    strokeWidth: line.leader,
  };
}

/** A curve in its own hue, line and sign. */
export interface StyledLine extends Lined {
  readonly style: EngineStyle;
}

/**
 * The name of a curve, with more lines below it: beside the curve in the first of the shapes for which there is room, else
 * apart with a line to it. Where there are several curves, a stretch of its line stands before the name, so that the name
 * finds its curve without colour.
 */
export function curveName(
  curve: StyledLine,
  shapes: readonly (readonly Omit<Words, 'fill'>[])[],
  curves: readonly Lined[],
  room: LabelRoom,
  style: PanelStyle,
  dislike: (point: Point) => number,
): SceneNode[] {
  const { type, line } = style;
  const gap = 0.2 * type.label;
  const blocks = shapes.map((lines) => nameBlock(curve.style, lines, curves.length > 1, style));
  for (const block of blocks) {
    const { width, height } = block.size;
    const candidates = besideCurve(curve, curves, block.size, type, dislike);
    const placed = room.place(width, height, gap, candidates, IN_THE_WAY);
    if (placed) return block.at(placed.box);
  }
  const [block] = blocks;
  if (block === undefined) return [];
  const { width, height } = block.size;
  const apart = apartFromCurve(curve, block.size, type, room);
  const placed = room.place(width, height, gap, apart, IN_THE_WAY) ?? room.place(width, height, gap, apart);
  if (!placed?.candidate.leader) return [];
  const [from, to] = placed.candidate.leader;
  return [
    {
      kind: 'path',
      d: segment(from.x, from.y, to.x, to.y),
      stroke: curve.style.colour,
      strokeWidth: line.leader,
    },
    ...block.at(placed.box),
  ];
}

interface NameBlock {
  readonly size: Size;
  at(box: Box): SceneNode[];
}

function nameBlock(
  own: EngineStyle,
  texts: readonly Omit<Words, 'fill'>[],
  sampled: boolean,
  { type, line }: PanelStyle,
): NameBlock {
  const [first, ...rest] = texts.map((words): Words => ({ ...words, fill: own.colour }));
  if (first === undefined) return { size: { width: 0, height: 0 }, at: () => [] };
  const [sample, lead] = sampled ? [1.7 * type.label, 2 * type.label] : [0, 0];
  const [name, below] = [wordsSize([first]), wordsSize(rest)];
  return {
    size: { width: Math.max(lead + name.width, below.width), height: name.height + below.height },
    at: ({ x, y }) => [
      ...(sampled
        ? lineSample(own, x, y + 0.56 * type.label, sample, 0.8 * line.curve, 0.75 * line.marker)
        : []),
      ...wordsAt([first], x + lead, y, 'start', true),
      ...wordsAt(rest, x, y + name.height, 'start', true),
    ],
  };
}

interface Size {
  readonly width: number;
  readonly height: number;
}

/** Places at either side of every point of a curve. */
function besideCurve(
  curve: Lined,
  curves: readonly Lined[],
  size: Size,
  type: TypeSizes,
  dislike: (point: Point) => number,
): Candidate[] {
  const gap = 0.55 * type.label;
  return linesOf(curve).flatMap((point) =>
    (['left', 'right'] as const).flatMap((side) =>
      [-0.5, 0, -1].map((rise): Candidate => {
        const x = side === 'left' ? point.x - gap - size.width : point.x + gap;
        const y = point.y + rise * size.height;
        const edge = { x: side === 'left' ? x + size.width : x, y: y + size.height / 2 };
        const disliked = nearerCurve(curve, curves, edge) ? 200 : 0;
        return { x, y, cost: dislike(point) + disliked + (rise === -0.5 ? 0 : 3) };
      }),
    ),
  );
}

/** Its line ends on the curve but on no mark, which has words of its own. */
function apartFromCurve(curve: Lined, size: Size, type: TypeSizes, room: LabelRoom): Candidate[] {
  const inset = 0.15 * type.label;
  return linesOf(curve)
    .filter((point, i) => i % 4 === 0 && !room.isMarked(point))
    .flatMap((point) =>
      [3, 5, 8, 12].flatMap((away) =>
        [-1, 1].flatMap((side) =>
          [-3, 0, 3].map((rise): Candidate => {
            const edge = { x: point.x + side * away * type.label, y: point.y + rise * type.label };
            return {
              x: side < 0 ? edge.x - size.width : edge.x,
              y: edge.y - size.height / 2,
              cost: 20 * away + 5 * Math.abs(rise),
              leader: [{ x: edge.x - side * inset, y: edge.y }, point],
            };
          }),
        ),
      ),
    );
}

/** Points of the curve's own line, or of its continuation where it has none. */
function linesOf(curve: Lined): readonly Point[] {
  return (curve.pieces.length > 0 ? curve.pieces : curve.ifFull).flat();
}

/** True where another curve is nearer to a point than the curve it should belong to. */
function nearerCurve(own: Lined, all: readonly Lined[], point: Point): boolean {
  const mine = distanceTo(own, point);
  return all.some((curve) => curve !== own && distanceTo(curve, point) < mine);
}

function distanceTo(curve: Lined, point: Point): number {
  let least = Number.POSITIVE_INFINITY;
  for (const piece of [...curve.pieces, ...curve.ifFull])
    for (const p of piece) {
      const distance = (p.x - point.x) ** 2 + (p.y - point.y) ** 2;
      least = distance < least ? distance : least;
    }
  return least;
}

/** Words at a distance from a point, with a line to it. */
export function leaderLabel(
  texts: readonly string[],
  point: Point,
  room: LabelRoom,
  frame: Box,
  { type, line }: PanelStyle,
): SceneNode[] {
  const lines: Words[] = texts.map((text) => ({ text, size: 0.92 * type.label, weight: 400, fill: 'ink' }));
  const size = wordsSize(lines);
  const candidates: Candidate[] = [];
  for (const away of [1.8, 2.8, 4, 5.5, 6.5, 7.5, 8.5, 10])
    for (let turn = 0; turn < 32; turn++) {
      const angle = (turn * Math.PI) / 16;
      const edge = {
        x: point.x + away * type.label * Math.cos(angle),
        y: point.y + away * type.label * Math.sin(angle),
      };
      const left = Math.cos(angle) < 0;
      const x = left ? edge.x - size.width : edge.x;
      const y = edge.y - size.height / 2;
      const inset = 0.2 * type.label;
      candidates.push({
        x,
        y,
        cost: 10 * away + (Math.abs(Math.cos(angle)) < 0.3 ? 12 : 0) + (left ? 0 : 4),
        leader: [{ x: left ? edge.x + inset : edge.x - inset, y: edge.y }, point],
      });
    }
  const gap = 0.2 * type.label;
  const placed =
    room.place(size.width, size.height, gap, candidates, IN_THE_WAY) ??
    room.place(size.width, size.height, gap, anywhere(frame, size, point, type), IN_THE_WAY);
  if (!placed) return [];
  const [from, to] = placed.candidate.leader as readonly [Point, Point];
  const anchor = from.x > placed.box.x + placed.box.width / 2 ? 'end' : 'start';
  const x = anchor === 'end' ? placed.box.x + placed.box.width : placed.box.x;
  return [
    { kind: 'path', d: shortOf(from, to, 1.3 * line.marker), stroke: 'ink', strokeWidth: line.leader },
    ...wordsAt(lines, x, placed.box.y, anchor, true),
  ];
}

/** Every place in the frame, the nearest cheapest, with a line from the side that looks to the point. */
function anywhere(frame: Box, size: Size, point: Point, type: TypeSizes): Candidate[] {
  const step = 0.4 * type.label;
  const inset = 0.2 * type.label;
  const candidates: Candidate[] = [];
  for (let y = frame.y; y + size.height <= frame.y + frame.height; y += step)
    for (let x = frame.x; x + size.width <= frame.x + frame.width; x += step) {
      const right = x + size.width / 2 < point.x;
      const from = { x: right ? x + size.width + inset : x - inset, y: y + size.height / 2 };
      const away = Math.hypot(from.x - point.x, from.y - point.y) / type.label;
      // A line that turns back under its own words would cross them out.
      if (right === from.x < point.x) candidates.push({ x, y, cost: 8 * away, leader: [from, point] });
    }
  return candidates;
}

/** A line that stops this far before its end. */
function shortOf(from: Point, to: Point, by: number): string {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const t = length > by ? (length - by) / length : 0;
  return segment(from.x, from.y, from.x + t * (to.x - from.x), from.y + t * (to.y - from.y));
}
