/** Seconds of a script: spoken words by a pace, and pauses; each line to a tenth, so that the sums are those of what is shown. */

import type { Scene, Script, ScriptLine } from '../../study/script/model.ts';
import type { NumbersTold, TimedLine, TimedScript } from './model.ts';
import { saidWords } from './saidWords.ts';

/** A scene of so many live numbers is said at the slower pace. */
export const DENSE_FROM = 3;

/** Words a minute of each scene, by id. */
export type Paces = ReadonlyMap<string, number>;

export function pacesOf({ scenes, pace, densePace }: Script): Paces {
  return new Map(scenes.map((scene) => [scene.id, numbersIn(scene) >= DENSE_FROM ? densePace : pace]));
}

const numbersIn = ({ lines }: Scene): number =>
  lines.reduce((sum, { pieces }) => sum + pieces.filter(({ kind }) => kind === 'number').length, 0);

/** @param paces those of the whole script, where this is a cut of it */
export function timeScript(
  script: Script,
  numbers: NumbersTold,
  paces: Paces = pacesOf(script),
): TimedScript {
  let [tenths, words] = [0, 0];
  const scenes = script.scenes.map((scene) => {
    const [start, pace] = [tenths, paces.get(scene.id) ?? script.pace];
    const lines = scene.lines.map((line): TimedLine => {
      const count = countOf(line, saidText(line, numbers));
      const pause = tenthsOf(line.pause);
      const length = tenthsOf((60 * count) / pace) + pause;
      const timed = { words: count, pace, start: tenths / 10, seconds: length / 10, pause: pause / 10 };
      tenths += length;
      words += count;
      return { id: line.id, scene: scene.id, ...timed };
    });
    return { id: scene.id, name: scene.name, pace, start: start / 10, seconds: (tenths - start) / 10, lines };
  });
  return { scenes, words, seconds: tenths / 10 };
}

/** A line whose words are what they were is not counted again. */
const counted = new WeakMap<ScriptLine, { readonly said: string; readonly count: number }>();

function countOf(line: ScriptLine, said: string): number {
  const known = counted.get(line);
  if (known?.said === said) return known.count;
  const count = saidWords(said).length;
  counted.set(line, { said, count });
  return count;
}

export const tenthsOf = (seconds: number): number => Math.round(10 * seconds);

/** A line as it is read. */
export function writtenText({ pieces }: ScriptLine, numbers: NumbersTold): string {
  return pieces.map((piece) => (piece.kind === 'words' ? piece.text : numbers(piece).written)).join('');
}

/** A line as it is said, live numbers in words. */
export function saidText({ pieces }: ScriptLine, numbers: NumbersTold): string {
  return pieces.map((piece) => (piece.kind === 'words' ? piece.text : numbers(piece).said)).join('');
}
