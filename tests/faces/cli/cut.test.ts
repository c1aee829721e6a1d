import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { readScript } from '../../../src/study/script/index.ts';
import { runMain } from './runMain.ts';

const place = mkdtempSync(join(tmpdir(), 'plumeline-cut-'));
afterAll(() => rmSync(place, { recursive: true, force: true }));

writeFileSync(
  join(place, 'study.yaml'),
  `plumeline: 1
question: How much does a longer nozzle give?
engines:
  short:
    name: Short
    propellants: { oxidiser: oxygen, fuel: methane, ratio: 3.5 }
    chamber: { pressure: 80 bar }
    size: { throat: 200 mm }
    nozzle: { kind: ideal, areaRatio: 12 }
sentences:
  - { id: holds, say: The chamber holds eighty bar., holds: short.chamber.pressure is about 80 bar }
`,
);
writeFileSync(
  join(place, 'script.md'),
  `---
cuts:
  brief: { length: 12 s, keep: [pressure] }
---

# A *short* title

## Why {#why weight=1}

> cut-at-sea-level, the engine alone

Here is an engine for one booster, and a question about its nozzle that many people ask. {weight=2}

It begins in the chamber, where the gas is made and where it is pushed together. {pause=1s}

## How much {#much relies=why.2}

The chamber holds {{short.chamber.pressure in bar}}. {#pressure says=holds}

And that is as much as eight hundred metres of water would press on you. {#sea says=holds}

## The end

That is all there is to tell about the pressure of this one engine, and it is invented. {weight=0}
`,
);
const inPlace = (name: string): string => join(place, name);

describe('cut', () => {
  test('keeps what the named cut asks for with all it relies on, and writes it as a script that reads alike', async () => {
    const ran = await runMain(['cut', place, '--to', 'brief', '--json', '--write', inPlace('brief.md')]);
    // A checked sentence is said only in part.
    expect(ran.status, ran.err).toBe(1);
    const cut = JSON.parse(ran.out);
    expect(cut.caution).toContain('not for building');
    const kept = cut.lines.filter((line: { kept: boolean }) => line.kept).map(({ id }: { id: string }) => id);
    expect(kept).toEqual(['why.2', 'pressure']);
    expect(cut.verdictNeeds).toEqual([{ line: 'pressure', sentence: 'holds', dropped: ['sea'] }]);
    expect(cut.seconds).toBeLessThanOrEqual(12);
    const { script, problems } = readScript(readFileSync(inPlace('brief.md'), 'utf8'));
    expect(problems).toEqual([]);
    expect(script.title).toBe('A short title');
    expect(script.scenes.map(({ id, lines }) => [id, lines.map((line) => line.id)])).toEqual([
      ['why', ['why.2']],
      ['much', ['pressure']],
    ]);
    expect(script.scenes[0]?.shown).toMatchObject([
      { words: 'cut-at-sea-level, the engine alone', at: 'why.2' },
    ]);
    expect(script.scenes[1]?.lines[0]?.pieces).toMatchObject([
      {},
      { expression: 'short.chamber.pressure' },
      {},
    ]);
  });

  test('tells each line with its time and reason; wishes of the command are added', async () => {
    const { status, out } = await runMain(['cut', place, '--to', '30 s', '--leave', 'much']);
    expect(status).toBe(0);
    expect(out).toMatch(/keep why\.1 +7\.3\u00a0s, weight 2: worth its time/);
    expect(out).toMatch(/drop pressure .*: left by the writer/);
    expect(out).toMatch(/drop the-end\.1 .*: without weight/);
    expect(out).toContain('No cut of this length weighs more.');
  });

  test.each([
    [['--to', 'soon'], 'neither a length nor a cut of the script'],
    [['--to', '-3 s'], 'neither a length'],
    [['--to', '3 bar'], 'neither a length'],
    [['--to', '3 s', '--keep', 'pressure'], 'takes'],
    [['--to', '1 min', '--keep', 'sea', '--leave', 'why.2'], 'relies on why.2'],
    [['--to', '1 min', '--keep', 'nobody'], 'no such line or scene'],
  ])('%j is refused in words', async (flags, words) => {
    const { status, err } = await runMain(['cut', place, ...flags]);
    expect(status).toBe(2);
    expect(err.replace(/\s+/g, ' ')).toContain(words);
  });
});

describe('captions and slips', () => {
  test('a film that says the script has no slips; another number is told with its time', async () => {
    const made = await runMain(['captions', place, '--out', inPlace('out')]);
    expect(made.status, made.err).toBe(0);
    expect(made.err).toContain('No chapters');
    const film = join(place, 'out', 'captions.vtt');
    const good = await runMain(['slips', place, film]);
    expect(good.status, good.out).toBe(0);
    expect(good.out).toContain('No slips');
    const text = readFileSync(film, 'utf8');
    expect(text).toContain('80\u00a0bar');
    writeFileSync(inPlace('film.vtt'), text.replace('80\u00a0bar', 'ninety bar'));
    const bad = await runMain(['slips', place, inPlace('film.vtt'), '--json']);
    expect(bad.status).toBe(1);
    const { slips, caution } = JSON.parse(bad.out);
    expect(caution).toContain('not for building');
    expect(slips).toMatchObject([{ kind: 'number', line: 'pressure', sentence: 'holds' }]);
    expect((await runMain(['slips', place, inPlace('film.vtt')])).out).toMatch(/0:1\d +Says “ninety bar”/);
  });

  test('of a cut, in the narrow grid', async () => {
    const { status } = await runMain([
      'captions',
      place,
      '--cut',
      'brief',
      '--narrow',
      '--out',
      inPlace('brief'),
    ]);
    expect(status).toBe(0);
    const rows = readFileSync(join(place, 'brief', 'captions.srt'), 'utf8').split('\n');
    expect(Math.max(...rows.map((row) => row.length))).toBeLessThanOrEqual(37);
    const { out } = await runMain(['slips', place, join(place, 'brief', 'captions.srt'), '--cut', 'brief']);
    expect(out).toContain('No slips');
  });

  test('what is no caption file, no cut, no script is refused', async () => {
    expect((await runMain(['slips', place, inPlace('study.yaml')])).err).toContain('neither WebVTT');
    expect((await runMain(['captions', place, '--cut', 'long', '--out', inPlace('x')])).err).toContain(
      'nor a cut',
    );
    const empty = mkdtempSync(join(tmpdir(), 'plumeline-none-'));
    writeFileSync(join(empty, 'study.yaml'), readFileSync(inPlace('study.yaml')));
    expect((await runMain(['cut', empty, '--to', '40 s'])).err).toContain('There is no script.md');
    rmSync(empty, { recursive: true });
  });
});
