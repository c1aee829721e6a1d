/** The altitude scale beside a moving picture: the air's strip, and a plumb line whose tip is the altitude. */

import { type AltitudeAxis, altitudeAxis } from '../figures/altitudeAxis.ts';
import type { Altitude } from '../figures/options.ts';
import { airStrip, altitudeWords, type PanelStyle } from '../figures/overAltitudeAxes.ts';
import { textWidth } from '../look/measureText.ts';
import type { Box } from '../scene/box.ts';
import { polyline, segment } from '../scene/pathData.ts';
import { group, type SceneNode } from '../scene/scene.ts';

export interface PlumbLine {
  /** What stands in every frame. */ readonly scale: readonly SceneNode[];
  bob(altitude: Altitude): SceneNode;
}

/** Width that the scale takes. */
export const plumbWidth = ({ type }: PanelStyle): number =>
  textWidth('vacuum', type.small, 400) + 0.3 * type.small + 1.6 * type.small;

export function plumbLine(box: Box, style: PanelStyle): PlumbLine {
  const { type } = style;
  const own: PanelStyle = { ...style, type: { ...type, label: type.small } };
  const wide = 0.7 * type.small;
  const strip = {
    x: box.x + box.width - wide - 0.4 * type.small,
    y: box.y + 0.5 * type.small,
    width: wide,
    height: box.height - type.small,
  };
  const axis = altitudeAxis(
    strip.y,
    strip.y + strip.height,
    Math.max(0.07 * strip.height, 1.05 * type.small),
  );
  return {
    scale: [group('air', airStrip(strip, axis, style.line)), group('axis', altitudeWords(strip, axis, own))],
    bob: (altitude) => group('bob', bobNodes(strip, axis, axis.y(altitude), style)),
  };
}

function bobNodes(strip: Box, axis: AltitudeAxis, tip: number, { type, line }: PanelStyle): SceneNode[] {
  const x = strip.x + strip.width / 2;
  const half = 0.42 * type.small;
  const tall = 0.95 * type.small;
  const shoulder = tip - 0.6 * tall;
  return [
    {
      kind: 'path',
      d: segment(x, axis.top - 0.3 * type.small, x, Math.max(tip - tall, axis.top - 0.3 * type.small)),
      stroke: 'ink',
      strokeWidth: line.plumb,
    },
    {
      kind: 'path',
      d: polyline(
        [
          { x, y: tip },
          { x: x - half, y: shoulder },
          { x: x - 0.5 * half, y: tip - tall },
          { x: x + 0.5 * half, y: tip - tall },
          { x: x + half, y: shoulder },
        ],
        true,
      ),
      fill: 'ink',
      ring: 0.22 * type.small,
    },
    {
      kind: 'path',
      d: segment(strip.x - 0.35 * type.small, tip, strip.x + strip.width + 0.35 * type.small, tip),
      stroke: 'ink',
      strokeWidth: line.leader,
    },
  ];
}
