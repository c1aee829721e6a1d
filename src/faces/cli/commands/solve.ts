import type { Crew } from '../../../answer/asked/crew.ts';
import { withDrawnBands } from '../../../answer/bands/drawnBands.ts';
import { isMissingRow } from '../../../answer/engineAnswer.ts';
import type { StudyAnswer } from '../../../answer/model.ts';
import { type SolvedStudy, solveStudyLive } from '../../../answer/solve.ts';
import type { EngineInput, Study } from '../../../study/model.ts';
import { dismissing, threadCrew } from '../../crew/threadCrew.ts';
import { openDataShelf } from '../../disk/data.ts';
import { BadInput } from '../badInput.ts';
import { checkedSentences } from '../checkedSentences.ts';
import { altitudeList, ambientList } from '../conditionLists.ts';
import { EXIT, type ExitStatus } from '../exitStatus.ts';
import { openStudy } from '../openStudy.ts';
import { sayIfSlow, type Terminal } from '../terminal.ts';
import { answerText } from '../text/answerText.ts';
import { programVersion } from '../version.ts';

export interface SolveFlags {
  readonly json?: true;
  readonly ambient?: string;
  readonly altitude?: string;
  readonly engine?: string;
}

export async function solveCommand(
  given: string,
  flags: SolveFlags,
  terminal: Terminal,
): Promise<ExitStatus> {
  const ambients = flags.ambient === undefined ? [] : ambientList(flags.ambient);
  const altitudes = flags.altitude === undefined ? [] : altitudeList(flags.altitude);
  const shelf = openDataShelf();
  const opened = await openStudy(given, shelf, terminal);
  const study = flags.engine === undefined ? opened.study : onlyEngine(opened.study, flags.engine);
  const crew = await threadCrew(study);
  const middle = await solveStudyLive(study, shelf, {
    version: programVersion(),
    ambients,
    altitudes,
    onEngine: (name, which, count) => sayIfSlow(terminal, `Solving ${name} (${which} of ${count}) …`),
  });
  // A sentence may speak of engines that were not asked for.
  const told = flags.json !== true && flags.engine === undefined;
  const [answer, sentences] = await dismissing(crew, async () => [
    await withBands(study, middle, crew, terminal),
    told ? await checkedSentences(study, crew, terminal, { flips: false }) : [],
  ]);
  terminal.out(
    flags.json
      ? JSON.stringify(answer, null, 2)
      : answerText(
          answer,
          sentences,
          {
            altitudes: [...study.altitudes.map(({ value }) => value), ...altitudes],
            ambients: [...study.ambients.map(({ value }) => value), ...ambients],
          },
          terminal.width,
        ),
  );
  return sayWhatFailed(answer, terminal);
}

/** The answer with its numbers’ bands; engines are solved again at other values of what is not known. */
function withBands(study: Study, solved: SolvedStudy, crew: Crew, terminal: Terminal): Promise<StudyAnswer> {
  return withDrawnBands(study, solved, crew, {
    onProgress: (done, of) => {
      if (done === 1) sayIfSlow(terminal, `Solving the engines at ${of} points of what is not known …`);
    },
  });
}

/** The engine asked for, and those from which it takes its size. */
function onlyEngine(study: Study, id: string): Study {
  const byId = new Map(study.engines.map((engine) => [engine.id, engine]));
  const wanted: EngineInput[] = [];
  let next = byId.get(id);
  if (next === undefined) {
    throw new BadInput([
      {
        code: 'engine-unknown',
        what: `--engine: the study has no engine “${id}”.`,
        mend: `Engines of this study: ${[...byId.keys()].join(', ')}.`,
      },
    ]);
  }
  while (next !== undefined && !wanted.includes(next)) {
    wanted.push(next);
    next = next.size.by === 'same' ? byId.get(next.size.as) : undefined;
  }
  return { ...study, engines: wanted, compare: null };
}

function sayWhatFailed(answer: StudyAnswer, terminal: Terminal): ExitStatus {
  let status: ExitStatus = EXIT.answered;
  for (const [id, problem] of Object.entries(answer.failed)) {
    status = EXIT.incomplete;
    terminal.err(`The engine ${id} could not be computed: ${problem.what}`);
  }
  for (const [id, engine] of Object.entries(answer.engines)) {
    for (const { path, reason } of engine.reasons.filter(isMissingRow)) {
      status = EXIT.incomplete;
      terminal.err(`The engine ${id} has no row in ${path}: ${reason}`);
    }
  }
  return status;
}
