/** The clips of a package, made one after the other; without an encoder there are none, and that is told. */

import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import type { Materials } from '../../answer/materials.ts';
import type { SolvedStudy } from '../../answer/solve.ts';
import { ProblemError } from '../../numerics/problem.ts';
import type { Study } from '../../study/model.ts';
import { USUAL_PACKAGE } from '../../study/packageForm.ts';
import { clipOf, movementOf, namedClips, wordsOfClip } from '../../telling/clips/index.ts';
import type { Swept } from '../../telling/figures/sweptFigures.ts';
import { clipPlan, type PlannedClip } from '../../telling/handover/clipPlan.ts';
import { type MediaSlot, mediaSlots } from '../../telling/handover/mediaSlots.ts';
import { type ScriptParts, timedCuts } from '../../telling/handover/timedCuts.ts';
import { launchProblem } from '../film/chromium.ts';
import type { WrittenClip } from '../film/filmModel.ts';
import { writeClip } from '../film/writeClip.ts';

export interface PackedClip {
  /** In the package. */ readonly file: string;
  readonly bytes: Buffer;
  readonly form: WrittenClip['form'];
  readonly frames: number;
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
  readonly script: ScriptParts | null;
  readonly materials: Materials;
}

export interface ClipsOptions {
  readonly signal?: AbortSignal;
  /** Told after frames. */ readonly onFrame?: (clip: string, done: number, of: number) => void;
}

export interface PackedClips {
  readonly clips: readonly PackedClip[];
  /** What is not there, and why. */ readonly notes: readonly string[];
}

export async function packClips(subject: ClipSubject, options: ClipsOptions = {}): Promise<PackedClips> {
  const { study, solved, script } = subject;
  const known = namedClips(
    solved.answer,
    study.sweeps.map(({ id }) => id),
  );
  const slots = script === null ? [] : mediaSlots(timedCuts(script).cuts);
  const { planned, notes } = clipPlan(slots, known, study.package ?? USUAL_PACKAGE);
  if (planned.length === 0) return { clips: [], notes };
  const missing = launchProblem();
  if (missing !== null) {
    const names = planned.map(({ stem }) => stem).join(', ');
    const why = `${missing.what} ${missing.why} ${missing.mend}`;
    return { clips: [], notes: [...notes, `The clips are not in the package (${names}). ${why}`] };
  }
  const place = await mkdtemp(join(tmpdir(), 'plumeline-clips-'));
  const clips: PackedClip[] = [];
  const told = [...notes];
  try {
    for (const one of planned) {
      const made = await filmed(one, subject, place, options);
      if (typeof made === 'string') told.push(made);
      else clips.push(made);
    }
  } finally {
    await rm(place, { recursive: true, force: true });
  }
  return { clips, notes: told };
}

/** Why not, where it cannot be made: the others go on. */
async function filmed(
  { stem, clip: named, words, size, timing, slots }: PlannedClip,
  { study, solved, swept, materials }: ClipSubject,
  place: string,
  { signal, onFrame }: ClipsOptions,
): Promise<PackedClip | string> {
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
        anew: { study, materials },
      },
    });
    const clip = clipOf(movement, timing);
    const written = await writeClip(clip, join(place, `${stem}.mp4`), {
      ...(signal !== undefined && { signal }),
      onProgress: (done, of) => onFrame?.(stem, done, of),
    });
    const { form, frames, framesDigest, notes } = written;
    if (form === 'frames') return `The clip ${stem} is not in the package. ${notes.join(' ')}`;
    return {
      file: `clips/${basename(written.path)}`,
      bytes: await readFile(written.path),
      form,
      frames,
      framesDigest,
      title: clip.title,
      description: clip.description,
      notes: clip.notes,
      slots,
    };
  } catch (error) {
    if (!(error instanceof ProblemError)) throw error;
    return `The clip ${stem} is not in the package. ${error.problem.what} ${error.problem.mend}`;
  }
}
