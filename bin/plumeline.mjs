#!/usr/bin/env node
/** The program `plumeline`: the compiled command line, built first where this is a clone of the source. */

import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const compiled = new URL('../dist/faces/cli/main.js', import.meta.url);
const buildScript = new URL('../scripts/build.mjs', import.meta.url);
const sources = new URL('../src/faces/cli/main.ts', import.meta.url);

const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
if (major < 20 || (major === 20 && minor < 19)) {
  console.error(`plumeline needs Node 20.19 or newer; this is Node ${process.versions.node}.`);
  process.exit(2);
}

if (!existsSync(compiled)) buildOrExplain();

const { main } = await import(compiled.href);
process.exitCode = await main(process.argv.slice(2));

function buildOrExplain() {
  if (!existsSync(buildScript) || !existsSync(sources)) {
    console.error('plumeline is not complete here: dist/faces/cli/main.js is missing.');
    console.error('Install it again, from the packed file or from a clone of its source.');
    process.exit(2);
  }
  console.error('First run in this clone: building plumeline, about half a minute …');
  const built = spawnSync(process.execPath, [fileURLToPath(buildScript)], {
    stdio: ['ignore', 2, 2],
    cwd: fileURLToPath(new URL('..', import.meta.url)),
  });
  if (built.status !== 0 || !existsSync(compiled)) {
    console.error('The build failed; its messages stand above. Run `npm install`, then try again.');
    process.exit(2);
  }
}
