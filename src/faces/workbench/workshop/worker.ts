/** The worker: reads, edits and solves studies, so that the page never waits. */

import type { Ask, Told } from '../../../answer/asked/model.ts';
import { tell } from '../../../answer/asked/tell.ts';
import { tellAir } from '../../../answer/asked/tellAir.ts';
import { withVehicles } from '../../../answer/withVehicles.ts';
import type { VehicleWorth } from '../../../answer/worth/index.ts';
import { vehicleWorths } from '../../../answer/worth/vehicleWorth.ts';
import { attempt, type Outcome, type Problem, ProblemError } from '../../../numerics/problem.ts';
import type { StudyProblem } from '../../../study/model.ts';
import { knownNames } from '../../../study/names.ts';
import type { ReadOptions } from '../../../study/read.ts';
import { fetchedShelf } from '../shelf.ts';
import { changedText } from './changedText.ts';
import type { Delivery, Edit, EditOutcome, Order } from './messages.ts';
import { otherStudies } from './otherStudies.ts';
import { GivenUp, studyBench } from './studyBench.ts';

const shelf = fetchedShelf();
const file = 'study.yaml';

async function readOptions(): Promise<ReadOptions> {
  return { file, ...knownNames(await shelf.propellants()) };
}

const bench = studyBench(shelf, readOptions);

async function weighed(): Promise<Outcome<readonly VehicleWorth[]>> {
  const flown = await bench.flown();
  if (flown === null) return { ok: true, value: [] };
  const { study, answer, vehicles, solutions } = flown;
  return attempt(() => vehicleWorths(study, withVehicles(answer, vehicles), solutions));
}

async function told(asks: readonly Ask[]): Promise<readonly Told[]> {
  const ofEngines = asks.some(({ engine }) => engine !== null);
  const solutions = ofEngines ? (await bench.solved())?.solutions : undefined;
  return asks.map((ask) => {
    if (ask.engine === null) return tellAir(ask);
    const solution = solutions?.get(ask.engine);
    if (solution !== undefined) return tell(solution, ask);
    const problem = {
      code: 'engine-without-result',
      what: `There is no result of ${ask.engine}.`,
      mend: 'Mend the engine.',
    };
    return { ok: false, problem };
  });
}

const elsewhere = otherStudies(shelf, readOptions);

async function edit(text: string, edits: readonly Edit[]): Promise<EditOutcome> {
  return { ok: true, text: changedText(text, edits, await readOptions()) };
}

/** A problem as the page shows problems of the study: with its file and, if known, its place. */
function asStudyProblem(problem: Problem): StudyProblem {
  return { file, place: null, path: problem.where ?? '', ...problem };
}

async function deliver({ number, errand }: Order, post: (delivery: Delivery) => void): Promise<Delivery> {
  try {
    switch (errand.kind) {
      case 'adopt':
        bench.adopt(errand.from);
        return { number, kind: 'done' };
      case 'warm up':
        await bench.solved();
        return { number, kind: 'done' };
      case 'open': {
        const flights = await bench.open(number, errand.text, {
          piece: (piece) => post({ number, kind: 'piece', piece }),
          outcome: (outcome, isMoreToCome) => post({ number, kind: 'open', outcome, isMoreToCome }),
        });
        return flights === null ? { number, kind: 'done' } : { number, kind: 'flights', flights };
      }
      case 'edit':
        return { number, kind: 'edit', outcome: await edit(errand.text, errand.edits) };
      case 'tell':
        return { number, kind: 'tell', told: await told(errand.asks) };
      case 'tell of':
        return { number, kind: 'tell', told: [await elsewhere(errand.text, errand.ask)] };
      case 'weigh':
        return { number, kind: 'weigh', outcome: await weighed() };
    }
  } catch (error) {
    if (error instanceof GivenUp) return { number, kind: 'given up' };
    if (!(error instanceof ProblemError)) return { number, kind: 'failed', message: String(error) };
    const { problem } = error;
    return errand.kind === 'open'
      ? { number, kind: 'open', outcome: { ok: false, problems: null, problem }, isMoreToCome: false }
      : { number, kind: 'edit', outcome: { ok: false, problems: [asStudyProblem(problem)] } };
  }
}

self.addEventListener('message', ({ data }: MessageEvent<Order>) => {
  const post = (delivery: Delivery): void => self.postMessage(delivery);
  deliver(data, post).then(post, reportError);
});
