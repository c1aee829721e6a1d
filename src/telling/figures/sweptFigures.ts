/** What was found of a study's sweeps and maps. */

import type { Sweep, SweepMap } from '../../answer/sweeps/model.ts';

export interface Swept {
  readonly sweeps: readonly Sweep[];
  readonly maps: readonly SweepMap[];
}

export const NOTHING_SWEPT: Swept = { sweeps: [], maps: [] };
