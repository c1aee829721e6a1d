/** The small drawn signs: markers of an engine, its line sample, lines of words. */

import type { EngineStyle } from '../look/engineStyles.ts';
import type { Weight } from '../look/measureText.ts';
import { textWidth } from '../look/measureText.ts';
import type { ColourToken } from '../look/tokens.ts';
import { polyline, segment } from '../scene/pathData.ts';
import type { PathNode, SceneNode, TextNode } from '../scene/scene.ts';

/** The engine's marker, with a paper ring so that it stands off what lies below. */
export function marker(style: EngineStyle, x: number, y: number, radius: number): SceneNode {
  const ring = 0.55 * radius;
  return { kind: 'path', d: markerOutline(style, x, y, radius), fill: style.colour, ring };
}

function markerOutline(style: EngineStyle, x: number, y: number, r: number): string {
  const round = (value: number): number => Math.round(value * 100) / 100;
  switch (style.marker) {
    case 'disc':
      return `M${round(x - r)} ${round(y)}a${round(r)} ${round(r)} 0 1 1 ${round(2 * r)} 0a${round(r)} ${round(r)} 0 1 1 ${round(-2 * r)} 0Z`;
    case 'diamond':
      return polyline(
        [
          { x, y: y - 1.25 * r },
          { x: x + 1.25 * r, y },
          { x, y: y + 1.25 * r },
          { x: x - 1.25 * r, y },
        ],
        true,
      );
    case 'triangle':
      return polyline(
        [
          { x, y: y - 1.2 * r },
          { x: x + 1.15 * r, y: y + 0.85 * r },
          { x: x - 1.15 * r, y: y + 0.85 * r },
        ],
        true,
      );
    case 'square':
      return polyline(
        [
          { x: x - 0.9 * r, y: y - 0.9 * r },
          { x: x + 0.9 * r, y: y - 0.9 * r },
          { x: x + 0.9 * r, y: y + 0.9 * r },
          { x: x - 0.9 * r, y: y + 0.9 * r },
        ],
        true,
      );
  }
}

/** Dashes of an engine's line at a width [px]. */
export function dashOf(style: EngineStyle, lineWidth: number): readonly number[] {
  return style.dash.map((length) => length * lineWidth);
}

/** A stretch of the engine's line with its marker in the middle; stands before its name. */
export function lineSample(
  style: EngineStyle,
  x: number,
  y: number,
  length: number,
  lineWidth: number,
  radius: number,
): readonly SceneNode[] {
  const middle = x + length / 2;
  const clear = style.dash.length > 0 ? 1.7 * radius : 0;
  const line: PathNode = {
    kind: 'path',
    // From both ends towards the marker, so that the dashes are whole and alike.
    d: segment(x, y, middle - clear, y) + segment(x + length, y, middle + clear, y),
    stroke: style.colour,
    strokeWidth: lineWidth,
    dash: dashOf(style, lineWidth),
  };
  return [line, marker(style, middle, y, radius)];
}

export interface Words {
  readonly text: string;
  readonly size: number;
  readonly weight: Weight;
  readonly fill: ColourToken;
  /** Name in the catalogue of the number that they tell. */ readonly tells?: string;
}

/** Distance of base lines, as a share of the type size. */
export const LEADING = 1.18;

/** Size of a few lines of words. */
export function wordsSize(lines: readonly Words[]): { readonly width: number; readonly height: number } {
  return {
    width: Math.max(0, ...lines.map((line) => textWidth(line.text, line.size, line.weight))),
    height: lines.reduce((sum, line) => sum + LEADING * line.size, 0),
  };
}

/** Lines of words in a box whose upper edge is `y`; `x` is the edge or middle that `anchor` names. */
export function wordsAt(
  lines: readonly Words[],
  x: number,
  y: number,
  anchor: TextNode['anchor'] = 'start',
  halo = false,
): TextNode[] {
  let top = y;
  return lines.map((line) => {
    const node: TextNode = {
      kind: 'text',
      x,
      y: top + 0.88 * line.size,
      text: line.text,
      size: line.size,
      weight: line.weight,
      anchor,
      fill: line.fill,
      ...(halo ? { halo } : {}),
      ...(line.tells === undefined ? {} : { tells: line.tells }),
    };
    top += LEADING * line.size;
    return node;
  });
}
