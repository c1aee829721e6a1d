import type { NozzleModel, WallSeparation } from '../../physics/nozzle/index.ts';

/** The wall that the gas may leave at an ambient pressure; null where there is none. */
export function wallInUse(nozzle: NozzleModel, ambientPressure: number): WallSeparation | null {
  const { change } = nozzle;
  if (change === undefined) return nozzle.separation?.() ?? null;
  const mode = ambientPressure >= change.ambientPressure ? change.thick : change.thin;
  return mode.separation?.() ?? null;
}
