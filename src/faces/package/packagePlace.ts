/** The folder of a package: what may be replaced, and how. */

import { randomBytes } from 'node:crypto';
import { copyFile, mkdir, readdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { ProblemError } from '../../numerics/problem.ts';

export const manifestName = 'manifest.json';
export const packageForm = 'plumeline package 1';

/** Only an empty place or an earlier package may be replaced. */
export async function requireReplaceable(folder: string): Promise<void> {
  let names: readonly string[];
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
  const foreign =
    earlier === null
      ? names
      : (await filesIn(folder)).filter((name) => !earlier.has(name) && !isLeftover(name));
  if (foreign.length === 0) return;
  throw new ProblemError({
    code: 'package-place-taken',
    what: `${folder} holds files that are no package of this program: ${foreign.slice(0, 5).join(', ')}.`,
    why: 'Writing there could destroy them.',
    mend: 'Name an empty or new folder with --out.',
  });
}

/** What file browsers leave behind in folders that are looked at. */
const LEFTOVERS: ReadonlySet<string> = new Set(['.DS_Store', 'Thumbs.db', 'desktop.ini']);
const isLeftover = (name: string): boolean => LEFTOVERS.has(basename(name));

/** All that is no folder, with `/`, in folders below too. */
async function filesIn(folder: string): Promise<readonly string[]> {
  const entries = await readdir(folder, { withFileTypes: true });
  const names = await Promise.all(
    entries.map(async (entry) =>
      entry.isDirectory()
        ? (await filesIn(join(folder, entry.name))).map((name) => `${entry.name}/${name}`)
        : [entry.name],
    ),
  );
  return names.flat();
}

/** Names of the files of an earlier package; null where its manifest cannot be read. */
function listed(manifest: string): ReadonlySet<string> | null {
  try {
    const { files = {} } = JSON.parse(manifest) as { files?: Record<string, unknown> };
    return new Set([manifestName, ...Object.keys(files)]);
  } catch (error) {
    if (error instanceof SyntaxError) return null;
    throw error;
  }
}

/** What goes into a file: bytes, or those of a file elsewhere. */
export type Content = Buffer | { readonly path: string };

export const contentOf = async (content: Content): Promise<Buffer> =>
  Buffer.isBuffer(content) ? content : readFile(content.path);

/** Write beside the place, then exchange: a reader never sees half a package. */
export async function writeWhole(folder: string, files: ReadonlyMap<string, Content>): Promise<void> {
  const mark = randomBytes(4).toString('hex');
  const beside = (what: string): string => join(dirname(folder), `.${basename(folder)}.${what}-${mark}`);
  const fresh = beside('new');
  const old = beside('old');
  try {
    for (const [name, content] of files) {
      const path = join(fresh, ...name.split('/'));
      await mkdir(dirname(path), { recursive: true });
      if (Buffer.isBuffer(content)) await writeFile(path, content);
      else await copyFile(content.path, path);
    }
    const replaced = await rename(folder, old).then(
      () => true,
      () => false,
    );
    await rename(fresh, folder).catch(async (error: unknown) => {
      if (replaced) await rename(old, folder);
      throw error;
    });
    if (replaced) await rm(old, { recursive: true, force: true });
  } finally {
    await rm(fresh, { recursive: true, force: true });
  }
}
