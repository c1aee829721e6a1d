/** The sentences of a study with their tests placed among the asks of all, and each of them judged from the draws. */

import type { Problem } from '../../numerics/problem.ts';
import type { SentenceInput, Study } from '../../study/model.ts';
import { type Ask, askKey } from '../asked/model.ts';
import { type CompiledTest, compileTest, type ExpressionProblem, scopeOf } from '../expression/index.ts';
import type { Drawn } from '../spread/index.ts';
import { heldAgainst } from './absolutes.ts';
import { decidedSentence } from './decideSentence.ts';
import { drawnAsks } from './drawnAsks.ts';
import { type Compile, partCompiler } from './measured.ts';
import type { CheckedSentence } from './model.ts';
import { saidNumbersOf } from './saidNumbers.ts';
import type { PlacedTest } from './shareOf.ts';
import { sourcesOf } from './sourcesOf.ts';

/** A sentence with its test placed among the asks of all, or why it has none. */
export interface Prepared {
  readonly sentence: SentenceInput;
  readonly placed: PlacedTest | null;
  readonly problem: ExpressionProblem | null;
}

export interface Ready {
  readonly prepared: readonly Prepared[];
  readonly asks: readonly Ask[];
  readonly compile: Compile;
}

export function prepare(study: Study): Ready {
  const scope = scopeOf(study);
  const asks: Ask[] = [];
  const placeOf = new Map<string, number>();
  const placed = (test: CompiledTest): PlacedTest => ({
    test,
    places: test.asks.map((ask) => {
      const key = askKey(ask);
      const place = placeOf.get(key) ?? asks.push(ask) - 1;
      placeOf.set(key, place);
      return place;
    }),
  });
  const prepared = study.sentences.map((sentence): Prepared => {
    if (sentence.holds === null) return { sentence, placed: null, problem: null };
    const compiled = compileTest(sentence.holds, scope);
    return compiled.ok
      ? { sentence, placed: placed(compiled.value), problem: null }
      : { sentence, placed: null, problem: compiled.problem };
  });
  return { prepared, asks, compile: partCompiler(scope, placeOf) };
}

/** Those of the sentences whose places are named, in their order; all of them by default. */
export function decide(
  study: Study,
  { prepared, compile }: Ready,
  drawn: Drawn,
  which: readonly number[] = [...prepared.keys()],
): readonly CheckedSentence[] {
  const draws = drawnAsks(drawn, study);
  return which.map((place) => {
    const one = prepared[place]!;
    return one.placed === null
      ? withoutTest(one, study)
      : decidedSentence(one.sentence, one.placed, { study, drawn: draws, compile });
  });
}

/** Not checked, or a test that cannot be read. */
export function withoutTest({ sentence, problem }: Prepared, study: Study): CheckedSentence {
  const { id, say, holds, said } = sentence;
  return {
    id,
    say,
    said,
    holds,
    verdict: problem === null ? 'not checked' : 'can’t tell',
    share: null,
    shareError: null,
    numbers: [],
    wording: null,
    instead: null,
    wordingHolds: null,
    conditions: [],
    flips: [],
    matters: [],
    alternatives: [],
    absolutes: heldAgainst(say, null),
    saidNumbers: problem === null ? [] : saidNumbersOf(say, holds ?? '', []),
    saidReasons: [],
    why: problem === null ? 'No test stands beside the words.' : `Its test cannot be read: ${problem.what}`,
    provisional: false,
    problem: problem === null ? null : plainProblem(problem, id),
    sources: sourcesOf(sentence, [], study),
  };
}

function plainProblem({ start, end, ...problem }: ExpressionProblem, id: string): Problem {
  return { ...problem, where: `sentences.${id}.holds`, facts: { ...problem.facts, start, end } };
}
