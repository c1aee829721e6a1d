/** What the kernel is built from, as one hash: written beside its bytes, checked by a test. */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const here = fileURLToPath(new URL('.', import.meta.url));

export function sourceHash() {
  const names = readdirSync(`${here}source`)
    .filter((name) => name.endsWith('.ts'))
    .sort();
  const hash = createHash('sha256');
  for (const path of [...names.map((name) => `source/${name}`), 'package.json', 'build.mjs'])
    hash.update(path).update('\0').update(readFileSync(here + path, 'utf8').replaceAll('\r\n', '\n'));
  return hash.digest('hex');
}

if (process.argv[1] === fileURLToPath(import.meta.url)) console.log(sourceHash());
