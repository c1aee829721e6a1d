/** A cut as a reader at a terminal meets it: what it keeps and what goes, with the reason and the time of each line. */

import type { Script } from '../../../study/script/model.ts';
import type { Cut, CutLine } from '../../../telling/cut/model.ts';
import type { TimedScript } from '../../../telling/time/model.ts';
import { secondsText } from './secondsText.ts';
import { padEnd, wrapped } from './wrap.ts';

const INDENT = '  ';

export function cutText(
  cut: Cut,
  timed: TimedScript,
  script: Script,
  caution: string,
  width: number,
): string {
  const blocks = script.scenes.map(({ id, name }) => {
    const lines = cut.lines.filter(({ scene }) => scene === id);
    const kept = timed.scenes.find((scene) => scene.id === id);
    const time =
      kept === undefined ? 'left out' : `${secondsText(kept.seconds)} at ${kept.pace} words a minute`;
    return [wrapped(`${name}: ${time}`, width), ...lines.map((line) => lineText(line, width))].join('\n');
  });
  return [summary(cut, width), ...blocks, ...needs(cut, width), wrapped(caution, width)].join('\n\n');
}

function lineText({ id, kept, because, with: others, seconds, weight }: CutLine, width: number): string {
  const head = `${kept ? 'keep' : 'drop'} ${padEnd(id, 16)}`;
  const behind = others.length === 0 ? '' : ` (${kept ? 'with' : 'needs'} ${others.join(', ')})`;
  return wrapped(
    `${head} ${secondsText(seconds)}, weight ${weight}: ${because}${behind}`,
    width,
    `${INDENT}${INDENT}${INDENT}`,
    INDENT,
  );
}

function summary({ target, seconds, whole, weight, wholeWeight, short }: Cut, width: number): string {
  const sure =
    short === 0
      ? 'No cut of this length weighs more.'
      : `The script is too tangled to be sure: another cut may weigh up to ${short} more.`;
  if (seconds === whole)
    return wrapped(
      `The whole script takes ${secondsText(whole)} of ${secondsText(target)}: nothing has to go.`,
      width,
    );
  return wrapped(
    `${secondsText(seconds)} of ${secondsText(target)}, from ${secondsText(whole)}; weight ${weight} of ${wholeWeight}. ${sure}`,
    width,
  );
}

const needs = ({ verdictNeeds }: Cut, width: number): readonly string[] =>
  verdictNeeds.map(({ line, sentence, dropped }) =>
    wrapped(
      `The line ${line} says the sentence ${sentence}, of which ${dropped.join(', ')} says a part and is dropped: read it without.`,
      width,
    ),
  );
