/** By how much the numbers of a flight move with the thrust of an engine, the flow held. */

import { attempt } from '../../numerics/problem.ts';
import { airAtGeometricAltitude } from '../../physics/air/index.ts';
import { enginesOfVehicle } from '../../study/owners.ts';
import type { Scatter } from '../asked/model.ts';
import { figuresAt } from '../conditions.ts';
import { figureScatter } from '../scatter/figureScatter.ts';
import { type Flown, fly, type SolutionOf } from './fly.ts';

/** Any number read off a flight; undefined where it has none. */
export type ReadOff = (flown: Flown) => number | undefined;

/** By engine: change of a number over the relative change of its thrust; undefined where either flight has none. */
export type Slopes = ReadonlyMap<string, (of: ReadOff) => number | undefined>;

const PROBE = 0.01;

export function slopesOf(flown: Flown, solutionOf: SolutionOf, exchangedFor: string | null): Slopes {
  return new Map(
    enginesOfVehicle(flown.input).map((engine) => {
      const probed = (share: number) =>
        fly(flown.input, solutionOf, exchangedFor, flown.toOrbit, { thrust: { engine, times: 1 + share } });
      // A vehicle at the edge of flying may fall with more thrust, or with less; with neither the problem is told.
      const more = attempt(() => probed(PROBE));
      const share = more.ok ? PROBE : -PROBE;
      const there = more.ok ? more.value : probed(-PROBE);
      const slope = (of: ReadOff): number | undefined => {
        const [a, b] = [of(flown), of(there)];
        return a === undefined || b === undefined ? undefined : (b - a) / share;
      };
      return [engine, slope] as const;
    }),
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
  const first = flown.input.stages[0]!.push;
  for (const engine of enginesOfVehicle(flown.input)) {
    const slope = slopes.get(engine)?.(of);
    if (slope === undefined) continue;
    const below = first.by === 'engine' && first.engine === engine;
    for (const one of errorsOf(solutionOf(engine), below ? flown.ascent.halfPropellantAltitude : null)) {
      const known = found.get(one.name) ?? { ...one, low: value, high: value };
      found.set(one.name, {
        ...known,
        low: known.low + slope * (one.low - 1),
        high: known.high + slope * (one.high - 1),
      });
    }
  }
  return [...found.values()].filter(({ low, high }) => low !== value || high !== value);
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
