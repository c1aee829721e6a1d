/** One folder with everything to publish: page, figures, numbers, sources, the study itself, and what each file is. */

import { resolve } from 'node:path';
import { type PackageChange, packageChanges } from '../../telling/corrections/changes.ts';
import { correctionNote } from '../../telling/corrections/correctionNote.ts';
import { publishedOf } from '../../telling/corrections/published.ts';
import { descriptionText } from '../../telling/description/descriptionText.ts';
import { correctionsName, type EarlierPackage, earlierPackage } from './earlierPackage.ts';
import { type ManifestFiles, manifestFiles, picturesIn } from './manifest.ts';
import { filesOf, type PackageFiles } from './packageFiles.ts';
import { manifestName, packageForm, requireReplaceable, writeWhole } from './packagePlace.ts';
import type { PackInput } from './packInput.ts';

export interface PackedStudy {
  /** Absolute. */ readonly folder: string;
  /** Relative to the folder, with `/`. */ readonly files: readonly string[];
  /** What of an earlier package there is no longer so; null where there was none to compare with. */
  readonly changes: readonly PackageChange[] | null;
  /** What of the script is not in it, and why. */ readonly notes: readonly string[];
}

/**
 * Write the package, whole or not at all; an earlier package there is replaced, and what it published otherwise noted.
 * The page carries its fonts. The SVG files name theirs and stay small, so that an editor can change the words.
 */
export async function packStudy(input: PackInput, out: string): Promise<PackedStudy> {
  const folder = resolve(out);
  await requireReplaceable(folder);
  const earlier = await earlierPackage(folder);
  const made = await filesOf(input);
  const { files } = made;
  const clips = input.clips ?? [];
  const hashes = await manifestFiles(files, clips);
  const { changes, added } = corrected(input, made, hashes, earlier);
  for (const [name, content] of added) files.set(name, content);
  const { program, caution, question } = input.solved.answer;
  const manifest = {
    format: packageForm,
    program,
    caution,
    question,
    date: input.date ?? null,
    files: { ...hashes, ...(await manifestFiles(added, clips)) },
  };
  files.set(manifestName, Buffer.from(`${JSON.stringify(manifest, null, 2)}\n`));
  input.signal?.throwIfAborted();
  await writeWhole(folder, files);
  return { folder, files: [...files.keys()], changes, notes: made.notes };
}

/** The correction note, and the text for a film's description that tells of it. */
function corrected(
  { solved: { answer }, date = null }: PackInput,
  { sheet, references, chapters }: PackageFiles,
  hashes: ManifestFiles,
  earlier: EarlierPackage | null,
): { readonly changes: readonly PackageChange[] | null; readonly added: ReadonlyMap<string, Buffer> } {
  const now = publishedOf(answer, sheet, picturesIn(hashes));
  const before = earlier?.published ?? null;
  const changes = before === null ? null : packageChanges(before, now);
  const corrections = correctionNote(earlier?.corrections ?? null, changes ?? [], date, answer.caution);
  const description = descriptionText({ answer, references, cuts: chapters, corrections });
  const added = new Map([
    ...(corrections === null ? [] : [[correctionsName, Buffer.from(corrections)] as const]),
    ['description.txt', Buffer.from(description)] as const,
  ]);
  return { changes, added };
}
