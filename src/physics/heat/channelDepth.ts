/** How deep channels must be for a wanted pressure drop. */

import { findBracketedRoot } from '../../numerics/bracketedRoot.ts';
import { attempt, ProblemError } from '../../numerics/problem.ts';
import { type CoolantFlow, coolantMarch, type Jacket } from './coolantMarch.ts';
import type { HotPoint } from './gasSide.ts';

/** [m] shallower channels clog (common practice, no source). */
const SHALLOWEST = 3e-4;
/** Deeper than so many widths no channel is milled (common practice, no source). */
const DEEPEST = 12;
/** Every so many points are enough to find the depth. */
const STRIDE = 3;

/**
 * [m] at the throat. The drop falls as the depth grows; where even the shallowest loses less than wanted, it is that one.
 * @throws ProblemError `channels-cannot-carry` where the deepest lose more
 */
export function depthForDrop(
  points: readonly HotPoint[],
  jacket: Omit<Jacket, 'channels'>,
  shape: { readonly width: number; readonly land: number },
  flow: CoolantFlow,
  drop: number,
): number {
  const coarse = points.filter((_, i) => i % STRIDE === 0 || i === points.length - 1);
  const most = DEEPEST * shape.width;
  // Too shallow a channel loses all its pressure: more than wanted, whatever stopped it.
  const excess = (depth: number): number => {
    const outcome = attempt(() => coolantMarch(coarse, { ...jacket, channels: { ...shape, depth } }, flow));
    if (!outcome.ok) {
      if (FALLS_SHORT.has(outcome.problem.code)) return 1;
      throw new ProblemError(outcome.problem);
    }
    return Math.tanh(Math.log(Math.max(outcome.value.pressureDrop, 1e-3) / drop));
  };
  if (excess(most) > 0) {
    throw new ProblemError({
      code: 'channels-cannot-carry',
      what: `Channels ${(1e3 * shape.width).toPrecision(2)} mm wide cannot carry this coolant at a loss of ${(drop / 1e5).toPrecision(3)} bar, however deep.`,
      mend: 'Give wider channels, a higher pressure drop or a smaller share of the flow.',
      where: 'cooling.channels.width',
      facts: { width: shape.width, drop, flow: flow.massFlow },
    });
  }
  if (excess(SHALLOWEST) < 0) return SHALLOWEST;
  const { root } = findBracketedRoot((log) => excess(Math.exp(log)), Math.log(SHALLOWEST), Math.log(most), {
    valueTolerance: 3e-3,
    widthTolerance: 1e-4,
  });
  return Math.exp(root);
}

const FALLS_SHORT = new Set([
  'coolant-pressure-lost',
  'coolant-pressure-outside-table',
  'coolant-near-critical',
]);
