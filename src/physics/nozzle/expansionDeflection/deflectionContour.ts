import { frustumArea } from '../arc.ts';
import { chamberWall } from '../chamberWall.ts';
import type { ChamberShape, Contour, ContourBody, ContourPoint } from '../model.ts';
import { type DeflectionShape, type Place, pintleEdge } from './shape.ts';
import { throatAhead } from './throatAhead.ts';

/** [rad] by which the drawn edge of the pintle turns before its flat base: 80° past the throat's direction. */
const DRAWN_TURN = (80 * Math.PI) / 180;

/**
 * Outer wall from the injector face to the lip, with the pintle and the wake behind it as bodies [m].
 *
 * Ahead of its narrowest place the wall is that of a chamber with a round throat as wide; up to there the pintle is a stem.
 */
export function deflectionContour(
  shape: DeflectionShape,
  wake: readonly Place[],
  throatRadius: number,
  chamberShape: ChamberShape,
): Contour {
  const { throatAngle, wall } = shape;
  const size = ({ axial, radius }: Place): Place => ({
    axial: throatRadius * axial,
    radius: throatRadius * radius,
  });
  const { outer, outerArc, pintle } = throatAhead(shape);
  const bore = outer[0]!;
  const chamber = chamberWall(chamberShape, throatRadius * bore.radius);
  const shift = throatRadius * bore.axial;
  const ahead = chamber.points.map((point): ContourPoint => ({ ...point, axial: point.axial + shift }));
  const arc = outer.slice(0, -1).map(
    (place, i): ContourPoint => ({
      ...size(place),
      angle: (throatAngle * i) / (outer.length - 1),
      part: 'throat',
    }),
  );
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
    pintle: { throatGap: throatRadius * shape.gap, throatArc: throatRadius * outerArc },
    bodies: [pintleBody(shape, pintle, face.axial / throatRadius, size), wakeBody(wake, size)],
  };
}

function areaOf(places: readonly Place[]): number {
  return places.reduce((sum, place, i) => {
    const from = places[i - 1];
    return from === undefined ? 0 : sum + frustumArea(from.radius, place.radius, place.axial - from.axial);
  }, 0);
}

/** Stem and walls up to the throat line, rounded edge, flat base. */
function pintleBody(
  shape: DeflectionShape,
  ahead: readonly Place[],
  face: number,
  size: (place: Place) => Place,
): ContourBody {
  const edge = pintleEdge(shape, DRAWN_TURN);
  const outline = [
    { axial: face, radius: ahead[0]!.radius },
    ...ahead.slice(0, -1),
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
