import { mkdir, writeFile } from 'node:fs/promises';
import { extname, join, resolve } from 'node:path';
import { CAUTION } from '../../../answer/caution.ts';
import type { FlowField, FlowPlace, TimedChoices } from '../../../answer/flow/index.ts';
import type { EngineSolution } from '../../../answer/solution.ts';
import { solveStudyLive } from '../../../answer/solve.ts';
import { ProblemError } from '../../../numerics/problem.ts';
import type { StepTeam } from '../../../physics/euler/index.ts';
import { quote } from '../../../study/report.ts';
import { figureFlow } from '../../../telling/figures/figureFlow.ts';
import { WITHOUT_FRICTION } from '../../../telling/figures/flowWords.ts';
import { formatPressure } from '../../../telling/numbers/formatNumber.ts';
import { sceneToSvg } from '../../../telling/scene/svg.ts';
import { type FlowTeam, flowTeam } from '../../crew/flowTeam.ts';
import { openDataShelf } from '../../disk/data.ts';
import { finestThatHolds } from '../../disk/finestThatHolds.ts';
import { makeRoom } from '../../disk/flowRoom.ts';
import { flowFolder } from '../../disk/flowShelf.ts';
import { keptFlows } from '../../disk/keptFlows.ts';
import { keptMoments } from '../../disk/keptMoments.ts';
import { svgFile } from '../../package/fontFiles.ts';
import { pngOf } from '../../package/pngPicture.ts';
import { EXIT, type ExitStatus } from '../exitStatus.ts';
import { type FlowChoices, type FlowFlags, flowChoices } from '../flowFlags.ts';
import { openStudy } from '../openStudy.ts';
import { bad } from '../sweepFlags.ts';
import { sayIfSlow, type Terminal } from '../terminal.ts';
import { flowTable, momentTable } from '../text/flowText.ts';
import { wrapped } from '../text/wrap.ts';
import { programVersion } from '../version.ts';

export async function flowCommand(given: string, flags: FlowFlags, terminal: Terminal): Promise<ExitStatus> {
  const shelf = openDataShelf();
  const choices = flowChoices(flags);
  const { study } = await openStudy(given, shelf, terminal);
  const { solutions } = await solveStudyLive(study, shelf, { version: programVersion() });
  const id = flags.engine ?? study.engines[0]!.id;
  const solution = solutions.get(id);
  if (solution === undefined)
    throw bad(
      'engine-unknown',
      `--engine: the study has no solved engine ${quote(id)}.`,
      `Name one of ${[...solutions.keys()].join(', ')}.`,
    );
  const fields = await computed(solution, choices, terminal);
  await writePictures(fields, choices, terminal);
  if (flags.json)
    terminal.out(
      JSON.stringify(
        {
          format: 'plumeline flows 1',
          caution: CAUTION,
          about: `Inviscid, computed. ${WITHOUT_FRICTION}`,
          fields: fields.map(withoutCells),
        },
        null,
        2,
      ),
    );
  else
    terminal.out(
      [
        choices.timed === null ? flowTable(fields, terminal.width) : momentTable(fields, terminal.width),
        wrapped(CAUTION, terminal.width),
      ].join('\n\n'),
    );
  const isWhole =
    (choices.timed !== null || fields.length === choices.places.length) &&
    fields.every(
      ({ moment, ended, fineness }) =>
        (moment?.ended ?? ended) === undefined && fineness === choices.fineness,
    );
  return isWhole ? EXIT.answered : EXIT.incomplete;
}

async function computed(
  solution: EngineSolution,
  choices: FlowChoices,
  terminal: Terminal,
): Promise<readonly FlowField[]> {
  const team = choices.bits === 'reference' ? null : flowTeam(choices);
  try {
    return await fieldsOf(solution, choices, team, terminal);
  } finally {
    await team?.dismiss();
  }
}

async function fieldsOf(
  solution: EngineSolution,
  { places, fineness, bits, fresh, timed }: FlowChoices,
  team: FlowTeam | null,
  terminal: Terminal,
): Promise<readonly FlowField[]> {
  await makeRoom(flowFolder());
  if (timed !== null)
    return momentsOf(solution, { ...timed, fineness, bits, team }, places[0]!, fresh, terminal);
  const flows = keptFlows(solution, places, { bits, fresh, team });
  const fields: FlowField[] = [];
  let first: ProblemError | null = null;
  for (const place of places.keys()) {
    try {
      fields.push(
        await finestThatHolds(flows, place, fineness, ({ what }) =>
          terminal.err(
            wrapped(`${what} The field on the coarser mesh, which held, is told instead.`, terminal.width),
          ),
        ),
      );
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error;
      first ??= error;
      if (places.length > 1) terminal.err(wrapped(withoutWords(places[place]!, error), terminal.width));
    }
    sayIfSlow(
      terminal,
      `${solution.input.name}: ${place + 1} of ${places.length} places, ${threadsOf(team)} …`,
    );
  }
  if (fields.length === 0 && first !== null) throw first;
  return fields;
}

const withoutWords = ({ ambientPressure }: FlowPlace, { problem }: ProblemError): string =>
  `In air of ${formatPressure(ambientPressure)} there is no field: ${problem.what} ${problem.mend}`;

async function momentsOf(
  solution: EngineSolution,
  choices: TimedChoices,
  place: FlowPlace,
  fresh: boolean,
  terminal: Terminal,
): Promise<readonly FlowField[]> {
  const fields: FlowField[] = [];
  for await (const field of keptMoments(solution, place, choices, { fresh })) {
    fields.push(field);
    sayIfSlow(terminal, `${solution.input.name}: ${fields.length - 1} of ${choices.frames} moments …`);
  }
  return fields;
}

function threadsOf(team: StepTeam | null): string {
  return team === null ? 'by one thread' : `by up to ${team.hands + 1} threads`;
}

async function writePictures(
  fields: readonly FlowField[],
  { out, shown, options, over, width, fonts }: FlowChoices,
  terminal: Terminal,
): Promise<void> {
  if (out === null) return;
  const isFolder = extname(out) === '';
  if (isFolder) await mkdir(resolve(out), { recursive: true });
  for (const [i, field] of fields.entries()) {
    const scene = figureFlow(field, shown, { ...options, ...over });
    const path = isFolder ? join(out, `flow-${field.engine}-${String(i + 1).padStart(2, '0')}.svg`) : out;
    const bytes =
      extname(path).toLowerCase() === '.png'
        ? pngOf(sceneToSvg(scene), width ?? scene.width, {
            Title: scene.title,
            Description: scene.description,
            Disclaimer: CAUTION,
          })
        : svgFile(scene, fonts);
    await writeFile(resolve(path), bytes);
    terminal.err(`${path}: ${scene.title}`);
  }
}

function withoutCells({ blocks, ...field }: FlowField): object {
  return { ...field, blocks: blocks.map(({ ni, nj }) => ({ ni, nj })) };
}
