/** The built program as the shell sees it: exit statuses, streams, a closed pipe. */

import { execFileSync, spawn, spawnSync } from 'node:child_process';
import { copyFileSync, mkdirSync, mkdtempSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

const root = fileURLToPath(new URL('../../../', import.meta.url));
/** A copy of the package made of links, so that compiling here disturbs no other test. */
const place = mkdtempSync(join(tmpdir(), 'plumeline-program-'));
const program = join(place, 'bin', 'plumeline.mjs');
const example = join(root, 'examples', 'alder-booster');

beforeAll(() => {
  for (const name of ['data', 'node_modules', 'starters', 'examples', 'package.json']) {
    symlinkSync(join(root, name), join(place, name));
  }
  mkdirSync(join(place, 'bin'));
  copyFileSync(join(root, 'bin', 'plumeline.mjs'), program);
  const tsc = join(root, 'node_modules', '@typescript', 'native', 'bin', 'tsc');
  execFileSync(
    process.execPath,
    [tsc, '-p', join(root, 'tsconfig.build.json'), '--outDir', join(place, 'dist')],
    { cwd: root },
  );
}, 120_000);
afterAll(() => rmSync(place, { recursive: true, force: true }));

function plumeline(...args: string[]) {
  return spawnSync(process.execPath, [program, ...args], { encoding: 'utf8', cwd: place });
}

/** Without the lines that say, on a slow or busy machine, what is being solved. */
const complaintsIn = (stderr: string): string => stderr.replace(/^Solving .* …\n/gm, '');

describe('the built program', () => {
  test('status 0 and an answer on standard output', () => {
    const { status, stdout, stderr } = plumeline('solve', example, '--json');
    expect({ status, complaints: complaintsIn(stderr) }).toEqual({ status: 0, complaints: '' });
    expect(Object.keys(JSON.parse(stdout).engines)).toEqual(['bell', 'plug', 'adapting']);
  });

  test('status 2 and words on standard error', () => {
    const { status, stdout, stderr } = plumeline('solve', 'nowhere');
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    expect(stderr).toContain('nowhere');
  });

  test('a reader that stops early is no error', () => {
    const shell = spawnSync(
      'sh',
      ['-c', `"${process.execPath}" "${program}" solve "${example}" --json | head -n 1`],
      { encoding: 'utf8', cwd: place },
    );
    expect(shell.stdout.trim()).toBe('{');
    expect(complaintsIn(shell.stderr)).toBe('');
  });

  test('open prints the short answer and a loopback address, and stops when told to', async () => {
    const child = spawn(process.execPath, [program, 'open', example, '--no-browser', '--port', '0']);
    const ended = new Promise<number | null>((resolve) => child.on('close', resolve));
    const told = await new Promise<string>((resolve, reject) => {
      let out = '';
      child.stdout.on('data', (part: Buffer) => {
        out += part.toString();
        if (out.includes('http://')) resolve(out);
      });
      child.on('close', () => reject(new Error(`ended early: ${out}`)));
    });
    expect(told).toContain('The lead changes');
    expect(told).toMatch(/http:\/\/127\.0\.0\.1:\d+\//);
    child.kill('SIGTERM');
    // Windows ends a program it is told to stop without letting it say how.
    if (process.platform !== 'win32') expect(await ended).toBe(0);
  });

  test('says what is missing when it is incomplete', () => {
    const half = mkdtempSync(join(tmpdir(), 'plumeline-half-'));
    try {
      mkdirSync(join(half, 'bin'));
      copyFileSync(program, join(half, 'bin', 'plumeline.mjs'));
      const { status, stderr } = spawnSync(process.execPath, [join(half, 'bin', 'plumeline.mjs'), '--help'], {
        encoding: 'utf8',
      });
      expect(status).toBe(2);
      expect(stderr).toContain('dist/faces/cli/main.js is missing');
    } finally {
      rmSync(half, { recursive: true, force: true });
    }
  });
});
