/** Where the push acts: thrust by surfaces, and the same thrust by the flow across the boundary. */

import { CHAMBER_SURFACE, chamberParts, plugChamberParts, type ThrustAt } from '../physics/nozzle/index.ts';
import type { ThrustPartAnswer, ThrustParts } from './model.ts';
import type { EngineSolution } from './solution.ts';

/** Thrust found in two ways may differ by this [–] without a word. */
const AGREEMENT = 0.003;

/** Parts of the thrust at one ambient pressure; empty where the thrust has none. */
export function partsAt(solution: EngineSolution, at: ThrustAt): readonly ThrustPartAnswer[] {
  const { nozzle, expansion, input } = solution;
  const unit = expansion.chamber.pressure * solution.throatArea;
  const split = at.parts.some(({ surface }) => surface === CHAMBER_SURFACE);
  const ring = solution.ringPush();
  const oneDimensional = input.losses === 'none' || nozzle.balance() === null;
  const parts = !split
    ? at.parts
    : ring !== null
      ? plugChamberParts(at.parts, ring, expansion, at.ambientPressure)
      : chamberParts(at.parts, solution.chamberPush(), expansion, at.ambientPressure, oneDimensional);
  return parts.map(({ surface, coefficient }) => ({ surface, coefficient, force: coefficient * unit }));
}

/** The parts with their sum, and the thrust found by the boundary beside it. */
export function thrustPartsAt(
  solution: EngineSolution,
  ambientPressure: number,
  flightMach = 0,
): ThrustParts {
  const at = solution.nozzle.at(ambientPressure, flightMach);
  const parts = partsAt(solution, at);
  const unit = solution.expansion.chamber.pressure * solution.throatArea;
  const sum = parts.length === 0 ? null : parts.reduce((total, { force }) => total + force, 0);
  const boundary = at.boundary === null ? null : at.boundary * unit;
  const difference = sum === null || boundary === null ? null : sum / boundary - 1;
  const note =
    sum === null
      ? (at.partsAbsent ?? at.absent ?? 'The model does not tell where its thrust acts.')
      : difference !== null && Math.abs(difference) > AGREEMENT
        ? noteOn(solution, difference)
        : null;
  return { parts, sum, boundary, difference, ...(note !== null && { note }) };
}

function noteOn({ nozzle, contour }: EngineSolution, difference: number): string {
  if (contour.plug !== undefined) {
    return `The two ways to the thrust differ by ${(100 * difference).toFixed(2)} %: strong waves on the plug are spread over the streamtubes there.`;
  }
  return (
    nozzle.balance()?.note ??
    `The two ways to the thrust differ by ${(100 * difference).toFixed(2)} %: the pressure on the converging wall is an approximation.`
  );
}
