/** Computes finer fields on the graphics processor, each from the one that the server has computed, and keeps them in the browser. */

import { CLIMB, type GpuFlowSolver, gpuFlowSolver } from '../../../answer/flow/index.ts';
import type { EngineSolution } from '../../../answer/solution.ts';
import { solveStudyLive } from '../../../answer/solve.ts';
import { ProblemError } from '../../../numerics/problem.ts';
import { type ListedFlow, listedFlow } from '../../flows/flowList.ts';
import { flowOfText, flowText } from '../../flows/flowText.ts';
import { fetchedShelf } from '../shelf.ts';
import { cellText, keepCells, keptCells } from './cellShelf.ts';
import type { FinerOrder, FinerReport } from './finerMessages.ts';
import { graphicsProcessor } from './processor.ts';

const shelf = fetchedShelf();
let solved: { readonly mark: string; readonly solutions: ReadonlyMap<string, EngineSolution> } | null = null;
/** By engine, of what is solved. */
const solvers = new Map<string, GpuFlowSolver>();
let device: GPUDevice | null = null;

async function finer(order: FinerOrder): Promise<ListedFlow> {
  const { from } = order;
  const key = `${from.key}-fine`;
  const kept = await keptCells(key);
  if (kept !== null) return listedFlow(flowOfText(kept), key);
  const text = await cellText(from.key);
  const place = CLIMB.find(({ altitude }) => altitude === from.altitude);
  if (text === null || place === undefined) throw new ProblemError(withoutBeginning);
  const solve = await solverOf(order);
  const field = await solve(place, 'fine', flowOfText(text));
  if (!(await keepCells(key, flowText(field)))) throw new ProblemError(notKept);
  return listedFlow(field, key);
}

async function solverOf({ study, mark, from: { engine }, software }: FinerOrder): Promise<GpuFlowSolver> {
  if (solved?.mark !== mark) {
    solvers.clear();
    const { solutions } = await solveStudyLive({ ...study, vehicles: [] }, shelf);
    solved = { mark, solutions };
  }
  const known = solvers.get(engine);
  if (known !== undefined) return known;
  const solution = solved.solutions.get(engine);
  if (solution === undefined) throw new ProblemError(withoutBeginning);
  device ??= await deviceOf(software);
  const solve = gpuFlowSolver(solution, device);
  solvers.set(engine, solve);
  return solve;
}

async function deviceOf(software: boolean): Promise<GPUDevice> {
  const adapter = await graphicsProcessor(software);
  if (adapter === null) throw new ProblemError(withoutProcessor);
  const taken = await adapter.requestDevice();
  // The next order asks for another.
  void taken.lost.then(() => {
    device = null;
    solvers.clear();
  });
  return taken;
}

const again = 'The field of the server stays; press Finer here twice to try again.';
const withoutBeginning = {
  code: 'finer-without-beginning',
  what: 'The field that a finer one begins from is not there any more.',
  mend: again,
};
const notKept = {
  code: 'finer-not-kept',
  what: 'The browser keeps nothing here, so a finer field cannot be shown.',
  mend: 'Leave the private window, or allow this page to keep data.',
};
const withoutProcessor = {
  code: 'finer-without-processor',
  what: 'The browser has no graphics processor to compute on any more.',
  mend: again,
};

async function reported(order: FinerOrder): Promise<FinerReport> {
  const { number } = order;
  try {
    return { number, is: 'field', field: await finer(order) };
  } catch (error) {
    if (error instanceof ProblemError) return { number, is: 'failed', problem: error.problem };
    return { number, is: 'fault', message: error instanceof Error ? error.message : String(error) };
  }
}

addEventListener('message', ({ data }: MessageEvent<FinerOrder>) => {
  void reported(data).then((report) => postMessage(report));
});
