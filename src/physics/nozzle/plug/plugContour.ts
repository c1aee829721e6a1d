import { ProblemError } from '../../../numerics/problem.ts';
import { NODE } from '../../flow/points.ts';
import { chamberWall } from '../chamberWall.ts';
import type { ChamberShape, Contour, ContourPoint } from '../model.ts';
import { baseArea } from './designForces.ts';
import type { PlugGeometry } from './geometry.ts';

/** Times by which the chamber's width is set anew to the radius at which it stands. */
const ROUNDS = 4;
/** L* [m] so long that `chamberWall` always finds room: its cylinder is not used here. */
const ROOM = 1e6;

/** A duct's point: distance s upstream of the throat line and half its width, over throat radii. */
interface DuctPoint {
  readonly upstream: number;
  readonly half: number;
  readonly part: ContourPoint['part'];
  readonly angle: number;
}

/** The frame of the chamber: the throat's middle, the flow's direction there, and half its gap. */
interface Frame {
  readonly axial: number;
  readonly radius: number;
  readonly direction: number;
  readonly half: number;
}

/**
 * Walls of a plug engine to scale: chamber, throat, cowl and plug. Axial distance counts from the throat's plug side.
 *
 * The chamber is a ring (two slots where linear) that points as the flow in the throat does, so that it flows straight into
 * it. Its width profile ahead of the throat is that of a bell's chamber with the gap's half for the radius: arcs of 1.5 half
 * gaps, straight converging sides, then a straight part as long as L* A_t asks. Own choice; it shapes the picture, the wetted
 * area and the heat, not the thrust.
 *
 * @param throatRadius √(A_t/π) [m]
 * @throws ProblemError where that chamber would meet the axis
 */
