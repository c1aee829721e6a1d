/** Captions of a film as a row of spoken tokens, each with its time: words share the time of their caption. */

import type { Passage } from '../../answer/claims/model.ts';
import { type SpokenToken, spokenTokens } from './spokenTokens.ts';

export interface FilmToken extends SpokenToken {
  /** [s] */ readonly start: number;
  readonly end: number;
}

interface CueText {
  readonly text: string;
  readonly start: number;
  readonly end: number;
}

/** @param passages of captions, in the order of the file */
export function filmTokens(passages: readonly Passage[]): readonly FilmToken[] {
  const cues = cuesOf(passages);
  // A number may go on in the next caption.
  const whole = cues.map(({ text }) => text).join(' ');
  const ends: number[] = [];
  for (const { text } of cues) ends.push((ends.at(-1) ?? -1) + 1 + text.length);
  const tokens = spokenTokens(whole);
  let cue = 0;
  const placed = tokens.map((token) => {
    while (token.from >= ends[cue]!) cue += 1;
    return { token, cue };
  });
  const words = cues.map(() => 0);
  for (const { token, cue: own } of placed) words[own]! += token.words;
  const before = cues.map(() => 0);
  return placed.map(({ token, cue: own }): FilmToken => {
    const { start, end } = cues[own]!;
    const each = (end - start) / words[own]!;
    const from = start + each * before[own]!;
    before[own]! += token.words;
    return { ...token, start: from, end: start + each * before[own]! };
  });
}

/** Rows of one caption in one; a caption that repeats the last row of the one before it says it once. */
function cuesOf(passages: readonly Passage[]): readonly CueText[] {
  const cues: (CueText & { readonly rows: readonly string[] })[] = [];
  let shown: readonly string[] = [];
  for (const { text, time, until } of passages) {
    if (text === '' || time === null || until === null) continue;
    const last = cues.at(-1);
    if (last !== undefined && last.start === time && last.end === until) {
      cues[cues.length - 1] = { ...last, text: `${last.text} ${text}`.trim(), rows: [...last.rows, text] };
    } else {
      shown = last?.rows ?? [];
      const isRepeated = shown.at(-1) === text && last !== undefined && time - last.end < ROLL;
      cues.push({ text: isRepeated ? '' : text, start: time, end: until, rows: [text] });
    }
  }
  return cues.filter(({ text }) => text !== '');
}

/** [s] Captions that roll follow each other without a gap. */
const ROLL = 0.05;
