/** What tells one program from another, for what is kept of its results. */

import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** All that results follow from besides their study, from where the layers lie, in `src/` or `dist/`. */
const PARTS = [
  'numerics',
  'physics',
  'study',
  'answer',
  'faces/solved',
  'faces/disk',
  'faces/flows',
  '../data',
];

/** What is run or read. */
const RUN = /\.(js|ts|json|wasm)$/;

/**
 * Version of the program and names, sizes and times of its own files in one hash: any change of them gives another. One file
 * after the other is quickest.
 *
 * @param root folder of the layers, beside `data/` and package.json
 */
export function stampOf(root: string): string {
  const { version } = JSON.parse(readFileSync(join(root, '../package.json'), 'utf8')) as { version: unknown };
  const stamp = createHash('sha256').update(`${process.version} ${String(version)}\n`);
  for (const part of PARTS) {
    const names = readdirSync(join(root, part), { recursive: true, encoding: 'utf8' });
    for (const name of names.filter((one) => RUN.test(one) && !one.endsWith('.d.ts')).sort()) {
      const { size, mtimeMs } = statSync(join(root, part, name));
      stamp.update(`${part}/${name} ${size} ${mtimeMs}\n`);
    }
  }
  return stamp.digest('hex');
}

let known: string | null = null;

/** Of the program that runs. @throws what the file system throws where its files cannot be listed */
export function programStamp(): string {
  known ??= stampOf(fileURLToPath(new URL('../../', import.meta.url)));
  return known;
}
