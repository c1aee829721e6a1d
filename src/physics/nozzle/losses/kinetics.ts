/**
 * Loss to slow chemistry as a published band, never more than what frozen chemistry would lose.
 *
 *   low = min(band.low, gap),  high = min(band.high, gap),  value = (low + high)/2,   gap = 1 − I_frozen/I_shifting
 *
 * Shifting flow loses nothing, flow frozen from the chamber loses the gap, and real flow lies between, closer to shifting at
 * high pressure. The bands are those of large engines; small ones at low pressure lie at the upper end.
 */

import { KINETICS_BANDS } from './lossBands.ts';

export interface BandedShare {
  readonly share: number;
  readonly low: number;
  readonly high: number;
  readonly source: string;
  /** Of the band: engines that burn alike share it. */ readonly error: string;
}

/** @param gap [–] what frozen chemistry would lose; null where it is not known */
export function kineticsLoss(elements: Iterable<string>, gap: number | null): BandedShare {
  const fuel = kineticsClass(new Set(elements));
  const band = KINETICS_BANDS[fuel];
  const most = gap === null ? Infinity : Math.max(gap, 0);
  const low = Math.min(band.low, most);
  const high = Math.min(band.high, most);
  const bounded = most < band.high ? ', bounded by what frozen chemistry would lose' : '';
  return {
    share: (low + high) / 2,
    low,
    high,
    source: `${band.source}${bounded}`,
    error: `slow chemistry, ${fuel}`,
  };
}

function kineticsClass(elements: ReadonlySet<string>): keyof typeof KINETICS_BANDS {
  if (elements.has('C')) return 'carbon';
  const plain = [...elements].every((element) => ['H', 'O', 'He', 'Ar'].includes(element));
  return plain ? 'hydrogen' : 'other';
}
