/** An earlier package in the same place, read back for what it published. */

import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { StudyAnswer } from '../../answer/model.ts';
import { type Published, publishedOf } from '../../telling/corrections/published.ts';
import type { FactSheet } from '../../telling/factSheet/model.ts';
import { type ManifestFiles, picturesIn } from './manifest.ts';
import { manifestName } from './packagePlace.ts';

export const correctionsName = 'corrections.md';

export interface EarlierPackage {
  /** Null where it is of an older form, or edited, and tells too little. */ readonly published: Published | null;
  /** Its correction note; null where it has none. */ readonly corrections: string | null;
}

/** Null where there is none. Its correction note is kept whatever else can be read of it. */
export async function earlierPackage(folder: string): Promise<EarlierPackage | null> {
  const read = (name: string): Promise<string | null> =>
    readFile(join(folder, name), 'utf8').catch(() => null);
  const [manifest, numbers, sheet, corrections] = await Promise.all(
    [manifestName, 'numbers.json', 'fact-sheet.json', correctionsName].map(read),
  );
  if (manifest == null) return null;
  return {
    published: publishedIn(manifest, numbers ?? null, sheet ?? null),
    corrections: corrections ?? null,
  };
}

function publishedIn(manifest: string, numbers: string | null, sheet: string | null): Published | null {
  if (numbers === null || sheet === null) return null;
  try {
    const answer = JSON.parse(numbers) as StudyAnswer;
    const told = JSON.parse(sheet) as FactSheet;
    const { files } = JSON.parse(manifest) as { files: ManifestFiles };
    if (answer.format !== 'plumeline answer 1' || told.format !== 'plumeline fact sheet 1') return null;
    return publishedOf(answer, told, picturesIn(files));
  } catch {
    // Edited by hand until it is no package of this form any more: nothing can be compared.
    return null;
  }
}
