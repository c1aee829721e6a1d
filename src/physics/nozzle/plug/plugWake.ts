import { tableStateAt } from '../../flow/gasTable.ts';
import type { Expansion } from '../../gas/flow.ts';
import { type ClosedWake, closedWake } from './basePressure.ts';
import type { PlugGeometry } from './geometry.ts';

/** Share of the wall's pressure at the cut that a base may always have [–]: near the tip the bound is a difference of nothing. */
const LEAST_BASE = 0.01;

/** The closed wake behind a design's cut. @param most [Pa] see closedWake */
export function wakeOf(geometry: PlugGeometry, expansion: Expansion, most: number): ClosedWake {
  const end = geometry.wall[geometry.wall.length - 1]!;
  const { mach, pressure } = tableStateAt(geometry.table, end.nu);
  const state = expansion.atPressure(pressure);
  const gamma = state.isentropicExponent ?? state.gammaFrozen;
  return closedWake({ mach, angle: end.angle, gamma }, pressure, Math.max(most, LEAST_BASE * pressure));
}
