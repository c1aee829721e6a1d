/** What a plug feels at one place, and the gas on it for drawing. */

import {
  type FieldLines,
  feltAmbient,
  machOnTheWayUp,
  type PlugNozzle,
  plugFieldLines,
  plugOf,
  straightRayDeparture,
  strongestAgainstOnset,
} from '../physics/nozzle/index.ts';
import type { PlugAnswer, PlugRow } from './model.ts';
import type { EngineSolution } from './solution.ts';

/** Mach number of the vehicle at an altitude [m]: 0 unless a plug's study says when it passes the speed of sound. */
export function flightMachAt({ input }: EngineSolution, altitude: number | null): number {
  const { nozzle } = input;
  if (nozzle.kind !== 'plug' || nozzle.machOne === null || altitude === null) return 0;
  return machOnTheWayUp(altitude, nozzle.machOne.value);
}

/** What a plug feels at one place, and the flow on it; null where there is no plug or its throat does not choke. */
export function plugRowAt(
  solution: EngineSolution,
  ambientPressure: number,
  altitude: number | null,
): { readonly row: PlugRow; readonly plug: PlugNozzle; readonly felt: number } | null {
  const plug = plugOf(solution.nozzle);
  if (plug === null || ambientPressure > plug.expansion.throat.pressure) return null;
  const flightMach = flightMachAt(solution, altitude);
  const felt = feltAmbient(ambientPressure, flightMach);
  return {
    row: {
      ...baseOf(plug, felt.pressure),
      ...wallOf(plug, felt.pressure),
      ...(flightMach > 0 && { flight: { mach: flightMach, ...felt } }),
    },
    plug,
    felt: felt.pressure,
  };
}

/** The row, and the gas on the plug for drawing; nothing where the engine has no plug. */
export function plugAt(
  solution: EngineSolution,
  ambientPressure: number,
  altitude: number | null,
): { readonly plug?: PlugRow; readonly field?: FieldLines } {
  const found = plugRowAt(solution, ambientPressure, altitude);
  if (found === null) return {};
  const { row, plug, felt } = found;
  const size = solution.contour.throatRadius;
  const field = plugFieldLines(plug.geometry, plug.flowAt(felt)).map((line) =>
    line.map(({ axial, radius, pressure }) => ({ axial: axial * size, radius: radius * size, pressure })),
  );
  return { plug: row, field };
}

function baseOf(plug: PlugNozzle, felt: number): Pick<PlugRow, 'base'> {
  const base = plug.base(felt);
  if (base === null) return {};
  const { wake, pressure, low, high } = base;
  return { base: { wake, pressure, low, high } };
}

function wallOf(plug: PlugNozzle, felt: number): Pick<PlugRow, 'leastWall' | 'leastCowl' | 'recompression'> {
  const { stations, cowl, recompressions, notComputed } = plug.flowAt(felt);
  const least = (states: readonly { readonly pressure: number }[]): number =>
    Math.min(...states.map(({ pressure }) => pressure)) / felt;
  const worst = strongestAgainstOnset(recompressions);
  return {
    ...(felt > 0 && notComputed === null && { leastWall: least(stations), leastCowl: least(cowl) }),
    ...(worst && {
      recompression: { pressureRatio: worst.pressureRatio, mach: worst.mach, shareOfOnset: worst.share },
    }),
  };
}

/** What is true of a plug wherever it flies; nothing where the engine has none. */
export function plugAnswer({ nozzle, expansion }: EngineSolution): { readonly plug?: PlugAnswer } {
  const plug = plugOf(nozzle);
  if (plug === null) return {};
  const { geometry, innerMach, frozenBelow, wakeClosesAt, modules } = plug;
  return {
    plug: {
      innerMach,
      lipTurn: geometry.nuExit - geometry.nuLip,
      designPressureRatio: expansion.chamber.pressure / plug.exit.pressure,
      straightRayDeparture: straightRayDeparture(geometry),
      untouchedBelow: frozenBelow,
      ...(wakeClosesAt !== null && { wakeClosesAt }),
      ...(modules && {
        modules: { loss: modules.value, low: modules.low, high: modules.high, gap: modules.gap },
      }),
    },
  };
}
