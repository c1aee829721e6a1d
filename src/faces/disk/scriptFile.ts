/** The script beside a study, and the record of its numbers. */

import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { ProblemError } from '../../numerics/problem.ts';
import { SCRIPT_FILE } from '../../study/script/index.ts';
import { type NumbersRecord, readRecord } from '../../telling/script/index.ts';
import { writeFileAtomically } from './atomicWrite.ts';

export const RECORD_FILE = 'script.numbers.json';

/** Null where the study has no script. @throws ProblemError where it cannot be read as text */
export const readScriptText = (folder: string): Promise<string | null> => textOf(join(folder, SCRIPT_FILE));

/** Null where nothing was recorded. @throws ProblemError where the file is something else */
export async function readNumbersRecord(folder: string): Promise<NumbersRecord | null> {
  const path = join(folder, RECORD_FILE);
  const text = await textOf(path);
  if (text === null) return null;
  const record = readRecord(text);
  if (record !== null) return record;
  throw new ProblemError({
    code: 'record-unreadable',
    what: `${path} is no record of a script’s numbers that this version reads.`,
    mend: 'Delete it, and record the numbers again: plumeline script my-question --record',
    where: path,
  });
}

export const writeNumbersRecord = (folder: string, record: NumbersRecord): Promise<void> =>
  writeFileAtomically(join(folder, RECORD_FILE), `${JSON.stringify(record, null, 2)}\n`);

async function textOf(path: string): Promise<string | null> {
  let bytes: Uint8Array;
  try {
    bytes = await readFile(path);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'ENOENT') return null;
    if (code !== 'EACCES' && code !== 'EPERM' && code !== 'EISDIR') throw error;
    throw unreadable(path, 'may not be read');
  }
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch (error) {
    if (!(error instanceof TypeError)) throw error;
    throw unreadable(path, 'is not UTF-8 text');
  }
}

const unreadable = (path: string, what: string): ProblemError =>
  new ProblemError({
    code: 'script-not-readable',
    what: `${path} ${what}.`,
    mend: 'Save it as UTF-8 text that may be read.',
    where: path,
  });
