/** A script with its numbers as a reader at a terminal meets it, what is to be looked at behind each line. */

import type { Place } from '../../../study/model.ts';
import type { NumbersRecord, ResolvedScript, ScriptFlag } from '../../../telling/script/index.ts';
import { resolvedNumbersIn } from '../../../telling/script/index.ts';
import { wrapped } from './wrap.ts';

export interface ScriptParts {
  readonly script: ResolvedScript;
  readonly flags: readonly ScriptFlag[];
  readonly record: NumbersRecord | null;
  readonly placeOf: (offset: number) => Place;
  readonly caution: string;
}

const INDENT = '  ';

export function scriptText({ script, flags, record, placeOf, caution }: ScriptParts, width: number): string {
  const blocks = script.scenes.flatMap(({ scene, lines }) => [
    wrapped(scene.name, width),
    ...lines.map(({ line, text }) => {
      const shown = scene.shown.filter(({ at }) => at === line.id);
      const own = flags.filter((flag) => flag.line === line.id);
      return [
        ...shown.map(({ words }) => wrapped(words, width, `${INDENT}  `, `${INDENT}> `)),
        wrapped(text, width, INDENT),
        ...own.map((flag) => flagText(flag, placeOf(flag.from), width)),
      ].join('\n');
    }),
  ]);
  const title = script.script.title;
  return [
    ...(title === '' ? [] : [wrapped(title, width)]),
    ...blocks,
    wrapped(summary(script, flags, record), width),
    wrapped(caution, width),
  ].join('\n\n');
}

function flagText({ fails, words }: ScriptFlag, { line, column }: Place, width: number): string {
  return wrapped(words, width, `${INDENT}    `, `${INDENT}${fails ? '!!' : '! '} ${line}:${column} `);
}

function summary(
  { scenes }: ResolvedScript,
  flags: readonly ScriptFlag[],
  record: NumbersRecord | null,
): string {
  const lines = scenes.flatMap((scene) => scene.lines);
  const numbers = lines.flatMap(resolvedNumbersIn).length;
  const failing = [...new Set(flags.filter(({ fails }) => fails).map(({ line }) => line))];
  const recorded = record === null && numbers > 0 ? ' Its numbers are not recorded: --record does it.' : '';
  const last =
    failing.length === 0 ? 'Nothing that is said fails.' : `Not to be said so: ${failing.join(', ')}.`;
  return `${scenes.length} scenes, ${lines.length} lines, ${numbers} live numbers, ${flags.length} to look at.${recorded} ${last}`;
}
