/** Room for computed flows: what was not written lately makes way for what is, since all of it can be computed again. */

import { readdir, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';

/** [bytes] Some two thousand fields. */
export const MOST_KEPT = 512 * 2 ** 20;

/** Takes the oldest files of the cache away until the others need no more than `most` bytes; how many went. */
export async function makeRoom(folder: string, most: number = MOST_KEPT): Promise<number> {
  const names = (await readdir(folder).catch(() => [])).filter((name) => name.endsWith('.json'));
  const files = await Promise.all(
    names.map(async (name) => {
      const path = join(folder, name);
      // Another run may have taken it away meanwhile.
      const found = await stat(path).catch(() => null);
      return { path, size: found?.size ?? 0, at: found?.mtimeMs ?? 0 };
    }),
  );
  let all = files.reduce((sum, { size }) => sum + size, 0);
  let gone = 0;
  for (const { path, size } of files.sort((a, b) => a.at - b.at)) {
    if (all <= most) break;
    // One that is held open by another program, or may not be taken away, stays.
    const went = await rm(path, { force: true }).then(
      () => true,
      () => false,
    );
    if (!went) continue;
    all -= size;
    gone += 1;
  }
  return gone;
}
