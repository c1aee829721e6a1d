/**
 * Captions and plain text as passages with their lines and times.
 * WebVTT: W3C, WebVTT: The Web Video Text Tracks Format, sections 4 and 6. SubRip has no standard: common practice.
 */

import { ProblemError } from '../../numerics/problem.ts';
import type { ClaimsFormat, Passage } from './model.ts';

/** @throws ProblemError where the text is not of that form, with its line */
export function passagesIn(text: string, format: ClaimsFormat): readonly Passage[] {
  const lines = text
    .replace(/^\uFEFF/, '')
    .replace(/\0/g, '\uFFFD')
    .split(/\r\n|\n|\r/);
  if (format === 'text')
    return lines.map((line, i) => ({ text: line.trim(), line: i + 1, time: null, until: null }));
  if (format === 'webvtt' && !/^WEBVTT(?:[ \t]|$)/.test(lines[0] ?? '')) {
    throw unreadable('captions-header', 'The first line is not WEBVTT.', 1);
  }
  const blocks = blocksOf(lines, format === 'webvtt' ? headEnd(lines) : 0);
  return blocks.flatMap((block) => cueOf(block, format));
}

interface Block {
  readonly lines: readonly string[];
  /** Of its first line, from 1. */ readonly line: number;
}

/** The header goes to the first blank line. */
function headEnd(lines: readonly string[]): number {
  const blank = lines.indexOf('');
  return blank < 0 ? lines.length : blank;
}

function blocksOf(lines: readonly string[], from: number): readonly Block[] {
  const blocks: Block[] = [];
  let open: string[] = [];
  const close = (end: number): void => {
    if (open.length > 0) blocks.push({ lines: open, line: end - open.length + 1 });
    open = [];
  };
  for (let i = from; i < lines.length; i++) {
    if (lines[i]!.trim() === '') close(i);
    else open.push(lines[i]!);
  }
  close(lines.length);
  return blocks;
}

const NO_CUE = /^(?:NOTE|STYLE|REGION)(?:\s|$)/;

function cueOf({ lines, line }: Block, format: ClaimsFormat): readonly Passage[] {
  const at = lines.findIndex((one) => one.includes('-->'));
  if (format === 'webvtt' && at < 0 && NO_CUE.test(lines[0]!)) return [];
  if (at < 0 || at > 1) throw unreadable('captions-time', 'Here a line with the times was expected.', line);
  const time = timeOf(lines[at]!, format);
  if (time === null) {
    const form = format === 'srt' ? '00:01:02,500 --> 00:01:04,000' : '00:01:02.500 --> 00:01:04.000';
    throw unreadable('captions-time', `These times cannot be read; they look like ${form}.`, line + at);
  }
  return lines.slice(at + 1).map((text, i) => ({ text: plain(text), line: line + at + 1 + i, ...time }));
}

const CLOCK = String.raw`(?:(\d+):)?([0-5]\d):([0-5]\d)`;
const TIMES: Readonly<Record<'webvtt' | 'srt', RegExp>> = {
  webvtt: new RegExp(String.raw`^\s*${CLOCK}\.(\d{3})\s*-->\s*${CLOCK}\.(\d{3})(?:\s.*)?$`),
  srt: new RegExp(String.raw`^\s*${CLOCK}[,.](\d{1,3})\s*-->\s*${CLOCK}[,.](\d{1,3})(?:\s.*)?$`),
};

/** Start and end [s]; null where they cannot be read, or the end is not behind. */
function timeOf(line: string, format: ClaimsFormat): Pick<Passage, 'time' | 'until'> | null {
  const found = format === 'text' ? null : TIMES[format].exec(line);
  if (found === null) return null;
  const seconds = (from: number): number => {
    const [h = '0', m = '0', s = '0', part = '0'] = found.slice(from, from + 4);
    return Number(h) * 3600 + Number(m) * 60 + Number(s) + Number(`0.${part}`);
  };
  const [start, end] = [seconds(1), seconds(5)];
  return end > start ? { time: start, until: end } : null;
}

const ENTITIES: Readonly<Record<string, string>> = {
  '&lt;': '<',
  '&gt;': '>',
  '&nbsp;': ' ',
  '&lrm;': '',
  '&rlm;': '',
  '&amp;': '&',
};

const plain = (text: string): string =>
  text
    .replace(/<[^>]*>/g, '')
    .replace(/\{\\[^}]*\}/g, '')
    .replace(/&(?:lt|gt|nbsp|lrm|rlm|amp);/g, (entity) => ENTITIES[entity]!)
    .trim();

function unreadable(code: string, what: string, line: number): ProblemError {
  return new ProblemError({
    code,
    what: `Line ${line}: ${what}`,
    mend: 'Mend the file, or give its words as plain text (.txt).',
    where: `line ${line}`,
  });
}
