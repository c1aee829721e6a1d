/** Computed flows kept on disk by the hash of all that they follow from: one file each, in the user’s cache. */

import { createHash } from 'node:crypto';
import { mkdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { FlowField } from '../../answer/flow/index.ts';
import { FLOW_FORMAT, flowOfText as textRead } from '../flows/flowText.ts';
import { writeFileAtomically } from './atomicWrite.ts';
import { cacheFolder } from './cacheFolder.ts';

/** Where flows are kept. */
export const flowFolder = (env?: NodeJS.ProcessEnv, platform?: string): string =>
  cacheFolder('flow', env, platform);

/** Name of the file of all that follows from `inputs`. */
export function flowKey(inputs: unknown): string {
  return createHash('sha256').update(JSON.stringify(inputs)).digest('hex').slice(0, 32);
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

export async function keepFlow(folder: string, key: string, field: FlowField): Promise<void> {
  await mkdir(folder, { recursive: true });
  await writeFileAtomically(join(folder, `${key}.json`), flowText(field));
}

/** Numbers of the cells as the bytes of 32-bit floats, lowest byte first, in base 64. */
export function flowText(field: FlowField): string {
  return JSON.stringify({ format: FLOW_FORMAT, ...field }, (_key, value: unknown) =>
    value instanceof Float32Array
      ? { floats: Buffer.from(value.buffer, value.byteOffset, value.byteLength).toString('base64') }
      : value,
  );
}

export const flowOfText = (text: string): FlowField =>
  textRead(text, (base64) => {
    const bytes = Buffer.from(base64, 'base64');
    return bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength);
  });
