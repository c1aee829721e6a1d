/** Checked sentences that a cut says in part: the verdict was given to all of their words. */

import type { Script } from '../../study/script/model.ts';
import type { VerdictNeed } from './model.ts';

/** @param kept ids of lines */
export function verdictNeeds({ scenes }: Script, kept: ReadonlySet<string>): readonly VerdictNeed[] {
  const lines = scenes.flatMap((scene) => scene.lines);
  return lines.flatMap(({ id, says }): readonly VerdictNeed[] => {
    if (says === undefined || !kept.has(id)) return [];
    const dropped = lines.filter((line) => line.says === says && !kept.has(line.id));
    return dropped.length === 0
      ? []
      : [{ line: id, sentence: says, dropped: dropped.map((line) => line.id) }];
  });
}
