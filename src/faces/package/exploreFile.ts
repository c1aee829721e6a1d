/** The explorable page in one file: as many stops as fit, the font where there is room for it. */

import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import type { StudyAnswer } from '../../answer/model.ts';
import type { CheckedSentence } from '../../answer/sentences/model.ts';
import { type ExploreData, exploreData } from '../../telling/explore/exploreData.ts';
import { explorePage } from '../../telling/explore/explorePage.ts';
import { exploreStyles } from '../../telling/explore/exploreStyles.ts';
import type { Curves } from '../../telling/figures/packageFigures.ts';
import type { Reference } from '../../telling/sources/reference.ts';
import { embeddedFonts } from './fontFiles.ts';

/** [bytes] */
const LARGEST = 2_000_000;

const script = (): string =>
  readFileSync(new URL('../../../assets/explore/explore.js', import.meta.url), 'utf8');

const digest = (text: string): string => createHash('sha256').update(text).digest('base64');

/** From rows every half kilometre: each kilometre first, then coarser, then without the font. */
const TRIES: readonly (readonly [step: number, font: boolean])[] = [
  [2, true],
  [4, true],
  [4, false],
  [8, false],
  [16, false],
];

/** What moves on the page, at every so many rows of the curves: drawn when first asked for, and kept. */
export type ExploreFrames = (step: number) => ExploreData;

/** Those of the first try are drawn at once. Null where there is no engine. */
export function exploreFrames(answer: StudyAnswer, curves: Curves): ExploreFrames | null {
  if (Object.keys(answer.engines).length === 0) return null;
  const known = new Map<number, ExploreData>();
  const frames = (step: number): ExploreData => {
    const data = known.get(step) ?? exploreData(answer, curves, step);
    known.set(step, data);
    return data;
  };
  frames(TRIES[0]![0]);
  return frames;
}

/** Null where nothing is small enough. */
export function exploreFile(
  answer: StudyAnswer,
  frames: ExploreFrames,
  sentences: readonly CheckedSentence[],
  references: readonly Reference[],
): string | null {
  for (const [step, font] of TRIES) {
    const styles = exploreStyles(font ? embeddedFonts([400, 600], 'woff') : []);
    const page = explorePage({
      answer,
      sentences,
      references,
      data: frames(step),
      script: script(),
      styles,
      digest,
    });
    if (Buffer.byteLength(page) <= LARGEST) return page;
  }
  return null;
}
