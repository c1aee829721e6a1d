import { frustumArea } from '../arc.ts';
import { chamberWall } from '../chamberWall.ts';
import type { ChamberShape, Contour, ContourBody, ContourPoint } from '../model.ts';
import { type DeflectionShape, type Place, pintleEdge } from './shape.ts';

/** The pintle's stem over its width at the throat: a picture, no source. */
const STEM_SHARE = 0.55;
/** Of the pintle's rise from its stem, what is straight at most. */
const MOST_STRAIGHT = 0.7;
/** [rad] by which the drawn edge of the pintle turns before its flat base: 80° past the throat's direction. */
const DRAWN_TURN = (80 * Math.PI) / 180;
const PIECES = 16;

/**
 * Outer wall from the injector face to the lip, with the pintle and the wake behind it as bodies [m].
 *
 * Ahead of the throat line the wall is that of a chamber with a round throat as wide as the outer edge of the annular one,
 * and the pintle is drawn from a stem: a picture, which no number depends on.
 */
export function deflectionContour(
  shape: DeflectionShape,
  wake: readonly Place[],
  throatRadius: number,
  chamberShape: ChamberShape,
): Contour {
  const { throatAngle, edgeRadius, outer, wall } = shape;
  const size = ({ axial, radius }: Place): Place => ({
    axial: throatRadius * axial,
    radius: throatRadius * radius,
  });
  // The wall's narrowest place, from which an arc turns it outwards to the throat's direction.
  const narrowest = {
    axial: -edgeRadius * Math.sin(throatAngle),
    radius: outer.radius - edgeRadius * (1 - Math.cos(throatAngle)),
  };
  const chamber = chamberWall(chamberShape, throatRadius * narrowest.radius);
  const shift = throatRadius * narrowest.axial;
  const ahead = chamber.points.map((point): ContourPoint => ({ ...point, axial: point.axial + shift }));
  const arc = Array.from({ length: PIECES }, (_, i): ContourPoint => {
    const angle = (throatAngle * i) / PIECES;
    const place = size({
      axial: narrowest.axial + edgeRadius * Math.sin(angle),
      radius: narrowest.radius + edgeRadius * (1 - Math.cos(angle)),
    });
    return { ...place, angle, part: 'throat' };
  });
  const behind = wall.map((place, i): ContourPoint => {
    const [from, to] = [wall[Math.max(i - 1, 0)]!, wall[Math.min(i + 1, wall.length - 1)]!];
    const angle =
      i === 0
        ? throatAngle
        : i === wall.length - 1
          ? shape.lipAngle
          : Math.atan2(to.radius - from.radius, to.axial - from.axial);
    return { ...size(place), angle, part: 'nozzle' };
  });
  const face = ahead[0]!;
  const lip = behind.at(-1)!;
  return {
    wall: [...ahead, ...arc, ...behind],
    nozzleLength: lip.axial,
    totalLength: lip.axial - face.axial,
    throatRadius,
    exitRadius: lip.radius,
    chamberRadius: chamber.chamberRadius,
    chamberLength: -face.axial,
    steepestAngle: throatAngle,
    lipAngle: shape.lipAngle,
    nozzleArea: areaOf(behind) + areaOf(pintleEdge(shape, DRAWN_TURN).map(size)),
    chamberArea: chamber.area + areaOf([...arc, behind[0]!]),
    bodies: [pintle(shape, face.axial / throatRadius, size), wakeBody(wake, size)],
  };
}

function areaOf(places: readonly Place[]): number {
  return places.reduce((sum, place, i) => {
    const from = places[i - 1];
    return from === undefined ? 0 : sum + frustumArea(from.radius, place.radius, place.axial - from.axial);
  }, 0);
}

/** Stem, flare, straight up to the throat line in the flow's direction, rounded edge, flat base. */
function pintle(shape: DeflectionShape, face: number, size: (place: Place) => Place): ContourBody {
  const { inner, throatAngle, gap } = shape;
  const stem = STEM_SHARE * inner.radius;
  const rise = inner.radius - stem;
  const corner = inner.axial - rise / Math.tan(throatAngle);
  const start = Math.max(corner - 2 * rise, face);
  // A flare that bulged up to the throat line would narrow the passage ahead of it.
  const straight = Math.min(gap, (MOST_STRAIGHT * rise) / Math.sin(throatAngle));
  const end = {
    axial: inner.axial - straight * Math.cos(throatAngle),
    radius: inner.radius - straight * Math.sin(throatAngle),
  };
  const flare = Array.from({ length: PIECES + 1 }, (_, i): Place => {
    const t = i / PIECES;
    return {
      axial: (1 - t) ** 2 * start + 2 * t * (1 - t) * corner + t * t * end.axial,
      radius: (1 - t) ** 2 * stem + 2 * t * (1 - t) * stem + t * t * end.radius,
    };
  });
  const edge = pintleEdge(shape, DRAWN_TURN);
  const outline = [
    { axial: face, radius: stem },
    ...flare,
    ...edge,
    { axial: edge.at(-1)!.axial, radius: 0 },
  ];
  return { name: 'pintle', solid: true, outline: outline.map(size) };
}

/** Still gas between the base and the flow. */
function wakeBody(wake: readonly Place[], size: (place: Place) => Place): ContourBody {
  const [first, last] = [wake[0]!, wake.at(-1)!];
  return {
    name: 'wake',
    solid: true,
    isStillGas: true,
    outline: [{ axial: first.axial, radius: 0 }, ...wake, { axial: last.axial, radius: 0 }].map(size),
  };
}
