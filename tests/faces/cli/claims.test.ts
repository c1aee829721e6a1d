import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { CAUTION } from '../../../src/answer/caution.ts';
import { visibleLength } from '../../../src/faces/cli/text/wrap.ts';
import { runMain } from './runMain.ts';

const place = mkdtempSync(join(tmpdir(), 'plumeline-claims-'));
afterAll(() => rmSync(place, { recursive: true, force: true }));

const STUDY = `plumeline: 1
question: Which?
engines:
  cold: { propellants: { gamma: 1.4, molarMass: 28 g/mol, temperature: 300 K }, chamber: { pressure: 70 bar, efficiency: 100 % }, size: { throat: 100 mm }, nozzle: { kind: ideal, areaRatio: 10 } }
# kept
sentences:
  - id: claim-1
    say: It pushes.
`;

const CAPTIONS = 'WEBVTT\n\n01:02.000 --> 01:04.000\nThe cold engine pushes with 90 kN in vacuum.\n';

function files(name: string): { readonly folder: string; readonly file: string; readonly captions: string } {
  const folder = join(place, name);
  mkdirSync(folder);
  const [file, captions] = [join(folder, 'study.yaml'), join(folder, 'talk.vtt')];
  writeFileSync(file, STUDY);
  writeFileSync(captions, CAPTIONS);
  return { folder, file, captions };
}

describe('plumeline claims', () => {
  test('tells claims with place, meaning and test; nothing is written; the caution is last', async () => {
    const { folder, file, captions } = files('told');
    const ran = await runMain(['claims', captions, '--study', folder]);
    const words = ran.out.replace(/\s+/g, ' ');
    expect(ran.status).toBe(0);
    expect(words).toContain('1 number (line 4, 1:02)');
    expect(words).toContain('Test cold.thrust(vacuum) is about 90 kN');
    expect(words).toContain('nothing counts until it is accepted');
    expect(words.trim().endsWith(CAUTION)).toBe(true);
    for (const line of ran.out.split('\n')) expect(visibleLength(line)).toBeLessThanOrEqual(100);
    expect(readFileSync(file, 'utf8')).toBe(STUDY);
  });

  test('--accept writes a kept sentence with a comment that names its place', async () => {
    const { folder, file, captions } = files('accepted');
    expect((await runMain(['claims', captions, '--study', folder, '--accept', '1'])).status).toBe(0);
    expect(readFileSync(file, 'utf8')).toBe(`${STUDY}
  # Claim found in talk.vtt, line 4, 1:02. The test is a proposal.
  - id: claim-1-2
    say: The cold engine pushes with 90 kN in vacuum.
    holds: cold.thrust(vacuum) is about 90 kN
    said: false
`);
    const checked = await runMain(['check', folder, '--json']);
    expect(checked.status).toBe(0);
    expect(JSON.parse(checked.out)).toMatchObject({ sentences: [{}, { id: 'claim-1-2', said: false }] });
  });

  test('one without a test is written without one, and says so', async () => {
    const { folder, file } = files('untested');
    const denied = join(folder, 'talk.txt');
    writeFileSync(denied, 'The cold engine hardly makes more thrust than the hot one.\n');
    expect((await runMain(['claims', denied, '--study', folder, '--accept', '1'])).status).toBe(0);
    const written = readFileSync(file, 'utf8').slice(STUDY.length);
    expect(written).toContain('No test yet: write one under holds.');
    expect(written).not.toContain('holds:');
  });

  test('sentences in one line take no comment: refused, nothing written, with how to mend', async () => {
    const { folder, file, captions } = files('inline');
    const inline = STUDY.replace(/sentences:[\s\S]*$/, 'sentences: [{ id: a, say: So it is. }]\n');
    writeFileSync(file, inline);
    const ran = await runMain(['claims', captions, '--study', folder, '--accept', '1']);
    expect(ran.status).toBe(2);
    expect(ran.err.replace(/\s+/g, ' ')).toContain(
      'Take the square brackets away, write each entry on a line of its own',
    );
    expect(readFileSync(file, 'utf8')).toBe(inline);
  });

  test('--json carries the caution', async () => {
    const { captions } = files('json');
    const ran = await runMain(['claims', captions, '--json']);
    expect(JSON.parse(ran.out)).toMatchObject({
      format: 'plumeline claims 1',
      caution: CAUTION,
      claims: [{ number: 1 }],
    });
  });

  test('bad input: exit 2, in words', async () => {
    const { folder, captions } = files('bad');
    const broken = join(folder, 'broken.vtt');
    writeFileSync(broken, 'no captions');
    const binary = join(folder, 'binary.txt');
    writeFileSync(binary, Buffer.from([0xff, 0xfe, 0x00]));
    for (const args of [
      [broken],
      [binary],
      [join(folder, 'none.txt')],
      [captions, '--accept', '1'],
      [captions, '--study', folder, '--accept', '2'],
      [captions, '--study', folder, '--accept', 'x'],
    ]) {
      const ran = await runMain(['claims', ...args]);
      expect(ran.status, args.join(' ')).toBe(2);
      expect(ran.err).not.toBe('');
    }
  });
});
