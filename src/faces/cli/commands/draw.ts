import { writeFile } from 'node:fs/promises';
import { extname, resolve } from 'node:path';
import type { Crew } from '../../../answer/asked/crew.ts';
import { localCrew } from '../../../answer/asked/localCrew.ts';
import { altitudeCurve } from '../../../answer/conditions.ts';
import type { StudyAnswer } from '../../../answer/model.ts';
import { findNeed, needRequestOf } from '../../../answer/needs/index.ts';
import type { DataShelf } from '../../../answer/shelf.ts';
import { type SolvedStudy, solveStudyLive } from '../../../answer/solve.ts';
import { mapRequestOf, sweep, sweepMap, sweepRequestOf } from '../../../answer/sweeps/index.ts';
import { vehicleWorths, worthTable } from '../../../answer/worth/index.ts';
import type { Study } from '../../../study/model.ts';
import { nearestName } from '../../../study/nearest.ts';
import { quote } from '../../../study/report.ts';
import { type FigureSubject, figureKinds } from '../../../telling/figures/figureKinds.ts';
import { flowFigureNames } from '../../../telling/figures/flowKinds.ts';
import { flowOfFigure } from '../../../telling/figures/flowsWanted.ts';
import type { FigureKind } from '../../../telling/figures/kind.ts';
import type { Scene } from '../../../telling/scene/scene.ts';
import { sceneToSvg } from '../../../telling/scene/svg.ts';
import { openDataShelf } from '../../disk/data.ts';
import { wantedFlows } from '../../disk/wantedFlows.ts';
import { svgFile } from '../../package/fontFiles.ts';
import { pngOf } from '../../package/pngPicture.ts';
import { BadInput } from '../badInput.ts';
import { checkedSentences } from '../checkedSentences.ts';
import { type DrawChoices, type DrawFlags, drawChoices } from '../drawFlags.ts';
import { EXIT, type ExitStatus } from '../exitStatus.ts';
import { measuredOf } from '../measuredOf.ts';
import { openStudy } from '../openStudy.ts';
import { sayIfSlow, type Terminal } from '../terminal.ts';
import { programVersion } from '../version.ts';

export async function drawCommand(given: string, flags: DrawFlags, terminal: Terminal): Promise<ExitStatus> {
  const shelf = openDataShelf();
  const choices = drawChoices(flags);
  const { study, folder } = await openStudy(given, shelf, terminal);
  const solved = await solveStudyLive(study, shelf, {
    version: programVersion(),
    onEngine: (name, which, count) => sayIfSlow(terminal, `Solving ${name} (${which} of ${count}) …`),
  });
  if (choices === null) {
    for (const line of listOf(study, solved)) terminal.out(line);
    return EXIT.answered;
  }
  const measured = await measuredOf(study, folder, shelf);
  const kind = await kindOf(choices, study, solved, shelf, terminal);
  const scene = kind.draw({ ...choices.options, measured });
  if (scene === null)
    throw new BadInput([
      {
        code: 'figure-empty',
        what: `The study has nothing to draw in ${quote(kind.name)}.`,
        why: `It shows ${kind.about}.`,
        mend: 'plumeline draw <study> --list names the figures that the study has.',
      },
    ]);
  await writeFile(resolve(choices.out), bytesOf(scene, kind, choices, solved.answer.caution));
  terminal.out(`${choices.out}: ${scene.title}`);
  return EXIT.answered;
}

/** By the ending of the file: SVG, PNG, the table, or the words for those who cannot see it. */
function bytesOf(scene: Scene, kind: FigureKind, choices: DrawChoices, caution: string): Buffer | string {
  switch (extname(choices.out).toLowerCase()) {
    case '.png':
      return pngOf(sceneToSvg(scene), choices.width ?? scene.width, {
        Title: scene.title,
        Description: scene.description,
        Disclaimer: caution,
      });
    case '.csv':
      return kind.csv(choices.options);
    case '.txt':
      return `${scene.title}\n\n${scene.description}\n`;
    default:
      return svgFile(scene, choices.fonts);
  }
}

