import type { Point } from '../scene/pathData.ts';

/** The pieces of a line that lie between two x, cut where it passes them. */
export function clippedBetween(points: readonly Point[], left: number, right: number): readonly Point[][] {
  const all = points.flatMap((point, i) => {
    const before = points[i - 1];
    return before === undefined ? [point] : [...cutsOf(before, point, left, right), point];
  });
  const pieces: Point[][] = [];
  all.slice(1).forEach((to, i) => {
    const from = all[i]!;
    const middle = 0.5 * (from.x + to.x);
    if (middle < left || middle > right) return;
    const last = pieces.at(-1);
    if (last?.at(-1) === from) last.push(to);
    else pieces.push([from, to]);
  });
  return pieces;
}

/** Where the way from `a` to `b` enters or leaves, in its order. */
function cutsOf(a: Point, b: Point, left: number, right: number): readonly Point[] {
  return [left, right]
    .map((edge) => ({ edge, share: (edge - a.x) / (b.x - a.x) }))
    .filter(({ share }) => share > 0 && share < 1)
    .sort((one, other) => one.share - other.share)
    .map(({ edge, share }) => ({ x: edge, y: a.y + share * (b.y - a.y) }));
}
