import type { Expansion, FlowState } from '../gas/flow.ts';
import type { Contour } from './model.ts';

/** Mean state of the gas over the cross-section at one place of the wall. */
export interface WallState {
  /** [m] from the throat plane */ readonly axial: number;
  /** [m] */ readonly radius: number;
  /** [Pa] */ readonly pressure: number;
  /** [–]; null where the gas has no sound speed */ readonly mach: number | null;
  /** [K] */ readonly temperature: number;
  /** [m/s] */ readonly velocity: number;
}

/** Area ratios closer to 1 than this are the throat itself. */
const AT_THROAT = 1e-9;

/**
 * One-dimensional mean state at every point of the contour, by the area ratio (r/R_t)².
 *
 * Subsonic up to the throat, supersonic after it, whatever the ambient pressure: full flow. Near the throat the real
 * flow is two-dimensional; the pressure at the wall differs from this mean by up to some 15 % there.
 *
 * @throws ProblemError where the gas model does not reach the area ratio
 * Source: L. H. Back, P. F. Massier, H. L. Gier, AIAA J. 3(9), 1965 (difference from measurement near the throat).
 */
export function wallStates(contour: Contour, expansion: Expansion): WallState[] {
  let last: { areaRatio: number; state: FlowState } | null = null;
  return contour.wall.map(({ axial, radius }) => {
    const areaRatio = (radius / contour.throatRadius) ** 2;
    if (last === null || last.areaRatio !== areaRatio) {
      last = { areaRatio, state: stateAt(expansion, areaRatio, axial) };
    }
    const { pressure, mach, temperature, velocity } = last.state;
    return { axial, radius, pressure, mach, temperature, velocity };
  });
}

function stateAt(expansion: Expansion, areaRatio: number, axial: number): FlowState {
  if (areaRatio - 1 < AT_THROAT) return expansion.throat;
  return expansion.atAreaRatio(areaRatio, axial < 0 ? 'subsonic' : 'supersonic');
}
