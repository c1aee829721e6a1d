/** A vehicle in the answer: its flight, the same with the other engine of the comparison, and what that makes. */

import { attempt, type Outcome } from '../../numerics/problem.ts';
import type { Study, VehicleInput } from '../../study/model.ts';
import { withEngine } from '../../study/owners.ts';
import { show, showStated } from '../display.ts';
import { compareFlights } from './compareFlights.ts';
import { flightAnswer } from './flightAnswer.ts';
import { type Flown, fly } from './fly.ts';
import type { FlightAnswer, VehicleAnswer } from './model.ts';
import type { SolutionOf } from './stages.ts';

/** How one vehicle of the study flies with its engines, and with the other one of the pair. */
export function vehicleAnswer(vehicle: VehicleInput, study: Study, solutionOf: SolutionOf): VehicleAnswer {
  const { id, name } = vehicle;
  const engine = firstEngine(vehicle);
  const own = attempt(() => fly(vehicle, solutionOf));
  const answer = own.ok ? flightAnswer(own.value, engine, solutionOf) : null;
  return {
    id,
    name,
    description: descriptionOf(vehicle, study),
    words:
      answer === null
        ? `${name} does not fly: ${own.ok ? '' : own.problem.what}`
        : carriedWords(name, vehicle, answer),
    own: answer,
    problem: own.ok ? null : own.problem,
    ...(answer !== null && own.ok && exchangedPart(vehicle, study, solutionOf, own.value, answer)),
  };
}

export function firstEngine({ stages }: VehicleInput): string {
  const { push } = stages[0]!;
  if (push.by === 'engine') return push.engine;
  throw new Error('a first stage is pushed by an engine');
}

function exchangedPart(
  vehicle: VehicleInput,
  study: Study,
  solutionOf: SolutionOf,
  own: Flown,
  answer: FlightAnswer,
): Partial<VehicleAnswer> {
  const other = otherEngine(vehicle, study);
  if (other === null) return {};
  const flown: Outcome<Flown> = attempt(() =>
    fly(withEngine(vehicle, other), solutionOf, answer.engine, own.toOrbit),
  );
  if (!flown.ok) return { exchangeProblem: flown.problem };
  const exchanged = flightAnswer(flown.value, other, solutionOf);
  return { exchanged, comparison: compareFlights(vehicle, study, answer, exchanged) };
}

/** The other one of the pair that the study compares, if the vehicle’s engine is one of them. */
function otherEngine(vehicle: VehicleInput, { compare, engines }: Study): string | null {
  const base = compare?.base ?? engines[0]?.id;
  const other = compare?.other ?? engines[1]?.id;
  const own = firstEngine(vehicle);
  if (own === base) return other ?? null;
  return own === other ? (base ?? null) : null;
}

function carriedWords(name: string, vehicle: VehicleInput, answer: FlightAnswer): string {
  if (vehicle.goal.is === 'height') {
    const payload = showStated('vehicle.payload', vehicle.goal.payload.value).text;
    return `${name} rises to ${show('flight.highestPoint', answer.highestPoint!, 3).text} with ${payload} on board.`;
  }
  const { altitude, apogee } = vehicle.goal;
  const orbit = `${showStated('vehicle.orbit.altitude', altitude.value).text}${
    apogee === null ? '' : ` by ${showStated('vehicle.orbit.apogee', apogee.value).text}`
  }`;
  const payload = answer.payload!;
  if (payload < 0) {
    return `${name} does not reach the orbit at ${orbit} with its last stage whole: ${show('flight.payload', -payload, 3).text} too many.`;
  }
  return `${name} carries ${show('flight.payload', payload, 3).text} to ${orbit}; ${show('flight.massToOrbit', answer.massToOrbit!, 3).text} arrive, the empty last stage included.`;
}

function descriptionOf({ stages }: VehicleInput, { engines }: Study): string {
  const nameOf = (id: string): string => engines.find((engine) => engine.id === id)?.name ?? id;
  const words = stages.map(({ name, push, count, propellant }) => {
    const by =
      push.by === 'engine'
        ? `${count.value === 1 ? '' : `${count.value} × `}${nameOf(push.engine)}`
        : `${showStated(`vehicle.${name}.specificImpulse`, push.specificImpulse.value).text}, ${showStated(`vehicle.${name}.thrust`, push.thrust.value).text}`;
    return `${name} stage ${by}, ${showStated(`vehicle.${name}.propellant`, propellant.value).text} of propellant`;
  });
  return words.join('; ');
}
