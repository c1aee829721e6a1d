/** What a package needs worked out: on two threads, each in one order, so that the same study gives the same bytes. */

import type { Crew } from '../../answer/asked/crew.ts';
import { withDrawnBands } from '../../answer/bands/drawnBands.ts';
import { altitudeCurve } from '../../answer/conditions.ts';
import type { FlowField } from '../../answer/flow/index.ts';
import type { MeasuredSeries } from '../../answer/measured/model.ts';
import type { StudyAnswer } from '../../answer/model.ts';
import { findNeed, type Need, needRequestOf } from '../../answer/needs/index.ts';
import type { DataShelf } from '../../answer/shelf.ts';
import type { SolvedStudy } from '../../answer/solve.ts';
import { mapRequestOf, sweep, sweepMap, sweepRequestOf } from '../../answer/sweeps/index.ts';
import { type VehicleWorth, vehicleWorths, type WorthTable, worthTable } from '../../answer/worth/index.ts';
import type { Study } from '../../study/model.ts';
import { USUAL_PACKAGE } from '../../study/packageForm.ts';
import { SCRIPT_FILE } from '../../study/script/index.ts';
import type { Curves } from '../../telling/figures/packageFigures.ts';
import type { Swept } from '../../telling/figures/sweptFigures.ts';
import type { ScriptParts } from '../../telling/handover/timedCuts.ts';
import { readScriptOf, tellScript } from '../../telling/script/index.ts';
import { steadyCrew } from '../crew/threadCrew.ts';
import { readScriptText } from '../disk/scriptFile.ts';
import { type DrawnFigures, type DrawSetting, drawnCards, drawnWithout } from '../package/drawnFigures.ts';
import { type ExploreFrames, exploreFrames } from '../package/exploreFile.ts';
import type { PictureMakers } from '../package/pictureMakers.ts';
import { type Checked, checkedStudy } from './checkedSentences.ts';
import { measuredOf } from './measuredOf.ts';
import { packFlows } from './packFlows.ts';
import { sayIfSlow, type Terminal } from './terminal.ts';
import { studyProblemText } from './text/problemText.ts';

export interface WorkedOut extends Checked, Found {
  readonly solved: SolvedStudy;
  /** The figures that need no sentence. */ readonly drawn: DrawnFigures;
  /** The cards of the sentences; absent where these were not told early. */ readonly cards?: DrawnFigures;
  /** What moves on the page for viewers; null where there is no engine. */ readonly explore: ExploreFrames | null;
  /** Whole flows that the script or the package shows. */ readonly flows: readonly FlowField[];
}

/** All that no sentence is needed for. */
interface Found {
  /** With the bands of its figures. */ readonly answer: StudyAnswer;
  readonly swept: Swept;
  readonly worth: WorthTable | null;
  readonly needs: readonly Need[];
  readonly script: ScriptParts | null;
  readonly measured: readonly MeasuredSeries[];
  readonly vehicleWorths: readonly VehicleWorth[];
}

export interface PackWork {
  readonly study: Study;
  readonly folder: string;
  readonly shelf: DataShelf;
  readonly makers: PictureMakers;
  readonly terminal: Terminal;
  readonly signal: AbortSignal;
  /** The study at its middle values, in this thread. */ solve(this: void): Promise<SolvedStudy>;
}

/** @throws the signal's reason as soon as it is given; the threads end with it */
export async function workedOut(work: PackWork): Promise<WorkedOut> {
  const { study, signal } = work;
  signal.throwIfAborted();
  const crew = await steadyCrew(study);
  const stopped = new Promise<never>((_, reject) => {
    signal.addEventListener('abort', () => reject(signal.reason), { once: true });
  });
  // The threads are given their first work before this thread has any.
  const told = askedFirst(work, crew);
  const solving = work.solve();
  const all = allOf(work, crew, told, solving);
  // What is still under way when it is stopped fails with its thread, and is not waited for.
  for (const promise of [stopped, told, solving, all]) promise.catch(() => undefined);
  try {
    return await Promise.race([all, stopped, solving.then(() => all)]);
  } finally {
    await crew.dismiss();
  }
}

