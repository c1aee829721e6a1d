/** A thread's script from its source, as a file that Node runs: single runs of a test need no build of the program. */

import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'vite';

export interface BuiltThread {
  readonly file: URL;
  remove(): void;
}

/** @param source from this folder */
export async function builtThread(source: string): Promise<BuiltThread> {
  const built = await build({
    configFile: false,
    logLevel: 'error',
    build: { ssr: fileURLToPath(new URL(source, import.meta.url)), write: false },
  });
  const { output } = built as unknown as { readonly output: readonly { readonly code: string }[] };
  const folder = mkdtempSync(join(tmpdir(), 'thread-'));
  const path = join(folder, 'thread.mjs');
  writeFileSync(path, output[0]!.code);
  return { file: pathToFileURL(path), remove: () => rmSync(folder, { recursive: true }) };
}
