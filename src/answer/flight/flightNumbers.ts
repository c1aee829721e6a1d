/** What is told of one flight, by the names of the catalogue without their `flight.`. SI. */

import { STANDARD_GRAVITY } from '../../physics/constants.ts';
import { chanceOfSuccess, thrustShareLeft } from '../../physics/flight/index.ts';
import type { Flown } from './fly.ts';
import type { FlightNumbers } from './model.ts';

/** Numbers that do not apply, such as a payload where no orbit is asked for, are left out. */
export function flightNumbers({ input, vehicle, payload, ascent, toOrbit }: Flown): FlightNumbers {
  const { start, end, firstStageEnd, greatestDynamicPressure: greatest, budget } = ascent;
  const thrustToWeight = start.thrust / (start.mass * STANDARD_GRAVITY);
  const { count, stopped, propellant } = input.stages[0]!;
  const running = count.value - stopped.value;
  const { reliability } = input;
  return {
    payload,
    ...(toOrbit === null
      ? { highestPoint: end.altitude }
      : {
          massToOrbit: payload + vehicle.stages.at(-1)!.dryMass,
          bend: toOrbit.steering.kickAngle,
        }),
    ...(input.stages[0]!.engineMass === 'estimated' && {
      enginesMass: vehicle.stages[0]!.dryMass - input.stages[0]!.dry.value,
    }),
    liftoffMass: start.mass,
    liftoffThrust: start.thrust,
    liftoffThrustToWeight: thrustToWeight,
    maxDynamicPressure: greatest.dynamicPressure,
    ...(greatest.mach !== null && { maxDynamicPressureMach: greatest.mach }),
    maxDynamicPressureAltitude: greatest.altitude,
    maxAcceleration: ascent.mostFelt,
    meanSpecificImpulse: ascent.meanSpecificImpulse,
    ...(ascent.halfPropellantAltitude !== null && { halfPropellantAltitude: ascent.halfPropellantAltitude }),
    firstStageTime: firstStageEnd.time,
    firstStageEndAltitude: firstStageEnd.altitude,
    firstStageEndSpeed: firstStageEnd.speed,
    idealVelocity: budget.ideal,
    gravityLoss: budget.gravity,
    dragLoss: budget.drag,
    steeringLoss: budget.steering,
    backPressureLoss: budget.backPressure,
    speedGained: budget.gained,
    speedFromRotation: budget.fromRotation,
    budgetRest: budget.rest,
    thrustLeftOneOut: thrustShareLeft(running, 1),
    thrustToWeightOneOut: thrustShareLeft(running, 1) * thrustToWeight,
    unburntOneOut: propellant.value / running,
    ...(reliability && {
      chanceOfSuccess: chanceOfSuccess({
        engines: running,
        allowedOut: Math.min(running, reliability.allowedOut.value),
        each: reliability.each.value,
        uncontained: reliability.uncontained.value,
      }),
    }),
  };
}
