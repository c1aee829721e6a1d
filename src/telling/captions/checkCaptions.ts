/** Captions held against the rules: every breach with the caption, what was found and what is allowed. */

import { BAD_BREAK, breakCost } from './breaks.ts';
import type { CaptionBreach, CaptionRule, Cue } from './model.ts';
import { CAPTION_RULES, type CaptionRules } from './rules.ts';

/** [s] Times are written in thousandths. */
const ROUNDING = 0.0015;

export function checkCaptions(
  cues: readonly Cue[],
  rules: CaptionRules = CAPTION_RULES,
): readonly CaptionBreach[] {
  return cues.flatMap((cue, i) => breachesOf(cue, cues[i - 1], i + 1, rules));
}

function breachesOf(cue: Cue, before: Cue | undefined, number: number, rules: CaptionRules) {
  const found: CaptionBreach[] = [];
  const tell = (rule: CaptionRule, value: number, allowed: number, words: string): void => {
    found.push({ cue: number, rule, found: value, allowed, words: `Caption ${number} ${words}.` });
  };
  const seconds = cue.end - cue.start;
  const behind = before?.end ?? 0;
  if (!(seconds > 0)) tell('order', seconds, 0, 'ends before it begins');
  if (cue.start < behind - ROUNDING)
    tell('order', cue.start, behind, 'begins before the one ahead of it ends');
  if (cue.rows.length === 0 || cue.rows.some((row) => row.trim() === ''))
    tell('empty', 0, 1, 'has an empty row');
  if (cue.rows.length > rules.rows) {
    tell('rows', cue.rows.length, rules.rows, `has ${cue.rows.length} rows; ${rules.rows} are read`);
  }
  for (const row of cue.rows) {
    if (row.length <= rules.row) continue;
    tell('row-length', row.length, rules.row, `has a row of ${row.length} signs; ${rules.row} fit`);
  }
  if (seconds < rules.shortest - ROUNDING) {
    tell(
      'too-short',
      seconds,
      rules.shortest,
      `stands for ${told(seconds)} s; ${rules.shortest} s is the least`,
    );
  }
  if (seconds > rules.longest + ROUNDING) {
    tell('too-long', seconds, rules.longest, `stands for ${told(seconds)} s; ${rules.longest} s is the most`);
  }
  const needed = (60 * cue.words) / rules.fastest;
  if (seconds > 0 && seconds < needed - ROUNDING) {
    const pace = (60 * cue.words) / seconds;
    tell(
      'too-fast',
      pace,
      rules.fastest,
      `asks for ${Math.round(pace)} words a minute; ${rules.fastest} are read`,
    );
  }
  const [upper, lower] = cue.rows;
  if (upper !== undefined && lower !== undefined) {
    const cost = breakCost(upper.split(' ').at(-1) ?? '', lower.split(' ')[0] ?? '');
    if (cost >= BAD_BREAK && hasBetterBreak(cue, rules)) {
      tell(
        'break',
        cost,
        BAD_BREAK,
        `parts words that belong together: “${upper.split(' ').at(-1)} / ${lower.split(' ')[0]}”`,
      );
    }
  }
  return found;
}

/** Another place in the same words, within the rows. */
function hasBetterBreak({ rows }: Cue, rules: CaptionRules): boolean {
  const words = rows.join(' ').split(' ');
  return words.some((word, i) => {
    if (i === 0) return false;
    const upper = words.slice(0, i).join(' ').length;
    const lower = words.slice(i).join(' ').length;
    return upper <= rules.row && lower <= rules.row && breakCost(words[i - 1]!, word) < BAD_BREAK;
  });
}

const told = (seconds: number): string => seconds.toFixed(2);
