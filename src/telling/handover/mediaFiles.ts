/** Which file of a package stands for what a script shows: its clip where there is one, else a still named by scene. */

import type { NamedClip } from '../clips/namedClips.ts';
import { type Media, type MediaOf, type MediaSlot, mediaOf } from './mediaSlots.ts';

export interface MediaFiles {
  /** Pictures to be laid down once more, named by scene. */
  readonly stills: readonly { readonly from: string; readonly to: string }[];
  readonly mediaOf: MediaOf;
}

/** @param endings of the pictures in the figures’ shapes, the first one wanted first: `16x9` */
export function mediaFiles(
  slots: readonly MediaSlot[],
  clips: readonly (Media & { readonly slots: readonly MediaSlot[] })[],
  known: readonly NamedClip[],
  { files, endings }: { readonly files: ReadonlySet<string>; readonly endings: readonly string[] },
): MediaFiles {
  const filmed = clips.flatMap(({ file, frames, slots: own }) => own.map((slot) => ({ slot, file, frames })));
  const clipOf = mediaOf(filmed);
  const stills = new Map<string, string>();
  const drawn = slots.flatMap((slot) => {
    if (clipOf(slot.cut, slot.scene, slot.shown) !== null) return [];
    const figures = [slot.name, known.find(({ name }) => name === slot.name)?.still].flatMap(
      (name) => name ?? [],
    );
    const from = figures
      .flatMap((figure) => endings.map((ending) => `figures/${figure}-${ending}.png`))
      .find((name) => files.has(name));
    if (from === undefined) return [];
    const file = `scenes/${slot.stem}.png`;
    stills.set(file, from);
    return [{ slot, file, frames: null }];
  });
  return {
    stills: [...stills].map(([to, from]) => ({ from, to })),
    mediaOf: mediaOf([...filmed, ...drawn]),
  };
}
