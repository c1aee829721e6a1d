/** Nodes of a scene on a canvas: the same look as the scene written as SVG. */

import { FONT_FAMILY } from '../../telling/look/themeCss.ts';
import type { Theme } from '../../telling/look/tokens.ts';
import { fixedColour } from '../../telling/scene/paint.ts';
import { plainText } from '../../telling/scene/safeText.ts';
import type { Fill, GroupNode, Paint, SceneNode, TextNode } from '../../telling/scene/scene.ts';

export type Pen = CanvasRenderingContext2D | OffscreenCanvasRenderingContext2D;

/** What SVG takes unless said otherwise; a canvas takes 10. */
const MITER_LIMIT = 4;

/**
 * @param finer how many times thinner the lines are drawn: a window that shows a part larger keeps their width by it
 */
export function drawNodes(pen: Pen, nodes: readonly SceneNode[], theme: Theme, finer = 1): void {
  for (const node of nodes) {
    if (node.kind === 'group') drawGroup(pen, node, theme, finer);
    else if (node.kind === 'text') drawText(pen, node, theme);
    else drawShape(pen, node, theme, finer);
  }
}

type Shape = Extract<SceneNode, { kind: 'path' | 'rect' | 'circle' }>;

/** What stays as it is while something else moves is read once. */
const outlines = new WeakMap<Shape, Path2D>();

function outlineOf(node: Shape): Path2D {
  const known = outlines.get(node);
  if (known !== undefined) return known;
  const outline = traced(node);
  outlines.set(node, outline);
  return outline;
}

function traced(node: Shape): Path2D {
  if (node.kind === 'path' && node.trace === undefined) return new Path2D(node.d);
  const outline = new Path2D();
  if (node.kind === 'path') node.trace?.(outline);
  else if (node.kind === 'rect') outline.rect(node.x, node.y, node.width, node.height);
  else outline.arc(node.x, node.y, node.radius, 0, 2 * Math.PI);
  return outline;
}

function drawShape(pen: Pen, node: Shape, theme: Theme, finer: number): void {
  const outline = outlineOf(node);
  if (node.kind === 'path' && node.ring !== undefined) {
    pen.strokeStyle = fixedColour('paper', theme);
    pen.lineWidth = ((node.stroke ? (node.strokeWidth ?? 1) : 0) + node.ring) / finer;
    pen.lineJoin = 'round';
    pen.lineCap = 'butt';
    pen.setLineDash([]);
    pen.stroke(outline);
  }
  fillShape(pen, outline, node.fill ?? 'none', node.fillOpacity ?? 1, theme);
  if (node.stroke === undefined || node.stroke === 'none') return;
  pen.strokeStyle = fixedColour(node.stroke, theme);
  pen.lineWidth = (node.strokeWidth ?? 1) / finer;
  pen.lineJoin = node.join ?? 'miter';
  pen.miterLimit = MITER_LIMIT;
  pen.lineCap = node.cap ?? 'butt';
  pen.setLineDash((node.dash ?? []).map((length) => length / finer));
  withAlpha(pen, node.strokeOpacity ?? 1, () => pen.stroke(outline));
}

function withAlpha(pen: Pen, opacity: number, draw: () => void): void {
  const before = pen.globalAlpha;
  pen.globalAlpha = before * opacity;
  draw();
  pen.globalAlpha = before;
}

function fillShape(pen: Pen, outline: Path2D, fill: Fill, opacity: number, theme: Theme): void {
  if (fill === 'none') return;
  if (typeof fill === 'string') {
    pen.fillStyle = fixedColour(fill, theme);
    withAlpha(pen, opacity, () => pen.fill(outline));
    return;
  }
  pen.fillStyle = fill.pattern === 'hatch' ? hatch(pen, fill, theme) : dots(pen, fill, theme);
  withAlpha(pen, opacity, () => pen.fill(outline));
}

/** Pixels of a tile for one of the drawing: fine enough not to be seen. */
const TILE = 8;

function tile(pen: Pen, gap: number, angle: number, draw: (own: Pen) => void): CanvasPattern {
  const side = Math.max(1, Math.round(gap * TILE));
  const canvas = new OffscreenCanvas(side, side);
  const own = penOf(canvas);
  own.scale(side / gap, side / gap);
  draw(own);
  const pattern = pen.createPattern(canvas, 'repeat');
  if (pattern === null) throw new Error('The browser makes no pattern.');
  pattern.setTransform(new DOMMatrix().rotate(angle).scale(gap / side));
  return pattern;
}

function hatch(pen: Pen, fill: Extract<Fill, { pattern: 'hatch' }>, theme: Theme): CanvasPattern {
  return tile(pen, fill.gap, fill.angle, (own) => {
    own.globalAlpha = fill.opacity;
    own.fillStyle = fixedColour(fill.colour, theme);
    own.fillRect(0, 0, fill.width, fill.gap);
  });
}

