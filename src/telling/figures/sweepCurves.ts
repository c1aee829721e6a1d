/** The curves of a sweep as they are drawn: each in its engine's hue, two of one engine in lines and signs of their own. */

import { shortNames } from '../../answer/sweeps/findings.ts';
import type { CurvePoint, Sweep, SweepCurve } from '../../answer/sweeps/model.ts';
import { ENGINE_STYLES, type EngineStyle } from '../look/engineStyles.ts';
import type { LineSizes } from '../look/formats.ts';
import { type Point, polyline } from '../scene/pathData.ts';
import type { Fill, SceneNode } from '../scene/scene.ts';
import type { StyledLine } from './curveLabels.ts';
import { dashOf } from './marks.ts';
import type { FigureOptions } from './options.ts';

export interface DrawnCurve extends StyledLine {
  readonly curve: SweepCurve;
  /** Short: what tells it from the others. */ readonly name: string;
  /** Outlines of the band between holes, closed. */ readonly bands: readonly (readonly Point[])[];
}

/** Where a value of the input and a value of what is followed lie in the plot. */
export type PlaceOf = (x: number, y: number) => Point;

export function drawnCurves(
  sweep: Sweep,
  curves: readonly SweepCurve[],
  place: PlaceOf,
  styles: FigureOptions['styles'],
): readonly DrawnCurve[] {
  const names = shortNames(sweep.curves);
  const all = stylesOf(sweep, styles);
  return curves.map((curve) => {
    const index = sweep.curves.indexOf(curve);
    const runs = runsOf(curve.points);
    return {
      curve,
      name: names[index] ?? curve.words,
      style: all[index] ?? ENGINE_STYLES[0],
      pieces: runs.map((run) => run.map(({ x, y }) => place(x, y))),
      ifFull: [],
      bands: runs
        .filter((run) => run.some(({ low, high }) => low !== null || high !== null))
        .map((run) => [
          ...run.map(({ x, y, high }) => place(x, high ?? y)),
          ...run.map(({ x, y, low }) => place(x, low ?? y)).reverse(),
        ]),
    };
  });
}

/** Lines for more curves than there are engines' styles. */
const MORE_DASHES: readonly (readonly number[])[] = [
  [6, 2],
  [1.6, 1.6],
  [5, 1.4, 0.9, 1.4, 0.9, 1.4],
  [8, 1.4, 2, 1.4],
];

function stylesOf(sweep: Sweep, given: FigureOptions['styles'] = {}): readonly EngineStyle[] {
  const engines = [...new Set(sweep.curves.map(({ engines: own }) => own[0] ?? ''))];
  const taken: EngineStyle[] = [];
  for (const { engines: own } of sweep.curves) {
    const id = own[0] ?? '';
    const usual = given[id] ?? ENGINE_STYLES[engines.indexOf(id) % ENGINE_STYLES.length] ?? ENGINE_STYLES[0];
    const isFree = ({ dash }: EngineStyle): boolean =>
      taken.every((other) => other.dash.join() !== dash.join());
    const free = [
      ...[usual, ...ENGINE_STYLES].map(({ dash, marker, band, hatchAngle }) => ({
        dash,
        marker,
        band,
        hatchAngle,
      })),
      ...MORE_DASHES.map((dash) => ({ ...usual, dash, band: 'outline' as const })),
    ]
      .map((line): EngineStyle => ({ ...line, order: usual.order, colour: usual.colour }))
      .find(isFree);
    taken.push(free ?? usual);
  }
  return taken;
}

type Known = CurvePoint & { readonly y: number };

/** Stretches without a hole. */
function runsOf(points: readonly CurvePoint[]): readonly (readonly Known[])[] {
  const runs: Known[][] = [[]];
  for (const point of points) {
    if (point.y !== null) runs.at(-1)?.push({ ...point, y: point.y });
    else if (runs.at(-1)?.length !== 0) runs.push([]);
  }
  return runs.filter((run) => run.length > 0);
}

export function sweepCurveNodes(drawn: DrawnCurve, line: LineSizes): readonly SceneNode[] {
  const { style, pieces, bands } = drawn;
  return [
    ...bands.map(
      (points): SceneNode => ({
        kind: 'path',
        d: polyline(points, true),
        ...bandFill(style, line),
      }),
    ),
    ...pieces.map(
      (points): SceneNode => ({
        kind: 'path',
        // One value alone is a dot.
        d: points.length > 1 ? polyline(points) : polyline([...points, ...points]),
        stroke: style.colour,
        strokeWidth: line.curve,
        dash: dashOf(style, line.curve),
        join: 'round',
        ...(points.length > 1 ? {} : { cap: 'round' as const }),
      }),
    ),
  ];
}

const TINT = 0.2;

function bandFill(
  { band, colour, hatchAngle }: EngineStyle,
  line: LineSizes,
): Partial<Extract<SceneNode, { kind: 'path' }>> {
  const outlined = { stroke: colour, strokeWidth: 0.5 * line.leader, strokeOpacity: 0.6 };
  switch (band) {
    case 'tint':
      return { fill: colour, fillOpacity: TINT };
    case 'hatch':
      return { fill: hatchOf(colour, hatchAngle, line), ...outlined };
    case 'dots':
      return {
        fill: { pattern: 'dots', colour, gap: 1.6 * line.curve, radius: 0.2 * line.curve },
        ...outlined,
      };
    case 'outline':
      return { fill: 'none', stroke: colour, strokeWidth: line.leader, strokeOpacity: 0.6 };
  }
}

export function hatchOf(colour: EngineStyle['colour'], angle: number, line: LineSizes): Fill {
  return { pattern: 'hatch', colour, angle, gap: 2 * line.curve, width: 0.6 * line.leader, opacity: 0.6 };
}