/** What the engines of this thread are not needed for. The crew is asked for one thing after the other, always in this order. */
async function askedFirst(work: PackWork, crew: Crew): Promise<Omit<Found, 'answer' | 'vehicleWorths'>> {
  const { study, folder, shelf, terminal } = work;
  return {
    worth: study.engines.length < 2 ? null : await worthTable(study, crew),
    script: await scriptOf(study, folder, crew, terminal),
    swept: await sweptOf(study, crew, terminal),
    needs: await needsOf(study, crew),
    measured: await measuredOf(study, folder, shelf),
  };
}

async function allOf(
  work: PackWork,
  crew: Crew,
  told: ReturnType<typeof askedFirst>,
  solving: Promise<SolvedStudy>,
): Promise<WorkedOut> {
  const { study, terminal } = work;
  const solved = await solving;
  const worths = vehicleWorths(study, solved.answer, solved.solutions);
  const first = await told;
  const answer = await withDrawnBands(study, solved, crew);
  const found = { ...first, answer, vehicleWorths: worths };
  const setting = settingOf(work, solved, answer);
  let cards: Promise<DrawnFigures> | undefined;
  const [checked, pictures] = await Promise.all([
    checkedStudy(study, crew, terminal, (sentences) => {
      // Where their verdicts turn is on no card.
      cards = drawnCards(setting, { ...setting, sentences });
      cards.catch(() => undefined);
    }),
    drawnOf(work, solved, found, setting),
  ]);
  return { ...found, ...checked, ...pictures, ...(cards && { cards: await cards }), solved };
}

type Setting = DrawSetting & { readonly curves: Curves };

function settingOf(
  { study, makers, signal }: PackWork,
  { solutions }: SolvedStudy,
  answer: StudyAnswer,
): Setting {
  const curves = Object.fromEntries([...solutions].map(([id, solution]) => [id, altitudeCurve(solution)]));
  const { shapes } = study.package ?? USUAL_PACKAGE;
  return { answer, curves, shapes, makers, signal };
}

/** Drawn while sentences are judged. */
async function drawnOf(
  { study, terminal, signal }: PackWork,
  solved: SolvedStudy,
  found: Found,
  setting: Setting,
): Promise<Pick<WorkedOut, 'drawn' | 'explore' | 'flows'>> {
  const { answer, curves } = setting;
  const { flows, flowFigures } = await packFlows(study, solved, found.script, terminal, signal);
  const drawn = await drawnWithout(setting, { ...found, curves, flows, flowFigures });
  return { drawn, flows, explore: exploreFrames(answer, curves) };
}

/** The script and its numbers, where there is one; what is wrong in it is told. */
async function scriptOf(
  study: Study,
  folder: string,
  crew: Crew,
  terminal: Terminal,
): Promise<ScriptParts | null> {
  const text = await readScriptText(folder);
  if (text === null) return null;
  const read = readScriptOf(text, study, SCRIPT_FILE);
  for (const problem of read.problems) terminal.err(studyProblemText(problem, terminal.width));
  const told = await tellScript(study, read, crew, {
    onProvisional: () => sayIfSlow(terminal, 'Working out the numbers of the script …'),
  });
  return { read, text, told };
}

/** What it would take, one after the other. */
async function needsOf(study: Study, crew: Crew): Promise<readonly Need[]> {
  const needs: Need[] = [];
  for (const input of study.needs) needs.push(await findNeed(study, crew, needRequestOf(study, input)));
  return needs;
}

/** The study's own sweeps and maps, one after the other. */
async function sweptOf(study: Study, crew: Crew, terminal: Terminal): Promise<Swept> {
  const say = (id: string) => (done: number, most: number) => {
    if (done % PROGRESS_STEP === 0) sayIfSlow(terminal, `${id}: ${done} of about ${most} points …`);
  };
  const sweeps: Swept['sweeps'][number][] = [];
  for (const input of study.sweeps) {
    sweeps.push(await sweep(study, crew, sweepRequestOf(study, input), { onProgress: say(input.id) }));
  }
  const maps: Swept['maps'][number][] = [];
  for (const input of study.maps) {
    maps.push(await sweepMap(study, crew, mapRequestOf(study, input), { onProgress: say(input.id) }));
  }
  return { sweeps, maps };
}

const PROGRESS_STEP = 25;
