import { ProblemError } from '../../numerics/problem.ts';
import { BELL_CHART, type BellAngles } from './bellAngles.ts';
import type { NozzleSpec } from './model.ts';
import { tabulatedBellAngles } from './tabulatedAngles.ts';

/** Radius of the arc upstream of the throat, in throat radii (SP-125, SP-8120; from memory). */
export const THROAT_ARC_UPSTREAM = 1.5;
/** Radius of the arc downstream of the throat, in throat radii (SP-125, SP-8120; from memory). */
export const THROAT_ARC_DOWNSTREAM = 0.382;
/** Half-angle of the reference cone [rad]. */
export const REFERENCE_HALF_ANGLE = Math.PI / 12;

/**
 * Length of the 15° reference cone from throat to lip, in throat radii [–].
 *
 *   L/R_t = (√ε − 1)/tan 15°
 *
 * The simple form, without the throat arc; the form with the arc is about 1 % longer.
 *
 * @param areaRatio ε [–]
 * Source: R. Newlands, "The Thrust Optimised Parabolic nozzle", 2017, eq. 1; G. P. Sutton, O. Biblarz, Rocket Propulsion
 * Elements, 7th ed., 2001, Table 3-4 follows it.
 * Check: ε = 10 → 8.07.
 */
export function referenceConeLength(areaRatio: number): number {
  return (Math.sqrt(areaRatio) - 1) / Math.tan(REFERENCE_HALF_ANGLE);
}

/**
 * Half-angle α [rad] of the cone that has the bell's area ratio and length: tan α = tan 15° / length.
 *
 * @param length share of the 15° cone's length [–]
 */
export function halfAngleOfSameLength(length: number): number {
  return Math.atan(Math.tan(REFERENCE_HALF_ANGLE) / length);
}

/**
 * The bell's wall angles: those of the spec, the missing ones those of the greatest vacuum thrust.
 *
 * @param gamma isentropic exponent under which they are looked up [–]; absent: that of most exhausts
 * @throws ProblemError `bell-length-outside-range`, `bell-angles-not-tabulated`, `bell-angles-do-not-join`
 */
export function bellAnglesOf(spec: NozzleSpec & { kind: 'bell' }, gamma?: number): BellAngles {
  const { throatAngle, lipAngle } = spec;
  requireLength(spec.length, throatAngle !== undefined && lipAngle !== undefined);
  const angles =
    throatAngle !== undefined && lipAngle !== undefined
      ? { throatAngle, lipAngle }
      : { ...tabulatedBellAngles(spec.areaRatio, spec.length, gamma), ...given(throatAngle, lipAngle) };
  requireParabola(spec, angles);
  return angles;
}

/** The point N where the throat arc ends, and the lip E, in throat radii. */
export function parabolaEnds(
  areaRatio: number,
  length: number,
  throatAngle: number,
): { readonly start: readonly [number, number]; readonly lip: readonly [number, number] } {
  return {
    start: [
      THROAT_ARC_DOWNSTREAM * Math.sin(throatAngle),
      1 + THROAT_ARC_DOWNSTREAM * (1 - Math.cos(throatAngle)),
    ],
    lip: [length * referenceConeLength(areaRatio), Math.sqrt(areaRatio)],
  };
}

/** Points N, Q, E of the parabola as a quadratic Bézier curve, in throat radii; Q is where the two tangents meet. */
export function parabolaPoints(
  spec: NozzleSpec & { kind: 'bell' },
  { throatAngle, lipAngle }: BellAngles,
): readonly [readonly [number, number], readonly [number, number], readonly [number, number]] {
  const { start, lip } = parabolaEnds(spec.areaRatio, spec.length, throatAngle);
  const steep = Math.tan(throatAngle);
  const flat = Math.tan(lipAngle);
  const x = (lip[1] - flat * lip[0] - (start[1] - steep * start[0])) / (steep - flat);
  return [start, [x, start[1] + steep * (x - start[0])], lip];
}

function given(throatAngle: number | undefined, lipAngle: number | undefined): Partial<BellAngles> {
  return {
    ...(throatAngle === undefined ? {} : { throatAngle }),
    ...(lipAngle === undefined ? {} : { lipAngle }),
  };
}

/** With both angles stated the bell may be the front part of a longer one. */
const SHORTEST_PIECE = 0.2;

function requireLength(length: number, isStated: boolean): void {
  const { shortest, longest } = BELL_CHART;
  if (length >= (isStated ? SHORTEST_PIECE : shortest) && length <= longest) return;
  throw new ProblemError({
    code: 'bell-length-outside-range',
    what: `The bell's length is ${(100 * length).toFixed(1)} % of the 15° cone's; it has to be 60 to 100 %.`,
    why: 'Shorter bells need walls so curved that a shock forms inside; longer ones gain nothing.',
    mend: 'Choose a length between 60 and 100 %; 80 % is the common choice.',
    where: 'nozzle.length',
    facts: { length, shortest, longest },
  });
}

/** The wall must bend inwards all the way: steeper than the straight line to the lip at N, flatter at E. */
function requireParabola(spec: NozzleSpec & { kind: 'bell' }, angles: BellAngles): void {
  const { throatAngle, lipAngle } = angles;
  const { start, lip } = parabolaEnds(spec.areaRatio, spec.length, throatAngle);
  const chord = Math.atan2(lip[1] - start[1], lip[0] - start[0]);
  const sound = throatAngle < Math.PI / 2 && throatAngle > chord && chord > lipAngle && lipAngle >= 0;
  if (sound && lip[0] > start[0]) return;
  throw new ProblemError({
    code: 'bell-angles-do-not-join',
    what:
      `No parabola joins ${degrees(throatAngle)}° behind the throat to ${degrees(lipAngle)}° at the lip: ` +
      `the straight line between the two points rises at ${degrees(chord)}°.`,
    why: 'A bell turns the flow back towards the axis all the way from the throat to the lip.',
    mend: `Make the angle behind the throat larger and the lip angle smaller than ${degrees(chord)}°.`,
    where: 'nozzle.throatAngle',
    facts: { throatAngle, lipAngle, chord },
  });
}

function degrees(radians: number): string {
  return ((radians * 180) / Math.PI).toFixed(1);
}
