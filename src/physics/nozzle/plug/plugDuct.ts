import { ProblemError } from '../../../numerics/problem.ts';
import { NODE } from '../../flow/points.ts';
import { THROAT_ARC_UPSTREAM } from '../bellShape.ts';
import { chamberWall } from '../chamberWall.ts';
import type { ChamberShape, ContourPoint } from '../model.ts';
import type { PlugGeometry } from './geometry.ts';

/** Times by which the chamber's width is set anew to the radius at which it stands. */
const ROUNDS = 4;
/** L* [m] so long that `chamberWall` always finds room: its cylinder is not used here. */
const ROOM = 1e6;

/**
 * Radius of the arcs into the throat, over half its gap: so gentle that the sonic line is all but straight, as the walls behind
 * it are designed for. Own choice, where the contraction leaves room; at 1.5, as in a bell, the throat would pass 0.4 % less, at 6 it does 0.05 %.
 */
const THROAT_ARC = 6;
/** Of what the contraction leaves, at most. */
const SHARE_OF_THROAT = 0.8;

/** A duct's point: distance s upstream of the throat line and half its width, over throat radii. */
export interface DuctPoint {
  readonly upstream: number;
  readonly half: number;
  readonly part: ContourPoint['part'];
  readonly angle: number;
}

/** The frame of the chamber: the throat's middle, the flow's direction there, and half its gap. */
export interface Frame {
  readonly axial: number;
  readonly radius: number;
  readonly direction: number;
  readonly half: number;
}

/**
 * The throat: square to the flow's mean direction on the start line, from that line's corner (at the lip where purely external), as wide as A_t asks. The start
 * line itself, a ray, leans downstream from there.
 */
export function frameOf({ throatLine, cowl, symmetry, width }: PlugGeometry): Frame {
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
export function inFrame(frame: Frame, upstream: number, off: number): { axial: number; radius: number } {
  const c = Math.cos(frame.direction);
  const s = Math.sin(frame.direction);
  return { axial: frame.axial - upstream * c - off * s, radius: frame.radius - upstream * s + off * c };
}

export interface Duct {
  /** From the injector face to the throat line. */ readonly profile: readonly DuctPoint[];
  /** Radius of the arcs into the throat, over throat radii. */ readonly throatArc: number;
}

/** Profile of the duct from the injector face to the throat line. */
export function ductOf(
  geometry: PlugGeometry,
  frame: Frame,
  shape: ChamberShape,
  throatRadius: number,
): Duct {
  let width = shape.contractionRatio;
  let arc = THROAT_ARC;
  let profile: readonly DuctPoint[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    arc = throatArcIn(shape, width);
    profile = convergingOf(shape, width, frame.half, arc);
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
  const straight: readonly DuctPoint[] =
    length > 0 ? [{ ...start, upstream: start.upstream + length, part: 'chamber' }] : [];
  return { profile: [...straight, ...profile], throatArc: arc * frame.half };
}

/** Over half the throat's gap, in a duct that narrows from `width` half gaps to one. */
function throatArcIn(shape: ChamberShape, width: number): number {
  const room = (width - 1) / (1 - Math.cos(shape.convergingAngle));
  return Math.max(THROAT_ARC_UPSTREAM, Math.min(THROAT_ARC, SHARE_OF_THROAT * room));
}

/** Throat area in the geometry's own units, by its frustum (or gap). */
function throatAreaOf({ symmetry }: PlugGeometry, { radius, half }: Frame): number {
  return symmetry === 'axisymmetric' ? 4 * Math.PI * radius * half : 2 * half;
}

/** Arcs and straight side as of a bell's chamber, the half gap for the throat's radius; from its start to the throat line. */
function convergingOf(
  shape: ChamberShape,
  width: number,
  half: number,
  throatArc: number,
): readonly DuctPoint[] {
  const { points } = chamberWall(
    { contractionRatio: width * width, characteristicLength: ROOM, convergingAngle: shape.convergingAngle },
    half,
    throatArc,
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

export function meetsAxis(geometry: PlugGeometry): ProblemError {
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
