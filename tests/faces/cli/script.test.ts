import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import type { ScriptAnswer } from '../../../src/telling/script/index.ts';
import { runMain } from './runMain.ts';

const place = mkdtempSync(join(tmpdir(), 'plumeline-script-'));
afterAll(() => rmSync(place, { recursive: true, force: true }));

const STUDY = `plumeline: 1
question: How much does a longer nozzle give?
engines:
  short:
    name: Short
    propellants: { oxidiser: oxygen, fuel: methane, ratio: 3.5 ± 0.05 }
    chamber: { pressure: 80 bar }
    size: { throat: 200 mm }
    nozzle: { kind: ideal, areaRatio: 12 }
  long: { like: short, name: Long, nozzle: { areaRatio: 40 } }
sentences:
  - { id: more, say: In vacuum the long one gives more., holds: long.specificImpulse(vacuum) > short.specificImpulse(vacuum) }
  - { id: less, say: In vacuum the long one gives less., said: false, holds: long.specificImpulse(vacuum) < short.specificImpulse(vacuum) }
`;

const SCRIPT = `# T

## S

In vacuum the long one gives more: {{long.specificImpulse(vacuum), about}}. {#gain says=more}
`;

function write(script: string, study = STUDY): void {
  writeFileSync(join(place, 'study.yaml'), study);
  writeFileSync(join(place, 'script.md'), script);
}

test('prints the script with its numbers; a line that says what fails, or a number that moved, gives status 1', {
  timeout: 120_000,
}, async () => {
  write(SCRIPT);
  const first = await runMain(['script', place]);
  expect(first.status, first.err).toBe(0);
  expect(first.out).toMatch(/gives more: about 3\d\d\u00a0s\./);
  expect(first.out).toMatch(/\d words in 1 scene and 1 line, 1 live number, nothing to look at\./);
  expect(first.out).toMatch(/not\s+recorded/);
  expect(first.out).toContain('not for building');

  const file = join(place, 'out.md');
  const recorded = await runMain(['script', place, '--record', '--write', file]);
  expect(recorded.status).toBe(0);
  expect(recorded.err).toContain('Recorded 1 number ');
  expect(readFileSync(file, 'utf8')).toMatch(/gives more: about 3\d\d\u00a0s\./);
  expect((await runMain(['script', place])).status).toBe(0);

  write(SCRIPT, STUDY.replace('areaRatio: 40', 'areaRatio: 90'));
  const moved = await runMain(['script', place, '--json']);
  expect(moved.status).toBe(1);
  const { flags, scenes } = JSON.parse(moved.out) as ScriptAnswer;
  expect(flags).toMatchObject([{ kind: 'moved', fails: true, line: 'gain', place: { line: 5 } }]);
  expect(scenes[0]!.lines[0]!.spoken).toMatch(/about three hundred and .* seconds/);

  write('In vacuum the long one gives less. {says=less}');
  const fails = await runMain(['script', place]);
  expect(fails.status).toBe(1);
  expect(fails.out).toMatch(/!! 1:1 It says less: don’t say/);
  // The study keeps that sentence to be discussed; the script says it all the same.
  const checked = await runMain(['check', place]);
  expect(checked.status).toBe(1);
  expect(checked.out).toMatch(/Not to be said so in script\.md\n {2}- opening\.1: It says less: don’t say/);
});

test('a script with problems is printed as far as it is read, and gives status 2', {
  timeout: 60_000,
}, async () => {
  write('One {{long.thrust(vacuum), abut}}. {relies=nobody}');
  const { status, out, err } = await runMain(['script', place]);
  expect(status).toBe(2);
  expect(out).toMatch(/One \d+\u00a0kN/);
  expect(err).toContain('Did you mean about?');
  expect(err).toContain('nobody');
  // A line that cannot be read may say anything: the guard does not stay silent over it.
  const guarded = await runMain(['check', place]);
  expect(guarded.status).toBe(1);
  expect(guarded.err).toContain('Did you mean about?');
  rmSync(join(place, 'script.md'));
  const none = await runMain(['script', place]);
  expect(none.status).toBe(2);
  expect(none.err).toContain('There is no script.md');
});

test('the new command brings the script of its starter', async () => {
  const folder = join(place, 'made');
  const { out } = await runMain(['new', folder]);
  expect(out).toContain('plumeline script');
  expect(readFileSync(join(folder, 'script.md'), 'utf8')).toContain(
    '{{long.specificImpulse(vacuum), about}}',
  );
});
