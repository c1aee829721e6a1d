/** What says as much as an exchange rate: the vehicle with one step more of the input that the rate is of. */

import { belowVehicle } from '../../../answer/asked/askProblem.ts';
import { show, showStated } from '../../../answer/display.ts';
import type { ExchangeRate, Lever } from '../../../answer/exchange/index.ts';
import type { VehicleInput } from '../../../study/model.ts';
import { vehicleRows } from './vehicleRows.ts';
import type { SaidInstead } from './view.ts';

const KEYS: Readonly<Record<Lever, string>> = {
  specificImpulse: 'specificImpulse',
  dryMass: 'dry',
  thrust: 'thrust',
  propellant: 'propellant',
};
/** A second more of specific impulse [s], a hundredth more of all else. */
const SECOND = 1;
const PART = 0.01;

/** Undefined where the study does not state that input: an engine has it, and the rate is of the engine. */
export function exchangeSaid(
  vehicle: VehicleInput,
  { stage, lever, payload }: ExchangeRate,
): SaidInstead | undefined {
  const key = `${stage}.${KEYS[lever]}`;
  const row = vehicleRows(vehicle).find((each) => each.key === key);
  if (row?.stated === undefined || row.quantity === null) return undefined;
  const { value } = row.stated;
  const isSecond = lever === 'specificImpulse';
  const moved = plain(showStated(row.quantity, isSecond ? value + SECOND : value * (1 + PART)).text);
  // The rate of the dry mass is for a kilogram; those of thrust and propellant are for a hundredth already.
  const gained = lever === 'dryMass' ? payload * PART * value : payload;
  const amount = plain(show('flight.payload', Math.abs(gained), 2).text);
  const changed = `${vehicle.id}.payload(${belowVehicle(row.quantity)} = ${moved})`;
  const [more, less] = gained < 0 ? [`${vehicle.id}.payload`, changed] : [changed, `${vehicle.id}.payload`];
  return {
    say: `With ${moved} for its ${row.label.toLowerCase()}, ${vehicle.name} carries about ${amount} ${gained < 0 ? 'less' : 'more'}.`,
    holds: `${more} - ${less} is about ${amount} within 20 %`,
    sweep: { quantity: 'flight.payload', input: key, vehicle: vehicle.id },
  };
}

const plain = (text: string): string => text.replaceAll('\u00a0', ' ').replaceAll('\u202f', '');
