/** A source of this folder, or from it, as a plain script of a page or of a worker. */

import { fileURLToPath } from 'node:url';
import { build } from 'vite';

/** @param name under which the page finds what the source gives */
export async function pageScript(source: string, name: string): Promise<string> {
  const entry = fileURLToPath(new URL(source, import.meta.url));
  const built = await build({
    configFile: false,
    logLevel: 'error',
    build: { write: false, lib: { entry, formats: ['iife'], name } },
  });
  const [{ output }] = built as unknown as [{ output: readonly { readonly code: string }[] }];
  return output[0]!.code;
}
