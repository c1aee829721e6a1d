/** What a plug feels at one place, and the gas on it for drawing. */

import {
  type FieldLines,
  feltAmbient,
  machOnTheWayUp,
  type PlugNozzle,
  plugFieldLines,
  plugOf,
  strongestAgainstOnset,
} from '../physics/nozzle/index.ts';
import type { PlugRow } from './model.ts';
import type { EngineSolution } from './solution.ts';

/** Mach number of the vehicle at an altitude [m]: 0 unless a plug's study says when it passes the speed of sound. */
export function flightMachAt({ input }: EngineSolution, altitude: number | null): number {
  const { nozzle } = input;
  if (nozzle.kind !== 'plug' || nozzle.machOne === null || altitude === null) return 0;
  return machOnTheWayUp(altitude, nozzle.machOne.value);
}

/** Nothing where the engine has no plug. */
export function plugAt(
  solution: EngineSolution,
  ambientPressure: number,
  altitude: number | null,
): { readonly plug?: PlugRow; readonly field?: FieldLines } {
  const plug = plugOf(solution.nozzle);
  if (plug === null || ambientPressure > plug.expansion.throat.pressure) return {};
  const flightMach = flightMachAt(solution, altitude);
  const felt = feltAmbient(ambientPressure, flightMach);
  const flow = plug.flowAt(felt.pressure);
  const size = solution.contour.throatRadius;
  const field = plugFieldLines(plug.geometry, flow).map((line) =>
    line.map(({ axial, radius, pressure }) => ({ axial: axial * size, radius: radius * size, pressure })),
  );
  return {
    plug: { ...baseOf(plug, felt.pressure), ...wallOf(plug, felt.pressure), ...flightOf(flightMach, felt) },
    field,
  };
}

function baseOf(
  plug: PlugNozzle,
  felt: number,
): Pick<PlugRow, 'wake' | 'basePressure' | 'basePressureLow' | 'basePressureHigh'> {
  const base = plug.base(felt);
  return {
    wake: base?.wake ?? null,
    basePressure: base?.pressure ?? null,
    basePressureLow: base?.low ?? null,
    basePressureHigh: base?.high ?? null,
  };
}

function wallOf(
  plug: PlugNozzle,
  felt: number,
): Pick<PlugRow, 'leastWall' | 'leastCowl' | 'recompression' | 'recompressionMach' | 'recompressionShare'> {
  const { stations, cowl, recompressions, notComputed } = plug.flowAt(felt);
  const over = (states: readonly { readonly pressure: number }[]): number | null =>
    felt > 0 && notComputed === null ? Math.min(...states.map(({ pressure }) => pressure)) / felt : null;
  const worst = strongestAgainstOnset(recompressions);
  return {
    leastWall: over(stations),
    leastCowl: over(cowl),
    recompression: worst?.pressureRatio ?? null,
    recompressionMach: worst?.mach ?? null,
    recompressionShare: worst?.share ?? null,
  };
}

function flightOf(
  flightMach: number,
  felt: ReturnType<typeof feltAmbient>,
): Pick<PlugRow, 'flightMach' | 'feltPressure' | 'feltLow' | 'feltHigh'> {
  return { flightMach, feltPressure: felt.pressure, feltLow: felt.low, feltHigh: felt.high };
}
