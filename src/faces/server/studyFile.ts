/** `study.yaml` of the folder that the server was started on: read, written, followed. Besides it only the script is written. */

import { createHash } from 'node:crypto';
import { readFile, stat } from 'node:fs/promises';
import { basename, join, resolve } from 'node:path';
import { ProblemError } from '../../numerics/problem.ts';
import { SCRIPT_FILE } from '../../study/script/index.ts';
import { writeFileAtomically } from '../disk/atomicWrite.ts';
import { fileInside, isMissing } from './insideFolder.ts';

export const studyFileName = 'study.yaml';

/** Largest study text that is read or written [bytes]. */
export const largestStudy = 1_000_000;

export interface StudyText {
  readonly text: string;
  /** SHA-256 of the file's bytes, hexadecimal. */
  readonly hash: string;
  /** Name of the study's folder. */
  readonly name: string;
}

export type WriteOutcome =
  | { readonly kind: 'written'; readonly study: StudyText }
  /** The file is no longer the one the edit was made on. */
  | { readonly kind: 'stale'; readonly study: StudyText };

export interface StudyFile {
  /** The study's folder, as it was named. */ readonly folder: string;
  read(): Promise<StudyText>;
  /** Replaces the file if it still has the content `baseHash` stands for. Writes queue up one behind another. */
  write(text: string, baseHash: string): Promise<WriteOutcome>;
  /** Something that changes whenever the study or its script is touched or replaced; cheap, reads no content. */
  fingerprint(): Promise<string>;
}

const hashOf = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex');

export function openStudyFile(folder: string): StudyFile {
  const name = basename(resolve(folder));
  let queue: Promise<unknown> = Promise.resolve();

  const locate = async () => {
    const file = await fileInside(folder, studyFileName);
    if (file !== null) return file;
    throw new ProblemError({
      code: 'no-study-file',
      what: `There is no readable ${studyFileName} in ${folder}.`,
      why: 'The file is missing, is not a regular file, or is a link that leads out of the study folder.',
      mend: 'Open a folder with a study, or make one with `plumeline new <folder>`.',
      where: join(folder, studyFileName),
    });
  };

  const read = async (): Promise<StudyText> => {
    const file = await locate();
    const { size } = await stat(file);
    if (size > largestStudy) {
      throw new ProblemError({
        code: 'study-too-large',
        what: `${studyFileName} has ${size} bytes; the largest study that is read has ${largestStudy}.`,
        mend: 'Split it into several studies.',
        where: file,
        facts: { size, largest: largestStudy },
      });
    }
    const bytes = await readFile(file);
    return { text: decodeUtf8(bytes, file), hash: hashOf(bytes), name };
  };

  const replace = async (text: string, baseHash: string): Promise<WriteOutcome> => {
    const current = await read();
    if (current.hash !== baseHash) return { kind: 'stale', study: current };
    await writeFileAtomically(await locate(), text);
    return { kind: 'written', study: { text, hash: hashOf(Buffer.from(text, 'utf8')), name } };
  };

  return {
    folder,
    read,
    write(text, baseHash) {
      const turn = queue.then(() => replace(text, baseHash));
      queue = turn.catch(() => undefined);
      return turn;
    },
    async fingerprint() {
      const both = await Promise.all([studyFileName, SCRIPT_FILE].map((name) => touchOf(join(folder, name))));
      return both.join(' ');
    },
  };
}

async function touchOf(file: string): Promise<string> {
  try {
    const { mtimeMs, size, ino } = await stat(file);
    return `${mtimeMs}/${size}/${ino}`;
  } catch (error) {
    // Whoever follows the file reads it then, and is told what is wrong with it.
    return isMissing(error) ? 'missing' : `unreadable: ${String(error)}`;
  }
}

function decodeUtf8(bytes: Uint8Array, file: string): string {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch (error) {
    if (!(error instanceof TypeError)) throw error;
    throw new ProblemError({
      code: 'study-not-utf8',
      what: `${studyFileName} is not UTF-8 text.`,
      mend: 'Save it as UTF-8 in your editor.',
      where: file,
    });
  }
}
