/** What the words behind a clip's name ask for: `cut-climb from 5 km to vacuum`, `cut-throttle at 10 km from 100 % to 60 %`. */

import { parseQuantity } from '../../study/index.ts';
import type { Altitude } from '../figures/options.ts';
import type { ClipRequest } from './clipKinds.ts';

/** [m] Above it the scale of the figures goes over into vacuum. */
export const HIGHEST_OF_CLIP = 60_000;

/** What is not understood is left to the usual one. */
export function wordsOfClip(words: string): Partial<Pick<ClipRequest, 'from' | 'to' | 'at' | 'throttles'>> {
  const ends = /\bfrom (.+?) to (.+?)(?= at |[,.;:](?!\d)|$)/.exec(words);
  const place = /\bat (?:the )?(.+?)(?= from |[,.;:](?!\d)|$)/.exec(words);
  const [from, to] = [altitudeIn(ends?.[1]), altitudeIn(ends?.[2])];
  const [first, last] = [shareIn(ends?.[1]), shareIn(ends?.[2])];
  const at = altitudeIn(place?.[1]);
  return {
    ...(from !== null && to !== null && from !== to && { from, to }),
    ...(at !== null && { at }),
    ...(first !== null && last !== null && first !== last && { throttles: [first, last] as const }),
  };
}

function altitudeIn(text: string | undefined): Altitude | null {
  const words = text?.trim().toLowerCase().replace(/^the /, '') ?? '';
  if (words === 'vacuum') return 'vacuum';
  if (words === 'pad' || words === 'sea level') return 0;
  const parsed = parseQuantity(words, 'length');
  if (!parsed.ok || words === '') return null;
  const { value } = parsed.value;
  return value >= 0 && value <= HIGHEST_OF_CLIP ? value : null;
}

function shareIn(text: string | undefined): number | null {
  const [, percent] = /^(\d{1,3}(?:\.\d+)?)\s*%$/.exec(text?.trim() ?? '') ?? [];
  return percent === undefined ? null : Number(percent) / 100;
}
