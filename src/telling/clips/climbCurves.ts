/** Curves over altitude with the altitude moving up them: the cursor, its markers and the values there. */

import type { ConditionRow } from '../../answer/model.ts';
import type { SolvedStudy } from '../../answer/solve.ts';
import { type DrawnEngine, drawnEngines } from '../figures/drawnEngines.ts';
import { overAltitudeFigure } from '../figures/figureOverAltitude.ts';
import type { Altitude } from '../figures/options.ts';
import { type OverAltitudeQuantity, quantityAt } from '../figures/overAltitudeCurves.ts';
import { layoutOf } from '../look/formats.ts';
import { textWidth } from '../look/measureText.ts';
import { formatSpoken } from '../numbers/formatNumber.ts';
import { plainText } from '../scene/safeText.ts';
import { group, type Scene } from '../scene/scene.ts';
import { wayWords } from './climbCut.ts';
import { altitudeBetween } from './climbPath.ts';
import type { Movement } from './clip.ts';
import { liveEngines } from './liveEngines.ts';
import type { ClimbOptions } from './options.ts';
import { altitudeReadout, READOUT_LEADING, type ReadoutPart, readoutLine, readoutLines } from './readout.ts';

/** Places looked at beforehand for the widest value. */
const LOOKED_AT = 41;

type Rows = Readonly<Record<string, ConditionRow>>;

export function climbCurves(
  solved: SolvedStudy,
  quantity: OverAltitudeQuantity,
  options: ClimbOptions,
): Movement {
  const { from, to } = options;
  const layout = layoutOf(options.size);
  const live = liveEngines(solved);
  const { engines } = drawnEngines(solved.answer, 4, options.styles);
  const size = 1.05 * layout.type.label;
  const places = Array.from({ length: LOOKED_AT }, (_, i) => altitudeBetween(from, to, i / (LOOKED_AT - 1)));
  const widest = engines.map((drawn) =>
    places
      .map((altitude) => valueText(drawn, quantity, live.rowsAt(altitude)))
      .reduce((wide, text) => (textWidth(text, size, 400) > textWidth(wide, size, 400) ? text : wide), ''),
  );
  const groupsAt = (altitude: Altitude): readonly (readonly ReadoutPart[])[] => {
    const rows = live.rowsAt(altitude);
    return [
      altitudeReadout(altitude),
      ...engines.map((drawn, i): readonly ReadoutPart[] => [
        { text: plainText(drawn.engine.name), weight: 700, fill: drawn.style.colour },
        {
          text: valueText(drawn, quantity, rows),
          widest: widest[i] ?? '',
          weight: 400,
          fill: 'ink',
          gap: 0.3,
        },
      ]),
    ];
  };
  const width = layout.safe.right - layout.safe.left;
  const count = readoutLines(groupsAt(from), width, size).length;
  const leading = READOUT_LEADING * size;
  const figure = overAltitudeFigure(solved.answer, quantity, options, count * leading + 0.3 * size);
  const standing = [...figure.head, ...figure.panel.nodes];
  const { labels } = figure.panel;
  return {
    name: `${quantity === 'thrust' ? 'thrust' : 'specific-impulse'}-climb`,
    title: figure.scene.title,
    description: `The altitude moves ${wayWords(from, to)}. ${figure.scene.description}`,
    notes: ['The values are computed for the altitude of each frame.'],
    at(share): Scene {
      const altitude = altitudeBetween(from, to, share);
      const lines = readoutLines(groupsAt(altitude), width, size);
      return {
        ...figure.scene,
        children: [
          ...standing,
          group('cursor', figure.panel.cursor(altitude, live.rowsAt(altitude))),
          ...labels,
          ...lines.flatMap((line, i) =>
            readoutLine(line, figure.above.x, figure.above.y + 0.85 * size + i * leading, size),
          ),
        ],
      };
    },
  };
}

function valueText({ engine }: DrawnEngine, quantity: OverAltitudeQuantity, rows: Rows): string {
  const row = rows[engine.id];
  const value = row === undefined ? null : quantityAt(quantity, row);
  return value === null ? 'no value' : formatSpoken(quantity, value);
}
