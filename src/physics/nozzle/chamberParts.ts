import type { Expansion } from '../gas/flow.ts';
import type { ChamberPush } from './chamberFlow.ts';
import { CHAMBER_SURFACE, type ThrustPart } from './model.ts';

/**
 * Thrust parts with the chamber's share told by surfaces: injector face and converging wall.
 *
 * Where the nozzle has a field both are integrated, so that the sum is a road to the thrust of its own; in
 * one-dimensional flow (`oneDimensional`) the wall is what the face leaves of the momentum through the throat.
 *
 * @param ambientPressure [Pa]
 */
export function chamberParts(
  parts: readonly ThrustPart[],
  { injectorFace, convergingWall, contraction }: ChamberPush,
  expansion: Expansion,
  ambientPressure: number,
  oneDimensional: boolean,
): readonly ThrustPart[] {
  const outside = ambientPressure / expansion.chamber.pressure;
  const face = injectorFace - contraction * outside;
  const wall = convergingWall + (contraction - 1) * outside;
  return parts.flatMap((part) =>
    part.surface === CHAMBER_SURFACE
      ? [
          { surface: 'injector face', coefficient: face },
          { surface: 'converging wall', coefficient: oneDimensional ? part.coefficient - face : wall },
        ]
      : [part],
  );
}
