import { useLayoutEffect, useMemo, useRef } from 'preact/hooks';
import type { Box } from '../../../telling/scene/box.ts';
import type { SceneNode } from '../../../telling/scene/scene.ts';
import { drawNodes } from '../../canvas/drawNodes.ts';
import { keptPictures } from '../../canvas/keptPictures.ts';
import { paintedTheme, pixelRatio } from '../state/painting.ts';
import { clearedPen } from './clearedPen.ts';

interface CanvasLayerProps {
  readonly name: string;
  readonly nodes: readonly SceneNode[];
  /** The part of the drawing that is seen [px]; it lies where it lies in the drawing, unless it is drawn larger. */
  readonly seen: Box;
  /** What it shows, for those who do not see it; without it the layer only decorates. */ readonly label?: string;
  /** How many times larger it is drawn; lines keep their width. */ readonly larger?: number;
}

/**
 * A layer that moves with the altitude, on a canvas: sharp on every screen and in print, painted in the same frame as the numbers.
 * It holds no words; those stand beside it as text.
 */
export function CanvasLayer({ name, nodes, seen, label, larger = 1 }: CanvasLayerProps) {
  const place = useRef<HTMLCanvasElement>(null);
  const kept = useMemo(keptPictures, []);
  const theme = paintedTheme.value;
  const ratio = pixelRatio.value;
  const { x, y } = seen;
  const [width, height] = [seen.width * larger, seen.height * larger];
  useLayoutEffect(() => {
    const pen = clearedPen(place.current, seen, ratio, larger);
    if (pen === null) return;
    if (larger === 1) kept.draw(pen, nodes, theme, ratio);
    else drawNodes(pen, nodes, theme, larger);
  }, [nodes, theme, ratio, larger, x, y, width, height]);
  const size = { width: `${width}px`, height: `${height}px` };
  const corner = larger === 1 ? { left: `${x}px`, top: `${y}px` } : {};
  const spoken =
    label === undefined
      ? ({ 'aria-hidden': true } as const)
      : ({ role: 'img', 'aria-label': label } as const);
  return (
    <div class={`canvas ${name}`} style={corner} {...spoken}>
      <canvas ref={place} style={size} />
    </div>
  );
}
