/** A study on disk: a folder with `study.yaml`, or that file itself. */
import { readFile, stat } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import { type Outcome, type Problem, ProblemError } from '../../numerics/problem.ts';
import type { StudyOutcome, StudyProblem } from '../../study/model.ts';
import { type ReadOptions, readStudy } from '../../study/read.ts';
import { MOST_BYTES } from '../../study/yamlText.ts';

export const STUDY_FILE = 'study.yaml';

/** Where a study lies. */
export interface StudyPath {
  /** Absolute. */ readonly folder: string;
  /** Absolute. */ readonly file: string;
  /** Name of the folder. */ readonly name: string;
}

export interface StudyOnDisk extends StudyPath {
  /** Null where the file could not be read as text. */ readonly text: string | null;
  readonly outcome: StudyOutcome;
}

const missing = (what: string, where: string): Outcome<never> => ({
  ok: false,
  problem: {
    code: 'study-not-found',
    what,
    mend: `Name a folder with ${STUDY_FILE}, or that file; plumeline new <folder> makes one.`,
    where,
  },
});

/** The study that `given` names: its folder or its file, absolute or from the working folder. */
export async function studyPath(given: string): Promise<Outcome<StudyPath>> {
  if (given.trim() === '' || given.includes('\0')) return missing('No folder is named.', given);
  const path = resolve(given);
  const kindOf = async (at: string): Promise<'folder' | 'file' | 'other' | null> => {
    try {
      const found = await stat(at);
      return found.isDirectory() ? 'folder' : found.isFile() ? 'file' : 'other';
    } catch (error) {
      const code = (error as NodeJS.ErrnoException).code ?? '';
      // EINVAL and ENAMETOOLONG: a name the system does not allow cannot name a file that is there.
      if (['ENOENT', 'ENOTDIR', 'ELOOP', 'EINVAL', 'ENAMETOOLONG'].includes(code)) return null;
      if (code === 'EACCES' || code === 'EPERM') return 'other';
      throw error;
    }
  };
  const kind = await kindOf(path);
  if (kind === null) return missing(`There is no ${path}.`, path);
  if (kind === 'other') return missing(`${path} is neither a folder nor a file that may be read.`, path);
  const file = kind === 'folder' ? join(path, STUDY_FILE) : path;
  if (kind === 'folder' && (await kindOf(file)) !== 'file')
    return missing(`There is no ${STUDY_FILE} in ${path}.`, path);
  if (kind === 'file' && !/\.ya?ml$/i.test(basename(file)))
    return missing(`${file} is not a study: its name does not end in .yaml.`, path);
  const folder = dirname(file);
  return { ok: true, value: { folder, file, name: basename(folder) } };
}

/** Place of the first byte that is not UTF-8, counted as the reader counts. */
function placeOfBadByte(bytes: Uint8Array): { line: number; column: number } {
  const lenient = new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes);
  const strict = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
  // The sign that stands for bad bytes could also be in the file itself: take the first one that is not.
  for (let at = lenient.indexOf('\ufffd'); at >= 0; at = lenient.indexOf('\ufffd', at + 1)) {
    const through = new TextEncoder().encode(lenient.slice(0, at + 1)).length;
    try {
      strict.decode(bytes.subarray(0, through));
    } catch {
      const before = lenient.slice(0, at).split('\n');
      return { line: before.length, column: before.at(-1)!.length + 1 };
    }
  }
  return { line: 1, column: 1 };
}

/** Text of UTF-8 bytes. */
function decode(bytes: Uint8Array, file: string): string | StudyProblem {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch (error) {
    if (!(error instanceof TypeError)) throw error;
    const place = placeOfBadByte(bytes);
    return {
      code: 'not-utf8',
      what: 'The file is not UTF-8 text.',
      mend: 'Save it as UTF-8 in your editor.',
      where: `${file}:${place.line}:${place.column}`,
      file,
      place,
      path: '',
    };
  }
}

/**
 * Read the study in `given`, a folder or a file. Problems of the study are in `outcome`; messages name the file
 * as it was given.
 *
 * @throws ProblemError when there is no study to read.
 */
export async function readStudyFolder(
  given: string,
  options: Omit<ReadOptions, 'file'> = {},
): Promise<StudyOnDisk> {
  const found = await studyPath(given);
  if (!found.ok) throw new ProblemError(found.problem);
  const path = found.value;
  const file = /\.ya?ml$/i.test(given) ? given : join(given, STUDY_FILE);
  const failed = (problem: StudyProblem): StudyOnDisk => ({
    ...path,
    text: null,
    outcome: { ok: false, problems: [problem] },
  });
  const atFile = (problem: Problem): StudyProblem => ({
    ...problem,
    where: file,
    file,
    place: null,
    path: '',
  });
  const { size } = await stat(path.file);
  if (size > MOST_BYTES) {
    return failed(
      atFile({
        code: 'file-too-large',
        what: `The file holds ${size} bytes; a study may hold up to ${MOST_BYTES}.`,
        mend: 'Keep data and long texts in files of their own.',
      }),
    );
  }
  let bytes: Uint8Array;
  try {
    bytes = await readFile(path.file);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code !== 'EACCES' && code !== 'EPERM') throw error;
    throw new ProblemError({
      code: 'study-not-readable',
      what: `${path.file} may not be read.`,
      mend: 'Ask the system for the right to read it.',
      where: path.file,
    });
  }
  const text = decode(bytes, file);
  if (typeof text !== 'string') return failed(text);
  return { ...path, text, outcome: readStudy(text, { ...options, file }) };
}
