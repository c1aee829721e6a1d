/** A vehicle on its way up: altitude, speed, dynamic pressure and throttle over time, and where the speed went. */

import { quantity } from '../../answer/catalogue.ts';
import { CAUTION } from '../../answer/caution.ts';
import { unitFor } from '../../answer/display.ts';
import { type FlightPointAnswer, vehicleLines } from '../../answer/flight/index.ts';
import type { VehicleAnswer } from '../../answer/flight/model.ts';
import type { StudyAnswer } from '../../answer/model.ts';
import { type Layout, layoutOf } from '../look/formats.ts';
import type { Box } from '../scene/box.ts';
import { polyline } from '../scene/pathData.ts';
import { group, type Scene, type SceneNode } from '../scene/scene.ts';
import { drawnStyles } from './drawnEngines.ts';
import { frame } from './frame.ts';
import { type DrawnFlight, lossBars } from './lossBars.ts';
import type { FigureOptions } from './options.ts';
import { plotIn, type Side } from './plotAxes.ts';

const PANELS = ['altitude', 'speed', 'dynamicPressure', 'throttle'] as const;
/** Share of the height that the bars of the losses take. */
const BARS = 0.24;

/** Null where the vehicle does not fly. */
export function figureAscent(
  vehicle: VehicleAnswer,
  answer: StudyAnswer,
  options: FigureOptions,
): Scene | null {
  const flights = drawnFlights(vehicle, answer, options);
  if (flights.length === 0) return null;
  const layout = layoutOf(options.size);
  const title = options.title ?? vehicle.comparison?.words ?? vehicle.words;
  const around = frame(layout, {
    title,
    subtitle: `${vehicle.name} on its way up. ${title === vehicle.words ? vehicle.description : vehicle.words}`,
    foot: [
      ...(vehicle.comparison ? [`Held: ${vehicle.comparison.held}.`] : []),
      'Speed against the ground, time since lift-off. A point mass over a round, turning Earth in standard air, no wind. Model: flight.',
    ],
  });
  const { content } = around;
  const bars = BARS * content.height;
  const plots = { ...content, height: content.height - bars };
  return {
    width: layout.width,
    height: layout.height,
    title,
    description: [...vehicleLines(vehicle), CAUTION].join(' '),
    theme: options.theme,
    transparent: options.transparent ?? false,
    children: [
      ...around.nodes,
      ...panelBoxes(plots, layout).flatMap((box, i) => panel(PANELS[i]!, flights, box, layout)),
      group('losses', lossBars(flights, { ...content, y: plots.y + plots.height, height: bars }, layout)),
    ],
  };
}

function drawnFlights(
  { own, exchanged }: VehicleAnswer,
  answer: StudyAnswer,
  options: FigureOptions,
): readonly DrawnFlight[] {
  const styles = options.styles ?? drawnStyles(answer);
  return [own, exchanged].flatMap((flight) => {
    const style = flight ? styles[flight.engine] : undefined;
    if (!flight || style === undefined) return [];
    return [{ flight, name: flight.engineName, style }];
  });
}

/** Side by side, or two by two where there is no room. */
function panelBoxes(box: Box, { type }: Layout): readonly Box[] {
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
  layout: Layout,
): readonly SceneNode[] {
  const all = flights.flatMap(({ flight }) => flight.points);
  const plot = plotIn(box, sideOf('time', all), sideOf(name, all), layout);
  return [
    group('grid', plot.grid),
    group('axis', plot.words),
    ...flights.map(({ flight, style }) =>
      group(`${style.colour} curve`, [
        {
          kind: 'path',
          d: polyline(flight.points.map((point) => ({ x: plot.x(point.time), y: plot.y(point[name]) }))),
          stroke: style.colour,
          strokeWidth: 0.7 * layout.line.curve,
          dash: style.dash.map((length) => length * layout.line.curve),
          join: 'round',
        },
      ]),
    ),
  ];
}

const LABELS: Readonly<Partial<Record<keyof FlightPointAnswer, string>>> = {
  time: 'time',
  altitude: 'altitude',
  speed: 'speed',
  dynamicPressure: 'dynamic pressure',
  throttle: 'throttle',
};

function sideOf(name: 'time' | (typeof PANELS)[number], points: readonly FlightPointAnswer[]): Side {
  const most = Math.max(...points.map((point) => point[name]));
  const entry = quantity(`flight.points.${name}`);
  return {
    from: 0,
    to: name === 'throttle' ? 1.05 : most > 0 ? 1.04 * most : 1,
    inRatios: false,
    unit: unitFor(entry, [most]),
    label: LABELS[name] ?? entry.label,
  };
}
