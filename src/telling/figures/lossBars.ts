/** Where the speed went: a bar a flight, cut into its losses. */

import { show } from '../../answer/display.ts';
import { type FlightAnswer, LOSSES } from '../../answer/flight/index.ts';
import type { EngineStyle } from '../look/engineStyles.ts';
import { wrapAtMost } from '../look/measureText.ts';
import type { Box } from '../scene/box.ts';
import type { SceneNode } from '../scene/scene.ts';
import type { PanelStyle } from './overAltitudeAxes.ts';

/** One flight with the look of the engine below it. */
export interface DrawnFlight {
  readonly flight: FlightAnswer;
  readonly name: string;
  readonly style: EngineStyle;
}

/** From strong to faint, in the order of the losses. */
const OPACITIES = [0.85, 0.55, 0.32, 0.15] as const;

export function lossBars(
  flights: readonly DrawnFlight[],
  box: Box,
  { type, line }: PanelStyle,
): readonly SceneNode[] {
  const size = type.label;
  const most = Math.max(...flights.map((drawn) => totalOf(drawn)));
  const each = box.height / flights.length;
  return flights.flatMap((drawn, i) => {
    const top = box.y + i * each;
    const scale = box.width / most;
    const lines = wrapAtMost(wordsOf(drawn), box.width, size, 400, each > 2.3 * size ? 2 : 1);
    const below = top + (1.15 * lines.length + 0.15) * size;
    const height = Math.max(0.35 * size, Math.min(1.1 * size, top + each - below - 0.5 * size));
    let x = box.x;
    const cuts = LOSSES.map(([name], part): SceneNode => {
      const width = scale * Math.max(0, drawn.flight[name]!);
      const rect: SceneNode = {
        kind: 'rect',
        x,
        y: below,
        width,
        height,
        fill: drawn.style.colour,
        fillOpacity: OPACITIES[part]!,
        stroke: drawn.style.colour,
        strokeWidth: line.grid,
      };
      x += width;
      return rect;
    });
    return [
      ...lines.map(
        (text, row): SceneNode => ({
          kind: 'text',
          x: box.x,
          y: top + (1 + 1.15 * row) * size,
          text,
          size,
          weight: 400,
          anchor: 'start',
          fill: 'ink',
        }),
      ),
      ...cuts,
    ];
  });
}

function wordsOf({ name, flight }: DrawnFlight): string {
  const losses = LOSSES.map(([key, label]) => `${label} ${show(`flight.${key}`, flight[key]!, 3).text}`);
  return `${name} loses, left to right: ${losses.join(', ')}`;
}

function totalOf({ flight }: DrawnFlight): number {
  return LOSSES.reduce((sum, [name]) => sum + Math.max(0, flight[name]!), 0);
}
