/** Where the draws lie: inputs and errors of models, block by block. */

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
  /** Deviations of the models' errors in each draw, at the place of their unknown. */
  readonly deviations: readonly Float64Array[];
}

export function drawPlaces(
  inputs: readonly UnknownInput[],
  unknowns: number,
  { count, blocks, seed }: DrawCounts,
): DrawPlaces {
  const each = Math.ceil(count / blocks);
  const places: Float64Array[] = [];
  const deviations: Float64Array[] = [];
  for (let block = 0; block < blocks; block++) {
    const points = sobolPoints(each, unknowns, seed * blocks + block);
    for (let i = 0; i < each; i++) {
      const unit = Float64Array.from({ length: unknowns }, (_, d) => points.at(i, d));
      places.push(placeOf(inputs, unit));
      deviations.push(unit.map((chance, d) => (d < inputs.length ? 0 : modelError(chance))));
    }
  }
  return { count: each * blocks, places, deviations };
}

/** Inputs of a point of the unit cube, from −1 to 1 over the range that is drawn. */
export function placeOf(inputs: readonly UnknownInput[], unit: ArrayLike<number>): Float64Array {
  return Float64Array.from(inputs, ({ distribution }, i) => {
    const { low, high } = distribution;
    const place = (2 * (distribution.quantile(unit[i]!) - low)) / (high - low) - 1;
    return Math.min(1, Math.max(-1, place));
  });
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
