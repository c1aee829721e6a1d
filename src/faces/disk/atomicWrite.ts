/**
 * Writing a file so that whoever reads it, after a crash at any instant, finds the old text or the new one, whole.
 *
 * The text goes into a new file in the same folder, is forced to the disk, and takes the place of the old file in
 * one step (rename). Where the system allows it the folder is forced to the disk too, so that the step itself
 * outlives a power cut.
 *
 * Symbolic links: a link at `path` stays a link; the file it leads to is replaced, in that file's own folder.
 * Permissions of an existing file are kept; hard links to it go on showing the old text.
 */
import { randomBytes } from 'node:crypto';
import { type FileHandle, lstat, open, readdir, realpath, rename, stat, unlink } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';

const codeOf = (error: unknown): string | undefined => (error as NodeJS.ErrnoException | null)?.code;

/** Temporary files are hidden, carry the name they are for and the process that writes them. */
const temporaryName = (name: string): string =>
  `.${name}.${process.pid}-${randomBytes(6).toString('hex')}.writing`;

/** An hour: no write takes that long, whichever machine of a shared folder it runs on. */
const STALE_AFTER_MS = 3_600_000;

function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    // EPERM: it runs, under another user.
    return codeOf(error) !== 'ESRCH';
  }
}

/**
 * Remove what writes that were cut off have left beside `name`: temporary files whose process no longer runs, or
 * that are older than an hour. Files of running processes, our own included, are left alone.
 */
async function removeStale(folder: string, name: string, now: number): Promise<void> {
  const pattern = /^(\d+)-[0-9a-f]{12}\.writing$/;
  for (const entry of await readdir(folder)) {
    if (!entry.startsWith(`.${name}.`)) continue;
    const match = pattern.exec(entry.slice(name.length + 2));
    if (match === null) continue;
    const path = join(folder, entry);
    try {
      const { mtimeMs } = await stat(path);
      if (isRunning(Number(match[1])) && now - mtimeMs < STALE_AFTER_MS) continue;
      await unlink(path);
    } catch (error) {
      // Another writer was quicker, or it may not be removed: neither stands in the way of this write.
      if (!['ENOENT', 'EPERM', 'EACCES', 'EBUSY'].includes(codeOf(error) ?? '')) throw error;
    }
  }
}

/** Where the write really goes: the end of a chain of links, also one whose target is not there yet. */
async function realTarget(path: string): Promise<string> {
  try {
    return await realpath(path);
  } catch (error) {
    if (codeOf(error) !== 'ENOENT') throw error;
    const isLink = await lstat(path).then(
      (found) => found.isSymbolicLink(),
      () => false,
    );
    if (isLink) throw error;
    return join(await realpath(dirname(path)), basename(path));
  }
}

/** Windows refuses a rename while a scanner or an editor holds the file for a moment. */
async function renamePatiently(from: string, to: string): Promise<void> {
  for (let attempt = 0; ; attempt++) {
    try {
      await rename(from, to);
      return;
    } catch (error) {
      const held = process.platform === 'win32' && ['EPERM', 'EACCES', 'EBUSY'].includes(codeOf(error) ?? '');
      if (!held || attempt >= 8) throw error;
      await new Promise((resolve) => setTimeout(resolve, 10 * 2 ** attempt));
    }
  }
}

async function forceFolder(folder: string): Promise<void> {
  if (process.platform === 'win32') return;
  let handle: FileHandle;
  try {
    handle = await open(folder, 'r');
  } catch (error) {
    // A folder that may be written but not read.
    if (codeOf(error) === 'EACCES') return;
    throw error;
  }
  try {
    await handle.sync();
  } catch (error) {
    // Some network file systems have no such operation.
    if (!['EINVAL', 'ENOTSUP', 'ENOSYS'].includes(codeOf(error) ?? '')) throw error;
  } finally {
    await handle.close();
  }
}

/** Replace the text of the file at `path`, or make it; its folder must exist. See the head of this file. */
export async function writeFileAtomically(path: string, text: string): Promise<void> {
  const target = await realTarget(path);
  const folder = dirname(target);
  const name = basename(target);
  const mode = await stat(target).then(
    (found) => found.mode & 0o7777,
    (error: unknown) => {
      if (codeOf(error) === 'ENOENT') return null;
      throw error;
    },
  );
  await removeStale(folder, name, Date.now());
  const temporary = join(folder, temporaryName(name));
  const handle = await open(temporary, 'wx', 0o666);
  try {
    try {
      if (mode !== null) await handle.chmod(mode);
      await handle.writeFile(text, 'utf8');
      await handle.sync();
    } finally {
      await handle.close();
    }
    await renamePatiently(temporary, target);
  } catch (error) {
    await unlink(temporary).catch((second: unknown) => {
      if (codeOf(second) !== 'ENOENT')
        throw new AggregateError([error, second], 'writing and cleaning up failed');
    });
    throw error;
  }
  await forceFolder(folder);
}
