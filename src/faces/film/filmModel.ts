/** How a clip may leave the program. */

import type { Problem } from '../../numerics/problem.ts';
import type { FlashVerdict } from '../../telling/clips/flashVerdict.ts';

/** How the pictures of a film are packed: H.264 in MP4, or VP9 in WebM. */
export type FilmCodec = 'h264' | 'vp9';

export interface WriteOptions {
  /** Told after frames: how many are done, of how many. */ readonly onProgress?: (
    done: number,
    of: number,
  ) => void;
  /** Ends the work; nothing is left behind. */ readonly signal?: AbortSignal;
}

export interface WrittenClip {
  /** Absolute: the file, or the folder of numbered pictures. */ readonly path: string;
  readonly form: FilmCodec | 'frames';
  readonly frames: number;
  /** SHA-256 of all the pictures as they went in: the same for the same clip, whatever an encoder makes of it. */
  readonly framesDigest: string;
  readonly flashes: FlashVerdict;
  /** What came out otherwise than asked for, and why. */ readonly notes: readonly string[];
}

export const FILM_SHAPES = ['16:9', '9:16', '1:1'] as const;

/** A film as the workbench may ask for it. */
export interface FilmWanted {
  /** Name of a clip of the study. */ readonly clip: string;
  readonly size: (typeof FILM_SHAPES)[number];
  /** Transparent ground, in WebM. */ readonly alpha: boolean;
  /** [s] */ readonly seconds: number;
  readonly theme: 'light' | 'dark';
}

/** How far it is. */
export type FilmState =
  | { readonly is: 'none' }
  | { readonly is: 'working'; readonly done: number; readonly of: number }
  | { readonly is: 'ready'; readonly name: string }
  | { readonly is: 'failed'; readonly problem: Problem };
