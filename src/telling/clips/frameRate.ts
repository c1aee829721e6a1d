/** Frame rates of film and television, as exact ratios: frame n stands for n · den / num seconds. */

import { ProblemError } from '../../numerics/problem.ts';

export interface FrameRate {
  /** As it is written: `23.976`, `25`. */ readonly name: string;
  readonly num: number;
  readonly den: number;
}

export const FRAME_RATES: readonly FrameRate[] = [
  { name: '23.976', num: 24000, den: 1001 },
  { name: '24', num: 24, den: 1 },
  { name: '25', num: 25, den: 1 },
  { name: '29.97', num: 30000, den: 1001 },
  { name: '30', num: 30, den: 1 },
  { name: '50', num: 50, den: 1 },
  { name: '59.94', num: 60000, den: 1001 },
  { name: '60', num: 60, den: 1 },
];

/** The rate of that name. */
export function frameRateOf(name: string): FrameRate {
  const found = FRAME_RATES.find((rate) => rate.name === name.trim());
  if (found) return found;
  throw new ProblemError({
    code: 'frame-rate-unknown',
    what: `A clip cannot have ${name} frames a second.`,
    mend: `Choose one of ${FRAME_RATES.map((rate) => rate.name).join(', ')}.`,
  });
}

/** [s] when frame `n` begins. */
export const secondsOfFrame = (n: number, { num, den }: FrameRate): number => (n * den) / num;

/** Whole frames nearest to a time [s]. */
export const framesIn = (seconds: number, { num, den }: FrameRate): number =>
  Math.round((seconds * num) / den);
