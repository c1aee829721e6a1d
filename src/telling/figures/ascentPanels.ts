/** The way up of a vehicle in panels over time, and the bars of where its speed went: in figures and on the screen. */

import { quantity } from '../../answer/catalogue.ts';
import { unitFor } from '../../answer/display.ts';
import type { FlightPointAnswer, VehicleAnswer } from '../../answer/flight/model.ts';
import type { EngineStyle } from '../look/engineStyles.ts';
import type { Box } from '../scene/box.ts';
import { polyline } from '../scene/pathData.ts';
import { group, type SceneNode } from '../scene/scene.ts';
import { type DrawnFlight, lossBars } from './lossBars.ts';
import { type MarkedSeries, measuredMarks, measuredValues } from './measuredMarks.ts';
import type { PanelStyle } from './overAltitudeAxes.ts';
import { plotIn, type Side } from './plotAxes.ts';

const PANELS = ['altitude', 'speed', 'dynamicPressure', 'throttle'] as const;
/** Share of the height that the bars of the losses take. */
const BARS = 0.24;

/** With its own engine and with the other one, as far as it flies and the engine has a style. */
export function flightsDrawn(
  { own, exchanged }: VehicleAnswer,
  styles: Readonly<Record<string, EngineStyle>>,
): readonly DrawnFlight[] {
  return [own, exchanged].flatMap((flight) => {
    const style = flight ? styles[flight.engine] : undefined;
    if (!flight || style === undefined) return [];
    return [{ flight, name: flight.engineName, style }];
  });
}

export function ascentPanels(
  flights: readonly DrawnFlight[],
  box: Box,
  style: PanelStyle,
  measured: readonly MarkedSeries[] = [],
): readonly SceneNode[] {
  const bars = BARS * box.height;
  const plots = { ...box, height: box.height - bars };
  return [
    ...panelBoxes(plots, style).flatMap((each, i) => panel(PANELS[i]!, flights, each, style, measured)),
    group('losses', lossBars(flights, { ...box, y: plots.y + plots.height, height: bars }, style)),
  ];
}

/** Side by side, or two by two where there is no room. */
function panelBoxes(box: Box, { type }: PanelStyle): readonly Box[] {
  const gap = 1.4 * type.label;
  const [columns, rows] = box.width > 2 * box.height ? [4, 1] : [2, 2];
  const width = (box.width - gap * (columns - 1)) / columns;
  const height = (box.height - 0.5 * gap * rows) / rows;
  return PANELS.map((_, i) => ({
    x: box.x + (i % columns) * (width + gap),
    y: box.y + Math.floor(i / columns) * (height + 0.5 * gap),
    width,
    height,
  }));
}

function panel(
  name: (typeof PANELS)[number],
  flights: readonly DrawnFlight[],
  box: Box,
  style: PanelStyle,
  measured: readonly MarkedSeries[],
): readonly SceneNode[] {
  const own = measured.filter(({ quantity: of }) => of === `flight.points.${name}`);
  const all = flights.flatMap(({ flight }) => flight.points);
  const plot = plotIn(box, sideOf('time', all), sideOf(name, all, measuredValues(own)), style);
  return [
    group('grid', plot.grid),
    group('axis', plot.words),
    ...flights.map(({ flight, style: look }) =>
      group(`${look.colour} curve`, [
        {
          kind: 'path',
          d: polyline(flight.points.map((point) => ({ x: plot.x(point.time), y: plot.y(point[name]) }))),
          stroke: look.colour,
          strokeWidth: 0.7 * style.line.curve,
          dash: look.dash.map((length) => length * style.line.curve),
          join: 'round',
        },
      ]),
    ),
    ...measuredMarks(
      own,
      ({ at }, value) => (isOnAscent(flights)(at) ? { x: plot.x(at), y: plot.y(value) } : null),
      style,
    ),
  ];
}

/** Whether a time [s] lies on the axis. */
export const isOnAscent =
  (flights: readonly DrawnFlight[]) =>
  (at: number): boolean =>
    at >= 0 &&
    at <=
      sideOf(
        'time',
        flights.flatMap(({ flight }) => flight.points),
      ).to;

const LABELS: Readonly<Partial<Record<keyof FlightPointAnswer, string>>> = {
  time: 'time',
  altitude: 'altitude',
  speed: 'speed',
  dynamicPressure: 'dynamic pressure',
  throttle: 'throttle',
};

function sideOf(
  name: 'time' | (typeof PANELS)[number],
  points: readonly FlightPointAnswer[],
  more: readonly number[] = [],
): Side {
  const most = Math.max(...points.map((point) => point[name]), ...more);
  const entry = quantity(`flight.points.${name}`);
  return {
    from: 0,
    to: name === 'throttle' ? 1.05 : most > 0 ? 1.04 * most : 1,
    inRatios: false,
    unit: unitFor(entry, [most]),
    label: LABELS[name] ?? entry.label,
  };
}
