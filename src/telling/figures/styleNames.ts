/** Names of engines with their line and marker in one row: what each style stands for, where no curve carries its name. */

import { textWidth } from '../look/measureText.ts';
import type { Box } from '../scene/box.ts';
import { plainText } from '../scene/safeText.ts';
import { group, type SceneNode } from '../scene/scene.ts';
import type { DrawnEngine } from './drawnEngines.ts';
import { lineSample } from './marks.ts';
import type { PanelStyle } from './overAltitudeAxes.ts';

export interface StyleNames {
  readonly nodes: readonly SceneNode[];
  /** What is left below them. */ readonly rest: Box;
}

/** @param more said after each name */
export function styleNames(
  engines: readonly (Pick<DrawnEngine, 'style'> & { readonly name: string; readonly more?: string })[],
  box: Box,
  { type, line }: PanelStyle,
): StyleNames {
  const size = type.label;
  const sample = 2 * size;
  const nodes: SceneNode[] = [];
  let [x, y] = [box.x, box.y];
  for (const { name, more, style } of engines) {
    const text = plainText(name);
    const rest = more === undefined ? '' : `, ${more}`;
    const nameWidth = textWidth(text, size, 700);
    const width = sample + 0.4 * size + nameWidth + textWidth(rest, size, 400);
    if (x > box.x && x + width > box.x + box.width) {
      x = box.x;
      y += 1.25 * size;
    }
    const start = x + sample + 0.4 * size;
    nodes.push(...lineSample(style, x, y + 0.58 * size, sample, 0.8 * line.curve, 0.75 * line.marker), {
      kind: 'text',
      x: start,
      y: y + 0.92 * size,
      text,
      size,
      weight: 700,
      anchor: 'start',
      fill: style.colour,
    });
    if (rest !== '')
      nodes.push({
        kind: 'text',
        x: start + nameWidth,
        y: y + 0.92 * size,
        text: rest,
        size,
        weight: 400,
        anchor: 'start',
        fill: 'ink',
      });
    x += width + 1.2 * size;
  }
  const used = y + 1.5 * size - box.y;
  return {
    nodes: [group('names', nodes)],
    rest: { x: box.x, y: box.y + used, width: box.width, height: box.height - used },
  };
}
