/** The script of the study in hand, rendered for the page; what was told once is kept as long as the study is. */

import type { Crew } from '../../../answer/asked/crew.ts';
import { type ToldNumber, tellNumbers } from '../../../answer/numbers/index.ts';
import { checkFacts } from '../../../answer/sentences/index.ts';
import { type Outcome, ProblemError } from '../../../numerics/problem.ts';
import type { Study } from '../../../study/model.ts';
import {
  expressionsOf,
  handNumbers,
  readRecord,
  readScriptOf,
  recordOf,
  resolveScript,
  scriptFound,
} from '../../../telling/script/index.ts';
import type { ScriptAsked, ScriptShown } from './deskMessages.ts';

const toldOf = new WeakMap<Study, Map<string, ToldNumber>>();

export async function scriptFor(
  study: Study,
  crew: Crew,
  { text, judged, record, cut }: ScriptAsked,
  signal: AbortSignal,
): Promise<Outcome<ScriptShown>> {
  const read = readScriptOf(text, study);
  const known = toldOf.get(study) ?? new Map<string, ToldNumber>();
  toldOf.set(study, known);
  const wanted = expressionsOf(read.script).filter((expression) => !known.has(expression));
  try {
    for (const told of (await tellNumbers(study, wanted, crew, { signal })).values()) {
      known.set(told.expression, told);
    }
    const hand = {
      text,
      read,
      study,
      told: known,
      judged: [...judged, ...checkFacts(study)],
      byHand: handNumbers(read.script, study),
      record: record === null ? null : readRecord(record),
    };
    const { answer } = scriptFound(hand, cut);
    const numbers = JSON.stringify(recordOf(resolveScript(read.script, known)), null, 2);
    return { ok: true, value: { answer, record: `${numbers}\n` } };
  } catch (error) {
    if (error instanceof ProblemError) return { ok: false, problem: error.problem };
    throw error;
  }
}
