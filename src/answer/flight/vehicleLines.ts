/** What is told of a vehicle, line by line: for the terminal, the page and the screen. */

import { show } from '../display.ts';
import type { FlightAnswer, FlightNumber, VehicleAnswer } from './model.ts';

export function vehicleLines({
  name,
  words,
  description,
  own,
  problem,
  exchanged,
  comparison,
  exchangeProblem,
}: VehicleAnswer): readonly string[] {
  if (own === null) {
    return [
      [words, problem?.why, problem?.mend].filter((part) => part !== undefined).join(' '),
      `${name}: ${description}.`,
    ];
  }
  return [
    words,
    `${name}: ${description}.`,
    flightLine(own),
    lossLine(own),
    ...(own.chanceOfSuccess === undefined ? [] : [outLine(own)]),
    ...own.notes,
    ...(comparison === undefined ? [] : [comparison.words, `Held: ${comparison.held}.`]),
    ...(exchanged === undefined
      ? []
      : [lossLine(exchanged), ...exchanged.notes.filter((note) => !own.notes.includes(note))]),
    ...(exchangeProblem === undefined
      ? []
      : [`With the other engine it does not fly: ${exchangeProblem.what}`]),
  ];
}

const value = (flight: FlightAnswer, name: FlightNumber): string =>
  show(`flight.${name}`, flight[name]!, 3).text;

function flightLine(flight: FlightAnswer): string {
  const mach = flight.maxDynamicPressureMach;
  const half = flight.halfPropellantAltitude;
  return [
    `Thrust-to-weight ratio at lift-off ${value(flight, 'liftoffThrustToWeight')}`,
    `greatest dynamic pressure ${value(flight, 'maxDynamicPressure')} at ${value(flight, 'maxDynamicPressureAltitude')}${mach === undefined ? '' : `, Mach ${value(flight, 'maxDynamicPressureMach')}`}`,
    `greatest acceleration ${value(flight, 'maxAcceleration')}`,
    `first stage ${value(flight, 'firstStageTime')} to ${value(flight, 'firstStageEndAltitude')}, mean specific impulse ${value(flight, 'meanSpecificImpulse')}${half === undefined ? '' : `, half of its propellant burnt by ${value(flight, 'halfPropellantAltitude')}`}.`,
  ].join('; ');
}

/** The parts of the budget, largest first as a rule. */
export const LOSSES = [
  ['gravityLoss', 'gravity'],
  ['backPressureLoss', 'back pressure'],
  ['steeringLoss', 'steering'],
  ['dragLoss', 'drag'],
] as const satisfies readonly (readonly [FlightNumber, string])[];

function lossLine(flight: FlightAnswer): string {
  const losses = LOSSES.map(([name, label]) => `${label} ${value(flight, name)}`);
  return `Of ${value(flight, 'idealVelocity')} that the propellant could give in vacuum with ${flight.engineName}: ${losses.join(', ')}; ${value(flight, 'speedGained')} are left, and the turning Earth gives ${value(flight, 'speedFromRotation')}.`;
}

function outLine(flight: FlightAnswer): string {
  return `With one engine out at the start ${value(flight, 'thrustLeftOneOut')} of the thrust are left, a thrust-to-weight ratio of ${value(flight, 'thrustToWeightOneOut')}; ${value(flight, 'unburntOneOut')} would be unburnt at the planned end. The engines suffice with a chance of ${value(flight, 'chanceOfSuccess')}.`;
}
