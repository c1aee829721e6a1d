/** The estimator: tells within milliseconds what gas and mean flow become where an input moves. */

import {
  basisOf,
  type EngineBasis,
  isRecut,
  recutOf,
  touchedEngines,
  withTextAt,
} from '../../../answer/estimate/index.ts';
import { gatherMaterials, type Materials } from '../../../answer/materials.ts';
import { type WorkingGas, workingGas } from '../../../answer/workingGas.ts';
import { attempt, ProblemError } from '../../../numerics/problem.ts';
import type { EngineInput } from '../../../study/model.ts';
import { knownNames } from '../../../study/names.ts';
import { type ReadOptions, readStudy } from '../../../study/read.ts';
import { fetchedShelf } from '../shelf.ts';
import { changedText } from './changedText.ts';
import type { Bases, Change, EstimatorOrder, EstimatorReport } from './estimatorMessages.ts';

interface Base {
  readonly epoch: number;
  readonly text: string;
  readonly engines: readonly EngineInput[];
  /** [m] */ readonly throatRadii: Readonly<Record<string, number>>;
  readonly options: ReadOptions;
}

const shelf = fetchedShelf();
let base: Base | null = null;
let materials: Materials | undefined;

async function takeUp({
  epoch,
  text,
  throatRadii,
}: Extract<EstimatorOrder, { kind: 'base' }>): Promise<void> {
  const options = { file: 'study.yaml', ...knownNames(await shelf.propellants()) };
  const read = readStudy(text, options);
  if (!read.ok) return;
  const { engines } = read.study;
  materials = await materialsFor(engines);
  base = { epoch, text, engines, throatRadii, options };
  warmUp(base);
}

/** What an engine lacks in the data fails with that engine, not here. */
async function materialsFor(engines: readonly EngineInput[]): Promise<Materials> {
  let found = await gatherMaterials([], shelf, materials);
  for (const engine of engines) {
    const uncooled = { ...engine, cooling: null };
    found = await gatherMaterials([uncooled], shelf, found).catch((error: unknown) => {
      // A file that cannot be reached is another matter.
      if (error instanceof ProblemError && !error.problem.code.startsWith('data-')) return found;
      throw error;
    });
  }
  return found;
}

const ROUNDS = 12;

let roundsRun = 0;

/**
 * Code that has not run yet is slow: it runs on gases near the study's own while nothing is asked, and is quick from then on. What
 * each move is held against is worked out now.
 */
function warmUp(of: Base): void {
  for (const engine of of.engines) attempt(() => basisNow(engine));
  setTimeout(() => nextRound(of));
}

function nextRound(of: Base): void {
  if (base !== of || roundsRun === ROUNDS) return;
  const factor = 1 + (roundsRun - ROUNDS / 2) * 1e-3;
  roundsRun += 1;
  for (const engine of of.engines) {
    const { chamber } = engine;
    const pressure = { ...chamber.pressure, value: chamber.pressure.value * factor };
    attempt(() => basisNow({ ...engine, chamber: { ...chamber, pressure } }));
    if (roundsRun === ROUNDS) attempt(() => cutAsItIs(engine, of.throatRadii[engine.id]));
  }
  setTimeout(() => nextRound(of));
}

/** A plug as it is, to be cut elsewhere before long. */
function cutAsItIs(engine: EngineInput, throatRadius: number | undefined): void {
  if (engine.nozzle.kind !== 'plug' || materials === undefined || throatRadius === undefined) return;
  recutOf(engine, engine, gasOf(engine, materials), throatRadius);
}

const MOST_GASES = 8;
/** Where and how the study says it: a gas does not hang on that. */
const OF_THE_TEXT: ReadonlySet<string> = new Set(['path', 'text']);
const gases = new Map<string, WorkingGas>();

/** One gas for all engines that burn the same at the same pressure. */
function gasOf(engine: EngineInput, data: Materials): WorkingGas {
  const { pressure, pressureAt, contractionRatio } = engine.chamber;
  const inlet = pressureAt === 'injector' ? contractionRatio.value : null;
  const burnt = [engine.propellants, engine.chemistry, pressure.value, pressureAt, inlet];
  const key = JSON.stringify(burnt, (name, value: unknown) => (OF_THE_TEXT.has(name) ? undefined : value));
  const known = gases.get(key) ?? workingGas(engine, data);
  gases.delete(key);
  gases.set(key, known);
  for (const [oldest] of gases) if (gases.size > MOST_GASES) gases.delete(oldest);
  return known;
}

const bases = new WeakMap<EngineInput, EngineBasis>();

function basisNow(engine: EngineInput): EngineBasis {
  if (materials === undefined) throw new Error('There are no materials yet.');
  const known = bases.get(engine) ?? basisOf(engine, gasOf(engine, materials));
  bases.set(engine, known);
  return known;
}

/** Of a plug that is cut elsewhere; where it was not answered, only the full answer can tell. */
function recut(
  before: EngineInput,
  now: EngineInput,
  throatRadius: number | undefined,
): Pick<EngineBasis, 'recut'> {
  if (materials === undefined || throatRadius === undefined || !isRecut(before, now)) return {};
  return { recut: recutOf(before, now, gasOf(before, materials), throatRadius) };
}

/** The engines after the changes; null where the text cannot be read, or the change is not allowed. */
function enginesAfter(
  { engines, text, options }: Base,
  changes: readonly Change[],
): readonly EngineInput[] | null {
  let quick: readonly EngineInput[] | null = engines;
  for (const change of changes) {
    if ('text' in change) quick = null;
    else
      for (const edit of change.edits) {
        if (quick === null) break;
        quick =
          'list' in edit || typeof edit.value !== 'string' ? null : withTextAt(quick, edit.path, edit.value);
      }
  }
  if (quick !== null) return quick;
  const after = attempt(() =>
    changes.reduce(
      (was, change) => ('text' in change ? change.text : changedText(was, change.edits, options)),
      text,
    ),
  );
  if (!after.ok) return null;
  const read = readStudy(after.value, options);
  return read.ok ? read.study.engines : null;
}

async function estimate(on: Base, changes: readonly Change[]): Promise<Bases | null> {
  const engines = enginesAfter(on, changes);
  if (engines === null) return null;
  const touched = touchedEngines(on.engines, engines);
  if (touched.some(({ before, now }) => before.propellants !== now.propellants))
    materials = await materialsFor(engines);
  return Object.fromEntries(
    touched.map(({ before, now }) => {
      const both = attempt(() => ({
        before: basisNow(before),
        now: { ...basisNow(now), ...recut(before, now, on.throatRadii[now.id]) },
      }));
      return [now.id, both.ok ? both.value : null];
    }),
  );
}

async function answer(order: EstimatorOrder): Promise<EstimatorReport | null> {
  if (order.kind === 'base') {
    await takeUp(order);
    return null;
  }
  const { number, epoch, changes } = order;
  try {
    return { number, epoch, bases: base?.epoch === epoch ? await estimate(base, changes) : null };
  } catch (error) {
    if (error instanceof ProblemError) return { number, epoch, bases: null };
    return { number, epoch, fault: String(error) };
  }
}

/** One after the other: an estimate may be asked for while its base is still being taken up. */
let turn: Promise<unknown> = Promise.resolve();

self.addEventListener('message', ({ data }: MessageEvent<EstimatorOrder>) => {
  turn = turn
    .then(() => answer(data))
    .then((report) => {
      if (report !== null) self.postMessage(report);
    })
    .catch(reportError);
});
