/** A clip as a film: whole in its place, or not there at all. */

import { createHash, randomBytes } from 'node:crypto';
import { open, rename, rm } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import { ProblemError } from '../../numerics/problem.ts';
import type { Clip } from '../../telling/clips/clip.ts';
import type { FlashVerdict } from '../../telling/clips/flashVerdict.ts';
import type { FilmCodec, WriteOptions, WrittenClip } from './filmModel.ts';
import type { OpenedFilmPage } from './filmPage.ts';
import { requireCalm } from './requireCalm.ts';
import { stepWriter } from './sceneSteps.ts';

/** Frames on their way at a time: one is drawn while the next is worked out. */
const AHEAD = 3;
const PROGRESS_STEP = 5;

/** Write the clip with this codec into `out`; flashes are counted, not judged. */
export async function writeFilm(
  opened: OpenedFilmPage,
  clip: Clip,
  codec: FilmCodec,
  out: string,
  { onProgress, signal }: WriteOptions = {},
): Promise<WrittenClip> {
  requireEven(clip);
  const path = resolve(out);
  const temporary = join(dirname(path), `.${basename(path)}.${randomBytes(4).toString('hex')}.writing`);
  const file = await open(temporary, 'wx').catch((error: unknown) => {
    throw new ProblemError({
      code: 'film-place-unusable',
      what: `${path} cannot be written: ${(error as Error).message}.`,
      mend: 'Name a file in a folder that is there and may be written to.',
    });
  });
  const pending: Promise<void>[] = [];
  try {
    opened.onWrite(async (position, bytes) => {
      await file.write(bytes, 0, bytes.length, position);
    });
    const { page } = opened;
    const { width, height, theme, transparent, rate, frames } = clip;
    const order = { width, height, theme, transparent, rate, codec };
    const digest = createHash('sha256');
    const steps = stepWriter();
    await page.evaluate((given) => globalThis.plumelineFilm.begin(given), order);
    for (let n = 0; n < frames; n++) {
      signal?.throwIfAborted();
      const step = steps.next(clip.frame(n));
      const text = JSON.stringify(step);
      digest.update(text).update('\n');
      const drawn = page.evaluate((given) => globalThis.plumelineFilm.add(JSON.parse(given)), text);
      // Told when it is waited for, which after a cancel is later.
      drawn.catch(() => undefined);
      pending.push(drawn);
      if (pending.length >= AHEAD) await pending.shift();
      if (n % PROGRESS_STEP === 0) onProgress?.(n, frames);
    }
    await Promise.all(pending);
    signal?.throwIfAborted();
    const flashes: FlashVerdict = await page.evaluate(() => globalThis.plumelineFilm.finish());
    await file.sync();
    await file.close();
    requireCalm(clip, flashes);
    await rename(temporary, path);
    onProgress?.(frames, frames);
    return { path, form: codec, frames, framesDigest: digest.digest('hex'), flashes, notes: [] };
  } catch (error) {
    await opened.page.evaluate(() => globalThis.plumelineFilm.cancel()).catch(() => undefined);
    // Frames still on their way fail now; that is what was wanted.
    await Promise.allSettled(pending);
    await file.close().catch(() => undefined);
    await rm(temporary, { force: true });
    throw error;
  }
}

/** Both encoders keep one colour for two pixels in either direction. */
function requireEven({ width, height }: Clip): void {
  if (width % 2 === 0 && height % 2 === 0) return;
  throw new ProblemError({
    code: 'film-size-odd',
    what: `A film cannot be ${width} by ${height} pixels.`,
    why: 'Its colours are kept for squares of two by two pixels.',
    mend: 'Take an even width and height.',
  });
}
