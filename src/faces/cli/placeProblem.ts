/** What the machine says of a file or folder that cannot be read or written, in words. */

import type { Problem } from '../../numerics/problem.ts';

const WORDS: ReadonlyMap<string, string> = new Map([
  ['ENOENT', 'there is no such file or folder'],
  ['EACCES', 'it may not be read or written'],
  ['EPERM', 'it may not be read or written'],
  ['EISDIR', 'it is a folder'],
  ['ENOTDIR', 'a part of the path is a file, no folder'],
  ['ENAMETOOLONG', 'the name is too long'],
  ['EROFS', 'the disk can only be read'],
  ['ENOSPC', 'the disk is full'],
]);

/** Null for any other error: that is a fault of the program. */
export function placeProblem(error: unknown): Problem | null {
  if (!(error instanceof Error)) return null;
  const { code, path } = error as NodeJS.ErrnoException;
  const words = WORDS.get(code ?? '');
  if (words === undefined || path === undefined) return null;
  return {
    code: 'place-unusable',
    what: `${path}: ${words}.`,
    mend: 'Name a file in a folder that is there and may be written to.',
  };
}
