/** A clip in the form that its place asks for: `.mp4`, `.webm`, else a folder of numbered pictures. */

import { existsSync } from 'node:fs';
import { extname } from 'node:path';
import { ProblemError } from '../../numerics/problem.ts';
import type { Clip } from '../../telling/clips/clip.ts';
import { findChromium } from './chromium.ts';
import type { FilmCodec, WriteOptions, WrittenClip } from './filmModel.ts';
import { openFilmPage } from './filmPage.ts';
import { writeFilm } from './writeFilm.ts';
import { writeFrames } from './writeFrames.ts';

export async function writeClip(clip: Clip, out: string, options: WriteOptions = {}): Promise<WrittenClip> {
  const codec = codecOf(out, clip);
  if (codec === null) return writeFrames(clip, out, options);
  if (findChromium() === null) {
    const written = await writeFrames(clip, withoutEnding(out), options);
    return {
      ...written,
      notes: [
        'No Chromium or Chrome was found on this machine, which encodes the films: numbered pictures were written instead. Install one, or set the environment variable CHROME to its path.',
      ],
    };
  }
  const opened = await openFilmPage();
  try {
    const { width, height } = clip;
    const can = (wanted: FilmCodec): Promise<boolean> =>
      opened.page.evaluate(([name, across, down]) => globalThis.plumelineFilm.canEncode(name, across, down), [
        wanted,
        width,
        height,
      ] as const);
    if (await can(codec)) return await writeFilm(opened, clip, codec, out, options);
    if (codec === 'h264' && (await can('vp9'))) {
      const other = `${withoutEnding(out)}.webm`;
      requireFree(other);
      const written = await writeFilm(opened, clip, 'vp9', other, options);
      return { ...written, notes: ['This browser cannot encode H.264: the film is VP9 in WebM instead.'] };
    }
    const written = await writeFrames(clip, withoutEnding(out), options);
    return {
      ...written,
      notes: [
        `This browser cannot encode films of ${width} by ${height} pixels: numbered pictures were written instead.`,
      ],
    };
  } finally {
    await opened.close();
  }
}

/** A place that nobody named is not written over. */
function requireFree(path: string): void {
  if (!existsSync(path)) return;
  throw new ProblemError({
    code: 'film-place-taken',
    what: `This browser cannot encode H.264, and ${path}, where the film would go as VP9 in WebM instead, is there already.`,
    mend: 'Move it away, or name a file that ends in .webm.',
  });
}

const withoutEnding = (out: string): string => out.slice(0, out.length - extname(out).length);

function codecOf(out: string, { transparent }: Clip): FilmCodec | null {
  const ending = extname(out).toLowerCase();
  if (ending === '') return null;
  if (ending === '.webm') return 'vp9';
  if (ending === '.mp4') {
    if (!transparent) return 'h264';
    throw new ProblemError({
      code: 'film-without-alpha',
      what: 'A film in MP4 cannot have a transparent ground.',
      mend: 'Write to a file that ends in .webm, or to a folder of numbered pictures; or leave the ground filled.',
    });
  }
  throw new ProblemError({
    code: 'film-ending-unknown',
    what: `It is not known how to write a clip that ends in ${ending}.`,
    mend: 'End the file in .mp4 or .webm, or name a folder for numbered pictures.',
  });
}
