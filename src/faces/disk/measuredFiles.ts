/** The measured points of a study, read from the files beside it. */

import { readFile, realpath, stat } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import type { MeasuredSet } from '../../answer/measured/holdMeasured.ts';
import type { Problem } from '../../numerics/problem.ts';
import { readMeasuredTable } from '../../study/measured/readTable.ts';
import type { Study } from '../../study/model.ts';

const MOST_BYTES = 2_000_000;

export interface MeasuredFiles {
  readonly sets: readonly MeasuredSet[];
  /** Of files that are missing or cannot be read, each with its place. */ readonly problems: readonly Problem[];
}

export async function readMeasuredFiles(folder: string, study: Study): Promise<MeasuredFiles> {
  const sets: MeasuredSet[] = [];
  const problems: Problem[] = [];
  for (const input of study.measured) {
    const text = await textOf(folder, input.file);
    if (typeof text !== 'string') {
      problems.push({ ...text, where: `${input.file} (${input.path})` });
      continue;
    }
    const read = readMeasuredTable(text, input.file);
    if (read.ok) sets.push({ input, table: read.table });
    else problems.push(...read.problems);
  }
  return { sets, problems };
}

async function textOf(folder: string, name: string): Promise<string | Problem> {
  const path = join(folder, name);
  const unreadable = (why: string): Problem => ({
    code: 'measured-not-readable',
    what: `${path} ${why}.`,
    mend: 'Put the CSV file beside study.yaml, as UTF-8 text.',
  });
  try {
    // Its name is a plain one, but it may be a link.
    if (dirname(await realpath(path)) !== (await realpath(folder)))
      return unreadable('is a link that leads out of the folder of the study');
    const { size } = await stat(path);
    if (size > MOST_BYTES) return unreadable(`holds ${size} bytes; up to ${MOST_BYTES} are read`);
    return new TextDecoder('utf-8', { fatal: true }).decode(await readFile(path));
  } catch (error) {
    if (error instanceof TypeError) return unreadable('is not UTF-8 text');
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'ENOENT') return unreadable('is not there');
    if (code === 'EACCES' || code === 'EPERM' || code === 'EISDIR') return unreadable('may not be read');
    throw error;
  }
}
