/** Ready studies that lie beside the program: their folders and the questions they answer. */

import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { readStudy } from '../../study/index.ts';
import { STUDY_FILE } from '../disk/studyFolder.ts';

const shelves = ['starters', 'examples'].map((name) =>
  fileURLToPath(new URL(`../../../${name}/`, import.meta.url)),
);

export interface Starter {
  readonly name: string;
  readonly question: string;
}

/** Folder of every starter and example by its name, in order of the alphabet. */
export async function starterFolders(): Promise<ReadonlyMap<string, string>> {
  const found: [string, string][] = [];
  for (const shelf of shelves) {
    for (const entry of await readdir(shelf, { withFileTypes: true })) {
      if (entry.isDirectory()) found.push([entry.name, join(shelf, entry.name)]);
    }
  }
  return new Map(found.sort(([a], [b]) => a.localeCompare(b, 'en')));
}

export async function starters(): Promise<readonly Starter[]> {
  const folders = [...(await starterFolders())];
  return Promise.all(
    folders.map(async ([name, folder]) => {
      const outcome = readStudy(await readFile(join(folder, STUDY_FILE), 'utf8'), { file: STUDY_FILE });
      return { name, question: outcome.ok ? outcome.study.question : '' };
    }),
  );
}
