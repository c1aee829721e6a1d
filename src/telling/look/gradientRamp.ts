/** How a field is drawn by the steepness of its density: the change of ln ρ over a lip radius in equal ratios, from pale to ink. */

import { type FieldTint, RAMPS, type Ramp } from './flowRamps.ts';

type AnyRamp = Omit<Ramp, 'tint'>;

const FIRST = 0.5;
const LAST = 40;
const STEPS = 12;

const GRADIENT_RAMP: AnyRamp = {
  steps: STEPS,
  stepOf: (value) =>
    Math.min(STEPS, Math.max(0, 1 + Math.floor((STEPS * Math.log(value / FIRST)) / Math.log(LAST / FIRST)))),
  startOf: (step) => FIRST * (LAST / FIRST) ** ((step - 1) / STEPS),
  isStrong: () => false,
};

/** What each way of drawing a field goes by. */
export const rampOf = (shown: FieldTint | 'density gradient'): AnyRamp =>
  shown === 'density gradient' ? GRADIENT_RAMP : RAMPS[shown];

/** How much of the ink a step has. */
export const gradientOpacity = (step: number): number => step / STEPS;

/** Along its key: by what the density changes over a lip radius, as ln ρ and as written. */
export const GRADIENT_LABELS: readonly (readonly [number, string])[] = (
  [
    [2, '× 2'],
    [10, '× 10'],
    [1e3, '× 1000'],
    [1e6, '× 10⁶'],
    [1e12, '× 10¹²'],
  ] as const
).map(([factor, text]) => [Math.log(factor), text] as const);

/** Over the key. */
export const GRADIENT_NAME = 'change of density over a lip radius';
