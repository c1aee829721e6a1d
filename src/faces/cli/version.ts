import { readFileSync } from 'node:fs';

/** Version in package.json, which lies as far above `src/faces/cli` as above `dist/faces/cli`. */
export function programVersion(): string {
  const text = readFileSync(new URL('../../../package.json', import.meta.url), 'utf8');
  return (JSON.parse(text) as { readonly version: string }).version;
}
