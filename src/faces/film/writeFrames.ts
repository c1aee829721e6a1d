/** A clip as numbered pictures in a folder of their own: where no encoder is there, or where an edit wants them. */

import { createHash, randomBytes } from 'node:crypto';
import { mkdir, readdir, rename, rm, rmdir, writeFile } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import { setImmediate } from 'node:timers/promises';
import { CAUTION } from '../../answer/caution.ts';
import { ProblemError } from '../../numerics/problem.ts';
import type { Clip } from '../../telling/clips/clip.ts';
import { flashMeter, groundsUnder } from '../../telling/clips/flashMeter.ts';
import type { Scene } from '../../telling/scene/scene.ts';
import { sceneToSvg } from '../../telling/scene/svg.ts';
import { FRAME_DIGITS } from '../../telling/timeline/otio.ts';
import { type DrawnPicture, pictureOf } from '../package/pngPicture.ts';
import type { WriteOptions, WrittenClip } from './filmModel.ts';
import { requireCalm } from './requireCalm.ts';

interface Kept {
  readonly scene: Scene;
  readonly picture: DrawnPicture;
}

/** Says how fast the pictures go, and what they show. */
export const ABOUT_FRAMES = 'clip.json';

export const frameName = (n: number): string => `${String(n).padStart(FRAME_DIGITS, '0')}.png`;

/** `00000.png`, `00001.png`, … and `clip.json`. */
export async function writeFrames(
  clip: Clip,
  out: string,
  { onProgress, signal }: WriteOptions = {},
): Promise<WrittenClip> {
  const path = resolve(out);
  await requireEmpty(path);
  const fresh = join(dirname(path), `.${basename(path)}.${randomBytes(4).toString('hex')}.writing`);
  const words = { Title: clip.title, Disclaimer: CAUTION };
  const meter = flashMeter(clip.rate, groundsUnder(clip.transparent));
  const digest = createHash('sha256');
  try {
    await mkdir(fresh, { recursive: true });
    let kept: Kept | undefined;
    for (let n = 0; n < clip.frames; n++) {
      // Lets an interrupt be heard.
      await setImmediate();
      signal?.throwIfAborted();
      onProgress?.(n, clip.frames);
      const scene = clip.frame(n);
      const isNew = kept?.scene !== scene;
      const svg = isNew ? sceneToSvg(scene) : 'same';
      if (kept === undefined || isNew) kept = { scene, picture: pictureOf(svg, clip.width, words) };
      const { picture } = kept;
      digest.update(svg).update('\n');
      meter.add(picture.pixels, picture.width, picture.height);
      await writeFile(join(fresh, frameName(n)), picture.png);
    }
    const flashes = meter.verdict();
    requireCalm(clip, flashes);
    const { title, description, notes, rate, frames } = clip;
    const framesDigest = digest.digest('hex');
    const about = {
      ...{ title, description, notes, caution: CAUTION },
      ...{ framesPerSecond: rate.name, frames, framesSha256: framesDigest },
    };
    await writeFile(join(fresh, ABOUT_FRAMES), `${JSON.stringify(about, null, 2)}\n`);
    await rmdir(path).catch(() => undefined);
    await rename(fresh, path);
    onProgress?.(clip.frames, clip.frames);
    return { path, form: 'frames', frames, framesDigest, flashes, notes: [] };
  } catch (error) {
    await rm(fresh, { recursive: true, force: true });
    throw error;
  }
}

async function requireEmpty(path: string): Promise<void> {
  const names = await readdir(path).catch((error: NodeJS.ErrnoException) => {
    if (error.code === 'ENOENT') return [];
    throw new ProblemError({
      code: 'frames-place-unusable',
      what: `${path} cannot take the pictures: ${error.message}.`,
      mend: 'Name a new folder.',
    });
  });
  if (names.length === 0) return;
  throw new ProblemError({
    code: 'frames-place-taken',
    what: `${path} is not empty.`,
    why: 'Its files could be mixed up with the pictures.',
    mend: 'Name a new or empty folder.',
  });
}
