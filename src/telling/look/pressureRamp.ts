/**
 * The pressure ramp: gas and air share it, it starts at the paper, and the further from paper the higher the pressure.
 * 24 steps, six to a power of ten, from 10^−1.5 bar to 10^2.5 bar. Below the ramp: paper. Above: the last step.
 */

import { ProblemError } from '../../numerics/problem.ts';
import { COLOURS, type Theme } from './tokens.ts';

export const PRESSURE_STEPS = 24;
const STEPS_PER_DECADE = 6;
/** [Pa] */ const LOWEST = 10 ** 3.5;

const light =
  'f6fafb e7f2f7 d6eaf3 c3e1ee b0d5e7 9dc8e0 8bbcd9 7cb0d3 70a5ce 6599c9 5c8ec4 5483be ' +
  '4f79b7 4a6fb1 4665a9 425ba2 3f5099 3b4491 383a81 343072 2f2561 291b51 22113f 1a082f';
const dark =
  '15171b 1a1e27 1e2535 232d45 293755 2d4265 2f4d74 315782 35638d 3b6d96 40789f 4682a8 ' +
  '4c8db0 5498b9 5ca4c2 64afc7 6fb8c8 7bc2c8 8bcbca 9cd5cc b0ded0 c5e8d6 d9f2de edfce9';

const hexes = (text: string): readonly string[] => text.split(' ').map((hex) => `#${hex}`);

/** The colours of the steps 1 to 24, lowest pressure first. */
export const PRESSURE_RAMP: Readonly<Record<Theme, readonly string[]>> = {
  light: hexes(light),
  dark: hexes(dark),
  print: hexes(light),
};

/** Step of the ramp for a pressure [Pa]: 0 below the ramp (paper), 1 to 24 on it. */
export function pressureStep(pressure: number): number {
  if (!Number.isFinite(pressure) || pressure < 0)
    throw new ProblemError({
      code: 'pressure-not-drawable',
      what: `A pressure of ${pressure} Pa has no place on the pressure ramp.`,
      mend: 'Give a finite pressure that is not negative.',
      facts: { pressure },
    });
  if (pressure < LOWEST) return 0;
  const step = 1 + Math.floor(STEPS_PER_DECADE * Math.log10(pressure / LOWEST) + 1e-9);
  return step > PRESSURE_STEPS ? PRESSURE_STEPS : step;
}

/** [Pa] pressure at which step `step` (1 to 24) begins; step 25 gives the upper end of the ramp. */
export function pressureStepStart(step: number): number {
  return LOWEST * 10 ** ((step - 1) / STEPS_PER_DECADE);
}

/** True where the lower edge of the step is a power of ten in bar; drawn stronger. */
export function stepStartsAtPowerOfTen(step: number): boolean {
  return (step - 1) % STEPS_PER_DECADE === 3;
}

/** Colour of a step of the ramp, 0 being the paper. */
export function stepColour(step: number, theme: Theme): string {
  return step === 0 ? COLOURS[theme].paper : (PRESSURE_RAMP[theme][step - 1] ?? COLOURS[theme].paper);
}
