/** Between a place from 0 to 1 along a range and the value there. */

import type { SweptRange } from './model.ts';

export interface Scale {
  /** Value at a share of the way from 0 to 1. */ at(share: number): number;
  /** Share of the way at a value. */ shareOf(value: number): number;
}

export function scaleOf({ from, to, spacing }: SweptRange): Scale {
  if (spacing === 'even') {
    return {
      at: (share) => (share >= 1 ? to : tidy(from + share * (to - from))),
      shareOf: (value) => (value - from) / (to - from),
    };
  }
  const ratio = Math.log(to / from);
  return {
    at: (share) => (share >= 1 ? to : share <= 0 ? from : tidy(from * Math.exp(share * ratio))),
    shareOf: (value) => Math.log(value / from) / ratio,
  };
}

/** Without the noise of the last digits: 0.30000000000000004 is 0.3. */
function tidy(value: number): number {
  return Number(value.toPrecision(12));
}
