import { resolve } from 'node:path';
import type { Crew } from '../../../answer/asked/crew.ts';
import { localCrew } from '../../../answer/asked/localCrew.ts';
import { withDrawnBands } from '../../../answer/bands/drawnBands.ts';
import { dataRowsUsed } from '../../../answer/cited/index.ts';
import { findNeed, type Need, needRequestOf } from '../../../answer/needs/index.ts';
import { reviewables, standingsOf } from '../../../answer/review/index.ts';
import { checkFacts } from '../../../answer/sentences/checkFacts.ts';
import { solveStudyLive } from '../../../answer/solve.ts';
import { mapRequestOf, sweep, sweepMap, sweepRequestOf } from '../../../answer/sweeps/index.ts';
import { vehicleWorths, worthTable } from '../../../answer/worth/index.ts';
import type { Study } from '../../../study/model.ts';
import type { SignOff } from '../../../study/review/model.ts';
import { SCRIPT_FILE } from '../../../study/script/index.ts';
import { changeWords } from '../../../telling/corrections/changes.ts';
import type { Swept } from '../../../telling/figures/sweptFigures.ts';
import type { ScriptParts } from '../../../telling/handover/scriptFiles.ts';
import { readScriptOf, tellScript } from '../../../telling/script/index.ts';
import { openDataShelf } from '../../disk/data.ts';
import { readReviewFile } from '../../disk/reviewFile.ts';
import { readScriptText } from '../../disk/scriptFile.ts';
import { requireReplaceable } from '../../package/packagePlace.ts';
import { packStudy } from '../../package/packStudy.ts';
import { sha256 } from '../../package/sha256.ts';
import { checkedStudy } from '../checkedSentences.ts';
import { EXIT, type ExitStatus } from '../exitStatus.ts';
import { measuredOf } from '../measuredOf.ts';
import { openStudy } from '../openStudy.ts';
import { sayIfSlow, type Terminal } from '../terminal.ts';
import { studyProblemText } from '../text/problemText.ts';
import { programVersion } from '../version.ts';
import { dayGiven } from './review.ts';

export interface PackFlags {
  readonly out: string;
  readonly date?: string;
}

export async function packCommand(given: string, flags: PackFlags, terminal: Terminal): Promise<ExitStatus> {
  const day = dayGiven(flags.date);
  const shelf = openDataShelf();
  const { study, text, folder } = await openStudy(given, shelf, terminal);
  // Before the work, not after it.
  await requireReplaceable(resolve(flags.out));
  const solved = await solveStudyLive(study, shelf, {
    version: programVersion(),
    onEngine: (name, which, count) => sayIfSlow(terminal, `Solving ${name} (${which} of ${count}) …`),
  });
  // One thread, so that the work has one order: the same study gives the same bytes.
  const crew = await localCrew(study, shelf);
  const answer = await withDrawnBands(study, solved, crew);
  const { sentences, analogies, comparison } = await checkedStudy(study, crew, terminal);
  const signOffs = await readReviewFile(folder);
  const signable = reviewables(sentences, checkFacts(study), analogies);
  const measured = await measuredOf(study, folder, shelf);
  const swept = await sweptOf(study, crew, terminal);
  const worth = study.engines.length < 2 ? null : await worthTable(study, crew);
  const needs = await needsOf(study, crew);
  const script = await scriptOf(study, folder, crew, terminal);
  const packed = await packStudy(
    {
      study,
      text,
      solved: { ...solved, answer },
      sentences,
      analogies,
      comparison,
      swept,
      measured,
      worth,
      needs,
      script,
      rows: await dataRowsUsed(study, shelf),
      standings: standingsOf(signOffs, signable, sha256),
      // The day is an input: given, or of the latest sign-off; the clock would change the bytes.
      date: day ?? latestDay(signOffs),
      vehicleWorths: vehicleWorths(study, solved.answer, solved.solutions),
      onFigure: (name, which, count) => sayIfSlow(terminal, `Drawing ${name} (${which} of ${count}) …`),
    },
    flags.out,
  );
  const failed = Object.entries(solved.answer.failed);
  for (const [id, problem] of failed) terminal.err(`The engine ${id} could not be computed: ${problem.what}`);
  terminal.out(`${packed.files.length} files in ${packed.folder}; open index.html there.`);
  for (const note of packed.notes) terminal.err(note);
  if (packed.changes !== null && packed.changes.length > 0) {
    terminal.out(
      `${packed.changes.length} published things have changed since the package before; drafted in corrections.md:`,
    );
    for (const change of packed.changes.slice(0, MOST_TOLD)) terminal.out(`  - ${changeWords(change)}`);
  }
  return failed.length === 0 ? EXIT.answered : EXIT.incomplete;
}

const latestDay = (signOffs: readonly SignOff[]): string | null =>
  signOffs
    .map(({ date }) => date)
    .sort()
    .at(-1) ?? null;

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
const MOST_TOLD = 10;
