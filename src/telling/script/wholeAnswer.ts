/** From a script that is read and told to all that a face shows of it, whole or cut. */

import { CAUTION } from '../../answer/caution.ts';
import type { ToldNumbers } from '../../answer/numbers/index.ts';
import type { Study } from '../../study/model.ts';
import { placesIn, type ScriptRead } from '../../study/script/index.ts';
import type { Cut } from '../cut/model.ts';
import { proposeCut } from '../cut/proposeCut.ts';
import { pacesOf, timeScript } from '../time/timeScript.ts';
import type { HandNumber } from './handNumbers.ts';
import type { ResolvedScript, ScriptFlag } from './model.ts';
import { numbersTold } from './numbersTold.ts';
import type { NumbersRecord } from './record.ts';
import { resolveScript } from './resolveScript.ts';
import type { Judged } from './saidFlags.ts';
import { type ScriptAnswer, scriptAnswer } from './scriptAnswer.ts';
import { scriptFlags } from './scriptFlags.ts';

export interface ScriptInHand {
  readonly text: string;
  readonly read: ScriptRead;
  readonly study: Study;
  readonly told: ToldNumbers;
  readonly judged: readonly Judged[];
  readonly byHand: readonly HandNumber[];
  readonly record: NumbersRecord | null;
}

export interface ScriptFound {
  readonly answer: ScriptAnswer;
  readonly resolved: ResolvedScript;
  readonly flags: readonly ScriptFlag[];
  readonly cut: Cut | null;
}

/**
 * @param cut name of one of the cuts that the script asks for; null: the whole
 * @throws ProblemError where the cut cannot be made
 */
export function scriptFound(
  { text, read, study, told, judged, byHand, record }: ScriptInHand,
  cut: string | null,
): ScriptFound {
  const { script: whole, problems } = read;
  const numbers = numbersTold(told, whole.units);
  const wish = whole.cuts.find(({ name }) => name === cut);
  const found = wish === undefined ? null : proposeCut(whole, numbers, wish);
  const script = found?.script ?? whole;
  const resolved = resolveScript(script, told);
  const kept = new Set(resolved.scenes.flatMap(({ lines }) => lines.map(({ line }) => line.id)));
  const flags = scriptFlags(resolved, {
    told,
    study,
    judged,
    byHand: byHand.filter(({ line }) => kept.has(line)),
    record,
  });
  const answer = scriptAnswer({
    script: resolved,
    flags,
    problems,
    timed: timeScript(script, numbers, pacesOf(whole)),
    cuts: whole.cuts,
    cut: wish === undefined || found === null ? null : { name: wish.name, found },
    caution: CAUTION,
    placeOf: placesIn(text),
  });
  return { answer, resolved, flags, cut: found };
}
