/** Inverse of a tabulated column: its cell by halving, its place on the cell's cubic by Newton. */

import type { SupersonicTable } from './gasTable.ts';

/** ν at a speed; the table's speeds rise with ν. At the table's ends the ends themselves. */
export function nuAtSpeed({ knots, step, cells, nuMax }: SupersonicTable, speed: number): number {
  const at = (i: number): number => knots.speed[2 * i]!;
  if (speed <= at(0)) return 0;
  if (speed >= at(cells)) return nuMax;
  const i = lastKnotBefore(at, cells, speed);
  const k = 2 * i;
  const t = whereCubic(at(i), knots.speed[k + 1]!, at(i + 1), knots.speed[k + 3]!, speed);
  return Math.min(((i + t) * step) ** 3, nuMax);
}

/** Cell 0 … cells − 1 in which a rising quantity takes `value`. */
export function lastKnotBefore(at: (i: number) => number, cells: number, value: number): number {
  let low = 0;
  let high = cells;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (at(middle) < value) low = middle;
    else high = middle;
  }
  return low;
}

/** Newton's steps and halvings that find a place on a cubic piece to the last digit. */
const MOST_STEPS = 60;

/** Place 0 … 1 where the cubic with values a, b and slopes da, db takes `value` between them: Newton, kept in by bisection. */
export function whereCubic(a: number, da: number, b: number, db: number, value: number): number {
  const d = b - a;
  const c2 = 3 * d - 2 * da - db;
  const c3 = da + db - 2 * d;
  const rises = d > 0;
  let low = 0;
  let high = 1;
  let t = (value - a) / d;
  for (let i = 0; i < MOST_STEPS; i++) {
    const miss = a + t * (da + t * (c2 + t * c3)) - value;
    if (miss < 0 === rises) low = t;
    else high = t;
    const next = t - miss / (da + t * (2 * c2 + 3 * t * c3));
    const inside = next > low && next < high;
    const moved = inside ? next : 0.5 * (low + high);
    if (Math.abs(moved - t) < 1e-15 || Math.abs(miss) <= 2 ** -52 * Math.abs(value)) return inside ? next : t;
    t = moved;
  }
  return t;
}
