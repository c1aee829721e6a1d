import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, realpathSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

/** The packed program, installed globally into a folder of its own, used where no source is. */
const root = fileURLToPath(new URL('../..', import.meta.url));
const npm = process.platform === 'win32' ? 'npm.cmd' : 'npm';
const place = realpathSync(mkdtempSync(join(tmpdir(), 'plumeline-tarball-')));
const prefix = join(place, 'global');
const elsewhere = join(place, 'a folder with spaces');
const program =
  process.platform === 'win32' ? join(prefix, 'plumeline.cmd') : join(prefix, 'bin', 'plumeline');

function plumeline(...args: string[]): string {
  // A proxy that leads nowhere: any attempt to reach the network fails at once.
  const env = { ...process.env, HTTP_PROXY: 'http://127.0.0.1:9', HTTPS_PROXY: 'http://127.0.0.1:9' };
  return execFileSync(program, args, {
    cwd: place,
    encoding: 'utf8',
    env,
    stdio: ['ignore', 'pipe', 'pipe'],
  });
}

beforeAll(() => {
  const packed = execFileSync(npm, ['pack', '--json', '--ignore-scripts', '--pack-destination', place], {
    cwd: root,
    encoding: 'utf8',
  });
  expect(packed).toContain('plumeline');
  const tarball = readdirSync(place).find((name) => name.endsWith('.tgz'))!;
  execFileSync(
    npm,
    [
      'install',
      '-g',
      '--prefix',
      prefix,
      '--no-audit',
      '--no-fund',
      '--prefer-offline',
      join(place, tarball),
    ],
    { cwd: place, encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] },
  );
}, 240_000);

afterAll(() => rmSync(place, { recursive: true, force: true }));

describe('the packed program, installed globally', () => {
  test('teaches its own use', () => {
    const help = plumeline('--help');
    for (const command of ['new', 'solve', 'pack', 'open']) expect(help).toContain(command);
  });

  test('makes a study, solves it and packs it, without the source and without a network', () => {
    plumeline('new', elsewhere);
    const answer = JSON.parse(plumeline('solve', elsewhere, '--json'));
    expect(Object.keys(answer.engines).length).toBeGreaterThanOrEqual(2);
    for (const engine of Object.values<{ vacuum: { specificImpulse: number } }>(answer.engines)) {
      expect(engine.vacuum.specificImpulse).toBeGreaterThan(50);
    }
    const out = join(place, 'package');
    plumeline('pack', elsewhere, '--out', out);
    const page = readFileSync(join(out, 'index.html'), 'utf8');
    expect(page).toContain('not for building');
  });

  test('lets the physics, the study, the answer, the telling and the data be imported alone', () => {
    const folder =
      process.platform === 'win32' ? join(prefix, 'node_modules') : join(prefix, 'lib', 'node_modules');
    const code = `const names = ['physics', 'study', 'answer', 'telling', 'data'];
      for (const name of names) console.log(name, Object.keys(await import('plumeline/' + name)).length);`;
    const printed = execFileSync(process.execPath, ['--input-type=module', '-e', code], {
      cwd: join(folder, 'plumeline'),
      encoding: 'utf8',
    });
    const counts = printed
      .trim()
      .split('\n')
      .map((line) => Number(line.split(' ')[1]));
    expect(counts).toHaveLength(5);
    for (const count of counts) expect(count).toBeGreaterThan(0);
  });
});
