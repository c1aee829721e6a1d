/** The words of a script as captions show them, each with the time at which it is said. */

import type { Script } from '../../study/script/model.ts';
import { plainText } from '../scene/safeText.ts';
import type { NumbersTold, TimedLine, TimedScript } from '../time/model.ts';
import { writtenTokens } from '../time/saidWords.ts';
import { writtenText } from '../time/timeScript.ts';

/** A word, or a number with its unit: it is not parted. */
export interface CueWord {
  readonly text: string;
  /** [s] */ readonly start: number;
  readonly end: number;
  /** Spoken words. */ readonly words: number;
  /** A silence or a new line follows. */ readonly endsLine: boolean;
  /** The scene ends here. */ readonly endsScene: boolean;
}

/** @param timed the same script */
export function cueWords(
  script: Script,
  numbers: NumbersTold,
  timed: TimedScript,
  row: number,
): readonly CueWord[] {
  return script.scenes.flatMap((scene, s) => {
    const words = scene.lines.flatMap((line, l) =>
      wordsOfLine(writtenText(line, numbers), timed.scenes[s]!.lines[l]!, row),
    );
    return words.map((word, i) => (i === words.length - 1 ? { ...word, endsScene: true } : word));
  });
}

function wordsOfLine(text: string, { start, seconds, pause }: TimedLine, row: number): readonly CueWord[] {
  const tokens = writtenTokens(plainText(text)).flatMap(({ written, said }) =>
    partsOf(written, row).map((part, _, all) => ({ part, words: said.length / all.length })),
  );
  const total = tokens.reduce((sum, { words }) => sum + words, 0);
  const spoken = seconds - pause;
  let before = 0;
  return tokens.map(({ part, words }, i): CueWord => {
    const from = start + (total === 0 ? 0 : (spoken * before) / total);
    before += words;
    const to = start + (total === 0 ? 0 : (spoken * before) / total);
    return { text: part, start: from, end: to, words, endsLine: i === tokens.length - 1, endsScene: false };
  });
}

/** A word longer than a row goes on in the next. */
function partsOf(written: string, row: number): readonly string[] {
  const signs = [...written];
  if (written.length <= row) return [written];
  if (written.includes('\u00a0')) return written.split('\u00a0').flatMap((part) => partsOf(part, row));
  const parts: string[] = [];
  let open = '';
  for (const sign of signs) {
    if (open.length + sign.length > row) {
      parts.push(open);
      open = '';
    }
    open += sign;
  }
  return [...parts, open];
}
