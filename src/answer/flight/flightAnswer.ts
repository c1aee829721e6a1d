/** One flight as the answer prints it. */

import type { FlightPoint } from '../../physics/flight/index.ts';
import type { EngineSolution } from '../solution.ts';
import { flightNumbers } from './flightNumbers.ts';
import type { Flown, SolutionOf } from './fly.ts';
import type { FlightAnswer, FlightPointAnswer } from './model.ts';

/** Points kept of a flight, and the altitude [m] above which a coast without air and thrust tells nothing more. */
const MOST_POINTS = 160;

export function flightAnswer(flown: Flown, engine: string, solutionOf: SolutionOf): FlightAnswer {
  const { ascent } = flown;
  return {
    engine,
    engineName: solutionOf(engine).input.name,
    ...flightNumbers(flown),
    points: thinned(ascent.points).map(pointAnswer),
    notes: [...ascent.exceeded, ...separationNote(flown, solutionOf(engine))],
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
