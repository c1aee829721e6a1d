/** The worker: reads, edits and solves studies, so that the page never waits. */

import type { Ask, Told } from '../../../answer/asked/model.ts';
import { tell } from '../../../answer/asked/tell.ts';
import { tellAir } from '../../../answer/asked/tellAir.ts';
import { altitudeCurve } from '../../../answer/conditions.ts';
import { solveStudyLive } from '../../../answer/solve.ts';
import { vehicleWorths } from '../../../answer/worth/vehicleWorth.ts';
import { attempt, type Problem, ProblemError } from '../../../numerics/problem.ts';
import type { Study, StudyProblem } from '../../../study/model.ts';
import { knownNames } from '../../../study/names.ts';
import { type ReadOptions, readStudy } from '../../../study/read.ts';
import { fetchedShelf } from '../shelf.ts';
import { changedText } from './changedText.ts';
import {
  type Delivery,
  type Edit,
  type EditOutcome,
  type Ladder,
  ladderStep,
  ladderTop,
  type OpenOutcome,
  type Order,
} from './messages.ts';
import { packedRows } from './packedRows.ts';

const shelf = fetchedShelf();
const file = 'study.yaml';
/** The study opened last, with its engines as solved. */
let opened: ({ readonly study: Study } & Awaited<ReturnType<typeof solveStudyLive>>) | null = null;

async function readOptions(): Promise<ReadOptions> {
  return { file, ...knownNames(await shelf.propellants()) };
}

async function open(text: string): Promise<OpenOutcome> {
  const start = performance.now();
  const outcome = readStudy(text, await readOptions());
  if (!outcome.ok) return { ok: false, problems: outcome.problems };
  const live = await solveStudyLive(outcome.study, shelf);
  opened = { study: outcome.study, ...live };
  const { answer, solutions } = live;
  const ladders: Record<string, Ladder> = {};
  for (const [id, solution] of solutions) {
    const rows = altitudeCurve(solution, ladderTop / ladderStep + 1);
    const vacuum = rows.at(-1);
    if (vacuum !== undefined) ladders[id] = { ...packedRows(rows.slice(0, -1)), vacuum };
  }
  const took = performance.now() - start;
  return { ok: true, solved: { study: outcome.study, warnings: outcome.warnings, answer, ladders, took } };
}

function weighed() {
  return attempt(() => (opened === null ? [] : vehicleWorths(opened.study, opened.answer, opened.solutions)));
}

function told(ask: Ask): Told {
  if (ask.engine === null) return tellAir(ask);
  const solution = opened?.solutions.get(ask.engine);
  if (solution !== undefined) return tell(solution, ask);
  const problem = {
    code: 'engine-without-result',
    what: `There is no result of ${ask.engine}.`,
    mend: 'Mend the engine.',
  };
  return { ok: false, problem };
}

async function edit(text: string, edits: readonly Edit[]): Promise<EditOutcome> {
  return { ok: true, text: changedText(text, edits, await readOptions()) };
}

/** A problem as the page shows problems of the study: with its file and, if known, its place. */
function asStudyProblem(problem: Problem): StudyProblem {
  return { file, place: null, path: problem.where ?? '', ...problem };
}

async function deliver({ number, errand }: Order): Promise<Delivery> {
  try {
    if (errand.kind === 'open') return { number, kind: 'open', outcome: await open(errand.text) };
    if (errand.kind === 'edit')
      return { number, kind: 'edit', outcome: await edit(errand.text, errand.edits) };
    if (errand.kind === 'tell') return { number, kind: 'tell', told: errand.asks.map(told) };
    return { number, kind: 'weigh', outcome: weighed() };
  } catch (error) {
    if (!(error instanceof ProblemError)) return { number, kind: 'failed', message: String(error) };
    const { problem } = error;
    return errand.kind === 'open'
      ? { number, kind: 'open', outcome: { ok: false, problems: null, problem } }
      : { number, kind: 'edit', outcome: { ok: false, problems: [asStudyProblem(problem)] } };
  }
}

/** What is handed over as it is, not copied. */
function blocksOf(delivery: Delivery): Transferable[] {
  if (delivery.kind !== 'open' || !delivery.outcome.ok) return [];
  return Object.values(delivery.outcome.solved.ladders).map(({ numbers }) => numbers.buffer);
}

self.addEventListener('message', ({ data }: MessageEvent<Order>) => {
  deliver(data).then((delivery) => self.postMessage(delivery, { transfer: blocksOf(delivery) }), reportError);
});
