/** The script of a study as a reviewer signs it: line by line, its live numbers as they read. */

import type { Crew } from '../../answer/asked/crew.ts';
import { type Reviewable, scriptReviewable } from '../../answer/review/index.ts';
import type { Study } from '../../study/model.ts';
import { SCRIPT_FILE } from '../../study/script/index.ts';
import type { ScriptParts } from '../../telling/handover/timedCuts.ts';
import { linesOf, readScriptOf, resolveScript, tellScript } from '../../telling/script/index.ts';
import { readScriptText } from '../disk/scriptFile.ts';

/** Null where there is none. */
export async function scriptToReview(study: Study, folder: string, crew: Crew): Promise<Reviewable | null> {
  const text = await readScriptText(folder);
  if (text === null) return null;
  const read = readScriptOf(text, study, SCRIPT_FILE);
  return reviewableOf({ read, text, told: await tellScript(study, read, crew) });
}

export function reviewableOf({ read: { script }, told }: ScriptParts): Reviewable {
  const lines = linesOf(resolveScript(script, told)).map(({ line, text }) => ({ id: line.id, text }));
  return scriptReviewable(script.title, lines);
}
