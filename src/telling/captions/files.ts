/**
 * Captions and chapters as files. WebVTT: W3C, WebVTT: The Web Video Text Tracks Format, sections 4 and 6. SubRip has no
 * standard: common practice; it has no escapes, so signs that a player could take for markup are written as signs alike.
 */

import { CAUTION_SHORT } from '../caution.ts';
import { plainText } from '../scene/safeText.ts';
import { placeInFilm } from '../script/clock.ts';
import type { Chapter, Cue } from './model.ts';

/** @param note a line about the file, told in a comment */
export function cuesToWebVtt(cues: readonly Cue[], note: string): string {
  const blocks = cues.map(({ start, end, rows }) =>
    block(clock(start, '.'), clock(end, '.'), rows.map(vttText)),
  );
  return vttFile(note, blocks);
}

export function chaptersToWebVtt(chapters: readonly Chapter[], note: string): string {
  const blocks = chapters.map(({ start, end, title }) =>
    block(clock(start, '.'), clock(end, '.'), [vttText(title)]),
  );
  return vttFile(note, blocks);
}

export function cuesToSubRip(cues: readonly Cue[]): string {
  return cues
    .map(
      ({ start, end, rows }, i) =>
        `${i + 1}\n${block(clock(start, ','), clock(end, ','), rows.map(subRipText))}`,
    )
    .join('\n');
}

/** Lines `0:00 Title`, as descriptions of films take them. */
export function chaptersToList(chapters: readonly Chapter[]): string {
  const isLong = (chapters.at(-1)?.start ?? 0) >= 3600;
  return chapters.map(({ start, title }) => `${placeInFilm(start, isLong)} ${oneLine(title)}\n`).join('');
}

function vttFile(note: string, blocks: readonly string[]): string {
  const head = [note, CAUTION_SHORT].map((line) => oneLine(line).replace(/-->/g, '→')).join('\n');
  return ['WEBVTT\n', `NOTE\n${head}\n`, ...blocks].join('\n');
}

const block = (start: string, end: string, rows: readonly string[]): string =>
  `${start} --> ${end}\n${rows.join('\n')}\n`;

const oneLine = (text: string): string =>
  plainText(text)
    .replace(/[ \t\r\n\f\v\u2028\u2029]+/g, ' ')
    .trim();
const vttText = (text: string): string =>
  oneLine(text).replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;');
const subRipText = (text: string): string =>
  oneLine(text)
    .replace(/-->/g, '→')
    .replace(/</g, '‹')
    .replace(/>/g, '›')
    .replace(/\{/g, '(')
    .replace(/\}/g, ')');

function clock(seconds: number, point: '.' | ','): string {
  const all = Math.round(1000 * seconds);
  const [h, m, s, part] = [all / 3_600_000, (all / 60_000) % 60, (all / 1000) % 60, all % 1000].map(
    Math.floor,
  );
  return `${two(h!)}:${two(m!)}:${two(s!)}${point}${String(part!).padStart(3, '0')}`;
}

const two = (value: number): string => String(value).padStart(2, '0');
