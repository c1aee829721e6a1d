/** Everything of a package that comes from the script: words with and without numbers, each cut, timelines, tables. */

import { chaptersToWebVtt, cuesToSubRip, cuesToWebVtt } from '../captions/files.ts';
import { makeChapters } from '../captions/makeChapters.ts';
import { makeCues } from '../captions/makeCues.ts';
import type { Chapter } from '../captions/model.ts';
import { cutMarkdown } from '../cut/cutMarkdown.ts';
import { type ReadingScript, resolvedMarkdown } from '../script/index.ts';
import type { NumbersTold } from '../time/model.ts';
import { scriptTimeline } from '../timeline/scriptTimeline.ts';
import type { MediaOf } from './mediaSlots.ts';
import { numbersByScene, scenesTable } from './scriptTables.ts';
import type { ScriptParts, TimedCut, TimedCuts } from './timedCuts.ts';

export interface ScriptSetting {
  readonly caution: string;
  /** Verdict on what a line says, by the id of the sentence. */ readonly verdicts: ReadonlyMap<
    string,
    string
  >;
  readonly mediaOf: MediaOf;
  /** The page to read from. */ readonly readingPage: (script: ReadingScript) => string;
}

export interface CutChapters {
  /** Empty for the whole. */ readonly name: string;
  readonly chapters: readonly Chapter[];
}

export interface ScriptFiles {
  readonly files: readonly { readonly name: string; readonly content: string }[];
  /** Of the whole, then of each cut. */ readonly chapters: readonly CutChapters[];
}

export function scriptFiles(
  { read: { script }, text }: ScriptParts,
  { cuts, numbers }: TimedCuts,
  { caution, verdicts, mediaOf, readingPage }: ScriptSetting,
): ScriptFiles {
  const files = [
    { name: 'script/script.md', content: text },
    ...cuts.flatMap((cut) => [
      { name: `script/${cut.stem}.md`, content: resolvedMarkdown(cut.resolved) },
      ...(cut.name === ''
        ? []
        : [{ name: `script/${cut.stem}-live.md`, content: cutMarkdown(cut.resolved.script, text, caution) }]),
      { name: `script/${cut.stem}-reading.html`, content: readingPage(readingScript(cut)) },
      {
        name: cut.name === '' ? 'timeline.otio' : `timeline-${cut.stem}.otio`,
        content: scriptTimeline({
          name: cut.name === '' ? script.title : `${script.title}, ${cut.name}`,
          caution,
          resolved: cut.resolved,
          timed: cut.timed,
          mediaOf: (scene, shown) => mediaOf(cut.name, scene, shown),
          verdicts,
        }),
      },
      ...captionFiles(cut, numbers),
    ]),
    { name: 'numbers-by-scene.csv', content: numbersByScene(cuts[0]!.resolved, caution) },
    { name: 'scenes.csv', content: scenesTable(cuts, mediaOf, caution) },
  ];
  return { files, chapters: cuts.map(chaptersOf) };
}

const readingScript = ({ resolved, timed }: TimedCut): ReadingScript => ({
  title: resolved.script.title,
  scenes: timed.scenes.flatMap(({ name, lines }, i) => {
    const told = resolved.scenes[i]?.lines ?? [];
    return [{ name, lines: lines.map(({ seconds }, k) => ({ text: told[k]?.text ?? '', seconds })) }];
  }),
});

function chaptersOf({ name, timed }: TimedCut): CutChapters {
  const scenes = timed.scenes
    .filter(({ lines }) => lines.length > 0)
    .map(({ id, name: title, start, seconds }) => ({ id, name: title, start, end: start + seconds }));
  return { name, chapters: makeChapters(scenes).chapters };
}

/** Captions as WebVTT and SubRip, chapters where there are enough. */
function captionFiles(cut: TimedCut, numbers: NumbersTold): ScriptFiles['files'] {
  const own = cut.resolved.script;
  const cues = makeCues(own, numbers, cut.timed);
  const { chapters } = chaptersOf(cut);
  return [
    { name: `captions/${cut.stem}.vtt`, content: cuesToWebVtt(cues, own.title) },
    { name: `captions/${cut.stem}.srt`, content: cuesToSubRip(cues) },
    ...(chapters.length === 0
      ? []
      : [{ name: `captions/${cut.stem}-chapters.vtt`, content: chaptersToWebVtt(chapters, own.title) }]),
  ];
}
