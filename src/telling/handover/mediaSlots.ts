/** Where in a script and its cuts a picture stands, from when and for how long; the names of its files, by scene. */

import type { Scene, Shown } from '../../study/script/model.ts';
import type { TimedScene } from '../time/model.ts';
import { fileWord, type TimedCut } from './timedCuts.ts';

/** A stretch of a scene: from a line to the next thing shown, or to the scene's end. */
export interface PictureSlot {
  /** [s] from the beginning of the script */ readonly start: number;
  readonly seconds: number;
  readonly shown: readonly Shown[];
}

export function pictureSlots(timed: TimedScene, { shown }: Scene): readonly PictureSlot[] {
  const ends = timed.start + timed.seconds;
  const starts = timed.lines.filter(({ id }, i) => i === 0 || shown.some(({ at }) => at === id));
  return starts.map(({ id, start }, i) => ({
    start,
    seconds: (starts[i + 1]?.start ?? ends) - start,
    shown: shown.filter(({ at }) => at === id),
  }));
}

/** The name of a figure or clip; where it is a word of every day, such as outlines, the first word. */
export const shownName = ({ figure, words }: Shown): string => figure ?? /^[\w-]+/.exec(words)?.[0] ?? '';

/** Something shown, in one cut. */
export interface MediaSlot {
  /** Empty for the whole. */ readonly cut: string;
  readonly scene: string;
  readonly shown: Shown;
  readonly name: string;
  readonly seconds: number;
  /** Of the file of a still: place of the scene in the whole script, scene, figure. */ readonly stem: string;
  /** Of a file of that cut alone. */ readonly ownStem: string;
}

/** All that is shown, the whole first. */
export function mediaSlots(cuts: readonly TimedCut[]): readonly MediaSlot[] {
  const order = cuts[0]?.resolved.scenes.map(({ scene }) => scene.id) ?? [];
  return cuts.flatMap(({ name: cut, stem: cutStem, resolved, timed }) =>
    timed.scenes.flatMap((scene) => {
      const told = resolved.scenes.find((one) => one.scene.id === scene.id)?.scene;
      if (told === undefined || scene.lines.length === 0) return [];
      const place = String(order.indexOf(scene.id) + 1).padStart(2, '0');
      return pictureSlots(scene, told).flatMap(({ seconds, shown }) =>
        shown.map((one): MediaSlot => {
          const stem = `${place}-${fileWord(scene.id)}-${fileWord(shownName(one))}`;
          const ownStem = cut === '' ? stem : `${cutStem}-${stem}`;
          return { cut, scene: scene.id, shown: one, name: shownName(one), seconds, stem, ownStem };
        }),
      );
    }),
  );
}

/** What stands for a thing shown, relative to the package. */
export interface Media {
  /** A film or still; of numbered pictures their folder. */ readonly file: string;
  /** How many numbered pictures; null: it is one file. */ readonly frames: number | null;
}

/** The media of a thing shown in a cut; null: there are none. */
export type MediaOf = (cut: string, scene: string, shown: Shown) => Media | null;

export function mediaOf(files: readonly (Media & { readonly slot: MediaSlot })[]): MediaOf {
  const key = (cut: string, scene: string, { at, words }: Shown): string =>
    JSON.stringify([cut, scene, at, words]);
  const known = new Map(
    files.map(({ slot, file, frames }) => [key(slot.cut, slot.scene, slot.shown), { file, frames }]),
  );
  return (cut, scene, shown) => known.get(key(cut, scene, shown)) ?? null;
}
