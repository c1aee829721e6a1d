/** The clips of a package: what each shows, for those who cannot see it, and for which conditions. */

import { csvOf } from '../csvCell.ts';

export interface TabledClip {
  readonly file: string;
  readonly frameCount: number;
  readonly framesDigest: string;
  readonly title: string;
  readonly description: string;
  readonly notes: readonly string[];
}

const HEAD = ['file', 'title', 'alt text', 'conditions', 'frames', 'SHA-256 of its pictures'];

/** RFC 4180; the line below the head carries the caution. */
export const clipsTable = (clips: readonly TabledClip[], caution: string): string =>
  csvOf([
    HEAD,
    ['', '', caution, '', '', ''],
    ...clips.map(({ file, title, description, notes, frameCount, framesDigest }) => [
      file,
      title,
      description,
      notes.join(' '),
      String(frameCount),
      framesDigest,
    ]),
  ]);
