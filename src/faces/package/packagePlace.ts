/** The folder of a package: what may be replaced, and how. */

import { randomBytes } from 'node:crypto';
import { mkdir, readdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { ProblemError } from '../../numerics/problem.ts';

export const manifestName = 'manifest.json';
export const packageForm = 'plumeline package 1';

/** Only an empty place or an earlier package may be replaced. */
export async function requireReplaceable(folder: string): Promise<void> {
  let names: string[];
  try {
    names = await readdir(folder);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return;
    throw new ProblemError({
      code: 'package-place-unusable',
      what: `${folder} cannot be used for the package: ${(error as Error).message}.`,
      mend: 'Name a new folder with --out.',
    });
  }
  if (names.length === 0) return;
  const manifest = await readFile(join(folder, manifestName), 'utf8').catch(() => '');
  const earlier = manifest.includes(`"${packageForm}"`) ? listed(manifest) : null;
  const foreign = earlier === null ? names : names.filter((name) => !earlier.has(name));
  if (foreign.length === 0) return;
  throw new ProblemError({
    code: 'package-place-taken',
    what: `${folder} holds files that are no package of this program: ${foreign.slice(0, 5).join(', ')}.`,
    why: 'Writing there could destroy them.',
    mend: 'Name an empty or new folder with --out.',
  });
}

/** Names at the top of an earlier package. */
function listed(manifest: string): ReadonlySet<string> {
  const files = (JSON.parse(manifest) as { files?: Record<string, unknown> }).files ?? {};
  return new Set([manifestName, ...Object.keys(files).map((name) => name.split('/')[0] ?? name)]);
}

/** Write beside the place, then exchange: a reader never sees half a package. */
export async function writeWhole(folder: string, files: ReadonlyMap<string, Buffer>): Promise<void> {
  const mark = randomBytes(4).toString('hex');
  const beside = (what: string): string => join(dirname(folder), `.${basename(folder)}.${what}-${mark}`);
  const fresh = beside('new');
  const old = beside('old');
  try {
    for (const [name, bytes] of files) {
      const path = join(fresh, ...name.split('/'));
      await mkdir(dirname(path), { recursive: true });
      await writeFile(path, bytes);
    }
    const replaced = await rename(folder, old).then(
      () => true,
      () => false,
    );
    await rename(fresh, folder);
    if (replaced) await rm(old, { recursive: true, force: true });
  } finally {
    await rm(fresh, { recursive: true, force: true });
  }
}
