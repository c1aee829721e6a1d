/** The clips of a package: those that the script and its cuts show, as long as they are shown, and those asked for. */

import type { PackageInput } from '../../study/packageForm.ts';
import { type ClipTiming, LONGEST_CLIP, USUAL_TIMING } from '../clips/clipTiming.ts';
import { frameRateOf } from '../clips/frameRate.ts';
import type { NamedClip } from '../clips/namedClips.ts';
import { notesOnWords } from '../clips/wordsOfClip.ts';
import type { FigureFormat } from '../look/formats.ts';
import { RATE } from '../timeline/otio.ts';
import type { MediaSlot } from './mediaSlots.ts';

export interface PlannedClip {
  /** File name without its ending. */ readonly stem: string;
  readonly clip: NamedClip;
  /** What the script says behind its name. */ readonly words: string;
  readonly size: FigureFormat;
  readonly timing: ClipTiming;
  /** Where it is shown, in its first shape. */ readonly slots: readonly MediaSlot[];
}

/** [s] A movement takes no longer; the rest of its time the last picture stands. */
const LONGEST_MOVEMENT = 15;
/** [s] Shorter clips could not be followed: the edit cuts them where its line ends. */
const SHORTEST = 3;

export function clipPlan(
  slots: readonly MediaSlot[],
  known: readonly NamedClip[],
  { clips, clipShapes }: PackageInput,
): { readonly planned: readonly PlannedClip[]; readonly notes: readonly string[] } {
  const byName = new Map(known.map((clip) => [clip.name, clip]));
  const shown = slots.filter(({ name }) => byName.has(name));
  const groups = new Map<string, MediaSlot[]>();
  for (const slot of shown) {
    const key = JSON.stringify([slot.scene, slot.shown.words, frames(slot.seconds)]);
    groups.set(key, [...(groups.get(key) ?? []), slot]);
  }
  const stems = new Set<string>();
  const free = (wanted: string): string => {
    let stem = wanted;
    for (let n = 2; stems.has(stem); n++) stem = `${wanted}-${n}`;
    stems.add(stem);
    return stem;
  };
  const single = [...groups.values()].map((group) => {
    const [first] = group as [MediaSlot];
    return {
      stem: free(first.ownStem),
      clip: byName.get(first.name)!,
      words: first.shown.words,
      seconds: first.seconds,
      slots: group,
    };
  });
  const asked = clips
    .filter((name) => byName.has(name))
    .map((name) => ({
      stem: free(name),
      clip: byName.get(name)!,
      words: '',
      seconds: USUAL_TIMING.seconds,
      slots: [],
    }));
  const planned = [...single, ...asked].flatMap(({ stem, clip, words, seconds, slots: own }) =>
    clipShapes.map((size, i) => ({
      stem: size === '16:9' ? stem : `${stem}-${size.replace(':', 'x')}`,
      clip,
      words,
      size,
      timing: timingFor(seconds),
      slots: i === 0 ? own : [],
    })),
  );
  const unknown = clips
    .filter((name) => !byName.has(name))
    .map((name) => `There is no clip “${name}” of this study; it has ${[...byName.keys()].join(', ')}.`);
  // Once for what several cuts show.
  const unmet = new Set(single.flatMap(({ words }) => notesOnWords(words)));
  return { planned, notes: [...unknown, ...unmet] };
}

const frames = (seconds: number): number => Math.round(seconds * RATE);

function timingFor(wanted: number): ClipTiming {
  const seconds = Math.min(Math.max(frames(wanted) / RATE, SHORTEST), LONGEST_CLIP);
  const { holdFirst, holdLast } = USUAL_TIMING;
  const moving = Math.min(seconds - holdFirst - holdLast, LONGEST_MOVEMENT);
  return {
    ...USUAL_TIMING,
    rate: frameRateOf(String(RATE)),
    seconds,
    holdLast: seconds - holdFirst - moving,
  };
}
