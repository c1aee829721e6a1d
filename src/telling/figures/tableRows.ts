/** The tables of the figures that draw an engine over altitude, along its wall, cut open, in outline, on its way up. */

import type { FlightAnswer, VehicleAnswer } from '../../answer/flight/index.ts';
import type { StudyAnswer } from '../../answer/model.ts';
import { ambientAt, conditionAt, rowsOf } from './conditions.ts';
import type { FigureRow } from './figureTable.ts';
import type { FigureOptions } from './options.ts';

/** Rows of the answer and those between, with their place in the air. */
export function overAltitudeRows(
  answer: StudyAnswer,
  quantity: 'specificImpulse' | 'thrust',
  options: FigureOptions,
): readonly FigureRow[] {
  return Object.values(answer.engines).flatMap((engine) => {
    const reason = new Map(engine.reasons.map(({ path, reason: why }) => [path, why]));
    return rowsOf(engine, options).map((row): FigureRow => {
      const place = engine.altitudes.indexOf(row);
      const why = place < 0 ? undefined : reason.get(`altitudes[${place}].${quantity}`);
      return {
        of: engine.name,
        quantity,
        at:
          row.altitude === null
            ? { quantity: 'ambientPressure', value: row.ambientPressure }
            : { quantity: 'altitude', value: row.altitude },
        value: row[quantity],
        ...(why === undefined ? {} : { note: why }),
      };
    });
  });
}

export function cutRows(answer: StudyAnswer, options: FigureOptions): readonly FigureRow[] {
  const ambient = ambientAt(options.altitude ?? 0);
  const at = { quantity: 'ambientPressure', value: ambient };
  return Object.values(answer.engines).flatMap((engine): readonly FigureRow[] => [
    { of: engine.name, quantity: 'chamber.pressure', value: engine.chamber.pressure },
    {
      of: engine.name,
      quantity: 'exitPressure',
      at,
      value: conditionAt(rowsOf(engine, options), ambient).exitPressure,
    },
    { of: engine.name, quantity: 'exit.diameter', value: engine.exit.diameter },
    ...engine.wall.flatMap(({ axial, meanPressure, mach, temperature }): readonly FigureRow[] => {
      const along = { quantity: 'wall.axial', value: axial };
      return [
        { of: engine.name, quantity: 'wall.meanPressure', at: along, value: meanPressure },
        { of: engine.name, quantity: 'wall.mach', at: along, value: mach },
        { of: engine.name, quantity: 'wall.temperature', at: along, value: temperature },
      ];
    }),
  ]);
}

export function wallRows(answer: StudyAnswer): readonly FigureRow[] {
  return Object.values(answer.engines).flatMap(({ name: of, wall }) =>
    wall.map(({ axial, pressure }) => ({
      of,
      quantity: 'wall.pressure',
      at: { quantity: 'wall.axial', value: axial },
      value: pressure,
    })),
  );
}

export function temperatureRows(answer: StudyAnswer): readonly FigureRow[] {
  return Object.values(answer.engines).flatMap(({ name: of, cooling }) =>
    (cooling?.walls ?? []).flatMap(({ name: which, points }) =>
      points.flatMap((point): readonly FigureRow[] => {
        const at = { quantity: 'wall.axial', value: point.axial };
        return [
          { of, quantity: 'heat.adiabaticTemperature', which, at, value: point.adiabaticTemperature },
          { of, quantity: 'cooling.wallHot', which, at, value: point.wallHot },
          { of, quantity: 'cooling.wallCold', which, at, value: point.wallCold },
          { of, quantity: 'cooling.coolantTemperature', which, at, value: point.coolantTemperature },
        ];
      }),
    ),
  );
}

export function outlineRows(answer: StudyAnswer): readonly FigureRow[] {
  return Object.values(answer.engines).flatMap(({ name: of, contour, exit }): readonly FigureRow[] => [
    { of, quantity: 'exit.diameter', value: exit.diameter },
    { of, quantity: 'contour.totalLength', value: contour.totalLength },
    ...contour.wall.map(({ axial, radius }) => ({
      of,
      quantity: 'contour.wall.radius',
      at: { quantity: 'contour.wall.axial', value: axial },
      value: radius,
    })),
  ]);
}

const flown = ['altitude', 'speed', 'dynamicPressure', 'throttle', 'thrust', 'mass'] as const;

export function ascentRows({ name, own, exchanged }: VehicleAnswer): readonly FigureRow[] {
  return [own, exchanged].flatMap((flight) => (flight ? flightRows(name, flight) : []));
}

function flightRows(name: string, { engineName, points }: FlightAnswer): readonly FigureRow[] {
  return points.flatMap((point) =>
    flown.map((key) => ({
      of: `${name} with ${engineName}`,
      quantity: `flight.points.${key}`,
      at: { quantity: 'flight.points.time', value: point.time },
      value: point[key],
    })),
  );
}
