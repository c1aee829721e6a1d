/** The script beside the study, and the record of its numbers: the other two files that the server may write. */

import { createHash } from 'node:crypto';
import { lstat, readFile, realpath, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { ProblemError } from '../../numerics/problem.ts';
import { SCRIPT_FILE } from '../../study/script/index.ts';
import { readRecord } from '../../telling/script/index.ts';
import { writeFileAtomically } from '../disk/atomicWrite.ts';
import { RECORD_FILE } from '../disk/scriptFile.ts';
import { fileInside, isMissing } from './insideFolder.ts';
import { largestStudy } from './studyFile.ts';

export interface ScriptText {
  /** Null where there is none yet. */ readonly text: string | null;
  /** SHA-256 of the file's bytes, hexadecimal; empty where there is none. */ readonly hash: string;
  /** The record of its numbers as written; null where there is none. */ readonly record: string | null;
}

export type ScriptWrite =
  | { readonly kind: 'written'; readonly script: ScriptText }
  /** The file is no longer the one the edit was made on. */
  | { readonly kind: 'stale'; readonly script: ScriptText };

export interface ScriptFile {
  read(): Promise<ScriptText>;
  /** Replaces the file if it still has the content `baseHash` stands for, or makes it where that is empty. */
  write(text: string, baseHash: string): Promise<ScriptWrite>;
  /** @throws ProblemError where it is no record */
  writeRecord(text: string): Promise<void>;
}

export function openScriptFile(folder: string): ScriptFile {
  let queue: Promise<unknown> = Promise.resolve();
  const read = async (): Promise<ScriptText> => {
    const script = await bytesOf(folder, SCRIPT_FILE);
    const record = await bytesOf(folder, RECORD_FILE);
    return {
      text: script === null ? null : decoded(script, SCRIPT_FILE),
      hash: script === null ? '' : hashOf(script),
      record: record === null ? null : decoded(record, RECORD_FILE),
    };
  };
  const replace = async (text: string, baseHash: string): Promise<ScriptWrite> => {
    const current = await read();
    if (current.hash !== baseHash) return { kind: 'stale', script: current };
    await writeFileAtomically(await placeFor(folder, SCRIPT_FILE), text);
    return { kind: 'written', script: { ...current, text, hash: hashOf(Buffer.from(text, 'utf8')) } };
  };
  return {
    read,
    write(text, baseHash) {
      const turn = queue.then(() => replace(text, baseHash));
      queue = turn.catch(() => undefined);
      return turn;
    },
    async writeRecord(text) {
      if (readRecord(text) === null)
        throw problem('record-unfit', 'This is no record of a script’s numbers.');
      await writeFileAtomically(await placeFor(folder, RECORD_FILE), text);
    },
  };
}

const hashOf = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

async function bytesOf(folder: string, name: string): Promise<Uint8Array | null> {
  const file = await fileInside(folder, name);
  if (file === null) {
    if (await isThere(folder, name)) throw outside(name);
    return null;
  }
  const { size } = await stat(file);
  if (size > largestStudy)
    throw problem('script-too-long', `${name} has ${size} bytes; up to ${largestStudy} are read.`);
  return readFile(file);
}

/** Where a file is written that may not be there yet; never through a link that leads out of the folder. */
async function placeFor(folder: string, name: string): Promise<string> {
  const file = await fileInside(folder, name);
  if (file !== null) return file;
  if (await isThere(folder, name)) throw outside(name);
  return join(await realpath(folder), name);
}

async function isThere(folder: string, name: string): Promise<boolean> {
  try {
    await lstat(join(folder, name));
    return true;
  } catch (error) {
    if (isMissing(error)) return false;
    throw error;
  }
}

function decoded(bytes: Uint8Array, name: string): string {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch (error) {
    if (!(error instanceof TypeError)) throw error;
    throw problem('script-not-utf8', `${name} is not UTF-8 text.`);
  }
}

const outside = (name: string): ProblemError =>
  problem(
    'script-outside',
    `${name} is no regular file of the study folder, or a link that leads out of it.`,
  );

const problem = (code: string, what: string): ProblemError =>
  new ProblemError({ code, what, mend: 'Mend or move that file, then reload.' });
