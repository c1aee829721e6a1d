/** Solved studies kept on disk: a study that is opened again unchanged, by the same program, is on screen at once. */

import { createHash } from 'node:crypto';
import { mkdir, readdir, readFile, rename, stat, unlink, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { cacheFolder } from './cacheFolder.ts';

type Block = Uint8Array<ArrayBuffer>;

export interface KeptAnswers {
  /** Null where none is kept of this text, or its file is not whole. */ read(
    text: string,
  ): Promise<Block | null>;
  keep(text: string, block: Block): Promise<void>;
}

/** Some megabytes each. */
const MOST_KEPT = 8;
const ENDING = '.solved';

/** @param program what computes: another may find other numbers */
export function keptAnswers(program: string, folder: string = cacheFolder('answers')): KeptAnswers {
  const pathOf = (text: string): string =>
    join(folder, `${hashOf(`${program}\n${text}`).slice(0, 32)}${ENDING}`);
  return {
    async read(text) {
      const bytes = await readFile(pathOf(text)).catch(() => null);
      if (bytes === null || bytes.length <= HASH_LENGTH) return null;
      // A block of its own, so that it can be handed on; its numbers stand on whole words.
      const block = Uint8Array.from(bytes.subarray(HASH_LENGTH));
      return bytes.toString('latin1', 0, HASH_LENGTH) === hashOf(block) ? block : null;
    },
    async keep(text, block) {
      const path = pathOf(text);
      await mkdir(folder, { recursive: true });
      const beside = `${path}.${process.pid}.writing`;
      await writeFile(beside, Buffer.concat([Buffer.from(hashOf(block), 'latin1'), block]));
      await rename(beside, path);
      await dropOldest(folder);
    },
  };
}

/** Hexadecimal digits before the block. */
const HASH_LENGTH = 64;

const hashOf = (content: string | Block): string => createHash('sha256').update(content).digest('hex');

async function dropOldest(folder: string): Promise<void> {
  const names = (await readdir(folder)).filter((name) => name.includes(ENDING));
  const files = await Promise.all(
    names.map(async (name) => ({ name, written: (await stat(join(folder, name))).mtimeMs })),
  );
  const old = files.sort((a, b) => b.written - a.written).slice(MOST_KEPT);
  await Promise.all(old.map(({ name }) => unlink(join(folder, name))));
}
