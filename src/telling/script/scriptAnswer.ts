/** What `plumeline script --json` prints and every face shows. */

import type { CAUTION } from '../../answer/caution.ts';
import type { Problem } from '../../numerics/problem.ts';
import type { Place, StudyProblem } from '../../study/model.ts';
import type { ResolvedScript, ScriptFlag } from './model.ts';
import { resolvedNumbersIn } from './resolveScript.ts';

export interface ScriptAnswer {
  readonly format: 'plumeline script 1';
  readonly caution: typeof CAUTION;
  readonly title: string;
  readonly scenes: readonly AnswerScene[];
  readonly flags: readonly (ScriptFlag & { readonly place: Place })[];
  readonly problems: readonly StudyProblem[];
}

export interface AnswerScene {
  readonly id: string;
  readonly name: string;
  readonly shown: readonly { readonly at: string; readonly figure: string | null; readonly words: string }[];
  readonly lines: readonly AnswerLine[];
}

export interface AnswerLine {
  readonly id: string;
  readonly text: string;
  /** With the live numbers as they are said aloud. */ readonly spoken: string;
  readonly weight: number;
  readonly relies: readonly string[];
  readonly says: string | null;
  /** [s] */ readonly pause: number;
  readonly numbers: readonly AnswerNumber[];
}

export interface AnswerNumber {
  readonly expression: string;
  readonly text: string;
  readonly spoken: string;
  /** [SI] */ readonly value: number | null;
  readonly low: number | null;
  readonly high: number | null;
  readonly unit: string;
  readonly problem: Problem | null;
}

export function scriptAnswer(
  { script, scenes }: ResolvedScript,
  flags: readonly ScriptFlag[],
  problems: readonly StudyProblem[],
  caution: typeof CAUTION,
  placeOf: (offset: number) => Place,
): ScriptAnswer {
  return {
    format: 'plumeline script 1',
    caution,
    title: script.title,
    scenes: scenes.map(({ scene, lines }) => ({
      id: scene.id,
      name: scene.name,
      shown: scene.shown.map(({ at, figure, words }) => ({ at, figure: figure ?? null, words })),
      lines: lines.map((resolved) => {
        const { id, weight, relies, says, pause } = resolved.line;
        return {
          id,
          text: resolved.text,
          spoken: resolved.spoken,
          weight,
          relies,
          says: says ?? null,
          pause,
          numbers: resolvedNumbersIn(resolved).map(
            ({ piece, text, spoken, value, low, high, unit, problem }) => ({
              expression: piece.expression,
              text,
              spoken,
              value,
              low,
              high,
              unit,
              problem,
            }),
          ),
        };
      }),
    })),
    flags: flags.map((flag) => ({ ...flag, place: placeOf(flag.from) })),
    problems,
  };
}
