/** What can be followed in a sweep: quantities of engines, and of vehicles on their way; each as a test names it. */

import { belowVehicle, needsOf } from '../../../answer/asked/askProblem.ts';
import { type CatalogueEntry, catalogue } from '../../../answer/catalogue.ts';
import type { VehicleInput } from '../../../study/model.ts';

/** Quantities that are one number of an engine, or one number at a place. */
export const sweepable: readonly CatalogueEntry[] = catalogue.filter(
  ({ place, part, notAsked, along }) =>
    (place === 'engine' || place === 'altitude') &&
    part?.needed !== true &&
    notAsked === undefined &&
    along === undefined,
);

/** What is found of a flight: as a whole, or at each moment. */
export const sweepableInFlight: readonly CatalogueEntry[] = catalogue.filter(
  ({ name, place, part, notAsked }) =>
    place === 'vehicle' && name.startsWith('flight.') && part?.needed !== true && notAsked === undefined,
);

export const isInFlight = (name: string): boolean => sweepableInFlight.some((entry) => entry.name === name);

/** At each moment: against the time alone, or at a time. */
export const isOfMoment = (name: string): boolean =>
  sweepableInFlight.some((entry) => entry.name === name && needsOf(entry).time);

/** `bell.thrust(10 km)` */
export const ofEngine = (engine: string, quantity: string, place: string | null): string =>
  `${engine}.${quantity}${place === null ? '' : `(${place})`}`;

/** `booster.speed(engine = plug)`; its own engine needs no word. */
export function ofVehicle({ id, stages }: VehicleInput, quantity: string, engine: string | null): string {
  const push = stages[0]?.push;
  const isOwn = engine === null || push?.by !== 'engine' || push.engine === engine;
  return `${id}.${belowVehicle(quantity)}${isOwn ? '' : `(engine = ${engine})`}`;
}
