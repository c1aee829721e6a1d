/** What stands beside the curves along a computed field: the air, the lip, the span of separation, shocks. */

import type { FlowField } from '../../answer/flow/index.ts';
import type { Layout } from '../look/formats.ts';
import { segment } from '../scene/pathData.ts';
import { group, type SceneNode } from '../scene/scene.ts';
import type { Beside } from './coursePanel.ts';
import { isLettingGo } from './flowSeparation.ts';
import { marksOf } from './flowShocks.ts';
import { type Words, wordsAt, wordsSize } from './marks.ts';
import type { Candidate, LabelRoom } from './placeLabels.ts';
import type { Plot } from './plotAxes.ts';
import { hatchOf } from './sweepCurves.ts';

/** Cost of words over an upright line. */
const OVER_LINE = 20;
/** Lines of words from the upper edge down that the names of marks may take. */
const ROWS = 3;
/** Places along the line of the air where its name may stand. */
const PLACES = 12;

export function besideFlow(field: FlowField, { box, x, y }: Plot, { type, line }: Layout): Beside {
  const { lip, ambientPressure } = field;
  const { label } = type;
  const bottom = box.y + box.height;
  const end = box.x + box.width;
  const radius = 0.275 * label;
  const atLip = x(lip.axial);
  const air = y(ambientPressure);
  const isAirIn = air <= bottom && air >= box.y;
  const marks = marksOf(field)
    .map(({ behind, ...mark }) => ({ ...mark, at: x(lip.axial + behind) }))
    .filter(({ at }) => at <= end);
  const upright = (at: number) => [
    { x: at, y: box.y },
    { x: at, y: bottom },
  ];
  const named = (
    room: LabelRoom,
    text: string,
    fill: Words['fill'],
    placesOf: (size: { readonly width: number; readonly height: number }) => readonly Candidate[],
  ): readonly SceneNode[] => {
    const words: Words[] = [{ text, size: 0.9 * label, weight: 400, fill }];
    const size = wordsSize(words);
    const placed = room.place(size.width, size.height, 0.1 * label, placesOf(size));
    return placed === null ? [] : wordsAt(words, placed.box.x, placed.box.y, 'start', true);
  };
  /** To the right of an upright line, or to its left. */
  const besideLine = (at: number, width: number, gap: number, top: number, cost: number) => [
    { x: at + gap, y: top, cost },
    { x: at - gap - width, y: top, cost: cost + 5 },
  ];
  return {
    shapes: [
      ...separationSpan(field, box, x, line),
      ...(isAirIn ? [lineOf(segment(box.x, air, end, air), line.leader, [6, 4])] : []),
      lineOf(segment(atLip, box.y, atLip, bottom), line.leader, [2, 2]),
      ...marks.flatMap(({ at, found }): readonly SceneNode[] => [
        lineOf(segment(at, box.y, at, bottom), line.leader, found ? [] : [1, 3]),
        {
          kind: 'circle',
          x: at,
          y: box.y + 2 * radius,
          radius,
          fill: found ? 'ink' : 'paper',
          stroke: 'ink',
          strokeWidth: line.leader,
        },
      ]),
    ],
    obstacles: [atLip, ...marks.map(({ at }) => at)].map((at) => ({ points: upright(at), cost: OVER_LINE })),
    marks: marks.map(({ at }) => ({
      x: at - radius,
      y: box.y + radius,
      width: 2 * radius,
      height: 2 * radius,
    })),
    words: (room) => [
      ...marks.flatMap(({ at, text }) =>
        named(room, text, 'ink', ({ width }) =>
          Array.from({ length: ROWS }, (_, row) =>
            besideLine(at, width, 2 * radius, box.y + (0.1 + 1.15 * row) * label, 10 * row),
          ).flat(),
        ),
      ),
      ...named(room, 'lip', 'ink-2', ({ width, height }) =>
        [bottom - height - 0.1 * label, box.y + 0.1 * label].flatMap((top, k) =>
          besideLine(atLip, width, 0.25 * label, top, 10 * k),
        ),
      ),
      ...(isAirIn
        ? named(room, 'air outside', 'ink-2', ({ width, height }) =>
            Array.from({ length: PLACES }, (_, k): readonly Candidate[] => {
              const left = end - 0.4 * label - width - (k / PLACES) * (box.width - width);
              return [
                { x: left, y: air + 0.15 * label, cost: 3 * k },
                { x: left, y: air - 0.15 * label - height, cost: 3 * k + 4 },
              ];
            }).flat(),
          )
        : []),
    ],
  };
}

function lineOf(d: string, width: number, dash: readonly number[]): SceneNode {
  return {
    kind: 'path',
    d,
    stroke: 'ink-2',
    strokeWidth: width,
    dash: dash.map((length) => length * width),
  };
}

function separationSpan(
  field: FlowField,
  box: Plot['box'],
  x: Plot['x'],
  line: Layout['line'],
): readonly SceneNode[] {
  const { separation } = field;
  if (separation === null || !isLettingGo(field)) return [];
  const from = x(separation.earliest.axial);
  return [
    group('separation', [
      {
        kind: 'rect',
        x: from,
        y: box.y,
        width: Math.max(line.leader, x(separation.latest.axial) - from),
        height: box.height,
        fill: hatchOf('ink-2', 45, line),
      },
    ]),
  ];
}
