/** The clips of a package, made one after the other; without an encoder they are numbered pictures, and that is told. */

import { mkdtemp, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import type { FlowField } from '../../answer/flow/index.ts';
import type { Materials } from '../../answer/materials.ts';
import type { SolvedStudy } from '../../answer/solve.ts';
import { ProblemError } from '../../numerics/problem.ts';
import type { Study } from '../../study/model.ts';
import { USUAL_PACKAGE } from '../../study/packageForm.ts';
import { clipOf, movementOf, namedClips, wordsOfClip } from '../../telling/clips/index.ts';
import type { Swept } from '../../telling/figures/sweptFigures.ts';
import { clipPlan, type PlannedClip } from '../../telling/handover/clipPlan.ts';
import { type Media, type MediaSlot, mediaSlots } from '../../telling/handover/mediaSlots.ts';
import { type ScriptParts, timedCuts } from '../../telling/handover/timedCuts.ts';
import type { WrittenClip } from '../film/filmModel.ts';
import { writeClip } from '../film/writeClip.ts';

export interface PackedClip extends Media {
  readonly form: WrittenClip['form'];
  /** Its files, where they lie until they are in the package. */ readonly files: readonly LaidFile[];
  readonly frameCount: number;
  readonly framesDigest: string;
  readonly title: string;
  readonly description: string;
  readonly notes: readonly string[];
  /** Where it is shown. */ readonly slots: readonly MediaSlot[];
}

export interface ClipSubject {
  readonly study: Study;
  readonly solved: SolvedStudy;
  readonly swept: Swept;
  /** Whole flows that are there. */ readonly flows?: readonly FlowField[];
  readonly script: ScriptParts | null;
  readonly materials: Materials;
}

export interface ClipsOptions {
  readonly signal?: AbortSignal;
  /** Told after frames. */ readonly onFrame?: (clip: string, done: number, of: number) => void;
}

export interface LaidFile {
  /** In the package. */ readonly name: string;
  /** Absolute. */ readonly path: string;
}

export interface PackedClips {
  readonly clips: readonly PackedClip[];
  /** What is not there, or otherwise, and why. */ readonly notes: readonly string[];
  /** Takes the files away again, once they are in the package or not needed. */ discard(
    this: void,
  ): Promise<void>;
}

export async function packClips(subject: ClipSubject, options: ClipsOptions = {}): Promise<PackedClips> {
  const { study, solved, script } = subject;
  const known = namedClips(
    solved.answer,
    study.sweeps.map(({ id }) => id),
  );
  const slots = script === null ? [] : mediaSlots(timedCuts(script).cuts);
  const { planned, notes } = clipPlan(slots, known, study.package ?? USUAL_PACKAGE);
  if (planned.length === 0) return { clips: [], notes, discard: async () => undefined };
  const place = await mkdtemp(join(tmpdir(), 'plumeline-clips-'));
  const discard = (): Promise<void> => rm(place, { recursive: true, force: true });
  const clips: PackedClip[] = [];
  // What holds of all of them is told once.
  const told = new Set(notes);
  try {
    for (const one of planned) {
      const made = await filmed(one, subject, place, options);
      for (const note of made.notes) told.add(note);
      if (made.clip !== null) clips.push(made.clip);
    }
  } catch (error) {
    await discard();
    throw error;
  }
  return { clips, notes: [...told], discard };
}

/** Null where it cannot be made, and why: the others go on. */
async function filmed(
  { stem, clip: named, words, size, timing, slots }: PlannedClip,
  { study, solved, swept, materials, flows = [] }: ClipSubject,
  place: string,
  { signal, onFrame }: ClipsOptions,
): Promise<{ readonly clip: PackedClip | null; readonly notes: readonly string[] }> {
  try {
    const ids = study.sweeps.map(({ id }) => id);
    const movement = movementOf(solved, swept.sweeps, ids, {
      ...{ from: 0, to: 'vacuum', at: 0 },
      ...named.asked,
      ...wordsOfClip(words),
      ...{
        size,
        theme: size === 'print' ? 'print' : 'light',
        transparent: false,
        flows,
        anew: { study, materials },
      },
    });
    const clip = clipOf(movement, timing);
    const written = await writeClip(clip, join(place, `${stem}.mp4`), {
      ...(signal !== undefined && { signal }),
      onProgress: (done, of) => onFrame?.(stem, done, of),
    });
    const { form, frames, framesDigest, notes } = written;
    const { title, description } = clip;
    const file = `clips/${basename(written.path)}`;
    const files =
      form === 'frames'
        ? (await readdir(written.path))
            .sort()
            .map((name) => ({ name: `${file}/${name}`, path: join(written.path, name) }))
        : [{ name: file, path: written.path }];
    return {
      clip: {
        ...{ file, frames: form === 'frames' ? frames : null },
        ...{ form, files, frameCount: frames, framesDigest },
        ...{ title, description, notes: clip.notes, slots },
      },
      notes,
    };
  } catch (error) {
    if (!(error instanceof ProblemError)) throw error;
    const { what, mend } = error.problem;
    return { clip: null, notes: [`The clip ${stem} is not in the package. ${what} ${mend}`] };
  }
}
