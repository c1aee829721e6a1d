/** Sentences judged by two threads: one hand of the crew takes its part, the thread that asks does the rest. */

import type { SentenceInput, Study } from '../../study/model.ts';
import type { Crew } from '../asked/crew.ts';
import type { HandJobs } from '../asked/handAtWork.ts';
import { type Drawn, type DrawnNumbers, followed, plainNumbers, unknownInputs } from '../spread/index.ts';
import type { CheckedSentence } from './model.ts';
import { decide, type Prepared, prepare, type Ready } from './prepared.ts';

/** What a hand needs to judge some of the sentences. */
interface Judging {
  /** All of them: their tests share what is asked. */ readonly sentences: readonly SentenceInput[];
  /** Those to judge, by their places. */ readonly which: readonly number[];
  readonly drawn: DrawnNumbers;
}

const JUDGE = 'judge';

/** The work that hands do for {@link decideTogether}. */
export const judgingJobs: HandJobs = {
  [JUDGE]: (study, data) => judged(study, data as Judging),
};

function judged(study: Study, { sentences, which, drawn }: Judging): readonly CheckedSentence[] {
  const own = { ...study, sentences };
  const ready = prepare(own);
  const drawnPaths = new Set(drawn.unknowns.flatMap((one) => (one.kind === 'input' ? one.path : [])));
  const inputs = unknownInputs(own, ready.asks).filter(({ unknown }) => drawnPaths.has(unknown.path));
  return decide(own, ready, followed(drawn, inputs), which);
}

/** @throws what the crew throws, an abort among it */
export async function decideTogether(
  study: Study,
  ready: Ready,
  drawn: Drawn,
  { delegate }: Crew,
  signal: AbortSignal | undefined,
): Promise<readonly CheckedSentence[]> {
  const [own, theirs] = inTwoParts(ready.prepared);
  if (delegate === undefined || theirs.length === 0) return decide(study, ready, drawn);
  const data: Judging = { sentences: study.sentences, which: theirs, drawn: plainNumbers(drawn) };
  const asked = delegate({ name: JUDGE, data }, signal) as Promise<readonly CheckedSentence[]>;
  // A fault of the part here must not leave that promise without a listener.
  asked.catch(() => undefined);
  const here = decide(study, ready, drawn, own);
  const there = await asked;
  const all: CheckedSentence[] = [];
  own.forEach((place, i) => {
    all[place] = here[i]!;
  });
  theirs.forEach((place, i) => {
    all[place] = there[i]!;
  });
  return all;
}

/** What judging costs beside the asks of a test, in asks. */
const BESIDE = 10;

/** Places of sentences in two parts that cost about as much. */
function inTwoParts(prepared: readonly Prepared[]): readonly [readonly number[], readonly number[]] {
  const costs = prepared.map(({ placed }) => (placed === null ? 0 : BESIDE + placed.places.length));
  const dearestFirst = [...costs.keys()].sort((a, b) => costs[b]! - costs[a]! || a - b);
  const parts: [number[], number[]] = [[], []];
  const sums: [number, number] = [0, 0];
  for (const place of dearestFirst) {
    const part = sums[1] < sums[0] ? 1 : 0;
    parts[part].push(place);
    sums[part] += costs[place]!;
  }
  return parts;
}
