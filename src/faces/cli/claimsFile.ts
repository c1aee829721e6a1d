/** A text with claims, read from disk; its name tells its form. */

import { readFile } from 'node:fs/promises';
import type { ClaimsFormat } from '../../answer/claims/index.ts';
import { BadInput } from './badInput.ts';

const MOST_BYTES = 4_000_000;

export function formatOf(path: string): ClaimsFormat {
  if (/\.vtt$/i.test(path)) return 'webvtt';
  return /\.srt$/i.test(path) ? 'srt' : 'text';
}

/** @throws BadInput where it cannot be read as text */
export async function readClaimsFile(path: string): Promise<string> {
  const bytes = await readFile(path).catch((error: NodeJS.ErrnoException) => {
    throw error.code === 'ENOENT'
      ? bad(`There is no file ${path}.`, 'Name a text or caption file; a name with spaces goes in quotes.')
      : bad(`${path} cannot be read: ${error.message}.`, 'Name a text or caption file.');
  });
  if (bytes.length > MOST_BYTES) {
    throw bad(`${path} holds ${bytes.length} bytes; up to ${MOST_BYTES} are read.`, 'Split it.');
  }
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw bad(`${path} is not UTF-8 text.`, 'Save it as UTF-8 in your editor.');
  }
}

const bad = (what: string, mend: string): BadInput =>
  new BadInput([{ code: 'claims-file-unreadable', what, mend }]);
