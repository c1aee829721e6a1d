/** The points at which total effects are reckoned, as places on the surfaces. */

import type { EffectsDesign } from '../../numerics/effects.ts';
import type { Drawn, DrawnPlaces } from './model.ts';

/** In the order of the design; inputs come first among the coordinates, the errors of the models behind them. */
export function designPlaces(
  { dimensions, count, scramblings, points }: EffectsDesign,
  { unknowns, placeOf }: Pick<Drawn, 'unknowns' | 'placeOf'>,
): DrawnPlaces {
  const models = unknowns.findIndex(({ kind }) => kind === 'model');
  const firstModel = models < 0 ? dimensions : models;
  const inputs: Float64Array[] = [];
  const whichInputs = new Int32Array(points.length);
  const deviations = new Float64Array(points.length * dimensions);
  const like = new Int32Array(points.length).fill(-1);
  const butFor = new Int32Array(points.length).fill(-1);
  for (let run = 0; run < scramblings; run++) {
    const start = run * count * (dimensions + 2);
    for (let n = 0; n < 2 * count; n++) {
      const place = placeOf(points[start + n]!);
      whichInputs[start + n] = inputs.push(place.inputs) - 1;
      deviations.set(place.deviations, (start + n) * dimensions);
    }
    for (let unknown = 0; unknown < dimensions; unknown++) {
      for (let n = 0; n < count; n++) {
        // One place with one of its unknowns as in the other.
        const [one, other] = [start + n, start + count + n];
        const row = start + (unknown + 2) * count + n;
        deviations.copyWithin(row * dimensions, one * dimensions, (one + 1) * dimensions);
        if (unknown < firstModel) {
          const moved = inputs[whichInputs[one]!]!.slice();
          moved[unknown] = inputs[whichInputs[other]!]![unknown]!;
          whichInputs[row] = inputs.push(moved) - 1;
        } else {
          whichInputs[row] = whichInputs[one]!;
          deviations[row * dimensions + unknown] = deviations[other * dimensions + unknown]!;
          like[row] = one;
          butFor[row] = unknown;
        }
      }
    }
  }
  return { inputs, whichInputs, deviations, like, butFor };
}
