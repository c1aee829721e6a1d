/** Rectangles on the drawing, and the ones that words take up. */

import { textWidth } from '../look/measureText.ts';
import type { TextNode } from './scene.ts';

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Height of letters above and below the base line, as shares of the type size. */
const ASCENT = 0.74;
const DESCENT = 0.24;

export function textBox(text: TextNode): Box {
  const width = textWidth(text.text, text.size, text.weight);
  const x = text.anchor === 'start' ? text.x : text.anchor === 'end' ? text.x - width : text.x - width / 2;
  return { x, y: text.y - ASCENT * text.size, width, height: (ASCENT + DESCENT) * text.size };
}

export function boxesOverlap(a: Box, b: Box): boolean {
  return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
}

export function boxInside(inner: Box, outer: Box): boolean {
  return (
    inner.x >= outer.x &&
    inner.y >= outer.y &&
    inner.x + inner.width <= outer.x + outer.width &&
    inner.y + inner.height <= outer.y + outer.height
  );
}

export function grown(box: Box, by: number): Box {
  return { x: box.x - by, y: box.y - by, width: box.width + 2 * by, height: box.height + 2 * by };
}

/** Smallest box around several. */
export function boxAround(boxes: readonly Box[]): Box {
  const x = Math.min(...boxes.map((b) => b.x));
  const y = Math.min(...boxes.map((b) => b.y));
  const right = Math.max(...boxes.map((b) => b.x + b.width));
  const bottom = Math.max(...boxes.map((b) => b.y + b.height));
  return { x, y, width: right - x, height: bottom - y };
}

/** Smallest box around points. */
export function boxOfPoints(points: readonly { readonly x: number; readonly y: number }[]): Box {
  return boxAround(points.map(({ x, y }) => ({ x, y, width: 0, height: 0 })));
}
