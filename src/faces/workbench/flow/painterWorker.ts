/** Paints whole flows to the scale of the heart, off the page's own thread. */

import type { FlowField } from '../../../answer/flow/index.ts';
import { USUAL_STREAMLINES } from '../../../telling/figures/flowStreamlines.ts';
import { flowUnderlay } from '../../../telling/figures/flowUnderlay.ts';
import { SCREEN_LINES } from '../../../telling/look/formats.ts';
import { drawNodes } from '../../canvas/drawNodes.ts';
import { flowOfText } from '../../flows/flowText.ts';
import { cellText } from './cellShelf.ts';
import type { FlowPaint, FlowPainted, FlowPaintOrder } from './messages.ts';

/** Fields held ready; one takes about half a megabyte. */
const MOST_HELD = 48;
/** [px] over which the picture fades at its sides and its foot */
const FADE = 28;
const FADE_TOP = 10;

const held = new Map<string, FlowField>();
let wanted: readonly FlowPaint[] = [];
let isAtWork = false;

async function fieldOf(key: string): Promise<FlowField | null> {
  const known = held.get(key);
  if (known !== undefined) return known;
  const text = await cellText(key);
  if (text === null) return null;
  const field = flowOfText(text);
  held.set(key, field);
  const [oldest] = held.keys();
  if (held.size > MOST_HELD && oldest !== undefined) held.delete(oldest);
  return field;
}

async function painted({
  key,
  shown,
  theme,
  placing,
  ratio,
  streamlines,
}: FlowPaint): Promise<ImageBitmap | null> {
  const field = await fieldOf(key).catch(() => null);
  if (field === null) return null;
  const { box } = placing;
  const [width, height] = [Math.ceil(box.width * ratio), Math.ceil(box.height * ratio)];
  const canvas = new OffscreenCanvas(width, height);
  const pen = canvas.getContext('2d');
  if (pen === null) return null;
  const { gas, over } = flowUnderlay(
    field,
    shown,
    placing,
    { line: SCREEN_LINES },
    streamlines ? USUAL_STREAMLINES : null,
  );
  const toDrawing = (): void => {
    pen.setTransform(ratio, 0, 0, ratio, -box.x * ratio, -box.y * ratio);
  };
  toDrawing();
  drawNodes(pen, gas, theme);
  pen.resetTransform();
  fade(pen, width, height, ratio);
  toDrawing();
  drawNodes(pen, over, theme);
  return canvas.transferToImageBitmap();
}

/** The air has no edge. */
function fade(pen: OffscreenCanvasRenderingContext2D, width: number, height: number, ratio: number): void {
  pen.globalCompositeOperation = 'destination-in';
  const across = pen.createLinearGradient(0, 0, width, 0);
  const side = Math.min(0.5, (FADE * ratio) / width);
  const down = pen.createLinearGradient(0, 0, 0, height);
  const [top, foot] = [(FADE_TOP * ratio) / height, (FADE * ratio) / height];
  for (const [gradient, from, to] of [
    [across, side, side],
    [down, Math.min(0.5, top), Math.min(0.5, foot)],
  ] as const) {
    gradient.addColorStop(0, 'transparent');
    gradient.addColorStop(from, 'black');
    gradient.addColorStop(1 - to, 'black');
    gradient.addColorStop(1, 'transparent');
    pen.fillStyle = gradient;
    pen.fillRect(0, 0, width, height);
  }
  pen.globalCompositeOperation = 'source-over';
}

async function work(): Promise<void> {
  isAtWork = true;
  try {
    while (wanted.length > 0) {
      const [next, ...rest] = wanted as [FlowPaint, ...FlowPaint[]];
      wanted = rest;
      const report = await reported(next);
      postMessage(report, { transfer: report.picture === null ? [] : [report.picture] });
      // What is wanted now may have come meanwhile.
      await new Promise((resolve) => setTimeout(resolve));
    }
  } finally {
    isAtWork = false;
  }
}

/** One that cannot be painted holds up none of the others. */
async function reported(paint: FlowPaint): Promise<FlowPainted> {
  try {
    return { id: paint.id, picture: await painted(paint) };
  } catch (error) {
    const fault = error instanceof Error ? error.message : String(error);
    return { id: paint.id, picture: null, fault };
  }
}

addEventListener('message', ({ data }: MessageEvent<FlowPaintOrder>) => {
  ({ wanted } = data);
  if (!isAtWork) void work();
});
