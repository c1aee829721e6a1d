/** The courses of temperature along a cooled wall, and the words beside them. */

import type { CoolingAnswer, CoolingPoint } from '../../answer/heat/model.ts';
import type { ColourToken } from '../look/tokens.ts';
import { formatValue } from '../numbers/formatNumber.ts';
import type { Box } from '../scene/box.ts';
import type { Point } from '../scene/pathData.ts';
import { plainText } from '../scene/safeText.ts';
import type { SceneNode } from '../scene/scene.ts';
import { type Words, wordsAt, wordsSize } from './marks.ts';
import type { PanelStyle } from './overAltitudeAxes.ts';
import { type Candidate, LabelRoom } from './placeLabels.ts';

interface Course {
  readonly name: string;
  readonly quantity: string;
  readonly of: (point: CoolingPoint) => number;
  readonly colour: ColourToken | 'own';
  readonly dash: readonly number[];
  readonly width: number;
}

export const courses: readonly Course[] = [
  {
    name: 'gas at the wall',
    quantity: 'heat.adiabaticTemperature',
    of: ({ adiabaticTemperature }) => adiabaticTemperature,
    colour: 'ink',
    dash: [5, 3],
    width: 0.8,
  },
  {
    name: 'wall, gas side',
    quantity: 'cooling.wallHot',
    of: ({ wallHot }) => wallHot,
    colour: 'own',
    dash: [],
    width: 1.2,
  },
  {
    name: 'wall, coolant side',
    quantity: 'cooling.wallCold',
    of: ({ wallCold }) => wallCold,
    colour: 'own',
    dash: [],
    width: 0.6,
  },
  {
    name: 'coolant',
    quantity: 'cooling.coolantTemperature',
    of: ({ coolantTemperature }) => coolantTemperature,
    colour: 'ink',
    dash: [1.5, 2],
    width: 0.9,
  },
];

/** Name and the value at the hottest place of each course, near it and clear of the others. */
export function courseLabels(
  points: readonly CoolingPoint[],
  cooling: CoolingAnswer,
  lines: readonly (readonly Point[])[],
  limit: number,
  plot: Box,
  { type }: PanelStyle,
): SceneNode[] {
  const hottest = points.reduce((best, { wallHot }, i) => (wallHot > points[best]!.wallHot ? i : best), 0);
  const ends = [plot.x, plot.x + plot.width].map((at) => ({ x: at, y: limit }));
  const room = new LabelRoom(plot, [
    ...lines.map((each) => ({ points: each, cost: 60 })),
    { points: ends, cost: 40 },
  ]);
  const told = courses.map(({ name, quantity, of }, i) => ({
    text: `${name}, ${formatValue(quantity, of(points[hottest]!))} where it is hottest`,
    line: lines[i]!,
  }));
  const stands = {
    text: `the metal stands ${formatValue('cooling.wallLimit', cooling.wallLimit)}`,
    line: ends,
  };
  return [...told, stands].flatMap(({ text, line }) => {
    const words: Words[] = [{ text: plainText(text), size: 0.9 * type.label, weight: 400, fill: 'ink' }];
    const size = wordsSize(words);
    const placed = room.place(size.width, size.height, 0.1 * type.label, along(line, plot, size, type.label));
    return placed === null ? [] : wordsAt(words, placed.box.x, placed.box.y, 'start', true);
  });
}

/** Places above and below a line, from its right end on. */
function along(
  line: readonly Point[],
  plot: Box,
  size: { readonly width: number; readonly height: number },
  step: number,
): Candidate[] {
  const candidates: Candidate[] = [];
  for (let i = 0; i <= 24; i++) {
    const x = plot.x + plot.width - size.width - (i / 24) * (plot.width - size.width);
    const middle = x + size.width / 2;
    const on = line.reduce((a, b) => (Math.abs(b.x - middle) < Math.abs(a.x - middle) ? b : a));
    for (const rise of [0.2, 0.6, 1.2]) {
      candidates.push({ x, y: on.y - rise * step - size.height, cost: i + 10 * rise });
      candidates.push({ x, y: on.y + rise * step, cost: i + 10 * rise + 3 });
    }
  }
  return candidates;
}
