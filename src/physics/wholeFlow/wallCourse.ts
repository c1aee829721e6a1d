/** Radius of a wall along the axis: a cubic between two of its points, with the wall's own angle at both. */

import type { ContourPoint } from '../nozzle/model.ts';

export type WallCourse = (axial: number) => number;

/** @param wall points in rising order along the axis; beyond its ends the wall goes straight on */
export function wallCourse(wall: readonly Pick<ContourPoint, 'axial' | 'radius' | 'angle'>[]): WallCourse {
  const last = wall.length - 1;
  return (x) => {
    let [low, high] = [0, last];
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (wall[middle]!.axial <= x) low = middle;
      else high = middle;
    }
    const [a, b] = [wall[low]!, wall[high]!];
    if (x <= a.axial) return a.radius + (x - a.axial) * Math.tan(a.angle);
    if (x >= b.axial) return b.radius + (x - b.axial) * Math.tan(b.angle);
    const h = b.axial - a.axial;
    const t = (x - a.axial) / h;
    const s = 1 - t;
    return (
      a.radius * s * s * (1 + 2 * t) +
      Math.tan(a.angle) * h * t * s * s +
      b.radius * t * t * (1 + 2 * s) -
      Math.tan(b.angle) * h * s * t * t
    );
  };
}
