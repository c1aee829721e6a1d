/** Where the next points of a sweep tell most: where curves bend, and where holes begin and end. */

import { isConstant, type Sample, spanOf, valueIn } from './samples.ts';

/** A straight line between two points may miss the curve by this share of its span. */
const MISS = 0.001;
/** Places nearer to each other than this share of the range are not told apart. */
const NARROWEST = 1 / 1024;
/** The edge of a hole is found to this share of the range. */
const EDGE = 1 / 256;

/** Shares of the range to sample next, the most telling first, at most `most`; none where all is told. */
export function nextShares(samples: readonly Sample[], most: number): readonly number[] {
  const scored = samples.slice(1).flatMap((right, i) => {
    const left = samples[i]!;
    const width = right.share - left.share;
    const score = width <= NARROWEST ? 0 : scoreOf(samples, i, width);
    return score > 0 ? [{ share: 0.5 * (left.share + right.share), score }] : [];
  });
  return scored
    .sort((a, b) => b.score - a.score)
    .slice(0, most)
    .map(({ share }) => share);
}

/** How much a point between samples `i` and `i + 1` would tell, over all curves. */
function scoreOf(samples: readonly Sample[], i: number, width: number): number {
  const [left, right] = [samples[i]!, samples[i + 1]!];
  return Math.max(
    ...left.values.map((_, curve) => {
      const [from, to] = [valueIn(left, curve), valueIn(right, curve)];
      if (from === null || to === null) {
        const edge = from !== to || problemCode(left, curve) !== problemCode(right, curve);
        return edge && width > EDGE ? 1 + width : 0;
      }
      const span = spanOf(samples, curve);
      if (span === null || isConstant(span)) return 0;
      const bend =
        Math.max(bendAt(samples, i, curve), bendAt(samples, i + 1, curve)) / (span.high - span.low);
      return bend > MISS ? bend : 0;
    }),
  );
}

function problemCode(sample: Sample, curve: number): string | null {
  const value = sample.values[curve]!;
  return value.ok ? null : value.problem.code;
}

/** By how much a sample departs from the line through its neighbours, as far as that bears on one interval. */
function bendAt(samples: readonly Sample[], i: number, curve: number): number {
  const [before, at, after] = [samples[i - 1], samples[i], samples[i + 1]];
  if (before === undefined || at === undefined || after === undefined) return 0;
  const [a, b, c] = [before, at, after].map((sample) => valueIn(sample, curve));
  if (a === null || b === null || c === null || a === undefined || b === undefined || c === undefined)
    return 0;
  const share = (at.share - before.share) / (after.share - before.share);
  // A parabola that departs by d in the middle of two intervals departs by d/4 in the middle of each.
  return 0.25 * Math.abs(b - (a + share * (c - a)));
}
