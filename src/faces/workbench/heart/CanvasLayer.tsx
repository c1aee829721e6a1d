import { useLayoutEffect, useMemo, useRef } from 'preact/hooks';
import type { Box } from '../../../telling/scene/box.ts';
import type { SceneNode } from '../../../telling/scene/scene.ts';
import { drawNodes } from '../../canvas/drawNodes.ts';
import { keptPictures } from '../../canvas/keptPictures.ts';
import { paintedTheme, pixelRatio } from '../state/painting.ts';

interface CanvasLayerProps {
  readonly name: string;
  readonly width: number;
  readonly height: number;
  readonly nodes: readonly SceneNode[];
  /** The part of the drawing that is seen, grown to the size of the layer; the whole at its own size unless said. */
  readonly seen?: Box;
  /** Where its upper left corner lies [px]; that of the drawing unless said. */
  readonly at?: { readonly left: number; readonly top: number };
}

/**
 * A layer that moves with the altitude, on a canvas: sharp on every screen and in print, painted in the same frame as the numbers.
 * It holds no words; those stand beside it as text.
 */
export function CanvasLayer({ name, width, height, nodes, seen, at }: CanvasLayerProps) {
  const place = useRef<HTMLCanvasElement>(null);
  const kept = useMemo(keptPictures, []);
  const theme = paintedTheme.value;
  const ratio = pixelRatio.value;
  useLayoutEffect(() => {
    const canvas = place.current;
    const pen = canvas?.getContext('2d');
    if (canvas === null || pen === null || pen === undefined) return;
    const [across, down] = [Math.round(width * ratio), Math.round(height * ratio)];
    if (canvas.width !== across) canvas.width = across;
    if (canvas.height !== down) canvas.height = down;
    pen.resetTransform();
    pen.clearRect(0, 0, across, down);
    pen.scale(ratio, ratio);
    if (seen === undefined) {
      kept.draw(pen, nodes, theme, ratio);
      return;
    }
    const larger = width / seen.width;
    pen.scale(larger, larger);
    pen.translate(-seen.x, -seen.y);
    drawNodes(pen, nodes, theme, larger);
  }, [nodes, theme, ratio, width, height]);
  const size = { width: `${width}px`, height: `${height}px` };
  const corner = at === undefined ? {} : { left: `${at.left}px`, top: `${at.top}px` };
  return <canvas ref={place} class={name} style={{ ...size, ...corner }} aria-hidden="true" />;
}
