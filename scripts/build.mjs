/**
 * Build the library, the command line and the server (tsc) and the workbench (vite) into dist/.
 * Does nothing when dist/ was built from exactly these sources.
 * `--if-possible`: where the build tools are not installed (a production install), leave quietly.
 */
import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fail, isFolder, root, runTool, say, sourceDigest } from './house.mjs';

const dist = join(root, 'dist');
const stamp = join(dist, '.built-from');

export function build() {
  const digest = sourceDigest();
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === digest) return;
  say('building (a few seconds) …');
  rmSync(dist, { recursive: true, force: true });
  if (!runTool('@typescript/native', 'tsc', ['-p', 'tsconfig.build.json']))
    fail('the TypeScript build failed.');
  if (!runTool('vite', 'vite', ['build', '--logLevel', 'warn'])) fail('the workbench build failed.');
  if (!runTool('vite', 'vite', ['build', '--config', 'vite.film.config.ts', '--logLevel', 'warn']))
    fail('the build of the film page failed.');
  if (!runTool('vite', 'vite', ['build', '--config', 'vite.thread.config.ts', '--logLevel', 'warn']))
    fail('the build of the first answer’s thread failed.');
  writeFileSync(stamp, digest);
}

if (
  process.argv[1] &&
  import.meta.url.endsWith('/scripts/build.mjs') &&
  process.argv[1].endsWith('build.mjs')
) {
  const toolsThere =
    isFolder(join(root, 'node_modules', 'vite')) &&
    isFolder(join(root, 'node_modules', '@typescript', 'native'));
  if (!toolsThere && process.argv.includes('--if-possible')) process.exit(0);
  if (!toolsThere) fail('the build tools are missing: run `npm install` first.');
  build();
}
