/** The desk: checks the sentences of the study on screen and answers questions about its numbers, by the crew. */

import { checkAnalogies } from '../../../answer/analogies/index.ts';
import type { Crew } from '../../../answer/asked/crew.ts';
import { compileTest, scopeOf } from '../../../answer/expression/index.ts';
import { checkSentences } from '../../../answer/sentences/index.ts';
import { ProblemError } from '../../../numerics/problem.ts';
import type { Study } from '../../../study/model.ts';
import type { Asked, CheckStage, DeskOrder, DeskReport, QuestionKind, ToldOf } from './deskMessages.ts';
import { draftJudged } from './draftJudged.ts';
import { pairSpansOf } from './pairSpansOf.ts';
import { pedigreeOf } from './pedigreeOf.ts';
import { scriptFor } from './scriptFor.ts';
import { sweepChoices, sweepFor } from './sweepFor.ts';
import { workerCrew } from './workerCrew.ts';
import { needFor, worthFor } from './worthFor.ts';

/** The study in hand. */
interface InHand {
  readonly study: Study;
  readonly epoch: number;
  readonly crew: Crew;
  readonly ended: AbortController;
}

let inHand: InHand | null = null;
const questions = new Map<number, AbortController>();

const report = (message: DeskReport): void => self.postMessage(message);

function end(): void {
  inHand?.ended.abort();
  inHand = null;
}

async function check({ study, epoch, crew, ended: { signal } }: InHand): Promise<void> {
  const tell = (stage: CheckStage) => (sentences: Awaited<ReturnType<typeof checkSentences>>) => {
    if (!signal.aborted) report({ kind: 'sentences', epoch, stage, sentences });
  };
  try {
    const sentences = await checkSentences(study, crew, {
      signal,
      onProvisional: tell('first look'),
      onDecided: tell('decided'),
      onProgress: (done, of) => report({ kind: 'progress', epoch, done, of }),
    });
    tell('final')(sentences);
  } catch (error) {
    if (signal.aborted) return;
    if (error instanceof ProblemError) report({ kind: 'problem', epoch, problem: error.problem });
    else report({ kind: 'fault', number: null, message: String(error) });
  }
}

/** Leg by leg, as `check` does; later than the sentences, which are looked at first. */
async function checkLikenesses({ study, epoch, crew, ended: { signal } }: InHand): Promise<void> {
  if (study.analogies.length === 0 || signal.aborted) return;
  try {
    const analogies = await checkAnalogies(study, crew, { signal });
    if (!signal.aborted) report({ kind: 'analogies', epoch, told: { ok: true, value: analogies } });
  } catch (error) {
    if (signal.aborted) return;
    if (error instanceof ProblemError)
      report({ kind: 'analogies', epoch, told: { ok: false, problem: error.problem } });
    else report({ kind: 'fault', number: null, message: String(error) });
  }
}

async function checkAll(hand: InHand): Promise<void> {
  await check(hand);
  await checkLikenesses(hand);
}

type Answerers = {
  readonly [Kind in QuestionKind]: (
    asked: Asked<Kind>,
    hand: InHand,
    signal: AbortSignal,
    number: number,
  ) => Promise<ToldOf<Kind>> | ToldOf<Kind>;
};
const answerers: Answerers = {
  choices: ({ owner }, { study }) => sweepChoices(study, owner),
  sweep: (asked, { study, crew }, signal, number) =>
    sweepFor(study, crew, asked, signal, (found) => report({ kind: 'so far', number, found })),
  test: ({ text }, { study }) => {
    const compiled = compileTest(text, scopeOf(study));
    return compiled.ok ? null : compiled.problem;
  },
  judged: ({ say, holds }, { study, crew }, signal) => draftJudged(study, crew, say, holds, signal),
  script: (asked, { study, crew }, signal) => scriptFor(study, crew, asked, signal),
  pedigree: ({ expression }, { study, crew }, signal) => pedigreeOf(study, crew, expression, signal),
  worth: (_, { study, crew }, signal, number) =>
    worthFor(study, crew, signal, (found) => report({ kind: 'so far', number, found })),
  need: ({ id }, { study, crew }, signal, number) =>
    needFor(study, crew, id, signal, (found) => report({ kind: 'so far', number, found })),
  spans: ({ engines, places }, { study, crew }, signal) => pairSpansOf(study, crew, engines, places, signal),
};

async function answer<Kind extends QuestionKind>(
  number: number,
  about: Kind,
  asked: Asked<Kind>,
): Promise<void> {
  const hand = inHand;
  if (hand === null) return report({ kind: 'ended', number });
  const forgotten = new AbortController();
  questions.set(number, forgotten);
  const signal = AbortSignal.any([forgotten.signal, hand.ended.signal]);
  try {
    const told = await answerers[about](asked, hand, signal, number);
    report(signal.aborted ? { kind: 'ended', number } : { kind: 'told', number, told });
  } catch (error) {
    if (signal.aborted) report({ kind: 'ended', number });
    else report({ kind: 'fault', number, message: String(error) });
  } finally {
    questions.delete(number);
  }
}

/** The page draws the study first: the crew would take the processors from it [ms]. */
const FIRST_PAINT = 150;

function checkLater(hand: InHand): void {
  if (inHand === hand) void checkAll(hand);
}

self.addEventListener('message', ({ data: order }: MessageEvent<DeskOrder>) => {
  if (order.kind === 'forget') questions.get(order.number)?.abort();
  else if (order.kind === 'question') void answer(order.number, order.about, order.asked);
  else {
    end();
    if (order.kind === 'stop') return;
    const { study, epoch, checks } = order;
    inHand = { study, epoch, crew: workerCrew(study), ended: new AbortController() };
    if (checks) setTimeout(checkLater, FIRST_PAINT, inHand);
  }
});
