/** Everything of a package that comes from the script: words with and without numbers, each cut, timelines, tables. */

import type { ToldNumbers } from '../../answer/numbers/index.ts';
import { attempt } from '../../numerics/problem.ts';
import type { Script, ScriptRead } from '../../study/script/model.ts';
import { chaptersToWebVtt, cuesToSubRip, cuesToWebVtt } from '../captions/files.ts';
import { makeChapters } from '../captions/makeChapters.ts';
import { makeCues } from '../captions/makeCues.ts';
import type { Chapter } from '../captions/model.ts';
import { cutMarkdown } from '../cut/cutMarkdown.ts';
import { proposeCut } from '../cut/proposeCut.ts';
import { numbersTold, resolvedMarkdown, resolveScript } from '../script/index.ts';
import type { NumbersTold } from '../time/model.ts';
import { pacesOf, timeScript } from '../time/timeScript.ts';
import { scriptTimeline } from '../timeline/scriptTimeline.ts';
import { numbersByScene, scenesTable, type TimedCut } from './scriptTables.ts';

export interface ScriptParts {
  readonly read: ScriptRead;
  /** `script.md` as its owner wrote it. */ readonly text: string;
  readonly told: ToldNumbers;
}

export interface ScriptSetting {
  readonly caution: string;
  /** Verdict on what a line says, by the id of the sentence. */ readonly verdicts: ReadonlyMap<
    string,
    string
  >;
  /** Names of the files of the package. */ readonly files: ReadonlySet<string>;
}

export interface CutChapters {
  /** Empty for the whole. */ readonly name: string;
  readonly chapters: readonly Chapter[];
}

export interface ScriptFiles {
  readonly files: readonly { readonly name: string; readonly content: string }[];
  readonly cuts: readonly TimedCut[];
  /** Of the whole, then of each cut. */ readonly chapters: readonly CutChapters[];
  /** Cuts that cannot be made, and why, one line each. */ readonly notes: readonly string[];
}

export function scriptFiles({ read, text, told }: ScriptParts, setting: ScriptSetting): ScriptFiles {
  const { script } = read;
  const numbers = numbersTold(told, script.units);
  const paces = pacesOf(script);
  const timed = (name: string, own: Script): TimedCut => ({
    name,
    resolved: resolveScript(own, told),
    timed: timeScript(own, numbers, paces),
  });
  const { made, notes } = cutsOf(script, numbers);
  const cuts = [timed('', script), ...made.map(({ name, script: own }) => timed(name, own))];
  const fileOf = (figure: string): string | null =>
    [`clips/${figure}.mp4`, `clips/${figure}.webm`, `figures/${figure}-16x9.png`].find((name) =>
      setting.files.has(name),
    ) ?? null;
  const names = fileNames(cuts);
  const files = [
    { name: 'script/script.md', content: text },
    ...cuts.flatMap((cut) => [
      { name: `script/${names.get(cut.name)!}.md`, content: resolvedMarkdown(cut.resolved) },
      ...(cut.name === ''
        ? []
        : [
            {
              name: `script/${names.get(cut.name)!}-live.md`,
              content: cutMarkdown(cut.resolved.script, text, setting.caution),
            },
          ]),
      {
        name: cut.name === '' ? 'timeline.otio' : `timeline-${names.get(cut.name)!}.otio`,
        content: scriptTimeline({
          name: cut.name === '' ? script.title : `${script.title}, ${cut.name}`,
          caution: setting.caution,
          resolved: cut.resolved,
          timed: cut.timed,
          fileOf,
          verdicts: setting.verdicts,
        }),
      },
      ...captionFiles(cut, names.get(cut.name)!, numbers),
    ]),
    { name: 'numbers-by-scene.csv', content: numbersByScene(cuts[0]!.resolved, setting.caution) },
    { name: 'scenes.csv', content: scenesTable(cuts, fileOf, setting.caution) },
  ];
  return { files, cuts, chapters: cuts.map(chaptersOf), notes };
}

function chaptersOf({ name, timed }: TimedCut): CutChapters {
  const scenes = timed.scenes
    .filter(({ lines }) => lines.length > 0)
    .map(({ id, name: title, start, seconds }) => ({ id, name: title, start, end: start + seconds }));
  return { name, chapters: makeChapters(scenes).chapters };
}

/** Captions as WebVTT and SubRip, chapters where there are enough. */
function captionFiles(cut: TimedCut, name: string, numbers: NumbersTold): ScriptFiles['files'] {
  const own = cut.resolved.script;
  const cues = makeCues(own, numbers, cut.timed);
  const { chapters } = chaptersOf(cut);
  return [
    { name: `captions/${name}.vtt`, content: cuesToWebVtt(cues, own.title) },
    { name: `captions/${name}.srt`, content: cuesToSubRip(cues) },
    ...(chapters.length === 0
      ? []
      : [{ name: `captions/${name}-chapters.vtt`, content: chaptersToWebVtt(chapters, own.title) }]),
  ];
}

/** Endings of further files of a cut: no other cut's file may be called so. */
const FURTHER = /-(?:live|chapters)$/;

/**
 * Names of cuts come from the script: only letters, digits and hyphens go into a file's name, and each has one of its own, also
 * where names differ in no more than capitals or dots.
 */
function fileNames(cuts: readonly TimedCut[]): ReadonlyMap<string, string> {
  const taken = new Set<string>();
  return new Map(
    cuts.map(({ name }) => {
      const plain = name === '' ? 'whole' : `cut-${name.toLowerCase().replace(/[^a-z0-9]+/g, '-')}`;
      let free = plain;
      for (let n = 2; taken.has(free) || FURTHER.test(free); n++) free = `${plain}-${n}`;
      taken.add(free);
      return [name, free];
    }),
  );
}

function cutsOf(
  script: Script,
  numbers: NumbersTold,
): {
  readonly made: readonly { readonly name: string; readonly script: Script }[];
  readonly notes: readonly string[];
} {
  const made: { name: string; script: Script }[] = [];
  const notes: string[] = [];
  for (const wish of script.cuts) {
    const outcome = attempt(() => proposeCut(script, numbers, wish));
    if (outcome.ok) made.push({ name: wish.name, script: outcome.value.script });
    else
      notes.push(
        `The cut ${wish.name} is not in the package. ${outcome.problem.what} ${outcome.problem.mend}`,
      );
  }
  return { made, notes };
}
