/** One number of one vehicle, computed or stated, with what is known of its error. */

import { attempt, ProblemError } from '../../numerics/problem.ts';
import { catalogue, findQuantity } from '../catalogue.ts';
import { atMoment, type FlightNumber, flightNumbers, type MomentNumber } from '../flight/index.ts';
import { flightScatter, type ReadOff } from '../flight/slopes.ts';
import { vehicleSlots } from '../inputs/vehicleSlots.ts';
import { askProblem } from './askProblem.ts';
import type { Ask, Told } from './model.ts';
import type { VehicleState } from './vehicleStates.ts';

/** Names in the catalogue that {@link tellVehicle} knows: all that are of a vehicle and may be asked. */
export const toldOfAVehicle: readonly string[] = catalogue.flatMap(({ name, place, notAsked }) =>
  place === 'vehicle' && notAsked === undefined ? [name] : [],
);

export function tellVehicle(state: VehicleState, ask: Ask): Told {
  const entry = findQuantity(ask.quantity);
  if (entry === undefined || entry.place !== 'vehicle') {
    return {
      ok: false,
      problem: {
        code: 'quantity-unknown',
        what: `“${ask.quantity}” is no quantity of a vehicle.`,
        mend: 'Ask for what docs/quantities.md lists of a vehicle, e.g. payload.',
      },
    };
  }
  const wrong = askProblem(entry, ask);
  if (wrong !== null) return { ok: false, problem: wrong };
  const outcome = attempt(() => {
    const [, kind, name] = /^(flight\.points|flight|vehicle)\.(.*)$/.exec(entry.name)!;
    if (kind === 'vehicle') return { value: stated(state, name!), scatter: [] };
    return kind === 'flight'
      ? found(state, name as FlightNumber)
      : atTime(state, name as MomentNumber, ask.time!);
  });
  return outcome.ok ? { ok: true, ...outcome.value, alternatives: [] } : outcome;
}

type Found = Pick<Extract<Told, { ok: true }>, 'value' | 'scatter'>;

function found(state: VehicleState, name: FlightNumber): Found {
  const { flown, solutionOf } = state;
  const value = flightNumbers(flown)[name];
  if (value === undefined) throw absent(`flight.${name}`, whyNot(name), 'Ask a vehicle that has it.');
  const of: ReadOff = (each) => flightNumbers(each)[name];
  return { value, scatter: flightScatter(of, flown, state.slopes(), solutionOf) };
}

function atTime(state: VehicleState, name: MomentNumber, time: number): Found {
  const { flown, solutionOf } = state;
  const value = atMoment(flown, time, name);
  // The flight with a little more thrust may be over by then, or above all air: then it tells no slope.
  const of: ReadOff = (each) => {
    if (each === flown) return value;
    const moved = attempt(() => atMoment(each, time, name));
    return moved.ok ? moved.value : undefined;
  };
  return { value, scatter: flightScatter(of, flown, state.slopes(), solutionOf) };
}

function whyNot(name: FlightNumber): string {
  switch (name) {
    case 'highestPoint':
      return 'This vehicle flies to an orbit; its payload is found, not its highest point.';
    case 'massToOrbit':
    case 'bend':
      return 'This vehicle flies to no orbit; its payload is stated.';
    case 'enginesMass':
      return 'The dry mass of the first stage includes its engines; what they weigh by themselves is not stated.';
    case 'chanceOfSuccess':
      return 'The study states no reliability of this vehicle.';
    default:
      return 'This flight has no such number.';
  }
}

function stated({ flown }: VehicleState, name: string): number {
  const now = vehicleSlots(flown.input).find((slot) => slot.name === name)?.now;
  if (now) return now.value;
  throw absent(`vehicle.${name}`, 'This vehicle has no such input.', 'Ask for one that the study states.');
}

function absent(where: string, what: string, mend: string): ProblemError {
  return new ProblemError({ code: 'no-value', what, mend, where });
}
