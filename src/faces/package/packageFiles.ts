/** Every file of a package but its manifest, by name. */

import { altitudeCurve } from '../../answer/conditions.ts';
import { checkAnswer } from '../../answer/sentences/checkAnswer.ts';
import { checkFacts } from '../../answer/sentences/checkFacts.ts';
import { USUAL_PACKAGE } from '../../study/packageForm.ts';
import { namedClips } from '../../telling/clips/index.ts';
import { factSheetOf } from '../../telling/factSheet/factSheet.ts';
import { factSheetHtml } from '../../telling/factSheet/factSheetHtml.ts';
import type { FactSheet } from '../../telling/factSheet/model.ts';
import { altTexts, modelsDrawn, shapeWord } from '../../telling/figures/packageFigures.ts';
import { NOTHING_SWEPT } from '../../telling/figures/sweptFigures.ts';
import { clipsTable } from '../../telling/handover/clipsTable.ts';
import { mediaFiles } from '../../telling/handover/mediaFiles.ts';
import { mediaSlots } from '../../telling/handover/mediaSlots.ts';
import { type CutChapters, scriptFiles } from '../../telling/handover/scriptFiles.ts';
import { type ScriptParts, timedCuts } from '../../telling/handover/timedCuts.ts';
import { measuredCsv } from '../../telling/measuredTable.ts';
import { numbersCsv } from '../../telling/numbersTable.ts';
import { packagePage } from '../../telling/page/packagePage.ts';
import { linesOf, resolveScript } from '../../telling/script/index.ts';
import type { Reference } from '../../telling/sources/reference.ts';
import { referencesOf, sourceFiles } from '../../telling/sources/sourceFiles.ts';
import { drawnCards, drawnWithout } from './drawnFigures.ts';
import { exploreFile, exploreFrames } from './exploreFile.ts';
import { embeddedFonts } from './fontFiles.ts';
import type { Content } from './packagePlace.ts';
import type { PackInput } from './packInput.ts';
import { type PictureMakers, pictureMakers } from './pictureMakers.ts';
import { readingFile } from './readingFile.ts';
import { readme } from './readme.ts';
import { sha256 } from './sha256.ts';

export interface PackageFiles {
  readonly files: Map<string, Content>;
  readonly sheet: FactSheet;
  readonly references: readonly Reference[];
  /** Of the script and its cuts; empty where there is none. */ readonly chapters: readonly CutChapters[];
  /** What of the script is not in the package, and why. */ readonly notes: readonly string[];
}

/** In pieces between which the signal is looked at. */
export async function filesOf(input: PackInput): Promise<PackageFiles> {
  if (input.makers !== undefined) return filesWith(input, input.makers);
  const makers = pictureMakers();
  try {
    return await filesWith(input, makers);
  } finally {
    await makers.dismiss();
  }
}

async function filesWith(input: PackInput, makers: PictureMakers): Promise<PackageFiles> {
  const {
    study,
    text,
    solved,
    sentences,
    analogies,
    comparison,
    swept = NOTHING_SWEPT,
    worth = null,
    needs = [],
    measured = [],
    vehicleWorths = [],
    rows = [],
    standings = [],
    date = null,
    script = null,
    clips = [],
    drawn: ahead,
    cards: early,
    explore: moving,
    signal,
    onFigure,
  } = input;
  const { answer, solutions } = solved;
  const { shapes } = study.package ?? USUAL_PACKAGE;
  const files = new Map<string, Content>();
  const add = (name: string, content: string | Buffer): void => {
    files.set(name, typeof content === 'string' ? Buffer.from(content, 'utf8') : content);
  };
  const curves = Object.fromEntries([...solutions].map(([id, solution]) => [id, altitudeCurve(solution)]));
  const setting = { answer, shapes, makers, ...(signal !== undefined && { signal }) };
  const plain =
    ahead ?? (await drawnWithout(setting, { answer, curves, swept, worth, vehicleWorths, needs, measured }));
  const cards = early ?? (await drawnCards(setting, { answer, curves, sentences }));
  const drawn = [...plain.drawn, ...cards.drawn];
  const figures = drawn.map(({ figure }) => figure);
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
      fonts: embeddedFonts([400, 600], 'woff'),
    }),
  );
  const rests = { study, answer, solutions, sentences, analogies, rows, shown: modelsDrawn(figures) };
  const references = referencesOf(rests);
  // While the pictures are made by others.
  const frames = moving === undefined ? exploreFrames(answer, curves) : moving;
  const explore = frames === null ? null : exploreFile(answer, frames, sentences, references);
  for (const [i, { figure, svg, png }] of drawn.entries()) {
    onFigure?.(figure.name, i + 1, drawn.length);
    signal?.throwIfAborted();
    add(`figures/${figure.name}.svg`, svg);
    add(`figures/${figure.name}.png`, await png);
  }
  for (const { name, csv } of [...plain.tables, ...cards.tables]) add(`figures/${name}.csv`, csv);
  if (figures.length > 0) add('figures/alt-texts.csv', altTexts(figures));
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
  if (measured.length > 0) {
    add('measured.csv', measuredCsv(measured));
    add('measured.json', `${JSON.stringify({ caution: answer.caution, measured }, null, 2)}\n`);
  }
  if (needs.length > 0) add('needs.json', `${JSON.stringify({ caution: answer.caution, needs }, null, 2)}\n`);
  for (const { name, content } of sourceFiles(rests)) add(name, content);
  if (explore !== null) add('explore.html', explore);
  const sheet = factSheetOf({
    answer,
    studyHash: sha256(text),
    date,
    sentences,
    facts: checkFacts(study),
    analogies,
    standings,
    script: script === null ? null : sheetScript(script),
    references,
  });
  add('fact-sheet.html', factSheetHtml(sheet, embeddedFonts([400, 600], 'woff')));
  add('fact-sheet.json', `${JSON.stringify(sheet, null, 2)}\n`);
  add('study.yaml', text);
  for (const { name, path } of clips.flatMap((clip) => clip.files)) files.set(name, { path });
  if (clips.length > 0) add('clips/clips.csv', clipsTable(clips, answer.caution));
  const cuts = script === null ? null : timedCuts(script);
  const { stills, mediaOf } = mediaFiles(
    mediaSlots(cuts?.cuts ?? []),
    clips,
    namedClips(
      answer,
      study.sweeps.map(({ id }) => id),
    ),
    { files: new Set(files.keys()), endings: shapes.map(shapeWord) },
  );
  for (const { from, to } of stills) files.set(to, files.get(from)!);
  const told =
    script === null || cuts === null
      ? null
      : scriptFiles(script, cuts, {
          caution: answer.caution,
          verdicts: new Map(sheet.items.map(({ id, label }) => [id, label])),
          mediaOf,
          readingPage: readingFile,
        });
  for (const { name, content } of told?.files ?? []) add(name, content);
  add('README.txt', readme(answer.question, answer.caution));
  return { files, sheet, references, chapters: told?.chapters ?? [], notes: cuts?.notes ?? [] };
}

/** The script as the fact sheet tells of it. */
function sheetScript({ read: { script }, text, told }: ScriptParts) {
  const lines = linesOf(resolveScript(script, told)).map((line) => ({ id: line.line.id, text: line.text }));
  return { title: script.title, sha256: sha256(text), lines };
}
