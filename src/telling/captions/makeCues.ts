/**
 * Captions of a script: of all ways to part its words, the one of least cost, found over all places by dynamic programming
 *
 *   best(j) = min over i < j of best(i) + cost(i, j)
 *
 * so that each is read in time, and breaks fall where the speech pauses (docs/methods/telling.md).
 */

import type { Script } from '../../study/script/model.ts';
import type { NumbersTold, TimedScript } from '../time/model.ts';
import { timeScript } from '../time/timeScript.ts';
import { type CueWord, cueWords } from './cueWords.ts';
import { type LaidOut, layOut, type Parts, partsOf } from './layOut.ts';
import type { Cue } from './model.ts';
import { CAPTION_RULES, type CaptionRules } from './rules.ts';

/** Against one break of the worst kind. */
const COST = { tooShort: 200, tooLong: 60, acrossScenes: 150, acrossPause: 40, acrossLines: 3, cue: 2 };
/** [s] From here on a silence parts captions. */
const PAUSE = 0.6;

export function makeCues(
  script: Script,
  numbers: NumbersTold,
  timed: TimedScript = timeScript(script, numbers),
  rules: CaptionRules = CAPTION_RULES,
): readonly Cue[] {
  const words = cueWords(script, numbers, timed, rules.row);
  return parted(words, rules).map((cue) => ({
    ...cue,
    start: thousandths(cue.start),
    end: thousandths(cue.end),
  }));
}

const thousandths = (seconds: number): number => Math.round(1000 * seconds) / 1000;

function parted(words: readonly CueWord[], rules: CaptionRules): readonly Cue[] {
  const parts = partsOf(words.map(({ text }) => text));
  const best: number[] = [0];
  const from: number[] = [0];
  const laid: (LaidOut | null)[] = [null];
  for (let j = 1; j <= words.length; j++) {
    best[j] = Number.POSITIVE_INFINITY;
    for (let i = j - 1; i >= 0; i--) {
      const rows = layOut(parts, i, j, rules);
      if (rows === null) break;
      const cost = best[i]! + rows.cost + costOf(words, parts, i, j, rules);
      if (cost < best[j]!) [best[j], from[j], laid[j]] = [cost, i, rows];
    }
  }
  const cues: Cue[] = [];
  for (let j = words.length; j > 0; j = from[j]!) {
    const own = words.slice(from[j], j);
    const { start, end } = timesOf(words, from[j]!, j, rules);
    cues.push({ start, end, rows: laid[j]!.rows, words: own.reduce((sum, word) => sum + word.words, 0) });
  }
  return cues.reverse();
}

/** From its first word to its last; longer into the silence behind it where it would be too short to read. */
function timesOf(words: readonly CueWord[], i: number, j: number, rules: CaptionRules) {
  const { start } = words[i]!;
  const { end } = words[j - 1]!;
  const count = words.slice(i, j).reduce((sum, word) => sum + word.words, 0);
  const needed = Math.max(rules.shortest, (60 * count) / rules.fastest);
  const next = words[j]?.start ?? Number.POSITIVE_INFINITY;
  const held = Math.min(Math.max(end, start + needed), next, start + rules.longest);
  return { start, end: held, needed };
}

function costOf(
  words: readonly CueWord[],
  { breaks }: Parts,
  i: number,
  j: number,
  rules: CaptionRules,
): number {
  const { start, end, needed } = timesOf(words, i, j, rules);
  const last = words[j - 1]!;
  const after = words[j];
  let cost = COST.cue;
  if (after !== undefined && !last.endsScene) cost += breaks[j - 1]!;
  if (end - start < needed - 1e-6) cost += COST.tooShort * (needed - (end - start));
  if (last.end - start > rules.longest) cost += COST.tooLong * (last.end - start - rules.longest);
  for (let k = i; k < j - 1; k++) {
    if (words[k]!.endsScene) cost += COST.acrossScenes;
    else if (words[k]!.endsLine) cost += COST.acrossLines;
    if (words[k + 1]!.start - words[k]!.end >= PAUSE) cost += COST.acrossPause;
    else if (breaks[k] === 0) cost += COST.acrossLines;
  }
  return cost;
}
