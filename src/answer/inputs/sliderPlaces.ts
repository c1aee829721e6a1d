/** The places of a slider: each one a value with few digits in the unit that the input is written in. */

import type { SweepRange } from './model.ts';

export interface SliderPlaces {
  /** Rising, in the unit. */ readonly values: readonly number[];
}

/** Even steps in a range, at most. */
const MOST_STEPS = 200;
const NICE = [1, 2, 5, 10] as const;
/** Steps within a power of ten: about equal ratios, each with two or three digits. */
const MANTISSAS: readonly number[] = [
  ...stepped(100, 200, 2),
  ...stepped(200, 500, 5),
  ...stepped(500, 1000, 10),
].map((hundredths) => hundredths / 100);

/** @param unit what an SI value reads in the unit of the input */
export function sliderPlaces(
  { from, to, spacing }: SweepRange,
  unit: (si: number) => number,
  whole: boolean,
): SliderPlaces {
  const [a, b] = [unit(from), unit(to)];
  const [low, high] = [Math.min(a, b), Math.max(a, b)];
  if (spacing === 'in equal ratios' && low > 0 && !whole) return { values: ratioSteps(low, high) };
  const step = Math.max(whole ? 1 : 0, niceStep((high - low) / MOST_STEPS));
  return { values: evenSteps(low, high, step) };
}

/** The nearest place to a number in the unit. */
export function placeOf({ values }: SliderPlaces, number: number): number {
  let nearest = 0;
  values.forEach((value, place) => {
    if (Math.abs(value - number) < Math.abs(values[nearest]! - number)) nearest = place;
  });
  return nearest;
}

function niceStep(least: number): number {
  if (!(least > 0)) return 1;
  const power = 10 ** Math.floor(Math.log10(least));
  return (NICE.find((nice) => nice * power >= least * (1 - 1e-9)) ?? 10) * power;
}

function evenSteps(low: number, high: number, step: number): readonly number[] {
  const first = Math.ceil(low / step - 1e-9);
  const last = Math.floor(high / step + 1e-9);
  if (last < first) return [plainNumber(low), plainNumber(high)];
  return Array.from({ length: last - first + 1 }, (_, i) => plainNumber((first + i) * step));
}

function ratioSteps(low: number, high: number): readonly number[] {
  const first = Math.floor(Math.log10(low) + 1e-9);
  const last = Math.floor(Math.log10(high) + 1e-9);
  const steps = Array.from({ length: last - first + 1 }, (_, i) =>
    MANTISSAS.map((mantissa) => plainNumber(mantissa * 10 ** (first + i))),
  ).flat();
  return steps.filter((value) => value >= low * (1 - 1e-9) && value <= high * (1 + 1e-9));
}

function stepped(from: number, below: number, step: number): readonly number[] {
  return Array.from({ length: (below - from) / step }, (_, i) => from + i * step);
}

/** Without the tail of a binary fraction. */
const plainNumber = (value: number): number => Number(value.toPrecision(12));
