/**
 * The two wall angles of a parabolic bell that give the greatest vacuum thrust in the computed field.
 *
 * The thrust is so flat near its top that one degree costs some parts in ten thousand; so a quadratic is fitted through
 * nine fields around the best guess, its top taken as the next guess, thrice with shrinking steps.
 */

import { solveDenseInto } from '../../numerics/denseSolve.ts';
import { attempt } from '../../numerics/problem.ts';
import type { Expansion } from '../gas/flow.ts';
import type { BellAngles } from './bellAngles.ts';
import { parabolaEnds } from './bellShape.ts';
import { roundWallOf } from './roundWall.ts';
import { computeTubeField } from './tubeField.ts';

const DEGREE = Math.PI / 180;
/** Steps of the nine fields, one round after the other [rad]. */
const ROUNDS = [3 * DEGREE, 2.5 * DEGREE, 2 * DEGREE];
/** [rad] of the thrust's own unevenness: the angles keep this far from where no parabola joins them. */
const MARGIN = 0.5 * DEGREE;

/**
 * @param start first guess [rad]
 * @returns angles [rad], good to about half a degree; null where too few fields can be had
 */
export function optimalBellAngles(
  areaRatio: number,
  length: number,
  expansion: Expansion,
  start: BellAngles,
): BellAngles | null {
  let best = inside(areaRatio, length, start);
  for (const step of ROUNDS) {
    const next = topOfQuadratic(areaRatio, length, expansion, best, step);
    if (next === null) return null;
    best = inside(areaRatio, length, next);
  }
  return best;
}

/** Vacuum thrust over p0 A_t [–] of the parabola with these angles, loss in the internal shock counted; null where there is no field. */
export function vacuumThrustOfAngles(
  areaRatio: number,
  length: number,
  expansion: Expansion,
  angles: BellAngles,
): number | null {
  const found = attempt(() => {
    const exit = expansion.atAreaRatio(areaRatio, 'supersonic');
    const wall = roundWallOf({ kind: 'bell', areaRatio, length, ...angles });
    return computeTubeField(wall, expansion, exit.pressure).byWall;
  });
  return found.ok ? found.value : null;
}

/** The nearest angles that a parabola joins: steeper than the chord behind the throat, flatter at the lip. */
function inside(areaRatio: number, length: number, { throatAngle, lipAngle }: BellAngles): BellAngles {
  const { start, lip } = parabolaEnds(areaRatio, length, throatAngle);
  const chord = Math.atan2(lip[1] - start[1], lip[0] - start[0]);
  return {
    throatAngle: Math.max(throatAngle, chord + MARGIN),
    lipAngle: Math.min(Math.max(lipAngle, 0), chord - MARGIN),
  };
}

function topOfQuadratic(
  areaRatio: number,
  length: number,
  expansion: Expansion,
  centre: BellAngles,
  step: number,
): BellAngles | null {
  const rows: { readonly x: number; readonly y: number; readonly value: number }[] = [];
  for (const x of [-1, 0, 1]) {
    for (const y of [-1, 0, 1]) {
      const angles = inside(areaRatio, length, {
        throatAngle: centre.throatAngle + x * step,
        lipAngle: centre.lipAngle + y * step,
      });
      const value = vacuumThrustOfAngles(areaRatio, length, expansion, angles);
      if (value === null) continue;
      rows.push({
        x: (angles.throatAngle - centre.throatAngle) / step,
        y: (angles.lipAngle - centre.lipAngle) / step,
        value,
      });
    }
  }
  if (rows.length < 7) return null;
  const fit = fittedQuadratic(rows);
  const top = fit === null ? null : topOf(fit);
  const best = rows.reduce((a, b) => (b.value > a.value ? b : a));
  const { x, y } = top ?? best;
  const within = (value: number): number => Math.min(Math.max(value, -1.5), 1.5);
  return {
    throatAngle: centre.throatAngle + within(x) * step,
    lipAngle: centre.lipAngle + within(y) * step,
  };
}

/** Coefficients of 1, x, y, x², xy, y² by least squares; null where the points don't fix them. */
function fittedQuadratic(
  rows: readonly { readonly x: number; readonly y: number; readonly value: number }[],
): readonly number[] | null {
  const size = 6;
  const stride = size + 1;
  const system = new Float64Array(size * stride);
  for (const { x, y, value } of rows) {
    const terms = [1, x, y, x * x, x * y, y * y, value];
    for (let i = 0; i < size; i++) {
      for (let j = 0; j < stride; j++) system[i * stride + j]! += terms[i]! * terms[j]!;
    }
  }
  const fit = new Float64Array(size);
  return solveDenseInto(fit, system, size, stride) ? [...fit] : null;
}

/** Top of the quadratic; null where it has none. */
function topOf(fit: readonly number[]): { readonly x: number; readonly y: number } | null {
  const [, bx, by, cxx, cxy, cyy] = fit as readonly [number, number, number, number, number, number];
  const det = 4 * cxx * cyy - cxy * cxy;
  if (!(cxx < 0 && det > 0)) return null;
  return { x: (cxy * by - 2 * cyy * bx) / det, y: (cxy * bx - 2 * cxx * by) / det };
}
