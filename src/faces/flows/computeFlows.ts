/** The whole flows of a study's engines over a climb, one field after the other, what is looked at first. */

import { setImmediate } from 'node:timers/promises';
import { CLIMB } from '../../answer/flow/index.ts';
import { solveStudyLive } from '../../answer/solve.ts';
import { type Problem, ProblemError } from '../../numerics/problem.ts';
import { knownNames } from '../../study/names.ts';
import { readStudy } from '../../study/read.ts';
import { openDataShelf } from '../disk/data.ts';
import { makeRoom } from '../disk/flowRoom.ts';
import { flowFolder } from '../disk/flowShelf.ts';
import { keptFlows } from '../disk/keptFlows.ts';
import {
  enginesMark,
  type FlowsWanted,
  type FlowWork,
  type ListedFlow,
  listedFlow,
  takeIn,
} from './flowList.ts';
import { flowTasks, LEVELS, nextTask, progressOf } from './flowTasks.ts';
import { keepFlowList, readFlowList } from './listShelf.ts';

/** What is told on the way. */
export type FlowReport =
  | { readonly is: 'begun'; readonly mark: string; readonly done: number; readonly of: number }
  | { readonly is: 'field'; readonly field: ListedFlow; readonly done: number; readonly of: number }
  | { readonly is: 'without'; readonly engine: string; readonly problem: Problem }
  | { readonly is: 'ended'; readonly work: FlowWork };

export interface ComputeOptions {
  readonly report: (report: FlowReport) => void;
  /** [m] where one looks now; null: vacuum. */ readonly looksAt: () => number | null;
  readonly isStopped: () => boolean;
}

/** Ends with what went wrong with the whole; what fails at one place is passed over, unless it fails at all of an engine. */
export async function computeFlows(
  text: string,
  wanted: FlowsWanted,
  options: ComputeOptions,
): Promise<void> {
  const { report } = options;
  try {
    await computeAll(text, wanted, options);
    report({ is: 'ended', work: { is: 'none' } });
  } catch (error) {
    report({ is: 'ended', work: { is: 'failed', problem: problemOf(error) } });
  }
}

async function computeAll(
  text: string,
  { engines, only }: FlowsWanted,
  { report, looksAt, isStopped }: ComputeOptions,
): Promise<void> {
  const shelf = openDataShelf();
  const outcome = readStudy(text, { file: 'study.yaml', ...knownNames(await shelf.propellants()) });
  if (!outcome.ok)
    throw new ProblemError({
      code: 'flow-of-faulty-study',
      what: 'The study has mistakes, so no whole flow is computed.',
      mend: 'Mend what the page points out.',
    });
  const { study } = outcome;
  const mark = enginesMark(study.engines);
  // The engines alone: no vehicle is flown for their flow.
  const { solutions } = await solveStudyLive({ ...study, vehicles: [] }, shelf);
  const folder = flowFolder();
  await makeRoom(folder);
  const flows = new Map(
    engines.flatMap((id) => {
      const solution = solutions.get(id);
      return solution === undefined ? [] : [[id, keptFlows(solution, CLIMB, { folder })] as const];
    }),
  );
  const tasks = flowTasks([...flows.keys()]);
  const looked = () => ({ altitude: looksAt(), ...(only !== undefined && { only }) });
  const found = new Map<string, ListedFlow>();
  const firstProblems = new Map<string, Problem>();
  const withField = new Set<string>();
  for (const field of await readFlowList(folder, mark)) takeIn(found, field);
  report({ is: 'begun', mark, ...progressOf(tasks, looked()) });
  for (let task = nextTask(tasks, looked()); task !== null; task = nextTask(tasks, looked())) {
    // Orders come in between two fields.
    await setImmediate();
    if (isStopped()) return;
    const { engine, place, level } = task;
    const kept = flows.get(engine)!;
    const fineness = LEVELS[level]!;
    task.level += 1;
    try {
      const field = listedFlow(await kept.at(place, fineness), kept.keyOf(place, fineness));
      takeIn(found, field);
      withField.add(engine);
      report({ is: 'field', field, ...progressOf(tasks, looked()) });
      await keepFlowList(folder, mark, [...found.values()]);
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error;
      const ofEngine = error.problem.code === 'flow-no-mesh';
      for (const each of tasks)
        if (each.engine === engine && (ofEngine || each.place === place)) each.level = LEVELS.length;
      const problem = firstProblems.get(engine) ?? error.problem;
      firstProblems.set(engine, problem);
      const rest = tasks.filter((each) => each.engine === engine);
      const isOver = nextTask(rest, looked()) === null;
      if (isOver && !withField.has(engine)) report({ is: 'without', engine, problem });
    }
  }
}

function problemOf(error: unknown): Problem {
  if (error instanceof ProblemError) return error.problem;
  return {
    code: 'flow-failed',
    what: `The whole flow could not be computed: ${error instanceof Error ? error.message : String(error)}.`,
    mend: 'Try again; plumeline flow computes the same from the command line.',
  };
}
