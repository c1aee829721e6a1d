/** Where the draws lie: inputs and errors of models, block by block. */

import { remembered } from '../../numerics/remembered.ts';
import { sobolPoints } from '../../numerics/sobol.ts';
import { modelError } from './distribution.ts';
import type { UnknownInput } from './unknowns.ts';

export interface DrawCounts {
  readonly count: number;
  readonly blocks: number;
  readonly seed: number;
}

export interface DrawPlaces {
  readonly count: number;
  /** Inputs of each draw, from −1 to 1. */ readonly places: readonly Float64Array[];
  /** Of each unknown, by its place, the deviations of a model's error in all draws; 0 throughout for an input. */
  readonly deviations: readonly Float64Array[];
}

export function drawPlaces(
  inputs: readonly UnknownInput[],
  unknowns: number,
  { count, blocks, seed }: DrawCounts,
): DrawPlaces {
  const { units, deviations } = blocksOf(inputs.length, unknowns, count, blocks, seed);
  return { count: units.length, places: units.map((unit) => placeOf(inputs, unit)), deviations };
}

/** All that hangs on no study; while inputs move, the same is asked for again and again. */
const blocksOf = remembered(
  (inputs: number, unknowns: number, count: number, blocks: number, seed: number) => {
    const each = Math.ceil(count / blocks);
    const units = Array.from({ length: blocks }, (_, block) => {
      const points = sobolPoints(each, unknowns, seed * blocks + block);
      return Array.from({ length: each }, (__, i) =>
        Float64Array.from({ length: unknowns }, (___, d) => points.at(i, d)),
      );
    }).flat();
    return {
      units,
      deviations: Array.from({ length: unknowns }, (_, d) =>
        Float64Array.from(units, (unit) => (d < inputs ? 0 : modelError(unit[d]!))),
      ),
    };
  },
);

/** Inputs of a point of the unit cube, from −1 to 1 over the range that is drawn. */
export function placeOf(inputs: readonly UnknownInput[], unit: ArrayLike<number>): Float64Array {
  const place = new Float64Array(inputs.length);
  for (let i = 0; i < place.length; i++) {
    const { low, high, quantile } = inputs[i]!.distribution;
    place[i] = Math.min(1, Math.max(-1, (2 * (quantile(unit[i]!) - low)) / (high - low) - 1));
  }
  return place;
}

/** Where a number is told at some points only, a draw goes by the point next to it. */
export function nearest(points: readonly Float64Array[], place: Float64Array): number {
  let best = 0;
  let least = Infinity;
  points.forEach((point, i) => {
    let distance = 0;
    for (let d = 0; d < place.length; d++) distance += (point[d]! - place[d]!) ** 2;
    if (distance < least) [best, least] = [i, distance];
  });
  return best;
}
