/** Says where the pressure behind a cut plug stands at its bound, so that nobody takes the bound for a forecast. */

import { type NozzleModel, thrustCoefficientOf } from '../physics/nozzle/index.ts';

/** Rounding of the bound, which is found from forces. */
const AT_BOUND = 1e-9;

const NOTE =
  'The published models of the pressure behind the cut plug would here give more thrust in vacuum than the ideal nozzle of the same area ratio, ' +
  'and are held to that: the thrust with a closed wake is a bound that no such plug beats, not what one can expect. ' +
  'The models are not made for so short a plug; keep more of it for a figure to quote.';

export function baseAtBoundNotes(nozzle: NozzleModel): readonly string[] {
  const { spec, expansion, exit } = nozzle;
  if (spec.kind !== 'plug' || spec.kept === 1) return [];
  const ideal = thrustCoefficientOf(expansion, exit, spec.areaRatio, 1, 0);
  return nozzle.at(0).thrustCoefficientIfFull < ideal * (1 - AT_BOUND) ? [] : [NOTE];
}
