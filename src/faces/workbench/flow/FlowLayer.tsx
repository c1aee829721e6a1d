import { useLayoutEffect, useRef } from 'preact/hooks';
import type { Box } from '../../../telling/scene/box.ts';
import { clearedPen } from '../heart/clearedPen.ts';
import { pixelRatio } from '../state/painting.ts';
import type { ShownFlow } from './shownFlows.ts';

interface FlowLayerProps {
  readonly shown: readonly ShownFlow[];
  /** The part of the drawing that is seen [px]. */ readonly seen: Box;
}

/** Pictures of computed fields over the engines: laid down whole, so that a drag costs no more than without them. */
export function FlowLayer({ shown, seen }: FlowLayerProps) {
  const place = useRef<HTMLCanvasElement>(null);
  const ratio = pixelRatio.value;
  const { x, y, width, height } = seen;
  useLayoutEffect(() => {
    const pen = clearedPen(place.current, seen, ratio);
    if (pen === null) return;
    for (const flow of shown) laid(pen, flow);
  }, [whatIs(shown), ratio, x, y, width, height]);
  return (
    <div class="canvas flow" style={{ left: `${x}px`, top: `${y}px` }} aria-hidden="true">
      <canvas ref={place} style={{ width: `${width}px`, height: `${height}px` }} />
    </div>
  );
}

/** The engine as it is, what lies behind its end longer or shorter, cut off where the picture ends. */
function laid(pen: CanvasRenderingContext2D, { picture, box, endY, longer }: ShownFlow): void {
  if (longer === 1) {
    pen.drawImage(picture, box.x, box.y, box.width, box.height);
    return;
  }
  const finer = picture.height / box.height;
  const above = endY - box.y;
  const below = box.height - above;
  const taken = Math.min(below, below / longer);
  pen.drawImage(picture, 0, 0, picture.width, above * finer, box.x, box.y, box.width, above);
  pen.drawImage(
    picture,
    ...([0, above * finer, picture.width, taken * finer] as const),
    ...([box.x, endY, box.width, taken * longer] as const),
  );
}

/** The same pictures in the same places are not laid down again. */
const whatIs = (shown: readonly ShownFlow[]): string =>
  shown.map(({ id, box, longer }) => [id, box.x, box.y, longer].join(' ')).join();
