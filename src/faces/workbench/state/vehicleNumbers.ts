/** The numbers in what is told of a vehicle, each with what it is worked out from. */

import { belowVehicle } from '../../../answer/asked/askProblem.ts';
import { show, showStated } from '../../../answer/display.ts';
import type { FlightNumber, VehicleAnswer } from '../../../answer/flight/model.ts';
import type { VehicleInput } from '../../../study/model.ts';
import { vehicleRows } from './vehicleRows.ts';
import type { OpenCard } from './view.ts';

/** What the words tell of a flight; more of it stands in the table. */
const TOLD: readonly FlightNumber[] = ['payload', 'massToOrbit', 'highestPoint'];

export function vehicleNumbers(vehicle: VehicleAnswer, input: VehicleInput): readonly OpenCard[] {
  return [...ofFlight(vehicle), ...ofComparison(vehicle), ...stated(input)];
}

function ofFlight({ id, own }: VehicleAnswer): readonly OpenCard[] {
  return TOLD.flatMap((name): readonly OpenCard[] => {
    const value = own?.[name];
    if (own === null || value === undefined || value < 0) return [];
    return [
      {
        quantity: `flight.${name}`,
        engine: id,
        shown: show(`flight.${name}`, value, 3).text,
        condition: `with ${own.engineName}`,
        expression: `${id}.${name}`,
      },
    ];
  });
}

/** How much more or less, in kilograms or kilometres, and as a share. */
function ofComparison({ id, comparison, exchanged }: VehicleAnswer): readonly OpenCard[] {
  if (comparison === undefined) return [];
  return comparison.rows.flatMap(({ quantity, difference, share }): readonly OpenCard[] => {
    const name = belowVehicle(quantity);
    if (difference === null || !TOLD.some((told) => told === name)) return [];
    const [base, other] = [`${id}.${name}`, `${id}.${name}(engine = ${comparison.other})`];
    const card = {
      quantity,
      engine: id,
      condition: exchanged === undefined ? '' : `with ${exchanged.engineName} in place of its own engine`,
    };
    const [more, less] = difference < 0 ? [base, other] : [other, base];
    return [
      { ...card, shown: show(quantity, Math.abs(difference), 2).text, expression: `${more} - ${less}` },
      ...(share === null
        ? []
        : [
            {
              ...card,
              shown: `${Number((100 * Math.abs(share)).toPrecision(2))} %`,
              expression: difference < 0 ? `1 - ${other} / ${base}` : `${other} / ${base} - 1`,
            },
          ]),
    ];
  });
}

function stated(input: VehicleInput): readonly OpenCard[] {
  return vehicleRows(input).flatMap(({ quantity, label, stated: now }): readonly OpenCard[] =>
    quantity === null || now === undefined
      ? []
      : [
          {
            quantity,
            engine: input.id,
            shown: showStated(quantity, now.value).text,
            condition: `${label}, as set in the study`,
            expression: `${input.id}.${belowVehicle(quantity)}`,
          },
        ],
  );
}
