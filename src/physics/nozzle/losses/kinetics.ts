/**
 * Loss to slow chemistry as a published band, never more than what frozen chemistry would lose.
 *
 *   low = min(band.low, gap),  high = min(band.high, gap),  value = (low + high)/2,   gap = 1 − I_frozen/I_shifting
 *
 * Shifting flow loses nothing, flow frozen from the chamber loses the gap, and real flow lies between, closer to shifting at
 * high pressure. The bands are those of large engines; small ones at low pressure lie at the upper end.
 */

import type { LossBand } from './lossBands.ts';
import { KINETICS_BANDS } from './lossBands.ts';

export interface BandedShare {
  readonly share: number;
  readonly low: number;
  readonly high: number;
  readonly source: string;
}

/** @param gap [–] what frozen chemistry would lose; null where it is not known */
export function kineticsLoss(elements: Iterable<string>, gap: number | null): BandedShare {
  const band = kineticsBand(new Set(elements));
  const most = gap === null ? Infinity : Math.max(gap, 0);
  const low = Math.min(band.low, most);
  const high = Math.min(band.high, most);
  const bounded = most < band.high ? ', bounded by what frozen chemistry would lose' : '';
  return { share: (low + high) / 2, low, high, source: `${band.source}${bounded}` };
}

function kineticsBand(elements: ReadonlySet<string>): LossBand {
  if (elements.has('C')) return KINETICS_BANDS.carbon;
  const plain = [...elements].every((element) => ['H', 'O', 'He', 'Ar'].includes(element));
  return plain ? KINETICS_BANDS.hydrogen : KINETICS_BANDS.other;
}
