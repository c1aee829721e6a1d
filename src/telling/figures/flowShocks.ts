/** What was found on the axis of a computed field, and where the published laws put it: marks beside the picture. */

import type { FlowField } from '../../answer/flow/index.ts';
import type { Layout } from '../look/formats.ts';
import { textWidth } from '../look/measureText.ts';
import { type Box, grown } from '../scene/box.ts';
import { polyline } from '../scene/pathData.ts';
import { group, type SceneNode } from '../scene/scene.ts';
import type { At } from './flowWalls.ts';

export interface ShockMark {
  readonly text: string;
  /** [m] behind the lip */ readonly behind: number;
  readonly found: boolean;
}

/** Only the shock across a round jet is called so. */
export const isMachDisk = ({ mainShock, form }: Pick<FlowField, 'mainShock' | 'form'>): boolean =>
  mainShock?.disk === true && form === 'round';

/** The shock, the end of the first cell, and both by the laws; what is not there is left out. */
export function marksOf(field: FlowField): readonly ShockMark[] {
  const { mainShock, firstCell, byLaw } = field;
  const mark = (text: string, behind: number | null, found: boolean): readonly ShockMark[] =>
    behind === null ? [] : [{ text, behind, found }];
  const shock = isMachDisk(field) ? 'Mach disk' : 'shock';
  return [
    ...mark(shock, mainShock?.behind ?? null, true),
    ...(mainShock === null ? [] : mark('disk by law', byLaw.machDisk, false)),
    ...mark('cell', firstCell, true),
    ...(firstCell === null ? [] : mark('cell by law', byLaw.cellLength, false)),
  ];
}

/** Ticks on the edge of the picture: found ones full, those of the laws hollow. */
export function shockMarks(
  field: FlowField,
  at: At,
  clip: Box,
  { type, line, upright }: Layout,
): readonly SceneNode[] {
  const room = grown(clip, 1);
  const size = type.small;
  /** How far each line of words is taken; as many as there may be marks. */
  const taken = Array.from({ length: 3 }, () => Number.NEGATIVE_INFINITY);
  const nodes = [...marksOf(field)]
    .sort((a, b) => a.behind - b.behind)
    .flatMap(({ text, behind, found }): readonly SceneNode[] => {
      const { x, y } = at(field.lip.axial + behind, 0);
      if (x < room.x || x > room.x + room.width || y < room.y || y > room.y + room.height) return [];
      const tip = upright ? { x: clip.x + clip.width, y } : { x, y: clip.y };
      const long = 0.55 * size;
      const triangle = upright
        ? [tip, { x: tip.x - long, y: y - long / 2 }, { x: tip.x - long, y: y + long / 2 }]
        : [
            { x, y: clip.y + long },
            { x: x - long / 2, y: clip.y },
            { x: x + long / 2, y: clip.y },
          ];
      const width = textWidth(text, size, 400);
      // One below the other, or in rows where they would touch.
      const middle = Math.min(x, clip.x + clip.width - width / 2);
      const wanted = upright ? y - size / 2 : middle - width / 2;
      const along = upright ? Math.max(wanted, taken[0]!) : wanted;
      const row = taken.findIndex((end) => along >= end);
      taken[row] = along + (upright ? 1.1 * size : width + 0.6 * size);
      return [
        {
          kind: 'path',
          d: polyline(triangle, true),
          fill: found ? 'ink' : 'paper',
          stroke: 'ink',
          strokeWidth: line.leader,
          ring: 2 * line.leader,
        },
        {
          kind: 'text',
          x: upright ? tip.x - 1.4 * long : middle,
          y: upright ? along + 0.83 * size : clip.y + long + 1.1 * size + 1.15 * size * row,
          text,
          size,
          weight: 400,
          anchor: upright ? 'end' : 'middle',
          fill: 'ink',
          halo: true,
        },
      ];
    });
  return nodes.length === 0 ? [] : [group('shocks', nodes)];
}
