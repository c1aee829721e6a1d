import { mkdir, writeFile } from 'node:fs/promises';
import { extname, join, resolve } from 'node:path';
import { CAUTION } from '../../../answer/caution.ts';
import { type FlowField, type FlowPlace, flowFields } from '../../../answer/flow/index.ts';
import type { EngineSolution } from '../../../answer/solution.ts';
import { solveStudyLive } from '../../../answer/solve.ts';
import { quote } from '../../../study/report.ts';
import { figureFlow } from '../../../telling/figures/figureFlow.ts';
import { sceneToSvg } from '../../../telling/scene/svg.ts';
import { openDataShelf } from '../../disk/data.ts';
import { flowFolder, flowKey, keepFlow, readFlow } from '../../disk/flowShelf.ts';
import { pngOf } from '../../package/pngPicture.ts';
import { EXIT, type ExitStatus } from '../exitStatus.ts';
import { type FlowChoices, type FlowFlags, flowChoices } from '../flowFlags.ts';
import { openStudy } from '../openStudy.ts';
import { bad } from '../sweepFlags.ts';
import { sayIfSlow, type Terminal } from '../terminal.ts';
import { flowTable } from '../text/flowText.ts';
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
  const fields: FlowField[] = [];
  for (const field of await fieldsOf(solution, choices, terminal)) {
    fields.push(field);
  }
  await writePictures(fields, choices, terminal);
  if (flags.json)
    terminal.out(
      JSON.stringify(
        { format: 'plumeline flows 1', caution: CAUTION, fields: fields.map(withoutCells) },
        null,
        2,
      ),
    );
  else terminal.out([flowTable(fields, terminal.width), wrapped(CAUTION, terminal.width)].join('\n\n'));
  return EXIT.answered;
}

/** From the cache where all are there, else computed one after the other, each kept at once. */
async function fieldsOf(
  solution: EngineSolution,
  { places, fineness, fresh }: FlowChoices,
  terminal: Terminal,
): Promise<readonly FlowField[]> {
  const folder = flowFolder();
  const keyOf = (place: FlowPlace, i: number): string =>
    flowKey([
      programVersion(),
      solution.input,
      solution.contour.wall,
      solution.expansion.chamber,
      fineness,
      places.slice(0, i),
      place,
    ]);
  const keys = places.map(keyOf);
  const kept = fresh ? [] : await Promise.all(keys.map((key) => readFlow(folder, key)));
  if (kept.length > 0 && kept.every((field) => field !== null)) return kept.flatMap((field) => field ?? []);
  const fields: FlowField[] = [];
  for (const field of flowFields(solution, places, fineness)) {
    await keepFlow(folder, keys[fields.length]!, field);
    fields.push(field);
    sayIfSlow(terminal, `${field.name}: ${fields.length} of ${places.length} places …`);
  }
  return fields;
}

async function writePictures(
  fields: readonly FlowField[],
  { out, shown, options, width }: FlowChoices,
  terminal: Terminal,
): Promise<void> {
  if (out === null) return;
  const isFolder = extname(out) === '';
  if (isFolder) await mkdir(resolve(out), { recursive: true });
  for (const [i, field] of fields.entries()) {
    const scene = figureFlow(field, shown, options);
    const path = isFolder ? join(out, `flow-${field.engine}-${String(i + 1).padStart(2, '0')}.svg`) : out;
    const svg = sceneToSvg(scene);
    const bytes =
      extname(path).toLowerCase() === '.png'
        ? pngOf(svg, width ?? scene.width, {
            Title: scene.title,
            Description: scene.description,
            Disclaimer: CAUTION,
          })
        : svg;
    await writeFile(resolve(path), bytes);
    terminal.err(`${path}: ${scene.title}`);
  }
}

function withoutCells({ blocks, ...field }: FlowField): object {
  return { ...field, blocks: blocks.map(({ ni, nj }) => ({ ni, nj })) };
}