function dots(pen: Pen, fill: Extract<Fill, { pattern: 'dots' }>, theme: Theme): CanvasPattern {
  return tile(pen, fill.gap, 0, (own) => {
    own.fillStyle = fixedColour(fill.colour as Paint, theme);
    own.beginPath();
    own.arc(fill.gap / 2, fill.gap / 2, fill.radius, 0, 2 * Math.PI);
    own.fill();
  });
}

function drawText(pen: Pen, node: TextNode, theme: Theme): void {
  pen.font = `${node.weight} ${node.size}px '${FONT_FAMILY}'`;
  pen.textAlign = node.anchor === 'middle' ? 'center' : node.anchor;
  pen.textBaseline = 'alphabetic';
  const words = plainText(node.text);
  if (node.halo) {
    pen.strokeStyle = fixedColour('paper', theme);
    pen.lineWidth = 0.22 * node.size;
    pen.lineJoin = 'round';
    pen.setLineDash([]);
    withAlpha(pen, 0.86, () => pen.strokeText(words, node.x, node.y));
  }
  pen.fillStyle = fixedColour(node.fill, theme);
  pen.fillText(words, node.x, node.y);
}

function drawGroup(pen: Pen, node: GroupNode, theme: Theme, finer: number): void {
  if (node.opacity === 0) return;
  pen.save();
  if (node.clip !== undefined) pen.clip(new Path2D(node.clip));
  if (node.blur !== undefined) drawBlurred(pen, node, node.blur, theme);
  else if (node.opacity !== undefined && node.opacity < 1) drawFaint(pen, node, node.opacity, theme, finer);
  else drawNodes(pen, node.children, theme, finer);
  pen.restore();
}

/** A group under one opacity: drawn by itself, then laid on as a whole. */
function drawFaint(pen: Pen, node: GroupNode, opacity: number, theme: Theme, finer: number): void {
  const { width, height } = pen.canvas;
  const layer = penOf(new OffscreenCanvas(width, height));
  layer.setTransform(pen.getTransform());
  drawNodes(layer, node.children, theme, finer);
  pen.save();
  pen.resetTransform();
  withAlpha(pen, opacity, () => pen.drawImage(layer.canvas, 0, 0));
  pen.restore();
}

/** A wide blur has no detail: it is drawn small and laid on large. Deviation in pixels of the small picture. */
const SMALL_DEVIATION = 6;

function drawBlurred(pen: Pen, node: GroupNode, blur: NonNullable<GroupNode['blur']>, theme: Theme): void {
  const scale = Math.min(1, SMALL_DEVIATION / Math.max(blur.deviation, 1e-6));
  const width = Math.max(1, Math.ceil(blur.width * scale));
  const height = Math.max(1, Math.ceil(blur.height * scale));
  const sharp = scratchPen('sharp', width, height);
  sharp.setTransform(width / blur.width, 0, 0, height / blur.height, 0, 0);
  sharp.translate(-blur.x, -blur.y);
  drawNodes(sharp, node.children, theme);
  const soft = scratchPen('soft', width, height);
  soft.filter = `blur(${blur.deviation * scale}px)`;
  soft.drawImage(sharp.canvas, 0, 0, width, height, 0, 0, width, height);
  soft.filter = 'none';
  pen.imageSmoothingEnabled = true;
  pen.imageSmoothingQuality = 'low';
  withAlpha(pen, node.opacity ?? 1, () =>
    pen.drawImage(soft.canvas, 0, 0, width, height, blur.x, blur.y, blur.width, blur.height),
  );
}

/** Small canvases that are drawn on for a moment; made anew only where a larger one is asked for. */
const scratch = new Map<string, OffscreenCanvasRenderingContext2D>();

function scratchPen(name: string, width: number, height: number): OffscreenCanvasRenderingContext2D {
  const known = scratch.get(name);
  if (known !== undefined && known.canvas.width >= width && known.canvas.height >= height) {
    known.resetTransform();
    known.clearRect(0, 0, known.canvas.width, known.canvas.height);
    return known;
  }
  const fresh = penOf(
    new OffscreenCanvas(
      Math.max(width, known?.canvas.width ?? 0),
      Math.max(height, known?.canvas.height ?? 0),
    ),
  );
  scratch.set(name, fresh);
  return fresh;
}

/** A pen whose picture stays where the processor can read it. */
export function penOf(canvas: OffscreenCanvas): OffscreenCanvasRenderingContext2D {
  const pen = canvas.getContext('2d', { willReadFrequently: true, colorSpace: 'srgb' });
  if (pen === null) throw new Error('The browser gives no canvas to draw on.');
  return pen;
}
