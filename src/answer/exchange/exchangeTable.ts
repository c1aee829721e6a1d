/**
 * Exchange rates of a vehicle: payload to its orbit for a second of specific impulse, a kilogram of dry mass, a per cent of thrust
 * or of propellant, stage by stage, by central differences.
 *
 * The steering is held at the bend that carries most: there a small change of the bend changes nothing, so that the rate with
 * the steering optimised anew is the same to first order.
 */

import { STANDARD_GRAVITY } from '../../physics/constants.ts';
import type { Quantity, VehicleInput } from '../../study/model.ts';
import { type Flown, fly, type Moved, type SolutionOf } from '../flight/index.ts';
import type { ExchangeRate, ExchangeTable, Lever } from './model.ts';

/** Share by which a lever is moved to either side. */
const PROBE = 0.005;

const WORDS: Readonly<Record<Lever, string>> = {
  specificImpulse: 'one second of specific impulse more',
  dryMass: 'one kilogram of dry mass more',
  thrust: 'one per cent of thrust more',
  propellant: 'one per cent of propellant more',
};

/**
 * Null where the vehicle flies to no orbit.
 *
 * @throws ProblemError with what keeps it from flying
 */
export function exchangeTable(vehicle: VehicleInput, solutionOf: SolutionOf): ExchangeTable | null {
  const own = fly(vehicle, solutionOf);
  if (own.toOrbit === null) return null;
  const held = withBend(vehicle, own.toOrbit.steering.kickAngle);
  const payloadOf = (input: VehicleInput, moved: Moved = {}): number =>
    fly(input, solutionOf, null, own.toOrbit, moved).payload;
  const rates = vehicle.stages.flatMap(({ name }, at) =>
    (['specificImpulse', 'dryMass', 'thrust', 'propellant'] as const).map((lever) => ({
      stage: name,
      lever,
      payload: rateOf(lever, at, held, own, payloadOf),
      words: WORDS[lever],
    })),
  );
  const dry = rates.find(({ stage, lever }) => stage === vehicle.stages[0]!.name && lever === 'dryMass')!;
  return {
    vehicle: vehicle.id,
    name: vehicle.name,
    payload: own.payload,
    rates: rates.map(
      (rate): ExchangeRate => ({
        ...rate,
        paysFor: rate === dry || dry.payload === 0 ? null : rate.payload / -dry.payload,
      }),
    ),
  };
}

/** Change of the payload for one unit of the lever. */
function rateOf(
  lever: Lever,
  at: number,
  held: VehicleInput,
  own: Flown,
  payloadOf: (input: VehicleInput, moved?: Moved) => number,
): number {
  const stage = held.stages[at]!;
  switch (lever) {
    case 'specificImpulse': {
      const { vacuumThrust, massFlow } = own.vehicle.stages[at]!.propulsion;
      const impulse = vacuumThrust / (massFlow * STANDARD_GRAVITY);
      const atImpulse = (thrust: number): number => payloadOf(held, { stage: { at, thrust, flow: 1 } });
      return (atImpulse(1 + PROBE) - atImpulse(1 - PROBE)) / (2 * PROBE * impulse);
    }
    case 'thrust': {
      const sized = (times: number): number => payloadOf(held, { stage: { at, thrust: times, flow: times } });
      return (sized(1 + PROBE) - sized(1 - PROBE)) / (2 * PROBE * 100);
    }
    case 'dryMass':
    case 'propellant': {
      const key = lever === 'dryMass' ? 'dry' : 'propellant';
      const mass = stage[key].value;
      const of = (times: number): number => payloadOf(withMass(held, at, key, times * mass));
      const change = of(1 + PROBE) - of(1 - PROBE);
      return lever === 'dryMass' ? change / (2 * PROBE * mass) : change / (2 * PROBE * 100);
    }
  }
}

function withMass(vehicle: VehicleInput, at: number, key: 'dry' | 'propellant', value: number): VehicleInput {
  const stages = vehicle.stages.map((stage, i) =>
    i === at ? { ...stage, [key]: { ...stage[key], value } } : stage,
  );
  return { ...vehicle, stages };
}

function withBend(vehicle: VehicleInput, angle: number): VehicleInput {
  const bend: Quantity = {
    value: angle,
    plusMinus: null,
    text: '',
    path: `vehicles.${vehicle.id}.steering.bend`,
    byDefault: true,
  };
  return { ...vehicle, steering: { ...vehicle.steering, bend } };
}
