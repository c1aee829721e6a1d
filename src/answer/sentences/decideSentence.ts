/** One sentence decided from the draws. */

import type { SentenceInput, Study } from '../../study/model.ts';
import { listed } from '../compare/speech.ts';
import type { Decision } from '../expression/model.ts';
import { settableInputs } from '../inputs/index.ts';
import { heldAgainst } from './absolutes.ts';
import { byEachModel, choicesOf } from './alternatives.ts';
import { ownersById } from './askWords.ts';
import { bandsBy, type Teller } from './clause.ts';
import { conditionsOf } from './conditions.ts';
import type { DrawnAsks } from './drawnAsks.ts';
import { type Judgement, judge } from './judge.ts';
import { mostlyWords, whatMatters } from './matters.ts';
import type { Compile } from './measured.ts';
import type { AbsoluteWord, CheckedSentence, SaidNumber } from './model.ts';
import { type StatedInput, saidNumbersOf } from './saidNumbers.ts';
import { saidReasonsOf } from './saidReasons.ts';
import { holdingShare, ownValues, type PlacedTest } from './shareOf.ts';
import { sourcesOf } from './sourcesOf.ts';
import { decidingNumbers, truthOf } from './tellTruth.ts';

export interface Bench {
  readonly study: Study;
  readonly drawn: DrawnAsks;
  readonly compile: Compile;
}

export function decidedSentence(
  sentence: SentenceInput,
  placed: PlacedTest,
  { study, drawn, compile }: Bench,
): CheckedSentence {
  const { id, say, holds, said } = sentence;
  const { test } = placed;
  const choices = choicesOf(placed, drawn);
  const teller: Teller = {
    drawn,
    choices,
    engines: ownersById(study),
    compile,
    ...bandsBy(drawn, choices),
  };
  const middle = drawn.middle.map((told) => (told.ok ? told.value : null));
  const decision = test.decide(ownValues(placed, middle));
  const own = holdingShare(placed, drawn);
  const alternatives = byEachModel(placed, drawn, choices);
  const matters = drawn.drawn.provisional ? [] : whatMatters(placed, drawn);
  const truth = truthOf(placed, decision, teller);
  const absolutes = heldAgainst(say, test);
  const saidNumbers = saidNumbersOf(say, test.text, truth.computed, inputsOf(test.asks, study));
  const judged = judge({
    own,
    alternatives,
    absentWhy: absentWords(placed, decision, drawn),
    decider: matters[0]?.words ?? null,
    certain: drawn.sources.length === 0,
  });
  const { verdict, why } = withCare(judged, absolutes, saidNumbers);
  const mostly = judged.verdict === 'say with care' ? mostlyWords(matters) : null;
  const fails = verdict === 'don’t say';
  return {
    id,
    say,
    said,
    holds,
    verdict,
    share: own.absent === 1 ? null : own.share,
    shareError: own.absent === 1 ? null : own.error,
    numbers: decidingNumbers(placed, decision, teller),
    wording: fails ? null : truth.words,
    instead: fails ? (truth.words ?? 'The test does not hold.') : null,
    wordingHolds: truth.holds,
    conditions: conditionsOf(placed, study, drawn),
    flips: [],
    matters,
    alternatives,
    absolutes,
    saidNumbers,
    saidReasons: saidReasonsOf(say, test),
    why: mostly === null ? why : `${why} It hangs ${mostly}.`,
    provisional: drawn.drawn.provisional,
    problem: null,
    sources: sourcesOf(sentence, test.asks, study),
  };
}

/** Why the number is absent, from the engine where it told. */
function absentWords(
  { test, places }: PlacedTest,
  { absent }: Decision,
  { middle }: DrawnAsks,
): string | null {
  const found = absent ?? firstFailed(test.asks.length, places, middle);
  if (found === null) return null;
  const told = found.ask === null ? undefined : middle[places[found.ask] ?? -1];
  if (told !== undefined && !told.ok)
    return `${found.expression}: ${told.problem.what} ${told.problem.mend}`.trim();
  return `${found.expression}: ${found.why}`;
}

function firstFailed(
  count: number,
  places: readonly number[],
  middle: DrawnAsks['middle'],
): { readonly ask: number; readonly expression: string; readonly why: string } | null {
  for (let ask = 0; ask < count; ask++) {
    const told = middle[places[ask] ?? -1];
    if (told !== undefined && !told.ok) return { ask, expression: 'The number', why: told.problem.what };
  }
  return null;
}

/** What the study states of the engines asked; defaults are not among it. */
function inputsOf(asks: PlacedTest['test']['asks'], { engines }: Study): readonly StatedInput[] {
  const asked = new Set(asks.map(({ engine }) => engine));
  return engines
    .filter(({ id }) => asked.has(id))
    .flatMap((engine) =>
      settableInputs(engine).flatMap(({ current, stated, label }) =>
        current === null || !stated ? [] : [{ value: current, label: `${label} of ${engine.name}` }],
      ),
    );
}

/** One flag by itself, several together. */
function tooWide(flagged: readonly AbsoluteWord[]): readonly string[] {
  if (flagged.length < 2) return flagged.map(({ words }) => words);
  return [`${listed(flagged.map(({ word }) => `“${word}”`))} claim more than the test covers.`];
}

/** Absolute words that the test does not cover are at most said with care; numbers that are not what is computed are not said. */
function withCare(
  judged: Judgement,
  absolutes: readonly AbsoluteWord[],
  saidNumbers: readonly SaidNumber[],
): Judgement {
  if (judged.verdict !== 'safe to say' && judged.verdict !== 'say with care') return judged;
  const wrong = saidNumbers.filter(({ agrees }) => agrees === false).map(({ words }) => words);
  if (wrong.length > 0) return { verdict: 'don’t say', why: `${judged.why} But: ${wrong.join(' ')}` };
  if (judged.verdict !== 'safe to say') return judged;
  const flags = tooWide(absolutes.filter(({ covered }) => !covered));
  if (flags.length === 0) return judged;
  return { verdict: 'say with care', why: `${judged.why} But: ${flags.join(' ')}` };
}
