/** How deep channels must be for a wanted pressure drop. */

import { findBracketedRoot } from '../../numerics/bracketedRoot.ts';
import { attempt, ProblemError } from '../../numerics/problem.ts';
import { type CoolantFlow, type CoolantMarch, coolantMarch, type Jacket } from './coolantMarch.ts';
import type { HotPoint } from './gasSide.ts';

/** [m] shallower channels clog (common practice, no source). */
const SHALLOWEST = 3e-4;
/** Deeper than so many widths no channel is milled (common practice, no source). */
const DEEPEST = 12;
/** Every so many points are enough to find the depth, within 1 % of the loss; where a larger share of the pressure is lost, all are taken. */
const STRIDE = 3;
const LARGE_SHARE = 0.25;

/** The loss that is found may miss the wanted one by so much of it: more of a miss is a jump, where the channels choke. */
const MISS = 0.02;

/**
 * [m] at the throat. The drop falls as the depth grows; where even the shallowest loses less than wanted, it is that one.
 * @throws ProblemError `channels-cannot-carry` where the deepest lose more; `coolant-chokes` where any that carry the coolant lose less;
 * what stops the coolant in the deepest, which lose least
 */
export function depthForDrop(
  points: readonly HotPoint[],
  jacket: Omit<Jacket, 'channels'>,
  shape: { readonly width: number; readonly land: number },
  flow: CoolantFlow,
  drop: number,
): number {
  const stride = drop > LARGE_SHARE * flow.pressure ? 1 : STRIDE;
  const coarse = points.filter((_, i) => i % stride === 0 || i === points.length - 1);
  const most = DEEPEST * shape.width;
  const excessOf = ({ pressureDrop }: CoolantMarch): number =>
    Math.tanh(Math.log(Math.max(pressureDrop, 1e-3) / drop));
  const marched = (depth: number): CoolantMarch =>
    coolantMarch(coarse, { ...jacket, channels: { ...shape, depth } }, flow);
  // Too shallow a channel loses all its pressure: more than wanted, whatever stopped it.
  const excess = (depth: number): number => {
    const outcome = attempt(() => marched(depth));
    if (outcome.ok) return excessOf(outcome.value);
    if (FALLS_SHORT.has(outcome.problem.code)) return 1;
    throw new ProblemError(outcome.problem);
  };
  if (excessOf(marched(most)) > 0) throw cannotCarry(shape.width, drop, flow.massFlow);
  if (excess(SHALLOWEST) < 0) return SHALLOWEST;
  const { root, value } = findBracketedRoot(
    (log) => excess(Math.exp(log)),
    Math.log(SHALLOWEST),
    Math.log(most),
    { valueTolerance: 3e-3, widthTolerance: 1e-4 },
  );
  if (Math.abs(value) > MISS) throw chokesBefore(shape.width, drop);
  return Math.exp(root);
}

const FALLS_SHORT = new Set([
  'coolant-chokes',
  'coolant-pressure-lost',
  'coolant-pressure-outside-table',
  'coolant-near-critical',
]);

const millimetres = (width: number): string => (1e3 * width).toPrecision(2);
const bar = (drop: number): string => (drop / 1e5).toPrecision(3);

function cannotCarry(width: number, drop: number, massFlow: number): ProblemError {
  return new ProblemError({
    code: 'channels-cannot-carry',
    what: `Channels ${millimetres(width)} mm wide cannot carry this coolant at a loss of ${bar(drop)} bar, however deep.`,
    mend: 'Give wider channels, a higher pressure drop or a smaller share of the flow.',
    where: 'cooling.channels.width',
    facts: { width, drop, flow: massFlow },
  });
}

function chokesBefore(width: number, drop: number): ProblemError {
  return new ProblemError({
    code: 'coolant-chokes',
    what: `Channels ${millimetres(width)} mm wide that lose ${bar(drop)} bar would choke on this coolant, or lose its pressure altogether.`,
    mend: 'Give a smaller pressure drop, or a higher inlet pressure.',
    where: 'cooling.pressureDrop',
    facts: { width, drop },
  });
}
