/** What `plumeline script --json` prints and every face shows. */

import type { CAUTION } from '../../answer/caution.ts';
import type { Problem } from '../../numerics/problem.ts';
import type { Place, StudyProblem } from '../../study/model.ts';
import type { Cut, CutLine } from '../cut/model.ts';
import type { TimedLine, TimedScript } from '../time/model.ts';
import type { ResolvedLine, ResolvedScript, ScriptFlag } from './model.ts';
import { resolvedNumbersIn } from './resolveScript.ts';

export interface ScriptAnswer {
  readonly format: 'plumeline script 1';
  readonly caution: typeof CAUTION;
  readonly title: string;
  /** Spoken. */ readonly words: number;
  /** [s] */ readonly seconds: number;
  /** Cuts that the script asks for. */ readonly cuts: readonly {
    readonly name: string;
    readonly length: number;
  }[];
  /** Null: the whole script. */ readonly cut: AnswerCut | null;
  readonly scenes: readonly AnswerScene[];
  readonly flags: readonly (ScriptFlag & { readonly place: Place })[];
  readonly problems: readonly StudyProblem[];
}

export interface AnswerCut {
  readonly name: string;
  /** [s] asked for. */ readonly target: number;
  /** [s] of the whole script. */ readonly whole: number;
  /** No cut of this length weighs more than this beyond it. */ readonly short: number;
  /** Every line of the whole, with why it is in or out. */ readonly lines: readonly CutLine[];
}

export interface AnswerScene {
  readonly id: string;
  readonly name: string;
  /** Words a minute. */ readonly pace: number;
  /** [s] */ readonly start: number;
  readonly seconds: number;
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
  /** [s] from the beginning. */ readonly start: number;
  /** [s] said and paused. */ readonly seconds: number;
  /** [s] of it silent behind the words. */ readonly pause: number;
  /** The text in parts: words, and places among the numbers. */ readonly parts: readonly (string | number)[];
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

export interface AnswerParts {
  readonly script: ResolvedScript;
  readonly flags: readonly ScriptFlag[];
  readonly problems: readonly StudyProblem[];
  readonly timed: TimedScript;
  /** What the script asks for. */ readonly cuts: ScriptAnswer['cuts'];
  readonly cut: { readonly name: string; readonly found: Cut } | null;
  readonly caution: typeof CAUTION;
  readonly placeOf: (offset: number) => Place;
}

export function scriptAnswer(parts: AnswerParts): ScriptAnswer {
  const { script, flags, problems, timed, cuts, cut, caution, placeOf } = parts;
  return {
    format: 'plumeline script 1',
    caution,
    title: script.script.title,
    words: timed.words,
    seconds: timed.seconds,
    cuts: cuts.map(({ name, length }) => ({ name, length })),
    cut: cut === null ? null : answerCut(cut.name, cut.found),
    scenes: script.scenes.map(({ scene, lines }, i) => {
      const { pace, start, seconds, lines: times } = timed.scenes[i]!;
      return {
        id: scene.id,
        name: scene.name,
        pace,
        start,
        seconds,
        shown: scene.shown.map(({ at, figure, words }) => ({ at, figure: figure ?? null, words })),
        lines: lines.map((line, k) => answerLine(line, times[k]!)),
      };
    }),
    flags: flags.map((flag) => ({ ...flag, place: placeOf(flag.from) })),
    problems,
  };
}

const answerCut = (name: string, { target, whole, short, lines }: Cut): AnswerCut => ({
  name,
  target,
  whole,
  short,
  lines,
});

function answerLine(resolved: ResolvedLine, { start, seconds, pause }: TimedLine): AnswerLine {
  const { id, weight, relies, says } = resolved.line;
  let next = 0;
  return {
    id,
    text: resolved.text,
    spoken: resolved.spoken,
    weight,
    relies,
    says: says ?? null,
    start,
    seconds,
    pause,
    parts: resolved.pieces.map((piece) => (piece.kind === 'words' ? piece.text : next++)),
    numbers: resolvedNumbersIn(resolved).map(({ piece, text, spoken, value, low, high, unit, problem }) => ({
      expression: piece.expression,
      text,
      spoken,
      value,
      low,
      high,
      unit,
      problem,
    })),
  };
}
