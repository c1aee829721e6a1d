import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { checkCaptions } from '../../../telling/captions/checkCaptions.ts';
import {
  chaptersToList,
  chaptersToWebVtt,
  cuesToSubRip,
  cuesToWebVtt,
} from '../../../telling/captions/files.ts';
import { makeChapters } from '../../../telling/captions/makeChapters.ts';
import { makeCues } from '../../../telling/captions/makeCues.ts';
import { CAPTION_RULES, NARROW_ROW } from '../../../telling/captions/rules.ts';
import { pacesOf, timeScript } from '../../../telling/time/timeScript.ts';
import { writeFileAtomically } from '../../disk/atomicWrite.ts';
import { EXIT, type ExitStatus } from '../exitStatus.ts';
import type { Terminal } from '../terminal.ts';
import { counted } from '../text/counted.ts';
import { secondsText } from '../text/secondsText.ts';
import { cutNamed, toldScript } from '../toldScript.ts';

export interface CaptionsFlags {
  readonly out: string;
  readonly cut?: string;
  readonly narrow?: true;
}

export async function captionsCommand(
  given: string,
  { out, cut, narrow }: CaptionsFlags,
  terminal: Terminal,
): Promise<ExitStatus> {
  const told = await toldScript(given, terminal);
  const script = cutNamed(told, cut);
  const timed = timeScript(script, told.numbers, pacesOf(told.script));
  const rules = { ...CAPTION_RULES, ...(narrow && { row: NARROW_ROW }) };
  const cues = makeCues(script, told.numbers, timed, rules);
  const scenes = timed.scenes.map(({ id, name, start, seconds }) => ({
    id,
    name,
    start,
    end: start + seconds,
  }));
  const { chapters, notes } = makeChapters(scenes.filter(({ start, end }) => end > start));
  const note = cut === undefined ? script.title : `${script.title}, cut ${cut}`;
  const files = [
    { name: 'captions.vtt', text: cuesToWebVtt(cues, note) },
    { name: 'captions.srt', text: cuesToSubRip(cues) },
    ...(chapters.length === 0
      ? []
      : [
          { name: 'chapters.vtt', text: chaptersToWebVtt(chapters, note) },
          { name: 'chapters.txt', text: chaptersToList(chapters) },
        ]),
  ];
  await mkdir(out, { recursive: true });
  for (const { name, text } of files) await writeFileAtomically(join(out, name), text);
  terminal.out(
    `${counted(cues.length, 'caption')} over ${secondsText(timed.seconds)}, ${counted(chapters.length, 'chapter')}: ${files.map(({ name }) => join(out, name)).join(', ')}`,
  );
  for (const line of notes) terminal.err(line);
  const breaches = checkCaptions(cues, rules);
  for (const { words } of breaches) terminal.err(words);
  for (const expression of told.missing)
    terminal.err(`No value for ${expression}: the captions say so in its place.`);
  return breaches.length + told.missing.length > 0 ? EXIT.incomplete : EXIT.answered;
}
