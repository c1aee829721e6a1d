/** A vehicle on its way up: altitude, speed, dynamic pressure and throttle over time, and where the speed went. */

import { CAUTION } from '../../answer/caution.ts';
import { type VehicleAnswer, vehicleLines } from '../../answer/flight/index.ts';
import type { StudyAnswer } from '../../answer/model.ts';
import { layoutOf } from '../look/formats.ts';
import type { Scene } from '../scene/scene.ts';
import { ascentPanels, flightsDrawn, isOnAscent } from './ascentPanels.ts';
import { drawnStyles } from './drawnEngines.ts';
import { frame } from './frame.ts';
import { type MarkedSeries, measuredWords } from './measuredMarks.ts';
import type { FigureOptions } from './options.ts';

/** Null where the vehicle does not fly. */
export function figureAscent(
  vehicle: VehicleAnswer,
  answer: StudyAnswer,
  options: FigureOptions,
): Scene | null {
  const flights = flightsDrawn(vehicle, options.styles ?? drawnStyles(answer));
  if (flights.length === 0) return null;
  const [{ style }] = flights as [(typeof flights)[number]];
  const measured = (options.measured ?? [])
    .filter(({ engine, place }) => engine === vehicle.id && place === 'time')
    .map((series): MarkedSeries => ({ ...series, drawn: { style } }));
  const layout = layoutOf(options.size);
  const title = options.title ?? vehicle.comparison?.words ?? vehicle.words;
  const around = frame(
    layout,
    {
      title,
      subtitle: `${vehicle.name} on its way up. ${title === vehicle.words ? vehicle.description : vehicle.words}`,
      foot: [
        ...(vehicle.comparison ? [`Held: ${vehicle.comparison.held}.`] : []),
        'Speed against the ground, time since lift-off. A point mass over a round, turning Earth in standard air, no wind. Model: flight.',
        ...measuredWords(measured, isOnAscent(flights)),
      ],
    },
    options,
  );
  return {
    width: layout.width,
    height: layout.height,
    title,
    description: [...vehicleLines(vehicle), CAUTION].join(' '),
    theme: options.theme,
    transparent: options.transparent ?? false,
    children: [...around.nodes, ...ascentPanels(flights, around.content, layout, measured)],
  };
}
