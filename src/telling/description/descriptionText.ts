/** The text below a film: what it answers, chapters, corrections, sources. Plain text, to be pasted. */

import type { StudyAnswer } from '../../answer/model.ts';
import { chaptersToList } from '../captions/files.ts';
import type { Chapter } from '../captions/model.ts';
import { correctionsIn, plainWords } from '../corrections/correctionNote.ts';
import { plainText } from '../scene/safeText.ts';
import { referenceLine } from '../sources/readable.ts';
import type { Reference } from '../sources/reference.ts';

export interface DescriptionParts {
  readonly answer: StudyAnswer;
  readonly references: readonly Reference[];
  /** Chapters of each cut of the script; empty where there is none. */
  readonly cuts: readonly { readonly name: string; readonly chapters: readonly Chapter[] }[];
  /** `corrections.md` as it stands; null: nothing was corrected. */ readonly corrections: string | null;
}

/** Lines of corrections told here; the rest is in the note. */
const MOST_LINES = 12;

export function descriptionText({ answer, references, cuts, corrections }: DescriptionParts): string {
  const { verdict, text } = answer.shortAnswer;
  const parts = [
    plainText(answer.question),
    `${verdict}. ${plainText(text)}`,
    ...cuts.filter(({ chapters }) => chapters.length > 0).map(chaptersText),
    correctionsText(corrections),
    sourcesText(references),
    `${answer.caution}\nNumbers worked out with Plumeline ${answer.program.version}.`,
  ];
  return `${parts.join('\n\n')}\n`;
}

function chaptersText({ name, chapters }: DescriptionParts['cuts'][number]): string {
  return `Chapters${name === '' ? '' : `, ${plainText(name)}`}\n${chaptersToList(chapters).trimEnd()}`;
}

function correctionsText(note: string | null): string {
  const days = correctionsIn(note);
  if (days.length === 0) return 'Corrections\nNone so far.';
  const lines = days.flatMap(({ day, lines: own }) => own.map((line) => `${day}: ${plainWords(line)}`));
  const more = lines.length - MOST_LINES;
  return `Corrections\n${lines
    .slice(0, MOST_LINES)
    .map((line) => plainText(line))
    .join('\n')}${more > 0 ? `\nand ${more} more in the correction note` : ''}`;
}

/** What the study itself cites in full; the rest by number, for a description has little room. */
function sourcesText(references: readonly Reference[]): string {
  const own = references.filter(({ usedFor }) => usedFor.some((use) => OF_STUDY.test(use)));
  const rest = references.length - own.length;
  const lines = own.map((reference) => referenceLine(reference));
  const others = `${own.length === 0 ? '' : 'and '}${rest} ${own.length === 0 ? '' : 'more '}behind the numbers, in the list of sources`;
  return `Sources\n${[...lines, ...(rest > 0 ? [others] : [])].join('\n')}`;
}

const OF_STUDY = /^(in the study as|sentence |fact |published figures )/;
