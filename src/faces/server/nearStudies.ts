/** What lies in the folder above the study: the other studies there, told in few words. Read-only; no link is followed. */

import { lstat, readdir, readFile, realpath } from 'node:fs/promises';
import { join } from 'node:path';
import { readStudy } from '../../study/read.ts';
import { isMissing } from './insideFolder.ts';
import { largestStudy, studyFileName } from './studyFile.ts';

export interface NearStudy {
  /** Name of its folder. */ readonly name: string;
  readonly question: string;
  readonly engines: readonly { readonly id: string; readonly name: string }[];
  readonly sentences: readonly string[];
}

/** More studies, or more text in all [bytes], are not looked at. */
const MOST_STUDIES = 200;
const MOST_TEXT = 8_000_000;

/**
 * The studies in the folders right below `folder`, by name. A folder or file that is a link, is hidden, is too large or
 * cannot be read as a study is passed over.
 *
 * @param except real path of a folder that is not told
 */
export async function studiesIn(folder: string, except: string | null): Promise<readonly NearStudy[]> {
  const root = await realpath(folder);
  const entries = await readdir(root, { withFileTypes: true }).catch((error: unknown) => {
    if (isClosed(error)) return [];
    throw error;
  });
  const names = entries
    .filter(
      (entry) => entry.isDirectory() && !entry.name.startsWith('.') && join(root, entry.name) !== except,
    )
    .map(({ name }) => name)
    .sort((a, b) => a.localeCompare(b, 'en'));
  const found: NearStudy[] = [];
  let left = MOST_TEXT;
  for (const name of names) {
    if (found.length >= MOST_STUDIES) break;
    const text = await plainText(root, name, Math.min(left, largestStudy));
    if (text === null) continue;
    left -= text.length;
    const study = toldOf(name, text);
    if (study !== null) found.push(study);
  }
  return found;
}

/** The text of the study in this folder right below `folder`, by the same rules; null where there is none. */
export async function studyNear(folder: string, name: string): Promise<string | null> {
  if (name === '' || name.startsWith('.') || /[/\\:\0]/.test(name)) return null;
  const text = await plainText(await realpath(folder), name, largestStudy);
  return text === null || toldOf(name, text) === null ? null : text;
}

async function plainText(root: string, name: string, most: number): Promise<string | null> {
  const file = join(root, name, studyFileName);
  try {
    const about = await lstat(file);
    if (!about.isFile() || about.size > most) return null;
    // Between listing and reading a link might have taken the folder's place.
    if ((await realpath(file)) !== file) return null;
    return await readFile(file, 'utf8');
  } catch (error) {
    if (isClosed(error)) return null;
    throw error;
  }
}

/** Nothing is there, or it may not be read. */
function isClosed(error: unknown): boolean {
  const code = (error as NodeJS.ErrnoException | null)?.code;
  return isMissing(error) || code === 'EACCES' || code === 'EPERM';
}

function toldOf(name: string, text: string): NearStudy | null {
  const outcome = readStudy(text, { file: studyFileName });
  if (!outcome.ok) return null;
  const { question, engines, sentences } = outcome.study;
  return {
    name,
    question,
    engines: engines.map(({ id, name: said }) => ({ id, name: said })),
    sentences: sentences.map(({ say }) => say),
  };
}
