/** The worker: reads, edits and solves studies, so that the page never waits. */

import type { Ask, Told } from '../../../answer/asked/model.ts';
import { tell } from '../../../answer/asked/tell.ts';
import { tellAir } from '../../../answer/asked/tellAir.ts';
import { conditionAtAltitude, conditionInVacuum } from '../../../answer/conditions.ts';
import type { ConditionRow } from '../../../answer/model.ts';
import type { EngineSolution } from '../../../answer/solution.ts';
import { solveStudyLive } from '../../../answer/solve.ts';
import { vehicleWorths } from '../../../answer/worth/vehicleWorth.ts';
import { attempt, type Problem, ProblemError } from '../../../numerics/problem.ts';
import type { Study, StudyProblem } from '../../../study/model.ts';
import { knownNames } from '../../../study/names.ts';
import { type ReadOptions, readStudy } from '../../../study/read.ts';
import { packedRows } from '../../solved/packedRows.ts';
import { type Ladder, ladderStep, ladderTop } from '../../solved/solvedStudy.ts';
import { fetchedShelf } from '../shelf.ts';
import { changedText } from './changedText.ts';
import type { Delivery, Edit, EditOutcome, OpenOutcome, Order } from './messages.ts';
import { nextTask } from './nextTask.ts';

const shelf = fetchedShelf();
const file = 'study.yaml';
/** The study opened last, with its engines as solved. */
let opened: ({ readonly study: Study } & Awaited<ReturnType<typeof solveStudyLive>>) | null = null;
/** Number of the study asked for last: an older one is given up. */
let wanted = 0;
class GivenUp extends Error {}

async function readOptions(): Promise<ReadOptions> {
  return { file, ...knownNames(await shelf.propellants()) };
}

/** Lets the messages in that came meanwhile. @throws where a later study is wanted */
async function pause(number: number): Promise<void> {
  await nextTask();
  if (number !== wanted) throw new GivenUp();
}

async function open(number: number, text: string): Promise<OpenOutcome> {
  wanted = number;
  const start = performance.now();
  const outcome = readStudy(text, await readOptions());
  if (!outcome.ok) return { ok: false, problems: outcome.problems };
  const live = await solveStudyLive(outcome.study, shelf, {
    pause: () => pause(number),
    ...(opened && { before: opened }),
  });
  const { answer, solutions } = live;
  const ladders: Record<string, Ladder> = {};
  for (const [id, solution] of solutions) {
    const rows = await ladderRows(solution, () => pause(number));
    ladders[id] = { ...packedRows(rows), vacuum: conditionInVacuum(solution).row };
  }
  opened = { study: outcome.study, ...live };
  const took = performance.now() - start;
  return { ok: true, solved: { study: outcome.study, warnings: outcome.warnings, answer, ladders, took } };
}

/** Rows worked out at one stretch. */
const STRETCH = 40;
/** A solution does not change: its rows are kept. */
const knownRows = new WeakMap<EngineSolution, readonly ConditionRow[]>();

async function ladderRows(
  solution: EngineSolution,
  rest: () => Promise<void>,
): Promise<readonly ConditionRow[]> {
  const known = knownRows.get(solution);
  if (known !== undefined) return known;
  const rows: ConditionRow[] = [];
  for (let altitude = 0; altitude <= ladderTop; altitude += ladderStep) {
    if (rows.length % STRETCH === 0) await rest();
    rows.push(conditionAtAltitude(solution, altitude).row);
  }
  knownRows.set(solution, rows);
  return rows;
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
    if (errand.kind === 'open') return { number, kind: 'open', outcome: await open(number, errand.text) };
    if (errand.kind === 'edit')
      return { number, kind: 'edit', outcome: await edit(errand.text, errand.edits) };
    if (errand.kind === 'tell') return { number, kind: 'tell', told: errand.asks.map(told) };
    return { number, kind: 'weigh', outcome: weighed() };
  } catch (error) {
    if (error instanceof GivenUp) return { number, kind: 'given up' };
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
