import { ProblemError } from '../../../numerics/problem.ts';
import { type DeflectionShape, type Place, throatEnds } from './shape.ts';

/** Radius of the walls' arcs ahead of the throat line over half the gap, where there is room: the throat of the model is straight. */
const GENTLE = 2.5;
/** The outer wall's arc, where there is little: as sharp as this. */
const SHARP = 0.3;
/** Area of the bore round the stem over that of the throat where there is room, and the least with which the throat still chokes. */
const BORE = 1.15;
const LEAST_BORE = 1.1;
/** Radius of the stem over the pintle's at the throat line. */
const STEM = { thickest: 0.5, thinnest: 0.25 };
/** [rad] The pintle's back leans against the flow at the throat line by this, no further than straight out from the axis. */
const BACK_LEANS = Math.PI / 6;
/** Of the pintle's height above its stem, what its crest takes at most. */
const MOST_CREST = 0.6;
const PER_RADIAN = 24;

/** The walls ahead of the throat line, in throat radii. */
export interface ThroatAhead {
  /** The outer wall from its narrowest place, the bore, by an arc to the throat line. */ readonly outer: readonly Place[];
  /** Radius of that arc. */ readonly outerArc: number;
  /** The pintle from its stem, by a hollow and a crest, to the throat line. */ readonly pintle: readonly Place[];
  /** Area of the narrowest passage between them [–] */ readonly narrowest: number;
}

/**
 * Walls that bring the gas to the throat line in the direction of the throat. Ahead of the line both curve away from the flow
 * by arcs of 2.5 half gaps, the outer one by less where the bore inside it would else be too narrow for gas and stem.
 *
 *   bore     r_n = r_o − ρ (1 − cos θ_t),  r_n² − r_stem² ≥ 1.15
 *   pintle   stem, hollow arc up to its back, crest from there to θ_t
 *
 * The passage is narrowest a little ahead of the line, for towards the axis it shrinks faster than its walls part.
 * Own choices; no source.
 * @throws ProblemError `pintle-too-small`
 */
export function throatAhead({ throatAngle, gap, inner, outer }: DeflectionShape): ThroatAhead {
  const drop = 1 - Math.cos(throatAngle);
  const thinnest = STEM.thinnest * inner.radius;
  const room = (outer.radius - Math.sqrt(BORE + thinnest * thinnest)) / drop;
  const radius = (gap / 2) * Math.max(SHARP, Math.min(GENTLE, (2 * room) / gap));
  const bore = { axial: -radius * Math.sin(throatAngle), radius: outer.radius - radius * drop };
  const most = Math.sqrt(Math.max(0, bore.radius ** 2 - BORE));
  const stem = Math.max(thinnest, Math.min(STEM.thickest * inner.radius, most));
  const back = Math.max(throatAngle, Math.min(Math.PI / 2, throatAngle + BACK_LEANS));
  const high = Math.cos(throatAngle) - Math.cos(back);
  const crestRadius = Math.min((GENTLE * gap) / 2, (MOST_CREST * (inner.radius - stem)) / high);
  const crest = arcFrom(inner, throatAngle, back, -crestRadius).reverse();
  const top = crest[0]!;
  const hollowRadius = (top.radius - stem) / (1 - Math.cos(back));
  const foot = { axial: top.axial - hollowRadius * Math.sin(back), radius: stem };
  return {
    outer: arcFrom(bore, 0, throatAngle, radius),
    outerArc: radius,
    pintle: [...arcFrom(foot, 0, back, hollowRadius).slice(0, -1), ...crest],
    narrowest: narrowestPassage({ throatAngle, inner, outer, radius, crestRadius }),
  };
}

/** Places of an arc on which the wall's angle goes from one to another; of a negative radius against the flow. */
function arcFrom(start: Place, from: number, to: number, radius: number): Place[] {
  const count = Math.ceil((to - from) * PER_RADIAN);
  return Array.from({ length: count + 1 }, (_, i): Place => {
    const angle = from + ((to - from) * i) / count;
    return {
      axial: start.axial + radius * (Math.sin(angle) - Math.sin(from)),
      radius: start.radius - radius * (Math.cos(angle) - Math.cos(from)),
    };
  });
}

/**
 * Frusta between places equally far ahead of the throat line on both arcs, to 30° of the sharper one. Round small pintles, whose
 * arcs are unlike, a passage between places unlike far ahead is up to 1.3 % narrower.
 */
function narrowestPassage({
  throatAngle,
  inner,
  outer,
  radius,
  crestRadius,
}: Pick<DeflectionShape, 'throatAngle' | 'inner' | 'outer'> & {
  readonly radius: number;
  readonly crestRadius: number;
}): number {
  const [longest, count] = [BACK_LEANS * Math.min(radius, crestRadius), 60];
  const ahead = (end: Place, along: number, arc: number): Place => {
    const angle = throatAngle - along / arc;
    return {
      axial: end.axial - arc * (Math.sin(throatAngle) - Math.sin(angle)),
      radius: end.radius + arc * (Math.cos(throatAngle) - Math.cos(angle)),
    };
  };
  let narrowest = Number.POSITIVE_INFINITY;
  for (let k = 0; k <= count; k++) {
    const along = (longest * k) / count;
    const a = ahead(inner, along, -crestRadius);
    const b = ahead(outer, along, radius);
    narrowest = Math.min(
      narrowest,
      (a.radius + b.radius) * Math.hypot(b.axial - a.axial, b.radius - a.radius),
    );
  }
  return narrowest;
}

/** Whether the gas can come through the bore to a throat of this pintle and angle, the outer wall's arc as sharp as it may be. */
function fits(pintleAreaRatio: number, throatAngle: number): boolean {
  const { inner, outer, gap } = throatEnds(pintleAreaRatio, throatAngle, 1);
  const bore = outer.radius - ((SHARP * gap) / 2) * (1 - Math.cos(throatAngle));
  return bore * bore - (STEM.thinnest * inner.radius) ** 2 >= LEAST_BORE;
}

/** @throws ProblemError `pintle-too-small` where the bore is too narrow for stem and gas */
export function requireBore(pintleAreaRatio: number, throatAngle: number): void {
  if (fits(pintleAreaRatio, throatAngle)) return;
  let least = pintleAreaRatio;
  while (!fits(least, throatAngle)) least += 0.01;
  const degrees = ((throatAngle * 180) / Math.PI).toFixed(1);
  throw new ProblemError({
    code: 'pintle-too-small',
    what: `Round a pintle of ${pintleAreaRatio} throat areas a throat turned outwards by ${degrees}° cannot be fed: the opening inside its outer edge is as narrow as the throat.`,
    why: 'All the gas comes to the throat through the round opening inside the outer wall, with the stem of the pintle in it.',
    mend: `Give a pintle area of at least ${(Math.ceil(least * 100) / 100).toFixed(2)} throat areas, or a flatter throat angle.`,
    where: 'nozzle.pintleAreaRatio',
    facts: { pintleAreaRatio, throatAngle, least },
  });
}
