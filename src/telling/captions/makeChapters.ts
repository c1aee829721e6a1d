/**
 * Chapters of a film by its scenes: the first at 0:00, at least three, ascending, each ten seconds or longer, titles of about
 * fifty signs (practice of film platforms). Scenes too short for a chapter go into the one before.
 */

import { plainText } from '../scene/safeText.ts';
import type { Chapter, Chapters } from './model.ts';

export const CHAPTER_RULES = { fewest: 3, shortest: 10, title: 50 } as const;

export interface SceneTimes {
  readonly id: string;
  readonly name: string;
  /** [s] */ readonly start: number;
  readonly end: number;
}

/** @param scenes in the order of time */
export function makeChapters(scenes: readonly SceneTimes[]): Chapters {
  const groups = grouped(scenes);
  const chapters = groups.map((own, i): Chapter => {
    const longest = own.reduce((best, scene) => (lengthOf(scene) > lengthOf(best) ? scene : best));
    const until = groups[i + 1]?.[0];
    return {
      start: i === 0 ? 0 : Math.floor(own[0]!.start),
      end: until === undefined ? own.at(-1)!.end : Math.floor(until.start),
      title: shortened(longest.name),
      scenes: own.map(({ id }) => id),
    };
  });
  const notes = groups.flatMap((own, i) => {
    if (own.length === 1) return [];
    const names = own.map(({ name }) => `“${plainText(name)}”`).join(', ');
    return [
      `Chapter “${chapters[i]!.title}” takes in ${names}: a chapter lasts at least ${CHAPTER_RULES.shortest} s.`,
    ];
  });
  if (chapters.length >= CHAPTER_RULES.fewest) return { chapters, notes };
  const found = chapters.length === 1 ? 'one' : String(chapters.length);
  return {
    chapters: [],
    notes: [
      `No chapters: there would be ${found}, and films take at least ${CHAPTER_RULES.fewest} of ${CHAPTER_RULES.shortest} s.`,
    ],
  };
}

const lengthOf = ({ start, end }: SceneTimes): number => end - start;

/** A chapter begins wherever the one before and all that is left last long enough. */
function grouped(scenes: readonly SceneTimes[]): readonly (readonly SceneTimes[])[] {
  const groups: SceneTimes[][] = [];
  const total = scenes.at(-1)?.end ?? 0;
  let begun = 0;
  for (const scene of scenes) {
    const at = Math.floor(scene.start);
    const open = groups.at(-1);
    if (open === undefined) groups.push([scene]);
    else if (at - begun >= CHAPTER_RULES.shortest && total - at >= CHAPTER_RULES.shortest) {
      groups.push([scene]);
      begun = at;
    } else open.push(scene);
  }
  return groups;
}

/** At a word's end where there is one. */
function shortened(name: string): string {
  const text = plainText(name).replace(/\s+/g, ' ').trim();
  if (text.length <= CHAPTER_RULES.title) return text === '' ? 'Untitled' : text;
  const cut = text.slice(0, CHAPTER_RULES.title - 1);
  const end = cut.lastIndexOf(' ');
  return `${(end > CHAPTER_RULES.title / 2 ? cut.slice(0, end) : cut).trimEnd()}…`;
}
