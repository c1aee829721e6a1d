/** Every sentence of a study checked over all that is not known; the engines are asked once for all of them. */

import type { Problem } from '../../numerics/problem.ts';
import type { SentenceInput, Study } from '../../study/model.ts';
import type { Crew } from '../asked/crew.ts';
import { type Ask, askKey } from '../asked/model.ts';
import { type CompiledTest, compileTest, type ExpressionProblem, scopeOf } from '../expression/index.ts';
import { type Drawn, type DrawOptions, drawAsks } from '../spread/index.ts';
import { heldAgainst } from './absolutes.ts';
import { decidedSentence } from './decideSentence.ts';
import { drawnAsks } from './drawnAsks.ts';
import { flipPoints } from './flips.ts';
import { type Compile, partCompiler } from './measured.ts';
import type { CheckedSentence } from './model.ts';
import { saidNumbersOf } from './saidNumbers.ts';
import type { PlacedTest } from './shareOf.ts';
import { sourcesOf } from './sourcesOf.ts';

export interface CheckOptions extends Pick<DrawOptions, 'count' | 'signal' | 'mostSolved' | 'onProgress'> {
  /** Told all sentences after a first, coarse look; the promise brings the final ones. */
  readonly onProvisional?: (sentences: readonly CheckedSentence[]) => void;
  /** False: no flip points, which need engines solved far from the study's values. */
  readonly flips?: boolean;
  /** Told the sentences complete but for their flip points. */
  readonly onDecided?: (sentences: readonly CheckedSentence[]) => void;
}

/** A sentence with its test placed among the asks of all, or why it has none. */
interface Prepared {
  readonly sentence: SentenceInput;
  readonly placed: PlacedTest | null;
  readonly problem: ExpressionProblem | null;
}

/** @throws ProblemError of the draws; what the crew throws, an abort among it */
export async function checkSentences(
  study: Study,
  crew: Crew,
  { onProvisional, onDecided, flips = true, ...draw }: CheckOptions = {},
): Promise<readonly CheckedSentence[]> {
  const ready = prepare(study);
  const { prepared, asks } = ready;
  if (asks.length === 0) return prepared.map((one) => withoutTest(one, study));
  const drawn = await drawAsks(study, asks, crew, {
    ...draw,
    ...(onProvisional && {
      onProvisional: (early: Drawn) => onProvisional(decide(study, ready, early)),
    }),
  });
  const decided = decide(study, ready, drawn);
  onDecided?.(decided);
  if (!flips) return decided;
  const tests = prepared.flatMap(({ placed }) => placed ?? []);
  const found = await flipPoints(study, tests, asks, drawnAsks(drawn, study), crew, draw.signal);
  let next = 0;
  return decided.map((sentence, i) =>
    prepared[i]?.placed === null ? sentence : { ...sentence, flips: found[next++] ?? [] },
  );
}

interface Ready {
  readonly prepared: readonly Prepared[];
  readonly asks: readonly Ask[];
  readonly compile: Compile;
}

function prepare(study: Study): Ready {
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

function decide(study: Study, { prepared, compile }: Ready, drawn: Drawn): readonly CheckedSentence[] {
  const draws = drawnAsks(drawn, study);
  return prepared.map((one) =>
    one.placed === null
      ? withoutTest(one, study)
      : decidedSentence(one.sentence, one.placed, { study, drawn: draws, compile }),
  );
}

/** Not checked, or a test that cannot be read. */
function withoutTest({ sentence, problem }: Prepared, study: Study): CheckedSentence {
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
