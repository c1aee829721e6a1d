/** Sees to it that the built workbench is no older than its sources. */

import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../../', import.meta.url));
const page = join(root, 'dist', 'faces', 'workbench', 'index.html');

/** Layers that end up in the browser. */
const sources = [
  'src/numerics',
  'src/physics',
  'src/study',
  'src/answer',
  'src/telling',
  'src/faces/canvas',
  'src/faces/solved',
  'src/faces/workbench',
  'vite.config.ts',
];

export function buildWorkbenchIfOlder(): void {
  buildIfOlder(page, sources, 'vite.config.ts');
}

const filmScript = join(root, 'dist', 'faces', 'film', 'page', 'film.js');

/** The same for the script of the page that encodes films. */
export function buildFilmPageIfOlder(): void {
  buildIfOlder(
    filmScript,
    ['src/telling', 'src/faces/canvas', 'src/faces/film', 'vite.film.config.ts'],
    'vite.film.config.ts',
  );
}

function buildIfOlder(target: string, from: readonly string[], config: string): void {
  const built = existsSync(target) ? statSync(target).mtimeMs : 0;
  if (from.every((source) => newestBelow(join(root, source)) <= built)) return;
  const vite = join(root, 'node_modules', 'vite', 'bin', 'vite.js');
  execFileSync(process.execPath, [vite, 'build', '--config', config, '--logLevel', 'error'], {
    cwd: root,
    stdio: 'inherit',
  });
}

function newestBelow(path: string): number {
  const { mtimeMs } = statSync(path);
  if (!statSync(path).isDirectory()) return mtimeMs;
  return readdirSync(path).reduce((newest, name) => Math.max(newest, newestBelow(join(path, name))), 0);
}
