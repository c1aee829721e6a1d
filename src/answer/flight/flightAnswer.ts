/** One flight as the answer prints it. */

import { STANDARD_GRAVITY } from '../../physics/constants.ts';
import type { FlightPoint } from '../../physics/flight/index.ts';
import { massOf } from '../cycle/massFigures.ts';
import { show } from '../display.ts';
import type { EngineSolution } from '../solution.ts';
import { flightNumbers } from './flightNumbers.ts';
import type { Flown } from './fly.ts';
import type { FlightAnswer, FlightPointAnswer } from './model.ts';
import type { SolutionOf } from './stages.ts';

/** Points kept of a flight, and the altitude [m] above which a coast without air and thrust tells nothing more. */
const MOST_POINTS = 160;

export function flightAnswer(flown: Flown, engine: string, solutionOf: SolutionOf): FlightAnswer {
  const { ascent } = flown;
  return {
    engine,
    engineName: solutionOf(engine).input.name,
    ...flightNumbers(flown),
    points: thinned(ascent.points).map(pointAnswer),
    notes: [
      ...ascent.exceeded,
      ...barelyLiftsNote(flown, solutionOf(engine).input.name),
      ...engineMassNotes(flown, solutionOf),
      ...separationNote(flown, solutionOf(engine)),
    ],
  };
}

/** Every so many, and both sides of every jump (a stage dropped, an engine stopped). */
function thinned(points: readonly FlightPoint[]): readonly FlightPoint[] {
  const every = Math.max(1, Math.ceil(points.length / MOST_POINTS));
  return points.filter((point, i) => {
    const before = points[i - 1];
    const after = points[i + 1];
    return i % every === 0 || !before || !after || before.time === point.time || after.time === point.time;
  });
}

function pointAnswer(point: FlightPoint): FlightPointAnswer {
  const { time, altitude, downrange, speed, pathAngle, mass, thrust, throttle, dynamicPressure, mach } =
    point;
  const all = { time, altitude, downrange, speed, pathAngle, mass, thrust, throttle, dynamicPressure };
  return mach === null ? all : { ...all, mach };
}

/** Thrust over weight on the pad below which the weight itself is what bounds the payload. Our own rule, no source. */
const BARELY_LIFTS = 1.03;

function barelyLiftsNote({ ascent: { start }, toOrbit }: Flown, engine: string): readonly string[] {
  const weight = start.mass * STANDARD_GRAVITY;
  if (toOrbit === null || start.thrust >= BARELY_LIFTS * weight) return [];
  const excess = show('flight.liftoffThrustToWeight', start.thrust / weight, 4).text;
  return [
    `With ${engine} it only just lifts: thrust over weight on the pad is ${excess}. One per cent more or less thrust there is ${show('flight.liftoffMass', 0.01 * start.mass, 2).text} of mass that lifts off; the payload is no surer than that.`,
  ];
}

/** What the engines were taken to weigh, one line a stage that leaves it to the relations. */
function engineMassNotes({ input, vehicle }: Flown, solutionOf: SolutionOf): readonly string[] {
  return input.stages.flatMap(({ name, push, engineMass, count, dry }, i) => {
    if (engineMass === 'included' || push.by === 'figures') return [];
    const solution = solutionOf(push.engine);
    const all = vehicle.stages[i]!.dryMass - dry.value;
    const { value, low, high } = massOf(solution);
    const mass = (share: number): string => show('flight.enginesMass', all * share, 2).text;
    const engines = `${count.value === 1 ? 'one' : count.value} ${solution.input.name}`;
    return [
      `Mass taken for ${engines} of the ${name} stage: ${mass(1)} (${mass(low / value)} to ${mass(high / value)}), by published relations over thrust, area ratio and fuel; they know no kind of nozzle.`,
    ];
  });
}

/** Where the gas lets go of the wall, the thrust is that of the model; what it does sideways is not computed. */
function separationNote({ ascent, input }: Flown, solution: EngineSolution): readonly string[] {
  const separated = ascent.points.filter(
    ({ throttle, ambientPressure, stage }) =>
      stage === 0 &&
      throttle > 0 &&
      solution.nozzle.at(ambientPressure / throttle, 0).flow.state === 'separated',
  );
  const last = separated.at(-1);
  if (last === undefined) return [];
  const up =
    last.altitude - input.launch.altitude.value < 100
      ? 'at the pad'
      : `up to ${(last.altitude / 1000).toFixed(1)} km`;
  return [
    `The gas lets go of the nozzle’s wall ${up}. The thrust there is the model’s; sideways forces, which may forbid it, are not in the flight.`,
  ];
}
