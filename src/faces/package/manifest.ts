/** Size and hash of each file of a package; of an MP4 film the hash of the pictures that went into it, which is the same each time. */

import { type Content, contentOf } from './packagePlace.ts';
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

/** One file after the other, so that long clips need no memory. */
export async function manifestFiles(
  files: Iterable<readonly [name: string, content: Content]>,
  clips: readonly PackedClip[],
): Promise<ManifestFiles> {
  const films = new Map(clips.filter(({ form }) => form === 'h264').map((clip) => [clip.file, clip]));
  const hashes: Record<string, FileHash | FramesHash> = {};
  for (const [name, content] of files) {
    const film = films.get(name);
    if (film !== undefined) {
      hashes[name] = { frames: film.frameCount, framesSha256: film.framesDigest };
      continue;
    }
    const bytes = await contentOf(content);
    hashes[name] = { bytes: bytes.length, sha256: sha256(bytes) };
  }
  return hashes;
}

/** Hashes of the drawings and films, by name. */
export function picturesIn(files: ManifestFiles): Record<string, string> {
  return Object.fromEntries(
    Object.entries(files).flatMap(([name, hash]) => {
      const picture =
        /^figures\/(.+)\.svg$/.exec(name)?.[1] ??
        /^(clips\/.+)(?:\.(?:mp4|webm)|\/clip\.json)$/.exec(name)?.[1];
      if (picture === undefined) return [];
      return [[picture, 'framesSha256' in hash ? hash.framesSha256 : hash.sha256]];
    }),
  );
}
