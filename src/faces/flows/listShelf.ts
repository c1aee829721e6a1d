/** Which whole flows of a study's engines lie in the cache, so that a page can ask for them before anything is solved. */

import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { flowKey, keepText } from '../disk/flowShelf.ts';
import type { ListedFlow } from './flowList.ts';

const FORMAT = 'plumeline flow list 5';

const nameOf = (mark: string): string => `${flowKey([FORMAT, mark])}.list.json`;

export const keepFlowList = (folder: string, mark: string, fields: readonly ListedFlow[]): Promise<void> =>
  keepText(folder, nameOf(mark), JSON.stringify({ format: FORMAT, fields }));

/** Those whose cells are still there; empty where nothing is kept, or the file is no list. */
export async function readFlowList(folder: string, mark: string): Promise<readonly ListedFlow[]> {
  const text = await readFile(join(folder, nameOf(mark)), 'utf8').catch(() => null);
  if (text === null) return [];
  try {
    const read = JSON.parse(text) as { readonly format?: unknown; readonly fields?: unknown };
    if (read.format !== FORMAT || !Array.isArray(read.fields)) return [];
    return await stillKept(folder, read.fields as readonly ListedFlow[]);
  } catch {
    // Half a file: it is written anew.
    return [];
  }
}

/** Those of the fields whose cells lie in the folder: others made way meanwhile, and are computed again when they are asked for. */
export async function stillKept(
  folder: string,
  fields: readonly ListedFlow[],
): Promise<readonly ListedFlow[]> {
  const names = new Set(await readdir(folder).catch(() => []));
  return fields.filter(({ key }) => names.has(`${key}.json`));
}
