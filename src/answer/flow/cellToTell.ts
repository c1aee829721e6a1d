/** Where the first shock cell of a computed field is told. */

import type { FlowField } from './model.ts';

/**
 * End of the first shock cell [m] behind the lip, where it is to be held against its law: near the matched pressure, so where a law
 * has cells and none puts a Mach disk, and not ahead of the shock, where waves are the nozzle’s own. Null: it is not told.
 * @param first [m] of the pressure on the axis, whatever waves it has
 */
export function cellToTell(
  first: number | null,
  { mainShock, byLaw }: Pick<FlowField, 'mainShock' | 'byLaw'>,
): number | null {
  if (first === null || byLaw.machDisk !== null || byLaw.cellLength === null) return null;
  return mainShock !== null && first < mainShock.behind ? null : first;
}
