/** A script with its numbers as a reader at a terminal meets it, what is to be looked at behind each line. */

import { clock, type NumbersRecord, type ScriptAnswer } from '../../../telling/script/index.ts';
import { counted } from './counted.ts';
import { wrapped } from './wrap.ts';

export interface ScriptParts {
  readonly answer: ScriptAnswer;
  readonly record: NumbersRecord | null;
}

const INDENT = '  ';

export function scriptText({ answer, record }: ScriptParts, width: number): string {
  const { title, scenes, caution } = answer;
  const blocks = scenes.flatMap(({ name, start, seconds, shown, lines }) => [
    wrapped(`${name}  (${clock(start)}, ${Math.round(seconds)} s)`, width),
    ...lines.map(({ id, text }) =>
      [
        ...shown
          .filter(({ at }) => at === id)
          .map(({ words }) => wrapped(words, width, `${INDENT}  `, `${INDENT}> `)),
        wrapped(text, width, INDENT),
        ...answer.flags.filter(({ line }) => line === id).map((flag) => flagText(flag, width)),
      ].join('\n'),
    ),
  ]);
  const parts = [title, ...blocks, cutText(answer, width), wrapped(summary(answer, record), width)];
  return [...parts.filter((part) => part !== ''), wrapped(caution, width)].join('\n\n');
}

function flagText({ fails, words, place }: ScriptAnswer['flags'][number], width: number): string {
  return wrapped(
    words,
    width,
    `${INDENT}    `,
    `${INDENT}${fails ? '!!' : '! '} ${place.line}:${place.column} `,
  );
}

/** What is left out of a cut, and why. */
function cutText({ cut, seconds }: ScriptAnswer, width: number): string {
  if (cut === null) return '';
  const left = cut.lines.filter(({ kept }) => !kept);
  const why = (reason: string): string =>
    left
      .filter(({ because }) => because === reason)
      .map(({ id }) => id)
      .join(', ');
  const reasons = [...new Set(left.map(({ because }) => because))].map(
    (reason) => `${reason}: ${why(reason)}`,
  );
  const open =
    cut.short > 0 ? ' A heavier cut may exist: the lines rely on each other too much to be sure.' : '';
  return [
    wrapped(
      `Cut “${cut.name}”: ${clock(seconds)} of ${clock(cut.target)} asked for; the whole takes ${clock(cut.whole)}.${open}`,
      width,
    ),
    ...reasons.map((reason) => wrapped(reason, width, INDENT.repeat(2), `${INDENT}Left out, `)),
  ].join('\n');
}

function summary({ scenes, flags, words, seconds }: ScriptAnswer, record: NumbersRecord | null): string {
  const lines = scenes.flatMap((scene) => scene.lines);
  const numbers = lines.flatMap((line) => line.numbers).length;
  const failing = [...new Set(flags.filter(({ fails }) => fails).map(({ line }) => line))];
  const recorded = record === null && numbers > 0 ? ' Its numbers are not recorded: --record does it.' : '';
  const last =
    failing.length === 0 ? 'Nothing that is said fails.' : `Not to be said so: ${failing.join(', ')}.`;
  return `${clock(seconds)}: ${counted(words, 'word')} in ${counted(scenes.length, 'scene')} and ${counted(lines.length, 'line')}, ${counted(numbers, 'live number')}, ${flags.length === 0 ? 'nothing' : flags.length} to look at.${recorded} ${last}`;
}
