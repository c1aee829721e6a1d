import type { EngineAnswer } from '../../../answer/model.ts';
import type { CutPanel } from '../../../telling/figures/cutPanel.ts';
import { topOf } from '../../../telling/figures/cutPlaces.ts';
import type { Station } from '../../../telling/figures/gasBands.ts';
import type { SceneNode } from '../../../telling/scene/scene.ts';
import { CanvasLayer } from '../heart/CanvasLayer.tsx';

/** Across [px], and how many times larger than the drawing beside it. */
export const closerAcross = 148;
const factor = 5;

interface CloserProps {
  readonly engine: EngineAnswer;
  readonly part: 'throat' | 'lip';
  readonly panel: CutPanel;
  readonly nodes: readonly SceneNode[];
  /** Left edge and foot of its place [px]. */ readonly left: number;
  readonly foot: number;
}

/** A round window in which a small part of an engine is drawn larger: a throat, a lip. */
export function CloserView({ engine, part, panel, nodes, left, foot }: CloserProps) {
  const at = panel.places[engine.id];
  const station = stationOf(engine, part);
  if (at === undefined || station === null) return null;
  const size = closerAcross / factor;
  const seen = {
    x: at.axisX + station.radius * panel.scale - size / 2,
    y: at.faceY + (station.axial - topOf(engine)) * panel.scale - size / 2,
    width: size,
    height: size,
  };
  return (
    <figure class="closer" style={{ left: `${left}px`, top: `${foot - closerAcross - 20}px` }}>
      <div>
        <CanvasLayer name={`closer-${engine.id}`} nodes={nodes} seen={seen} larger={factor} />
      </div>
      <figcaption>
        {part}, {factor} × larger
      </figcaption>
    </figure>
  );
}

/** Of a plug, the ring’s outer wall: its throat is the gap between that and the plug. */
function stationOf({ wall, contour }: EngineAnswer, part: 'throat' | 'lip'): Station | null {
  const stations: readonly Station[] = contour.plug === undefined ? wall : contour.wall;
  if (part === 'lip') return stations.at(-1) ?? null;
  return stations.reduce<Station | null>(
    (best, one) => (best === null || Math.abs(one.axial) < Math.abs(best.axial) ? one : best),
    null,
  );
}
