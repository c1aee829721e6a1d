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
function laid(pen: CanvasRenderingContext2D, { picture, box, whole, endY, longer }: ShownFlow): void {
  pen.save();
  pen.beginPath();
  pen.rect(box.x, box.y, box.width, box.height);
  pen.clip();
  if (longer === 1) pen.drawImage(picture, whole.x, whole.y, whole.width, whole.height);
  else {
    const finer = picture.height / whole.height;
    const above = endY - whole.y;
    const below = whole.height - above;
    const taken = Math.min(below, below / longer);
    pen.drawImage(
      picture,
      ...([0, 0, picture.width, above * finer] as const),
      ...([whole.x, whole.y, whole.width, above] as const),
    );
    pen.drawImage(
      picture,
      ...([0, above * finer, picture.width, taken * finer] as const),
      ...([whole.x, endY, whole.width, taken * longer] as const),
    );
  }
  pen.restore();
}

/** The same pictures in the same places are not laid down again. */
const whatIs = (shown: readonly ShownFlow[]): string =>
  shown.map(({ id, box, whole, longer }) => [id, box.x, box.y, whole.x, whole.y, longer].join(' ')).join();
