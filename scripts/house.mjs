/** What the start, build and test commands share: saying what happens, running a program, installing. */
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('..', import.meta.url));

export function say(text) {
  process.stderr.write(`plumeline: ${text}\n`);
}

export function fail(text) {
  say(text);
  process.exit(1);
}

export function requireNode() {
  const [major, minor] = process.versions.node.split('.').map(Number);
  if (major < 20 || (major === 20 && minor < 19)) {
    fail(
      `Node ${process.versions.node} is too old. Install Node 20.19 or newer, then run the same command again.`,
    );
  }
}

/** Run a program with this terminal's streams; true when it exits with 0. */
export function run(command, args, options = {}) {
  const result = spawnSync(command, args, {
    cwd: root,
    stdio: 'inherit',
    shell: process.platform === 'win32' && !command.endsWith('.exe') && command !== process.execPath,
    ...options,
  });
  if (result.error) say(`${command} could not be run: ${result.error.message}`);
  return result.status === 0;
}

/** Run a program installed in node_modules by its script path: no shell, the same on every platform. */
export function runTool(packageName, binName, args, options = {}) {
  return run(process.execPath, [toolPath(packageName, binName), ...args], options);
}

export function toolPath(packageName, binName) {
  const folder = join(root, 'node_modules', packageName);
  const { bin } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
  return join(folder, typeof bin === 'string' ? bin : bin[binName]);
}

function digestOf(paths) {
  const hash = createHash('sha256');
  for (const path of paths) {
    hash.update(relative(root, path).replaceAll('\\', '/'));
    hash.update(readFileSync(path));
  }
  return hash.digest('hex');
}

function* filesBelow(folder) {
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) yield* filesBelow(path);
    else if (entry.isFile()) yield path;
  }
}

/** A digest of everything the build reads, so that nothing is built twice. */
export function sourceDigest() {
  const loose = [
    'package.json',
    'package-lock.json',
    'tsconfig.json',
    'tsconfig.build.json',
    'vite.config.ts',
    'vite.film.config.ts',
    'vite.thread.config.ts',
  ];
  const paths = [
    ...loose.map((name) => join(root, name)).filter((path) => existsSync(path)),
    ...filesBelow(join(root, 'src')),
    fileURLToPath(new URL('build.mjs', import.meta.url)),
  ];
  return digestOf(paths.sort());
}

const installStamp = join(root, 'node_modules', '.plumeline-installed');

/** Install the locked dependencies unless exactly these are there already. */
export function install() {
  const lock = digestOf([join(root, 'package-lock.json')]);
  if (existsSync(installStamp) && readFileSync(installStamp, 'utf8') === lock) return;
  say('installing the locked dependencies (about a minute on a fresh machine) …');
  // The build is a step of its own, with its own words: the prepare script is not wanted here.
  if (!run('npm', ['ci', '--no-audit', '--no-fund', '--ignore-scripts', '--loglevel=error'])) {
    fail(
      'the dependencies could not be installed. Check the network connection, then run the same command again.',
    );
  }
  writeFileSync(installStamp, lock);
}

export function isFolder(path) {
  return existsSync(path) && statSync(path).isDirectory();
}

export function makeFolder(path) {
  mkdirSync(path, { recursive: true });
}
