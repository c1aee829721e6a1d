import type { Expansion } from '../../gas/flow.ts';
import { CHAMBER_SURFACE, type Contour, type PlugContour, type ThrustPart } from '../model.ts';
import { plugDuctAreas } from './plugWallStates.ts';

/** Push of the gas ahead of a plug's throat line in vacuum over p0 A_t, and the area that each surface shows to the front. */
export interface PlugChamberPush {
  readonly face: { readonly vacuum: number; readonly area: number };
  readonly walls: { readonly vacuum: number; readonly area: number };
}

type PlugEngine = Contour & { readonly plug: PlugContour };

/**
 * One-dimensional flow in the ring of the chamber, by the area across it.
 *
 *   injector face   (p + ρu²) A_x           A_x: what the face shows to the front
 *   walls           ∫ p dA_outer − ∫ p dA_inner,   A the area inside the wall's radius
 *
 * The start line begins at Mach 1.005 and is not quite even, so that face and walls add up to its momentum within some
 * tenths of a percent: a road to the thrust of its own.
 */
export function plugChamberPush(contour: PlugEngine, expansion: Expansion): PlugChamberPush {
  const areas = plugDuctAreas(contour);
  const throat = areas[areas.length - 1]!;
  const states = areas.map((area) =>
    area / throat - 1 < 1e-9 ? expansion.throat : expansion.atAreaRatio(area / throat, 'subsonic'),
  );
  const unit = expansion.chamber.pressure * Math.PI * contour.throatRadius ** 2;
  const inside = insideOf(contour.plug);
  const [outer, inner] = [contour.wall, contour.plug.wall].map((wall) =>
    wall.map(({ radius }) => inside(radius)),
  );
  const last = areas.length - 1;
  const grows = (i: number): number => outer![i]! - outer![i - 1]! - inner![i]! + inner![i - 1]!;
  let walls = 0;
  for (let i = 1; i <= last; i++) walls += 0.5 * (states[i - 1]!.pressure + states[i]!.pressure) * grows(i);
  // From the throat to the start line, which leans downstream on one side.
  walls +=
    expansion.throat.pressure * (outer![last + 1]! - outer![last]! - inner![last + 1]! + inner![last]!);
  const face = outer![0]! - inner![0]!;
  const across = outer![last + 1]! - inner![last + 1]!;
  const { pressure, massFlux, velocity } = states[0]!;
  return {
    face: {
      vacuum: ((pressure + massFlux * velocity) * face) / unit,
      area: face / (Math.PI * contour.throatRadius ** 2),
    },
    walls: { vacuum: walls / unit, area: (across - face) / (Math.PI * contour.throatRadius ** 2) },
  };
}

/** Area inside a radius [m²]; linear: both halves over the width. */
function insideOf({ width }: PlugContour): (radius: number) => number {
  return (radius) => (width === undefined ? Math.PI * radius * radius : 2 * width * radius);
}

/** Thrust parts of a plug with the chamber's share told by face and walls. @param ambientPressure [Pa] */
export function plugChamberParts(
  parts: readonly ThrustPart[],
  { face, walls }: PlugChamberPush,
  expansion: Expansion,
  ambientPressure: number,
): readonly ThrustPart[] {
  const outside = ambientPressure / expansion.chamber.pressure;
  return parts.flatMap((part) =>
    part.surface === CHAMBER_SURFACE
      ? [
          { surface: 'injector face', coefficient: face.vacuum - face.area * outside },
          { surface: 'chamber walls', coefficient: walls.vacuum - walls.area * outside },
        ]
      : [part],
  );
}
