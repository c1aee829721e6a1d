import type { ChamberShape, Contour, ContourPoint } from '../model.ts';
import { baseArea } from './designForces.ts';
import type { PlugGeometry } from './geometry.ts';
import { ductOf, frameOf, inFrame, meetsAxis } from './plugDuct.ts';

/**
 * Walls of a plug engine to scale: chamber, throat, cowl and plug. Axial distance counts from the throat's plug side.
 *
 * The chamber is a ring (two slots where linear) that points as the flow in the throat does, so that it flows straight into
 * it. Its width profile ahead of the throat is that of a bell's chamber with the gap's half for the radius, the arcs into the
 * throat as far as there is room 6 half gaps: straight converging sides, then a straight part as long as L* A_t asks. Own choice;
 * it shapes the picture, the wetted area and the heat, not the thrust.
 *
 * @param throatRadius √(A_t/π) [m]
 * @throws ProblemError where that chamber would meet the axis
 */
export function plugContour(geometry: PlugGeometry, throatRadius: number, shape: ChamberShape): Contour {
  const frame = frameOf(geometry);
  const { profile: duct, throatArc } = ductOf(geometry, frame, shape, throatRadius);
  const origin = geometry.wall[0]!.axial;
  const scaled = (point: Omit<ContourPoint, 'part'>, part: ContourPoint['part']): ContourPoint => ({
    axial: (point.axial - origin) * throatRadius,
    radius: point.radius * throatRadius,
    angle: point.angle,
    part,
  });
  const side = (sign: -1 | 1): ContourPoint[] =>
    duct.map(({ upstream, half, part, angle }) =>
      scaled({ ...inFrame(frame, upstream, sign * half), angle: frame.direction + sign * angle }, part),
    );
  const outer = [...side(1), ...geometry.cowl.map((point) => scaled(point, 'nozzle'))];
  const inner = [...side(-1), ...geometry.wall.map((point) => scaled(point, 'nozzle'))];
  for (const { radius } of inner) if (radius < 0) throw meetsAxis(geometry);
  const cut = inner[inner.length - 1]!;
  const axials = [...outer, ...inner].map(({ axial }) => axial);
  const face = Math.min(...axials);
  const area = (wall: readonly ContourPoint[]): number => wettedArea(geometry, wall, throatRadius);
  const chamberPart = (wall: readonly ContourPoint[]): readonly ContourPoint[] => wall.slice(0, duct.length);
  const nozzlePart = (wall: readonly ContourPoint[]): readonly ContourPoint[] => wall.slice(duct.length - 1);
  return {
    wall: outer,
    bodies: [{ name: 'plug', solid: true, outline: closedAtAxis(inner) }],
    plug: {
      form: geometry.form,
      wall: inner,
      throatGap: 2 * frame.half * throatRadius,
      throatArc: throatArc * throatRadius,
      throatAngle: frame.direction,
      lipRadius: geometry.lip.radius * throatRadius,
      wholeLength: lengthOf(geometry, geometry.wholeWall) * throatRadius,
      keptLength: lengthOf(geometry, geometry.wall) * throatRadius,
      baseRadius: geometry.cut.radius * throatRadius,
      baseArea: baseArea(geometry) * Math.PI * throatRadius ** 2,
      ...(geometry.width !== null && { width: geometry.width * throatRadius }),
      plugArea: area(nozzlePart(inner)),
      cowlArea: area(nozzlePart(outer)),
    },
    nozzleLength: Math.max(cut.axial, outer[outer.length - 1]!.axial),
    totalLength: Math.max(...axials) - face,
    throatRadius,
    exitRadius: geometry.lip.radius * throatRadius,
    chamberRadius: Math.max(...outer.map(({ radius }) => radius)),
    chamberLength: duct[0]!.upstream * throatRadius,
    steepestAngle: Math.max(...geometry.wall.map(({ angle }) => Math.abs(angle))),
    lipAngle: cut.angle,
    nozzleArea: area(nozzlePart(inner)) + area(nozzlePart(outer)),
    chamberArea: area(chamberPart(inner)) + area(chamberPart(outer)),
  };
}

/** Length of the plug from the foot of the lip's first ray. */
function lengthOf(geometry: PlugGeometry, wall: PlugGeometry['wall']): number {
  return wall[wall.length - 1]!.axial - geometry.wholeWall[geometry.lipRayFoot]!.axial;
}

/** [m²] of a wall: of revolution, or of two sides over the width. */
function wettedArea(geometry: PlugGeometry, wall: readonly ContourPoint[], throatRadius: number): number {
  const width = geometry.width === null ? null : geometry.width * throatRadius;
  let area = 0;
  for (let i = 1; i < wall.length; i++) {
    const [a, b] = [wall[i - 1]!, wall[i]!];
    const slant = Math.hypot(b.axial - a.axial, b.radius - a.radius);
    area += slant * (width === null ? Math.PI * (a.radius + b.radius) : 2 * width);
  }
  return area;
}

/** The plug's half outline, from the axis at the injector face to the axis at the base. */
function closedAtAxis(inner: readonly ContourPoint[]): readonly { axial: number; radius: number }[] {
  const first = inner[0]!;
  const last = inner[inner.length - 1]!;
  const points = inner.map(({ axial, radius }) => ({ axial, radius }));
  const end = last.radius > 0 ? [{ axial: last.axial, radius: 0 }] : [];
  return [{ axial: first.axial, radius: 0 }, ...points, ...end];
}
