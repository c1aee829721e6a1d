import { spawn } from 'node:child_process';
import {
  chmodSync,
  existsSync,
  linkSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { writeFileAtomically } from '../../../src/faces/disk/atomicWrite.ts';

const windows = process.platform === 'win32';
let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'plumeline-write-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const left = (): string[] => readdirSync(folder).filter((name) => name.endsWith('.writing'));

describe('writing a file whole', () => {
  test('makes it, replaces it, leaves nothing beside it', async () => {
    const path = join(folder, 'study.yaml');
    await writeFileAtomically(path, 'one µ\n');
    expect(readFileSync(path, 'utf8')).toBe('one µ\n');
    await writeFileAtomically(path, 'two\n');
    expect(readFileSync(path, 'utf8')).toBe('two\n');
    expect(readdirSync(folder)).toEqual(['study.yaml']);
  });

  test.skipIf(windows)('keeps the permissions of the file', async () => {
    const path = join(folder, 'study.yaml');
    writeFileSync(path, 'one');
    for (const mode of [0o600, 0o640, 0o664]) {
      chmodSync(path, mode);
      await writeFileAtomically(path, 'two');
      expect(statSync(path).mode & 0o777).toBe(mode);
    }
  });

  test.skipIf(windows)('writes through a symbolic link and leaves the link', async () => {
    mkdirSync(join(folder, 'real'));
    writeFileSync(join(folder, 'real', 'target.yaml'), 'one');
    symlinkSync(join('real', 'target.yaml'), join(folder, 'study.yaml'));
    await writeFileAtomically(join(folder, 'study.yaml'), 'two');
    expect(lstatSync(join(folder, 'study.yaml')).isSymbolicLink()).toBe(true);
    expect(readFileSync(join(folder, 'real', 'target.yaml'), 'utf8')).toBe('two');
  });

  test.skipIf(windows)('refuses a link that leads nowhere', async () => {
    symlinkSync('gone.yaml', join(folder, 'study.yaml'));
    await expect(writeFileAtomically(join(folder, 'study.yaml'), 'x')).rejects.toThrow(/ENOENT/);
    expect(readdirSync(folder)).toEqual(['study.yaml']);
  });

  test.skipIf(windows)('leaves hard links of the old file at the old text', async () => {
    writeFileSync(join(folder, 'a'), 'one');
    linkSync(join(folder, 'a'), join(folder, 'b'));
    await writeFileAtomically(join(folder, 'a'), 'two');
    expect(readFileSync(join(folder, 'b'), 'utf8')).toBe('one');
  });

  test('says so when the folder is not there, and makes none', async () => {
    await expect(writeFileAtomically(join(folder, 'no', 'study.yaml'), 'x')).rejects.toThrow(/ENOENT/);
    expect(readdirSync(folder)).toEqual([]);
  });

  test('fails without a trace where a folder stands in the place', async () => {
    mkdirSync(join(folder, 'study.yaml', 'in'), { recursive: true });
    await expect(writeFileAtomically(join(folder, 'study.yaml'), 'x')).rejects.toThrow();
    expect(left()).toEqual([]);
  });

  test('removes what writes that were cut off left, and nothing else', async () => {
    const dead = '.study.yaml.999999999-0123456789ab.writing';
    const old = `.study.yaml.${process.pid}-0123456789ab.writing`;
    const running = `.study.yaml.${process.pid}-ba9876543210.writing`;
    const others = ['.other.yaml.999999999-0123456789ab.writing', '.study.yaml.swp', 'study.yaml.bak'];
    for (const name of [dead, old, running, ...others]) writeFileSync(join(folder, name), 'half');
    const long = new Date(Date.now() - 2 * 3_600_000);
    utimesSync(join(folder, old), long, long);
    await writeFileAtomically(join(folder, 'study.yaml'), 'x');
    expect(readdirSync(folder).sort()).toEqual([running, 'study.yaml', ...others].sort());
  });

  test('many writers at once leave one of their texts', async () => {
    const path = join(folder, 'study.yaml');
    const texts = Array.from({ length: 20 }, (_, i) => `${i}`.repeat(5000));
    await Promise.all(texts.map((text) => writeFileAtomically(path, text)));
    expect(texts).toContain(readFileSync(path, 'utf8'));
    expect(left()).toEqual([]);
  });
});

/** The writer as plain JavaScript, which Node 20 can run in a process of its own. */
function writerScript(): string {
  const source = fileURLToPath(new URL('../../../src/faces/disk/atomicWrite.ts', import.meta.url));
  const { outputText } = ts.transpileModule(readFileSync(source, 'utf8'), {
    compilerOptions: { module: ts.ModuleKind.ESNext, target: ts.ScriptTarget.ES2022 },
  });
  const path = join(folder, 'writer.mjs');
  writeFileSync(
    path,
    `${outputText}
const [, , target, size] = process.argv;
let n = 0;
process.stdout.write('ready');
for (;;) {
  n += 1;
  const body = String(n % 10).repeat(Number(size));
  await writeFileAtomically(target, 'begin ' + n + '\\n' + body + '\\nend ' + n + '\\n');
}
`,
  );
  return path;
}

/** A linear congruential sequence: the same instants in every run. Constants: Numerical Recipes, from memory. */
function* instants(seed: number): Generator<number> {
  for (let state = seed; ; ) {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    yield state / 2 ** 32;
  }
}

describe('a writer killed at any instant', () => {
  test('leaves the old text or the new one, whole, 64 times', async () => {
    const script = writerScript();
    const home = join(folder, 'study');
    mkdirSync(home);
    const target = join(home, 'study.yaml');
    const whole = /^begin (\d+)\n(\d)\2{199999}\nend \1\n$/;
    writeFileSync(target, `begin 0\n${'0'.repeat(200_000)}\nend 0\n`);
    const random = instants(20240229);
    let halfWritten = 0;
    let replaced = 0;
    const once = async (): Promise<void> => {
      const before = readFileSync(target, 'utf8').slice(0, 20);
      const child = spawn(process.execPath, [script, target, '200000'], {
        stdio: ['ignore', 'pipe', 'inherit'],
      });
      await new Promise((resolve) => child.stdout.once('data', resolve));
      await new Promise((resolve) => setTimeout(resolve, 40 * random.next().value!));
      const ended = new Promise((resolve) => child.once('exit', resolve));
      child.kill('SIGKILL');
      await ended;
      const text = readFileSync(target, 'utf8');
      expect(text).toMatch(whole);
      if (text.slice(0, 20) !== before) replaced += 1;
      halfWritten += readdirSync(home).length - 1;
    };
    for (let i = 0; i < 64; i++) await once();
    // The kills did fall into writes: temporary files were left, and texts were replaced.
    expect(halfWritten).toBeGreaterThan(5);
    expect(replaced).toBeGreaterThan(5);
    // And the next write by anybody clears them away.
    await writeFileAtomically(target, 'done');
    expect(readdirSync(home)).toEqual(['study.yaml']);
    expect(existsSync(target)).toBe(true);
  });
});
