import type { Box } from '../../../telling/scene/box.ts';

/**
 * The pen of a canvas made ready to be drawn on anew, in the drawing's own units; null where there is none.
 * @param seen part of the drawing that the canvas shows [px]
 * @param ratio pixels of the screen for one of the page
 * @param larger how many times larger it is drawn
 */
export function clearedPen(
  canvas: HTMLCanvasElement | null,
  { x, y, width, height }: Box,
  ratio: number,
  larger = 1,
): CanvasRenderingContext2D | null {
  const pen = canvas?.getContext('2d') ?? null;
  if (canvas === null || pen === null) return null;
  const [across, down] = [Math.round(width * larger * ratio), Math.round(height * larger * ratio)];
  if (canvas.width !== across) canvas.width = across;
  if (canvas.height !== down) canvas.height = down;
  pen.resetTransform();
  pen.clearRect(0, 0, across, down);
  pen.scale(ratio * larger, ratio * larger);
  pen.translate(-x, -y);
  return pen;
}
