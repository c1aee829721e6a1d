/** One folder with everything to publish: page, figures, numbers, sources, the study itself, and what each file is. */

import { resolve } from 'node:path';
import { filesOf } from './packageFiles.ts';
import { manifestName, packageForm, requireReplaceable, writeWhole } from './packagePlace.ts';
import type { PackInput } from './packInput.ts';
import { sha256 } from './sha256.ts';

export interface PackedStudy {
  /** Absolute. */ readonly folder: string;
  /** Relative to the folder, with `/`. */ readonly files: readonly string[];
}

/**
 * Write the package, whole or not at all; an earlier package there is replaced.
 * The page carries its fonts. The SVG files name theirs and stay small, so that an editor can change the words.
 */
export async function packStudy(input: PackInput, out: string): Promise<PackedStudy> {
  const folder = resolve(out);
  await requireReplaceable(folder);
  const files = filesOf(input);
  const manifest = {
    format: packageForm,
    program: input.solved.answer.program,
    caution: input.solved.answer.caution,
    question: input.solved.answer.question,
    date: input.date ?? null,
    files: Object.fromEntries(
      [...files].map(([name, bytes]) => [name, { bytes: bytes.length, sha256: sha256(bytes) }]),
    ),
  };
  files.set(manifestName, Buffer.from(`${JSON.stringify(manifest, null, 2)}\n`));
  await writeWhole(folder, files);
  return { folder, files: [...files.keys()] };
}
