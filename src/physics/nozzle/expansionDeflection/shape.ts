import { ProblemError } from '../../../numerics/problem.ts';
import { referenceConeLength } from '../bellShape.ts';
import type { ExpansionDeflectionSpec } from '../model.ts';
import { bezier } from '../nozzleWall.ts';

/** One place of a wall, in throat radii: those of a round throat of the same area. */
export interface Place {
  readonly axial: number;
  readonly radius: number;
}

/** Shape of an expansion–deflection nozzle behind its throat line; x = 0 where the outer wall leaves it. */
export interface DeflectionShape {
  /** [rad] outwards, of the flow across the throat line */ readonly throatAngle: number;
  /** Ends of the throat line. */ readonly inner: Place;
  readonly outer: Place;
  /** Distance between them. */ readonly gap: number;
  /** Rounded rear edge of the pintle: radius and centre of its arc. */ readonly edgeRadius: number;
  readonly edgeCentre: Place;
  /** The outer wall from the throat line to the lip. */ readonly wall: readonly Place[];
  /** [rad] of the wall at the lip */ readonly lipAngle: number;
}

/** Radius of the pintle's rear edge over the gap. */
const EDGE_SHARE = 0.5;
const ON_WALL = 120;
/** Steps along the pintle's edge, for each radian. */
const ON_EDGE_PER_RADIAN = 30;

/**
 * The shape, sizes in throat radii R_t = √(A_t/π).
 *
 *   throat line   from the pintle (r_i, r_i² = A_pintle/A_t) outwards and forwards, across a flow at angle θ_t:
 *                 r_o² − r_i² = ε_line cos θ_t,  gap = (r_o − r_i)/cos θ_t
 *   pintle        its edge is an arc of half the gap; behind it the base
 *   outer wall    straight for one gap at θ_t, then a parabola to the lip (x = L, r = √ε, slope tan θ_e)
 *
 * @param lineAreaRatio ε_line, area of the throat line over that of the throat: it lies behind the sonic one (`fittedThroat`)
 * @throws ProblemError `pintle-too-wide`, `deflection-walls-do-not-join`
 */
export function deflectionShape(spec: ExpansionDeflectionSpec, lineAreaRatio: number): DeflectionShape {
  const { throatAngle, lipAngle } = spec;
  const { inner, outer, gap } = throatEnds(spec.pintleAreaRatio, throatAngle, lineAreaRatio);
  const lip: Place = {
    axial: spec.length * referenceConeLength(spec.areaRatio),
    radius: Math.sqrt(spec.areaRatio),
  };
  if (!(outer.radius < WIDEST_THROAT * lip.radius)) throw pintleTooWide(spec);
  // Straight for one gap: until the expansion round the pintle's edge has crossed it, the flow is too near sonic to turn.
  const start = { axial: gap * Math.cos(throatAngle), radius: outer.radius + gap * Math.sin(throatAngle) };
  const [steep, flat] = [Math.tan(throatAngle), Math.tan(lipAngle)];
  const middle =
    start.axial + (lip.radius - flat * (lip.axial - start.axial) - start.radius) / (steep - flat);
  if (!(middle > start.axial && middle < lip.axial)) {
    throw doNotJoin(spec, Math.atan2(lip.radius - start.radius, lip.axial - start.axial));
  }
  const edgeRadius = EDGE_SHARE * gap;
  const parabola = Array.from({ length: ON_WALL + 1 }, (_, i): Place => {
    const t = (i / ON_WALL) ** 1.3;
    return {
      axial: bezier(start.axial, middle, lip.axial, t),
      radius: bezier(start.radius, start.radius + steep * (middle - start.axial), lip.radius, t),
    };
  });
  const wall = [outer, ...parabola];
  return {
    throatAngle,
    inner,
    outer,
    gap,
    edgeRadius,
    edgeCentre: {
      axial: inner.axial + edgeRadius * Math.sin(throatAngle),
      radius: inner.radius - edgeRadius * Math.cos(throatAngle),
    },
    wall,
    lipAngle,
  };
}

/** Ends of the throat line and the distance between them, in throat radii; x = 0 at the outer one. */
export function throatEnds(
  pintleAreaRatio: number,
  throatAngle: number,
  lineAreaRatio: number,
): Pick<DeflectionShape, 'inner' | 'outer' | 'gap'> {
  const radius = Math.sqrt(pintleAreaRatio);
  const outerRadius = Math.sqrt(pintleAreaRatio + lineAreaRatio * Math.cos(throatAngle));
  const gap = (outerRadius - radius) / Math.cos(throatAngle);
  return {
    inner: { axial: gap * Math.sin(throatAngle), radius },
    outer: { axial: 0, radius: outerRadius },
    gap,
  };
}

/** The outer edge of the throat stays below this share of the lip radius. */
const WIDEST_THROAT = 0.8;

/** The pintle's edge from the throat line on, until the wall has turned inwards by `turn` [rad]. */
export function pintleEdge(
  { edgeCentre, edgeRadius, throatAngle }: DeflectionShape,
  turn: number,
): readonly Place[] {
  const count = Math.max(4, Math.ceil(turn * ON_EDGE_PER_RADIAN));
  return Array.from({ length: count + 1 }, (_, i): Place => {
    const angle = throatAngle - (turn * i) / count;
    return {
      axial: edgeCentre.axial - edgeRadius * Math.sin(angle),
      radius: edgeCentre.radius + edgeRadius * Math.cos(angle),
    };
  });
}

function pintleTooWide({ pintleAreaRatio, areaRatio }: ExpansionDeflectionSpec): ProblemError {
  return new ProblemError({
    code: 'pintle-too-wide',
    what: `A pintle of ${pintleAreaRatio} throat areas leaves no room to expand to an area ratio of ${areaRatio}.`,
    mend: `Give a pintle area below ${(0.5 * areaRatio).toFixed(1)} throat areas; 2 is a usual choice.`,
    where: 'nozzle.pintleAreaRatio',
    facts: { pintleAreaRatio, areaRatio },
  });
}

function doNotJoin({ throatAngle, lipAngle }: ExpansionDeflectionSpec, chord: number): ProblemError {
  return new ProblemError({
    code: 'deflection-walls-do-not-join',
    what: `No parabola joins ${degrees(throatAngle)}° at the throat to ${degrees(lipAngle)}° at the lip: the straight line between them rises at ${degrees(chord)}°.`,
    why: 'The outer wall turns the flow back towards the axis all the way from the throat to the lip.',
    mend: `Make the throat angle larger and the lip angle smaller than ${degrees(chord)}°, or the nozzle longer.`,
    where: 'nozzle.throatAngle',
    facts: { throatAngle, lipAngle, chord },
  });
}

function degrees(radians: number): string {
  return ((radians * 180) / Math.PI).toFixed(1);
}
