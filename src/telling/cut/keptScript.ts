/** A script of the kept lines alone. What is shown stays while a line is said that it was shown with. */

import type { Scene, Script, Shown } from '../../study/script/model.ts';

/** @param kept ids of lines */
export function keptScript(script: Script, kept: ReadonlySet<string>): Script {
  const scenes = script.scenes.flatMap((scene): readonly Scene[] => {
    const lines = scene.lines.filter(({ id }) => kept.has(id));
    return lines.length === 0 ? [] : [{ ...scene, lines, shown: shownWith(scene, kept) }];
  });
  return { ...script, cuts: [], scenes };
}

/** Each moves to the first kept line before the next one begins; without such a line it goes. */
export function shownWith({ lines, shown }: Scene, kept: ReadonlySet<string>): readonly Shown[] {
  const placeOf = (id: string): number => lines.findIndex((line) => line.id === id);
  return shown.flatMap((one) => {
    const from = placeOf(one.at);
    const later = shown.map(({ at }) => placeOf(at)).filter((place) => place > from);
    const until = Math.min(lines.length, ...later);
    const first = lines.slice(from, until).find(({ id }) => kept.has(id));
    return first === undefined ? [] : [{ ...one, at: first.id }];
  });
}
