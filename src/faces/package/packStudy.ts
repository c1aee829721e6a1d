/** One folder with everything to publish: page, figures, numbers, the study itself, and what each file is. */

import { createHash, randomBytes } from 'node:crypto';
import { mkdir, readdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import type { CheckedAnalogy } from '../../answer/analogies/model.ts';
import { altitudeCurve } from '../../answer/conditions.ts';
import type { Need } from '../../answer/needs/index.ts';
import { checkAnswer } from '../../answer/sentences/checkAnswer.ts';
import type { CheckedComparison } from '../../answer/sentences/comparePair.ts';
import type { CheckedSentence } from '../../answer/sentences/model.ts';
import type { SolvedStudy } from '../../answer/solve.ts';
import type { VehicleWorth, WorthTable } from '../../answer/worth/index.ts';
import { ProblemError } from '../../numerics/problem.ts';
import type { Study } from '../../study/model.ts';
import { drawnStyles } from '../../telling/figures/drawnEngines.ts';
import { packageFigures } from '../../telling/figures/packageFigures.ts';
import { NOTHING_SWEPT, type Swept, sweptFigures, sweptTables } from '../../telling/figures/sweptFigures.ts';
import { numbersCsv } from '../../telling/numbersTable.ts';
import { packagePage } from '../../telling/page/packagePage.ts';
import { sceneToSvg } from '../../telling/scene/svg.ts';
import { embeddedFonts } from './fontFiles.ts';
import { pngOf } from './pngPicture.ts';

export interface PackedStudy {
  /** Absolute. */ readonly folder: string;
  /** Relative to the folder, with `/`. */ readonly files: readonly string[];
}

export interface PackInput {
  readonly study: Study;
  /** `study.yaml` as its owner wrote it. */ readonly text: string;
  readonly solved: SolvedStudy;
  /** The study's sentences, checked. */ readonly sentences: readonly CheckedSentence[];
  /** Its analogies, checked. */ readonly analogies: readonly CheckedAnalogy[];
  /** Its pair, each difference with its band. */ readonly comparison: CheckedComparison | null;
  /** Its sweeps and maps, worked out. */ readonly swept?: Swept;
  /** Gain and price of its pair; null where it has one engine. */ readonly worth?: WorthTable | null;
  /** What the other engine is worth to the vehicles. */ readonly vehicleWorths?: readonly VehicleWorth[];
  /** What it would take, found. */ readonly needs?: readonly Need[];
  /** Told before each figure is drawn. */ readonly onFigure?: (
    name: string,
    which: number,
    count: number,
  ) => void;
}

const manifestName = 'manifest.json';
const packageForm = 'plumeline package 1';

/**
 * Write the package, whole or not at all; an earlier package there is replaced.
 * The page carries its fonts. The SVG files name theirs and stay small, so that an editor can change the words.
 */
export async function packStudy(input: PackInput, out: string): Promise<PackedStudy> {
  const folder = resolve(out);
  await requireReplaceable(folder);
  const files = filesOf(input);
  const manifest = {
    format: packageForm,
    program: input.solved.answer.program,
    caution: input.solved.answer.caution,
    question: input.solved.answer.question,
    files: Object.fromEntries(
      [...files].map(([name, bytes]) => [name, { bytes: bytes.length, sha256: digest(bytes) }]),
    ),
  };
  files.set(manifestName, Buffer.from(`${JSON.stringify(manifest, null, 2)}\n`));
  await writeWhole(folder, files);
  return { folder, files: [...files.keys()] };
}

const digest = (bytes: Buffer): string => createHash('sha256').update(bytes).digest('hex');

function filesOf({
  study,
  text,
  solved,
  sentences,
  analogies,
  comparison,
  swept = NOTHING_SWEPT,
  worth = null,
  needs = [],
  vehicleWorths = [],
  onFigure,
}: PackInput): Map<string, Buffer> {
  const { answer, solutions } = solved;
  const files = new Map<string, Buffer>();
  const add = (name: string, content: string | Buffer): void => {
    files.set(name, typeof content === 'string' ? Buffer.from(content, 'utf8') : content);
  };
  const anyEngine = Object.keys(answer.engines).length > 0;
  const curves = Object.fromEntries([...solutions].map(([id, solution]) => [id, altitudeCurve(solution)]));
  const figures = [
    ...(anyEngine ? packageFigures(answer, curves) : []),
    ...sweptFigures(swept, drawnStyles(answer)),
  ];
  add(
    'index.html',
    packagePage({
      answer,
      sentences,
      analogies,
      study,
      worth,
      needs,
      vehicleWorths,
      figures,
      fonts: embeddedFonts([400, 600]),
    }),
  );
  figures.forEach(({ name, scene }, i) => {
    onFigure?.(name, i + 1, figures.length);
    const svg = sceneToSvg(scene);
    add(`figures/${name}.svg`, svg);
    const words = { Title: scene.title, Description: scene.description, Disclaimer: answer.caution };
    add(`figures/${name}.png`, pngOf(svg, scene.width, words));
  });
  for (const { name, csv } of sweptTables(swept)) add(`figures/${name}.csv`, csv);
  add('numbers.json', `${JSON.stringify(answer, null, 2)}\n`);
  add('numbers.csv', numbersCsv(answer));
  if (sentences.length + study.facts.length + analogies.length > 0) {
    const checked = checkAnswer(study, sentences, analogies, comparison);
    add('sentences.json', `${JSON.stringify(checked, null, 2)}\n`);
  }
  if (worth !== null)
    add(
      'worth.json',
      `${JSON.stringify({ caution: answer.caution, ...worth, vehicles: vehicleWorths }, null, 2)}\n`,
    );
  if (needs.length > 0) add('needs.json', `${JSON.stringify({ caution: answer.caution, needs }, null, 2)}\n`);
  add('study.yaml', text);
  add('README.txt', readme(answer.question, answer.caution));
  return files;
}

function readme(question: string, caution: string): string {
  return `${question}

${caution}

index.html     question, short answer, pictures, tables, conditions, models, sources; open it in a browser or print it
figures/       each figure as SVG (live text, font Source Sans 3) and PNG, in 16:9, 9:16 and 1:1;
               each sweep and map of the study also as CSV
numbers.csv    every number with its name, in SI units and as shown
numbers.json   the whole answer, SI units
sentences.json what the check of sentences, facts and analogies found, SI units; absent where the study has none
worth.json     gain and price of the pair; absent where there is one engine
needs.json     what it would take; absent where the study does not ask
study.yaml     the study it was made from
manifest.json  size and SHA-256 of each file
`;
}

/** Only an empty place or an earlier package may be replaced. */
async function requireReplaceable(folder: string): Promise<void> {
  let names: string[];
  try {
    names = await readdir(folder);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return;
    throw new ProblemError({
      code: 'package-place-unusable',
      what: `${folder} cannot be used for the package: ${(error as Error).message}.`,
      mend: 'Name a new folder with --out.',
    });
  }
  if (names.length === 0) return;
  const manifest = await readFile(join(folder, manifestName), 'utf8').catch(() => '');
  const earlier = manifest.includes(`"${packageForm}"`) ? listed(manifest) : null;
  const foreign = earlier === null ? names : names.filter((name) => !earlier.has(name));
  if (foreign.length === 0) return;
  throw new ProblemError({
    code: 'package-place-taken',
    what: `${folder} holds files that are no package of this program: ${foreign.slice(0, 5).join(', ')}.`,
    why: 'Writing there could destroy them.',
    mend: 'Name an empty or new folder with --out.',
  });
}

/** Names at the top of an earlier package. */
function listed(manifest: string): ReadonlySet<string> {
  const files = (JSON.parse(manifest) as { files?: Record<string, unknown> }).files ?? {};
  return new Set([manifestName, ...Object.keys(files).map((name) => name.split('/')[0] ?? name)]);
}

/** Write beside the place, then exchange: a reader never sees half a package. */
async function writeWhole(folder: string, files: ReadonlyMap<string, Buffer>): Promise<void> {
  const mark = randomBytes(4).toString('hex');
  const beside = (what: string): string => join(dirname(folder), `.${basename(folder)}.${what}-${mark}`);
  const fresh = beside('new');
  const old = beside('old');
  try {
    for (const [name, bytes] of files) {
      const path = join(fresh, ...name.split('/'));
      await mkdir(dirname(path), { recursive: true });
      await writeFile(path, bytes);
    }
    const replaced = await rename(folder, old).then(
      () => true,
      () => false,
    );
    await rename(fresh, folder);
    if (replaced) await rm(old, { recursive: true, force: true });
  } finally {
    await rm(fresh, { recursive: true, force: true });
  }
}
