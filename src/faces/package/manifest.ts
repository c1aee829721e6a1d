/** Size and hash of each file of a package; of an MP4 film the hash of the pictures that went into it, which is the same each time. */

import type { PackedClip } from './packClips.ts';
import { sha256 } from './sha256.ts';

export interface FileHash {
  readonly bytes: number;
  readonly sha256: string;
}

export interface FramesHash {
  readonly frames: number;
  /** Of all pictures as they went into the encoder. */ readonly framesSha256: string;
}

export type ManifestFiles = Readonly<Record<string, FileHash | FramesHash>>;

export function manifestFiles(
  files: ReadonlyMap<string, Buffer>,
  clips: readonly PackedClip[],
): ManifestFiles {
  const films = new Map(clips.filter(({ form }) => form === 'h264').map((clip) => [clip.file, clip]));
  return Object.fromEntries(
    [...files].map(([name, bytes]) => {
      const film = films.get(name);
      if (film !== undefined) return [name, { frames: film.frames, framesSha256: film.framesDigest }];
      return [name, { bytes: bytes.length, sha256: sha256(bytes) }];
    }),
  );
}

/** Hashes of the drawings and films, by name. */
export function picturesIn(files: ManifestFiles): Record<string, string> {
  return Object.fromEntries(
    Object.entries(files).flatMap(([name, hash]) => {
      const picture = /^figures\/(.+)\.svg$/.exec(name)?.[1] ?? /^(clips\/.+)\.(?:mp4|webm)$/.exec(name)?.[1];
      if (picture === undefined) return [];
      return [[picture, 'framesSha256' in hash ? hash.framesSha256 : hash.sha256]];
    }),
  );
}
