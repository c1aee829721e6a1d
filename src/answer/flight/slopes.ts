/** By how much the numbers of a flight move with the thrust of an engine, the flow held, and with its estimated mass. */

import { attempt } from '../../numerics/problem.ts';
import { airAtGeometricAltitude } from '../../physics/air/index.ts';
import { enginesOfVehicle } from '../../study/owners.ts';
import type { Scatter } from '../asked/model.ts';
import { figuresAt } from '../conditions.ts';
import { MASS_SOURCE, massOf } from '../cycle/massFigures.ts';
import { figureScatter } from '../scatter/figureScatter.ts';
import { ERROR_NAMES } from '../scatter/model.ts';
import { type Flown, fly } from './fly.ts';
import type { Moved, SolutionOf } from './stages.ts';

/** Any number read off a flight; undefined where it has none. */
export type ReadOff = (flown: Flown) => number | undefined;

/** Change of a number over the relative change of something; undefined where either flight has none. */
type Slope = (of: ReadOff) => number | undefined;

/** By engine: slopes over its thrust, and over its mass where a stage takes the estimated one. */
export type Slopes = ReadonlyMap<string, { readonly thrust: Slope; readonly mass: Slope | null }>;

const PROBE = 0.01;

export function slopesOf(flown: Flown, solutionOf: SolutionOf, exchangedFor: string | null): Slopes {
  const slopeOver = (moved: (times: number) => Moved): Slope => {
    const probed = (share: number): Flown =>
      fly(flown.input, solutionOf, exchangedFor, flown.toOrbit, moved(1 + share));
    // A vehicle at the edge of flying may fall with more thrust, or with less; with neither the problem is told.
    const more = attempt(() => probed(PROBE));
    const share = more.ok ? PROBE : -PROBE;
    const there = more.ok ? more.value : probed(-PROBE);
    return (of) => {
      const [from, to] = [of(flown), of(there)];
      return from === undefined || to === undefined ? undefined : (to - from) / share;
    };
  };
  return new Map(
    enginesOfVehicle(flown.input).map((engine) => [
      engine,
      {
        thrust: slopeOver((times) => ({ thrust: { engine, times } })),
        mass: weighsOf(flown, engine) ? slopeOver((times) => ({ engineMass: { engine, times } })) : null,
      },
    ]),
  );
}

/** Whether a stage takes the estimated mass of an engine. */
function weighsOf({ input }: Flown, engine: string): boolean {
  return input.stages.some(
    ({ push, engineMass }) => engineMass === 'estimated' && push.by === 'engine' && push.engine === engine,
  );
}

/**
 * What the models' errors of the engines make of a number, to first order: the errors of an engine of the first stage at the
 * air's pressure where half its propellant is burnt, those of an upper stage in vacuum.
 */
export function flightScatter(
  of: ReadOff,
  flown: Flown,
  slopes: Slopes,
  solutionOf: SolutionOf,
): readonly Scatter[] {
  const value = of(flown)!;
  const found = new Map<string, Scatter>();
  const add = (slope: number | undefined, errors: readonly Scatter[]): void => {
    if (slope === undefined) return;
    for (const one of errors) {
      const known = found.get(one.name) ?? { ...one, low: value, high: value };
      found.set(one.name, {
        ...known,
        low: known.low + slope * (one.low - 1),
        high: known.high + slope * (one.high - 1),
      });
    }
  };
  const first = flown.input.stages[0]!.push;
  for (const engine of enginesOfVehicle(flown.input)) {
    const over = slopes.get(engine);
    if (over === undefined) continue;
    const solution = solutionOf(engine);
    const below = first.by === 'engine' && first.engine === engine;
    add(over.thrust(of), errorsOf(solution, below ? flown.ascent.halfPropellantAltitude : null));
    if (over.mass !== null) add(over.mass(of), [massError(solution)]);
  }
  return [...found.values()].filter(({ low, high }) => low !== value || high !== value);
}

/** Of the relations for the mass of an engine, over its value. */
function massError(solution: ReturnType<SolutionOf>): Scatter {
  const { value, low, high } = massOf(solution);
  return { name: ERROR_NAMES.engineMass, low: low / value, high: high / value, source: MASS_SOURCE };
}

/** Errors of the specific impulse, over its value. */
function errorsOf(solution: ReturnType<SolutionOf>, altitude: number | null): readonly Scatter[] {
  const pressure = altitude === null ? 0 : airAtGeometricAltitude(altitude).pressure;
  const { at, figures } = figuresAt(solution, pressure, altitude);
  const value = figures.specificImpulse;
  if (value === null) return [];
  return figureScatter(solution, at, altitude, 'specificImpulse', value).map((one) => ({
    ...one,
    low: one.low / value,
    high: one.high / value,
  }));
}
