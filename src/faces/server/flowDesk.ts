/** Whole flows for the page: which are there, their cells, and a thread that computes more when it is asked to. */

import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { Worker } from 'node:worker_threads';
import type { Problem } from '../../numerics/problem.ts';
import { knownNames } from '../../study/names.ts';
import { readStudy } from '../../study/read.ts';
import { openDataShelf } from '../disk/data.ts';
import { flowFolder } from '../disk/flowShelf.ts';
import { computeFlows, type FlowReport } from '../flows/computeFlows.ts';
import {
  enginesMark,
  type FlowList,
  type FlowsWanted,
  type FlowWork,
  type ListedFlow,
  NO_FLOWS,
  takeIn,
} from '../flows/flowList.ts';
import { readFlowList, stillKept } from '../flows/listShelf.ts';
import { flowThreadFile } from './flowsAside.ts';
import type { FlowOrder } from './flowThread.ts';
import type { StudyFile } from './studyFile.ts';

export interface FlowDesk {
  /** What is there of the study as its file has it; starts nothing. */ list(): Promise<FlowList>;
  /** Computes what is not kept; goes on where that is under way. */ begin(
    wanted: FlowsWanted,
  ): Promise<void>;
  /** What is near this altitude [m] is done first; null: vacuum. */ look(altitude: number | null): void;
  stop(): Promise<void>;
  /** The cells of a field as they are kept; null: there are none of that name. */ cells(
    key: string,
  ): Promise<string | null>;
  close(): Promise<void>;
}

/** The work on one text. */
interface Run {
  readonly text: string;
  readonly wanted: FlowsWanted;
  mark: string;
  work: FlowWork;
  readonly fields: Map<string, ListedFlow>;
  readonly without: Record<string, Problem>;
  look(altitude: number | null): void;
  end(): Promise<void>;
}

export function flowDesk(file: StudyFile): FlowDesk {
  let run: Run | null = null;
  let known: { readonly hash: string; readonly mark: string } | null = null;
  let before: Promise<unknown> = Promise.resolve();

  /** The text in the file and the mark of its engines; an empty mark: it is no study now. */
  async function now(): Promise<{ readonly text: string; readonly mark: string }> {
    const { hash, text } = await file.read();
    const mark = known?.hash === hash ? known.mark : await markOf(text);
    known = { hash, mark };
    return { text, mark };
  }

  /** One order after the other: none overtakes one that waits for the file or for the end of the work before. */
  function inTurn(order: () => Promise<void>): Promise<void> {
    const turn = before.then(order);
    before = turn.catch(() => undefined);
    return turn;
  }

  async function begin(wanted: FlowsWanted): Promise<void> {
    const { text } = await file.read();
    const goesOn =
      run !== null &&
      run.text === text &&
      run.work.is === 'working' &&
      wanted.engines.every((id) => run!.wanted.engines.includes(id)) &&
      (wanted.only !== undefined || run.wanted.only === undefined);
    if (goesOn) return run!.look(wanted.altitude);
    await stop();
    run = started(text, wanted);
  }

  async function stop(): Promise<void> {
    const ending = run;
    if (ending?.work.is === 'working') ending.work = { is: 'none' };
    await ending?.end();
  }

  return {
    async list() {
      const { text, mark } = await now();
      if (mark === '') return NO_FLOWS;
      const folder = flowFolder();
      const kept = await readFlowList(folder, mark);
      if (run === null || run.mark !== mark) {
        // One that is still solving engines has no mark yet.
        const work: FlowWork = run?.mark === '' && run.text === text ? run.work : { is: 'none' };
        return { mark, fields: kept, work, without: {} };
      }
      const { work, without } = run;
      const fields = new Map<string, ListedFlow>();
      for (const field of [...kept, ...(await stillKept(folder, [...run.fields.values()]))])
        takeIn(fields, field);
      return { mark, fields: [...fields.values()], work, without };
    },
    begin: (wanted) => inTurn(() => begin(wanted)),
    look: (altitude) => run?.look(altitude),
    stop: () => inTurn(stop),
    async cells(key) {
      if (!/^[0-9a-f]{32}$/.test(key)) return null;
      return readFile(join(flowFolder(), `${key}.json`), 'utf8').catch(() => null);
    },
    close: () => inTurn(stop),
  };
}

async function markOf(text: string): Promise<string> {
  const shelf = openDataShelf();
  const outcome = readStudy(text, { file: 'study.yaml', ...knownNames(await shelf.propellants()) });
  return outcome.ok ? enginesMark(outcome.study.engines) : '';
}

function started(text: string, wanted: FlowsWanted): Run {
  const run: Run = {
    text,
    wanted,
    mark: '',
    work: { is: 'working', done: 0, of: 1 },
    fields: new Map(),
    without: {},
    ...(existsSync(flowThreadFile) ? onThread(text, wanted, take) : inThisThread(text, wanted, take)),
  };
  return run;

  function take(report: FlowReport): void {
    switch (report.is) {
      case 'begun':
        run.mark = report.mark;
        run.work = { is: 'working', done: report.done, of: report.of };
        break;
      case 'field':
        takeIn(run.fields, report.field);
        if (run.work.is === 'working') run.work = { is: 'working', done: report.done, of: report.of };
        break;
      case 'without':
        run.without[report.engine] = report.problem;
        break;
      case 'ended':
        run.work = report.work;
    }
  }
}

type Ways = Pick<Run, 'look' | 'end'>;

function onThread(text: string, wanted: FlowsWanted, take: (report: FlowReport) => void): Ways {
  const thread = new Worker(flowThreadFile);
  // While it works for a page alone it keeps no program alive.
  thread.unref();
  const failed = (why: string): void =>
    take({
      is: 'ended',
      work: {
        is: 'failed',
        problem: {
          code: 'flow-thread-failed',
          what: `The whole flow could not be computed: ${why}.`,
          mend: 'Try again; plumeline flow computes the same from the command line.',
        },
      },
    });
  let isEnded = false;
  thread.on('message', (report: FlowReport) => {
    if (isEnded) return;
    take(report);
    if (report.is === 'ended') void thread.terminate();
  });
  thread.on('error', ({ message }) => {
    if (!isEnded) failed(message);
  });
  const post = (order: FlowOrder): void => thread.postMessage(order);
  post({ is: 'compute', text, wanted });
  return {
    look: (altitude) => post({ is: 'look', altitude }),
    async end() {
      isEnded = true;
      await thread.terminate();
    },
  };
}

function inThisThread(text: string, wanted: FlowsWanted, take: (report: FlowReport) => void): Ways {
  let [looked, isStopped] = [wanted.altitude, false];
  const work = computeFlows(text, wanted, {
    report: (report) => {
      if (!isStopped) take(report);
    },
    looksAt: () => looked,
    isStopped: () => isStopped,
  });
  return {
    look(altitude) {
      looked = altitude;
    },
    async end() {
      isStopped = true;
      await work;
    },
  };
}