/** Names that need no further work, then those that the study asks for. */
function listOf(study: Study, solved: SolvedStudy): readonly string[] {
  const named = figureKinds(subjectOf(solved)).filter(
    (kind) => kind.draw({ size: '16:9', theme: 'light' }) !== null,
  );
  const rest = askedNames(study, solved.answer);
  const lines = [...named.map(({ name, about }) => [name, about] as const), ...rest];
  const width = Math.max(0, ...lines.map(([name]) => name.length));
  return lines.map(([name, about]) => `${name.padEnd(width)}  ${about}`);
}

function askedNames(study: Study, answer: StudyAnswer): readonly (readonly [string, string])[] {
  return [
    ...flowFigureNames(answer).map(({ name, about }) => [name, about] as const),
    ...(study.engines.length < 2
      ? []
      : [['worth', 'what the second engine gains and what it costs'] as const]),
    ...study.vehicles
      .filter(({ goal }) => goal.is === 'orbit')
      .map(({ id, name }) => [`exchange-rates-${id}`, `what a little more is worth to ${name}`] as const),
    ...study.sweeps.map(({ id, title }) => [`sweep-${id}`, title ?? 'curves over one input'] as const),
    ...study.maps.map(({ id, title }) => [`map-${id}`, title ?? 'one number over two inputs'] as const),
    ...study.needs.map(({ id, title, so }) => [`need-${id}`, title ?? so] as const),
    ...study.sentences.map(({ id, say }) => [`sentence-${id}`, say] as const),
  ];
}

function subjectOf({ answer, solutions }: SolvedStudy): FigureSubject {
  const curves = Object.fromEntries([...solutions].map(([id, solution]) => [id, altitudeCurve(solution)]));
  return { answer, curves };
}

/** The kind of that name; what it needs beyond the answer is worked out for it alone. */
async function kindOf(
  { figure: name, options }: DrawChoices,
  study: Study,
  solved: SolvedStudy,
  shelf: DataShelf,
  terminal: Terminal,
): Promise<FigureKind> {
  const subject = subjectOf(solved);
  const known = [
    ...figureKinds(subject).map((kind) => kind.name),
    ...askedNames(study, solved.answer).map(([id]) => id),
  ];
  if (!known.includes(name)) {
    const near = nearestName(name, known);
    throw new BadInput([
      {
        code: 'figure-unknown',
        what: `--figure: the study has no figure ${quote(name)}.`,
        ...(near !== null && { why: `Did you mean ${near}?` }),
        mend: 'plumeline draw <study> --list names those that it has.',
      },
    ]);
  }
  const flow = flowOfFigure(solved.answer, name, options.altitude ?? 0);
  if (flow !== null) {
    const flows = await wantedFlows(solved, [flow], {
      onField: (engine) => sayIfSlow(terminal, `Computing the whole flow of ${engine} …`),
    });
    return figureKinds({ ...subject, flows }).find((kind) => kind.name === name)!;
  }
  const more = await askedFor(name, study, solved, await localCrew(study, shelf), terminal);
  return figureKinds({ ...subject, ...more }).find((kind) => kind.name === name)!;
}

async function askedFor(
  name: string,
  study: Study,
  { answer, solutions }: SolvedStudy,
  crew: Crew,
  terminal: Terminal,
): Promise<Partial<FigureSubject>> {
  const onProgress = (done: number, of: number): void =>
    sayIfSlow(terminal, `${name}: ${done} of about ${of} points …`);
  const [kind = '', ...rest] = name.split('-');
  const id = rest.join('-');
  switch (kind) {
    case 'worth':
      return { worth: await worthTable(study, crew, { onProgress }) };
    case 'exchange':
      return { vehicleWorths: vehicleWorths(study, answer, solutions) };
    case 'sweep': {
      const input = study.sweeps.find((each) => each.id === id)!;
      const found = await sweep(study, crew, sweepRequestOf(study, input), { onProgress });
      return { swept: { sweeps: [found], maps: [] } };
    }
    case 'map': {
      const input = study.maps.find((each) => each.id === id)!;
      const found = await sweepMap(study, crew, mapRequestOf(study, input), { onProgress });
      return { swept: { sweeps: [], maps: [found] } };
    }
    case 'need': {
      const input = study.needs.find((each) => each.id === id)!;
      return { needs: [await findNeed(study, crew, needRequestOf(study, input))] };
    }
    case 'sentence': {
      const one = { ...study, sentences: study.sentences.filter((each) => each.id === id) };
      return { sentences: await checkedSentences(one, crew, terminal, { flips: false }) };
    }
    default:
      return {};
  }
}
