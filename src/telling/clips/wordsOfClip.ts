/** What the words behind a clip's name ask for: `cut-climb from 5 km to vacuum`, `cut-throttle at 10 km from 100 % to 60 %`. */

import { parseQuantity } from '../../study/index.ts';
import type { Altitude } from '../figures/options.ts';
import type { ClipRequest } from './clipKinds.ts';

/** [m] Above it the scale of the figures goes over into vacuum. */
export const HIGHEST_OF_CLIP = 60_000;

/** What is not understood is left to the usual one; `notesOnWords` says so. */
export function wordsOfClip(words: string): Partial<Pick<ClipRequest, 'from' | 'to' | 'at' | 'throttles'>> {
  const { ends, place } = partsOf(words);
  const [from, to] = [altitudeIn(ends[0]), altitudeIn(ends[1])];
  const [first, last] = [shareIn(ends[0]), shareIn(ends[1])];
  const at = altitudeIn(place);
  return {
    ...(from !== null && to !== null && from !== to && { from, to }),
    ...(at !== null && { at }),
    ...(first !== null && last !== null && first !== last && { throttles: [first, last] as const }),
  };
}

/** Of words that ask for what cannot be filmed: what they are, and what is shown instead. */
export function notesOnWords(words: string): readonly string[] {
  const { ends, place } = partsOf(words);
  const { from, throttles, at } = wordsOfClip(words);
  const unmet = [
    ...(ends.length > 0 && from === undefined && throttles === undefined ? [whyNoWay(ends)] : []),
    ...(place !== undefined && at === undefined ? [whyNoPlace(place)] : []),
  ];
  return unmet.map((why) => `“${words}” is filmed without what it asks for: ${why}`);
}

function whyNoWay(ends: readonly string[]): string {
  const bad = ends.find((end) => altitudeIn(end) === null && shareIn(end) === null);
  if (bad !== undefined) return whyNoPlace(bad);
  return `from ${ends.join(' to ')} nothing moves; give two altitudes, or two shares of full thrust.`;
}

function whyNoPlace(text: string): string {
  return `“${text}” is no altitude from pad to ${HIGHEST_OF_CLIP / 1000} km, and not vacuum.`;
}

function partsOf(words: string): { readonly ends: readonly string[]; readonly place: string | undefined } {
  const [, ...ends] = /\bfrom (.+?) to (.+?)(?= at |[,.;:](?!\d)|$)/.exec(words) ?? [];
  const [, place] = /\bat (?:the )?(.+?)(?= from |[,.;:](?!\d)|$)/.exec(words) ?? [];
  return { ends, place };
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
