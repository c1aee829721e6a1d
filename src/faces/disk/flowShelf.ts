/** Computed flows kept on disk by the hash of all that they follow from: one file each, in the user’s cache. */

import { createHash } from 'node:crypto';
import { mkdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { FlowField } from '../../answer/flow/index.ts';
import { flowText as textOf, flowOfText as textRead } from '../flows/flowText.ts';
import { writeFileAtomically } from './atomicWrite.ts';
import { cacheFolder } from './cacheFolder.ts';
import { programStamp } from './programStamp.ts';

/** Where flows are kept. */
export const flowFolder = (env?: NodeJS.ProcessEnv, platform?: string): string =>
  cacheFolder('flow', env, platform);

/** Name of the file of all that follows from `inputs` by the program that runs. */
export function flowKey(inputs: unknown): string {
  const all = JSON.stringify([programStamp(), inputs]);
  return createHash('sha256').update(all).digest('hex').slice(0, 32);
}

/** Null where none is kept, or the file is no whole flow. */
export async function readFlow(folder: string, key: string): Promise<FlowField | null> {
  const text = await readFile(join(folder, `${key}.json`), 'utf8').catch(() => null);
  if (text === null) return null;
  try {
    return flowOfText(text);
  } catch {
    // Half a file, or one of another program: it is computed and written anew.
    return null;
  }
}

/** Where it cannot be kept (a full disk, a folder that may not be written) it is computed again the next time, and that is said once. */
export async function keepText(folder: string, name: string, text: string): Promise<void> {
  try {
    await mkdir(folder, { recursive: true });
    await writeFileAtomically(join(folder, name), text);
  } catch (error) {
    if (!(error instanceof Error && 'code' in error)) throw error;
    if (toldOf.has(folder)) return;
    toldOf.add(folder);
    process.emitWarning(
      `Computed flows cannot be kept in ${folder} and are computed again each time: ${error.message}. Make it a folder that may be written, or name another by XDG_CACHE_HOME.`,
    );
  }
}

export const keepFlow = (folder: string, key: string, field: FlowField): Promise<void> =>
  keepText(folder, `${key}.json`, flowText(field));

/** Folders that could not be written. */
const toldOf = new Set<string>();

export const flowText = (field: FlowField): string =>
  textOf(field, (bytes) => Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString('base64'));

export const flowOfText = (text: string): FlowField =>
  textRead(text, (base64) => {
    const bytes = Buffer.from(base64, 'base64');
    return bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength);
  });
