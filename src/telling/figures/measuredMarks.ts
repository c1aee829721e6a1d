/** Measured points over a curve: a hollow square in the engine's hue, its ± as a stroke. */

import type { MeasuredPoint, MeasuredSeries } from '../../answer/measured/model.ts';
import type { EngineStyle } from '../look/engineStyles.ts';
import { formatValue } from '../numbers/formatNumber.ts';
import { polyline, rectangle } from '../scene/pathData.ts';
import { plainText } from '../scene/safeText.ts';
import { group, type SceneNode } from '../scene/scene.ts';
import type { DrawnEngine } from './drawnEngines.ts';
import type { PanelStyle } from './overAltitudeAxes.ts';

/** Where a point lies on the drawing; null: not on it. */
export type PlaceOfPoint = (
  point: Pick<MeasuredPoint, 'at'>,
  value: number,
  place: string,
) => { readonly x: number; readonly y: number } | null;

/** A series with the look of its engine. */
export type MarkedSeries = MeasuredSeries & { readonly drawn: { readonly style: EngineStyle } };

/** The series of these engines and this quantity, with a place that the figure has. */
export function seriesFor(
  measured: readonly MeasuredSeries[] | undefined,
  engines: readonly DrawnEngine[],
  quantity: string,
  places: readonly string[],
): readonly MarkedSeries[] {
  return (measured ?? []).flatMap((series) => {
    const drawn = engines.find(({ engine }) => engine.id === series.engine);
    const fits = series.quantity === quantity && places.includes(series.place);
    return drawn === undefined || !fits ? [] : [{ ...series, drawn }];
  });
}

export function measuredMarks(
  all: readonly MarkedSeries[],
  placeOf: PlaceOfPoint,
  { line }: PanelStyle,
): readonly SceneNode[] {
  return all.map(({ drawn, points, place }) =>
    group(
      'measured',
      points.flatMap((point): readonly SceneNode[] => {
        const at = placeOf(point, point.value, place);
        if (at === null) return [];
        const half = 0.75 * line.marker;
        const band = point.plusMinus ?? 0;
        const ends = [point.value - band, point.value + band].map((end) => placeOf(point, end, place));
        const [from, to] = ends;
        const stroke: readonly SceneNode[] =
          band > 0 && from && to
            ? [
                {
                  kind: 'path',
                  d: polyline([from, to]),
                  stroke: drawn.style.colour,
                  strokeWidth: line.plumb,
                  ring: line.plumb,
                },
              ]
            : [];
        return [
          ...stroke,
          {
            kind: 'path',
            d: rectangle(at.x - half, at.y - half, 2 * half, 2 * half),
            fill: 'paper',
            stroke: drawn.style.colour,
            strokeWidth: line.plumb,
            ring: line.plumb,
          },
        ];
      }),
    ),
  );
}

/**
 * What the squares are, for the foot; empty where there are none.
 * @param isOn whether a point lies on the figure's axis; how many do not is told
 */
export function measuredWords(
  all: readonly MarkedSeries[],
  isOn: (at: number, place: string, value: number) => boolean,
): readonly string[] {
  if (all.length === 0) return [];
  const outside = all.flatMap(({ points, place }) =>
    points.filter(({ at, value }) => !isOn(at, place, value)),
  ).length;
  const left =
    outside === 0
      ? []
      : [`${outside} measured ${outside === 1 ? 'point lies' : 'points lie'} outside the axis.`];
  const sets = [...new Set(all.map(({ title, id, source }) => plainText(`${title ?? id} (${source})`)))];
  const some = all.some(({ points }) => points.some(({ plusMinus }) => plusMinus !== null));
  return [
    `Hollow squares: measured, ${sets.join(', ')}${some ? '; strokes: two standard deviations' : ''}.${residualWords(all)}`,
    ...left,
  ];
}

/** How far off the curves are, root mean square, one a series. */
function residualWords(all: readonly MarkedSeries[]): string {
  const told = all.flatMap(({ rms, quantity, engineName }) =>
    rms === null ? [] : [`${formatValue(quantity, rms)} (${plainText(engineName)})`],
  );
  return told.length === 0 ? '' : ` Measured less computed, root mean square: ${told.join(', ')}.`;
}

/** All values of the series with their ±, for an axis that has room for them. */
export const measuredValues = (
  all: readonly MeasuredSeries[],
  isOn: (at: number) => boolean = () => true,
): readonly number[] =>
  all.flatMap(({ points }) =>
    points.flatMap(({ at, value, plusMinus }) =>
      isOn(at) ? [value, value - (plusMinus ?? 0), value + (plusMinus ?? 0)] : [],
    ),
  );
