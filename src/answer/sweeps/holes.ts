/** Stretches of a curve without a value, each with its reason. */

import type { Hole } from './model.ts';
import type { Sample } from './samples.ts';

/** Between a sample with a value and one without lies the edge, somewhere: it is put in the middle. */
export function holesOf(
  samples: readonly Sample[],
  curve: number,
  xAt: (share: number) => number,
): readonly Hole[] {
  const holes: Hole[] = [];
  let start = 0;
  samples.forEach((sample, i) => {
    const value = sample.values[curve]!;
    if (value.ok) {
      start = i + 1;
      return;
    }
    const next = samples[i + 1];
    const after = next?.values[curve];
    if (after !== undefined && !after.ok && after.problem.code === value.problem.code) return;
    const first = samples[start]!;
    const told = [first, sample].find((each) => isBeside(samples, each, curve)) ?? first;
    const problem = told.values[curve]!;
    holes.push({
      from: xAt(edge(samples[start - 1], first)),
      to: xAt(edge(sample, next)),
      problem: problem.ok ? value.problem : problem.problem,
    });
    start = i + 1;
  });
  return holes;
}

/** Whether a neighbour has a value: its reason is the mildest. */
function isBeside(samples: readonly Sample[], sample: Sample, curve: number): boolean {
  const i = samples.indexOf(sample);
  return [samples[i - 1], samples[i + 1]].some((each) => each?.values[curve]?.ok === true);
}

function edge(left: Sample | undefined, right: Sample | undefined): number {
  if (left === undefined) return right!.share;
  return right === undefined ? left.share : 0.5 * (left.share + right.share);
}
