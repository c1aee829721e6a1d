/** The isentrope behind a standard loss of stagnation pressure, for gases whose composition follows the flow. */

import { attempt } from '../../../numerics/problem.ts';
import type { Expansion } from '../../gas/flow.ts';
import { type SupersonicTable, tabulateSupersonic } from '../gasTable.ts';

/** Share of the stagnation pressure left on the second isentrope; properties are linear in its logarithm from there to 1. */
const SHARE_LEFT = 0.5;

/**
 * @param lowestPressure [Pa] of the first isentrope's table; the second reaches the same speeds
 * @returns null where the composition is held, or where the second isentrope leaves the data (the change is then left out)
 */
export function lossyTable(
  expansion: Expansion,
  lowestPressure: number,
  cells: number,
): SupersonicTable | null {
  const { afterLoss } = expansion;
  if (afterLoss === undefined) return null;
  const lossy = attempt(() =>
    tabulateSupersonic(
      afterLoss(SHARE_LEFT * expansion.chamber.pressure),
      SHARE_LEFT * lowestPressure,
      cells,
    ),
  );
  return lossy.ok ? lossy.value : null;
}