export function plugContour(geometry: PlugGeometry, throatRadius: number, shape: ChamberShape): Contour {
  const frame = frameOf(geometry);
  const duct = ductOf(geometry, frame, shape, throatRadius);
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

/**
 * The throat: square to the flow's mean direction on the start line, from that line's corner (at the lip where purely external), as wide as A_t asks. The start
 * line itself, a ray, leans downstream from there.
 */
function frameOf({ throatLine, cowl, symmetry, width }: PlugGeometry): Frame {
  const inside = cowl.length > 1;
  const at = inside ? throatLine.length - NODE : 0;
  const side = inside ? 1 : -1;
  const [axial, radius] = [throatLine[at]!, throatLine[at + 1]!];
  const direction = 0.5 * (throatLine[2]! + throatLine[throatLine.length - NODE + 2]!);
  const gap =
    symmetry === 'planar' || width !== null
      ? Math.PI / (2 * (width ?? 1))
      : ringGap(radius, side * Math.cos(direction));
  return {
    axial: axial - 0.5 * side * gap * Math.sin(direction),
    radius: radius + 0.5 * side * gap * Math.cos(direction),
    direction,
    half: 0.5 * gap,
  };
}

/** Gap h of a ring that begins at radius r and widens by `slope` a length: π h (2 r + h slope) = A_t = π. */
function ringGap(r: number, slope: number): number {
  return 1 / (r + Math.sqrt(r * r + slope));
}

/** Place of a point `upstream` of the throat line and `off` to the outside of its middle. */
function inFrame(frame: Frame, upstream: number, off: number): { axial: number; radius: number } {
  const c = Math.cos(frame.direction);
  const s = Math.sin(frame.direction);
  return { axial: frame.axial - upstream * c - off * s, radius: frame.radius - upstream * s + off * c };
}

/** Profile of the duct from the injector face to the throat line. */
function ductOf(
  geometry: PlugGeometry,
  frame: Frame,
  shape: ChamberShape,
  throatRadius: number,
): readonly DuctPoint[] {
  let width = shape.contractionRatio;
  let profile: readonly DuctPoint[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    profile = convergingOf(shape, width, frame.half);
    const at = inFrame(frame, profile[0]!.upstream, 0).radius;
    width =
      geometry.symmetry === 'planar' ? shape.contractionRatio : (shape.contractionRatio * frame.radius) / at;
    if (!(at > 0)) throw meetsAxis(geometry);
  }
  const start = profile[0]!;
  const volume = (shape.characteristicLength / throatRadius) * throatAreaOf(geometry, frame);
  const rest = volume - ductVolume(geometry, frame, profile);
  if (rest < 0) {
    const least = (ductVolume(geometry, frame, profile) / throatAreaOf(geometry, frame)) * throatRadius;
    throw tooShort(shape, least);
  }
  const length = straightLength(geometry, frame, start, rest);
  return length > 0
    ? [{ ...start, upstream: start.upstream + length, part: 'chamber' }, ...profile]
    : profile;
}

/** Throat area in the geometry's own units, by its frustum (or gap). */
function throatAreaOf({ symmetry }: PlugGeometry, { radius, half }: Frame): number {
  return symmetry === 'axisymmetric' ? 4 * Math.PI * radius * half : 2 * half;
}

/** Arcs and straight side of a bell's chamber, the half gap for the throat's radius; from its start to the throat line. */
function convergingOf(shape: ChamberShape, width: number, half: number): readonly DuctPoint[] {
  const { points } = chamberWall(
    { contractionRatio: width * width, characteristicLength: ROOM, convergingAngle: shape.convergingAngle },
    half,
  );
  const converging = points.filter(({ part }) => part !== 'chamber');
  const start = points.findLast(({ part }) => part === 'chamber')!;
  return [...[start, ...converging], { axial: 0, radius: half, angle: 0, part: 'throat' as const }].map(
    ({ axial, radius, angle, part }) => ({ upstream: -axial, half: radius, part, angle }),
  );
}

/** Volume of the duct by the radius of each slice's middle (Pappus). */
function ductVolume(geometry: PlugGeometry, frame: Frame, profile: readonly DuctPoint[]): number {
  let volume = 0;
  for (let i = 1; i < profile.length; i++) {
    const [a, b] = [profile[i - 1]!, profile[i]!];
    volume +=
      (a.half + b.half) *
      (a.upstream - b.upstream) *
      around(geometry, frame, 0.5 * (a.upstream + b.upstream));
  }
  return volume;
}

function around({ symmetry }: PlugGeometry, frame: Frame, upstream: number): number {
  return symmetry === 'axisymmetric' ? 2 * Math.PI * inFrame(frame, upstream, 0).radius : 1;
}

/** Length of the straight part that holds `volume`. */
function straightLength(geometry: PlugGeometry, frame: Frame, start: DuctPoint, volume: number): number {
  const first = around(geometry, frame, start.upstream);
  const grows = around(geometry, frame, start.upstream + 1) - first;
  const sectional = volume / (2 * start.half);
  // first·L + grows·L²/2 = volume / width
  const root = first * first + 2 * grows * sectional;
  if (!(root > 0)) throw meetsAxis(geometry);
  return (2 * sectional) / (first + Math.sqrt(root));
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

function meetsAxis(geometry: PlugGeometry): ProblemError {
  return new ProblemError({
    code: 'plug-chamber-meets-axis',
    what: 'The ring of the chamber behind the throat would run into the axis.',
    why: `the throat points outward by ${((geometry.throatAngle * 180) / Math.PI).toFixed(0)}°, so that the chamber lies further in`,
    mend: 'Give a smaller innerMach, a shorter characteristic length or a smaller contraction ratio.',
    where: 'nozzle.innerMach',
    facts: { throatAngle: geometry.throatAngle },
  });
}

function tooShort(shape: ChamberShape, least: number): ProblemError {
  return new ProblemError({
    code: 'chamber-too-short',
    what: `A characteristic length of ${shape.characteristicLength} m is less than the converging part alone holds, ${least.toFixed(3)} m.`,
    mend: `Give a characteristic length of at least ${(Math.ceil(least * 100) / 100).toFixed(2)} m, a smaller contraction ratio or a steeper converging half-angle.`,
    where: 'chamber.characteristicLength',
    facts: { characteristicLength: shape.characteristicLength, least },
  });
}
