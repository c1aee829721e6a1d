import { realpath, stat } from 'node:fs/promises';
import { resolve, sep } from 'node:path';

/**
 * The real path of a regular file inside `folder`, or null.
 *
 * Symbolic links are resolved before the check, so a link inside the folder that points out of it gives null,
 * as do `..`, an absolute path, a NUL byte, a backslash, a hidden name and anything that is no regular file.
 *
 * @param relative path with `/`, already percent-decoded
 */
export async function fileInside(folder: string, relative: string): Promise<string | null> {
  const parts = relative.split('/');
  const odd = (part: string) => part === '' || part.startsWith('.') || /[\\:\0]/.test(part);
  if (parts.some(odd)) return null;
  try {
    const root = await realpath(folder);
    const file = await realpath(resolve(root, ...parts));
    if (!file.startsWith(root + sep)) return null;
    return (await stat(file)).isFile() ? file : null;
  } catch (error) {
    if (isMissing(error)) return null;
    throw error;
  }
}

/** Whether a file-system error only says that there is nothing by that name. */
export function isMissing(error: unknown): boolean {
  const code = (error as NodeJS.ErrnoException | null)?.code;
  return code === 'ENOENT' || code === 'ENOTDIR' || code === 'ELOOP' || code === 'ENAMETOOLONG';
}
