/** Spans as people say them, rounded outwards so that what is said stays true. */

import type { DisplayUnit } from '../catalogue.ts';

/** A span that may be said. */
export interface SaidSpan {
  /** e.g. `between 3 and 5 %`, `about 350 s` */ readonly words: string;
  /** The ends that the words stand for, in SI: at least as wide as what was given. */ readonly low: number;
  readonly high: number;
}

/** Both ends this close to a round number are said as one; with three digits, as close as those claim. */
const ABOUT = 0.015;
const ABOUT_THREE_DIGITS = 0.005;
/** The rounded span may be this much wider than the true one. */
const WIDER = 1.5;

/** @param low high SI, low ≤ high @throws RangeError where they are no span: a caller's mistake, nothing that a study can say */
export function spanWords(low: number, high: number, unit: DisplayUnit): SaidSpan {
  if (!(Number.isFinite(low) && Number.isFinite(high) && low <= high)) {
    throw new RangeError(`No span goes from ${low} to ${high}.`);
  }
  const [from, to] = [low * unit.perSI, high * unit.perSI];
  const round = roundNumber(from, to, unit.symbol === '%');
  if (round !== null) {
    const reach = Math.max(Math.abs(to - round), Math.abs(round - from), 1e-9 * Math.abs(round));
    const exact = reach <= 1e-6 * Math.abs(round);
    return {
      words: `${exact ? '' : 'about '}${withUnit(plain(round), unit)}`,
      low: (round - reach) / unit.perSI,
      high: (round + reach) / unit.perSI,
    };
  }
  const step = stepFor(from, to);
  const [down, up] = [outwards(from, step, Math.floor), outwards(to, step, Math.ceil)];
  return {
    words: `between ${plain(down)} and ${withUnit(plain(up), unit)}`,
    low: down / unit.perSI,
    high: up / unit.perSI,
  };
}

/** Of three digits at most, four near the whole, close to both ends; null where there is none. @param isShare in per cent */
function roundNumber(from: number, to: number, isShare: boolean): number | null {
  const middle = (from + to) / 2;
  if (middle === 0) return from === to ? 0 : null;
  let most = 3;
  for (let digits = 1; digits <= most; digits++) {
    const round = Number(middle.toPrecision(digits));
    if (isShare && round === WHOLE && isPartOfWhole(from, to)) {
      most = 4;
      continue;
    }
    const near = (digits < 3 ? ABOUT : ABOUT_THREE_DIGITS) * Math.abs(round);
    if (Math.abs(from - round) <= near && Math.abs(to - round) <= near) return round;
  }
  return null;
}

/** The whole, in per cent: 99.5 % is not all of it, 100.4 % is more. */
const WHOLE = 100;
const AS_GOOD_AS_WHOLE = 0.05;

const isPartOfWhole = (from: number, to: number): boolean =>
  (to < WHOLE && WHOLE - from > AS_GOOD_AS_WHOLE) || (from > WHOLE && to - WHOLE > AS_GOOD_AS_WHOLE);

/** The coarsest of 1, 2, 5 times a power of ten that does not widen the span by too much. */
function stepFor(from: number, to: number): number {
  const width = to - from;
  const top = 10 ** Math.ceil(Math.log10(width) + 1);
  for (let power = top; ; power /= 10) {
    for (const part of [5, 2, 1]) {
      const step = part * power;
      const [down, up] = [outwards(from, step, Math.floor), outwards(to, step, Math.ceil)];
      // A sign that is sure stays so: 0.6 does not become 0.
      const sure = (from <= 0 || down > 0) && (to >= 0 || up < 0);
      if (sure && up - down <= WIDER * width * (1 + 1e-9)) return step;
    }
  }
}

/** On the grid of `step`, without what binary fractions leave behind. */
function outwards(value: number, step: number, to: (x: number) => number): number {
  const steps = value / step;
  const near = Math.round(steps);
  const whole = Math.abs(steps - near) < 1e-9 * Math.max(1, Math.abs(steps)) ? near : to(steps);
  return Number((whole * step).toPrecision(12)) + 0;
}

/** Digits without an exponent, thousands apart from five digits on. */
export function plain(value: number): string {
  const size = Math.abs(value);
  const decimals = size === 0 ? 0 : Math.max(0, 12 - Math.ceil(Math.log10(size) + 1));
  const text =
    size >= 1e15 || (size > 0 && size < 1e-6) ? String(size) : size.toFixed(Math.min(decimals, 12));
  const [whole = '', rest] = text.includes('e') ? [text] : text.split('.');
  const kept = rest?.replace(/0+$/, '') ?? '';
  const spaced =
    whole.length > 4 && !whole.includes('e') ? whole.replace(/\B(?=(\d{3})+(?!\d))/g, '\u202f') : whole;
  return `${value < 0 ? '−' : ''}${spaced}${kept === '' ? '' : `.${kept}`}`;
}

export function withUnit(number: string, { symbol }: DisplayUnit): string {
  return symbol === '' || symbol === '°' ? `${number}${symbol}` : `${number}\u00a0${symbol}`;
}
