/** Where the velocity of a vehicle went: what the propellant could give, less gravity, back pressure, steering and drag. */

import { CAUTION } from '../../answer/caution.ts';
import { type FlightNumber, LOSSES, type VehicleAnswer, vehicleLines } from '../../answer/flight/index.ts';
import type { StudyAnswer } from '../../answer/model.ts';
import { layoutOf } from '../look/formats.ts';
import { formatSpoken } from '../numbers/formatNumber.ts';
import type { Scene } from '../scene/scene.ts';
import { flightsDrawn } from './ascentPanels.ts';
import { barRows } from './barRows.ts';
import { drawnStyles } from './drawnEngines.ts';
import type { FigureRow } from './figureTable.ts';
import { frame } from './frame.ts';
import type { DrawnFlight } from './lossBars.ts';
import type { FigureOptions } from './options.ts';
import { styleNames } from './styleNames.ts';

const LEFT: readonly (readonly [FlightNumber, string])[] = [...LOSSES, ['speedGained', 'left as speed']];

/** Null where the vehicle does not fly. */
export function figureFlightLosses(
  vehicle: VehicleAnswer,
  answer: StudyAnswer,
  options: FigureOptions,
): Scene | null {
  const flights = flightsDrawn(vehicle, options.styles ?? drawnStyles(answer));
  if (flights.length === 0) return null;
  const layout = layoutOf(options.size);
  const title = options.title ?? finding(vehicle, flights);
  const around = frame(
    layout,
    {
      title,
      subtitle: 'Of the speed that the propellant could give in vacuum: what takes how much on the way up',
      foot: [
        ...(vehicle.comparison ? [`Held: ${vehicle.comparison.held}.`] : []),
        'A point mass over a round, turning Earth in standard air, no wind. Spread not drawn. Model: flight.',
      ],
    },
    options,
  );
  const names = styleNames(
    flights.map(({ name, style, flight }) => ({
      name,
      style,
      more: `${formatSpoken('flight.speedGained', flight.speedGained!)} left of ${formatSpoken('flight.idealVelocity', flight.idealVelocity!)}`,
    })),
    around.content,
    layout,
  );
  const rows = LOSSES.map(([key, label]) => ({
    label,
    bars: flights.flatMap(({ flight, style }) => {
      const value = flight[key];
      return value === undefined ? [] : [{ style, value, text: formatSpoken(`flight.${key}`, value) }];
    }),
  }));
  return {
    width: layout.width,
    height: layout.height,
    title,
    description: [...vehicleLines(vehicle), CAUTION].join(' '),
    theme: options.theme,
    transparent: options.transparent ?? false,
    children: [...around.nodes, ...names.nodes, ...barRows(rows, names.rest, layout)],
  };
}

/** What takes most. */
function finding(vehicle: VehicleAnswer, [first]: readonly DrawnFlight[]): string {
  const flight = first!.flight;
  const [key, label] = LOSSES.reduce((most, one) => (flight[one[0]]! > flight[most[0]]! ? one : most));
  return `Of ${formatSpoken('flight.idealVelocity', flight.idealVelocity!)} that the propellant of ${vehicle.name} could give, ${label} takes most: ${formatSpoken(`flight.${key}`, flight[key]!)}.`;
}

export function flightLossRows(vehicle: VehicleAnswer): readonly FigureRow[] {
  return [vehicle.own, vehicle.exchanged].flatMap((flight) => {
    if (flight === null || flight === undefined) return [];
    const keys: readonly FlightNumber[] = ['idealVelocity', ...LEFT.map(([key]) => key)];
    return keys.flatMap((key) => {
      const value = flight[key];
      return value === undefined
        ? []
        : [{ of: `${vehicle.name} with ${flight.engineName}`, quantity: `flight.${key}`, value }];
    });
  });
}
