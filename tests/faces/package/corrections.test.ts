import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test, vi } from 'vitest';
import { CAUTION } from '../../../src/answer/caution.ts';
import { packCommand } from '../../../src/faces/cli/commands/pack.ts';
import { CAUTION_SHORT } from '../../../src/telling/caution.ts';
import { runMain } from '../cli/runMain.ts';

const place = mkdtempSync(join(tmpdir(), 'plumeline-corrections-'));
afterAll(() => {
  vi.useRealTimers();
  rmSync(place, { recursive: true, force: true });
});

const study = (areaRatio: number): string => `plumeline: 1
question: Which <b>one</b>?
engines:
  cold: { propellants: { gamma: 1.4, molarMass: 28 g/mol, temperature: 300 K }, chamber: { pressure: 70 bar, efficiency: 100 % }, size: { throat: 100 mm }, nozzle: { kind: ideal, areaRatio: ${areaRatio} } }
sentences:
  - { id: strong, say: It pushes with more than 90 kN in vacuum., holds: cold.thrust(vacuum) > 90 kN, sources: [leaflet] }
sources:
  leaflet: { title: A leaflet, author: A. B. Wright, year: 1961 }
`;
const at = join(place, 'study');
mkdirSync(at);
writeFileSync(
  join(at, 'script.md'),
  `---
cuts:
  short: { length: 8 s }
  Short: { length: 8 s }
  short-live: { length: 8 s }
  far-too-short: { length: 5 s, keep: [long] }
---

# A film

## First {#one weight=2}

> cut-in-vacuum

In vacuum it pushes with {{cold.thrust(vacuum) in kN, about}}. {#push weight=5 says=strong}

This is a long line that says little, goes on for a while, and takes its time to come to its end at last. {#long}
`,
);
const packed = join(place, 'package');
const read = (name: string): string => readFileSync(join(packed, name), 'utf8');

test('packed over an earlier package: what has changed is told and drafted; the clock and the place change nothing', async () => {
  writeFileSync(join(at, 'study.yaml'), study(10));
  const first = await runMain(['pack', at, '--out', packed]);
  expect(first.status).toBe(0);
  expect(first.out).not.toContain('corrections.md');
  const manifest = read('manifest.json');
  expect(read('description.txt')).toContain('Corrections\nNone so far.');
  expect(read('description.txt')).toContain('Wright, A. B.: A leaflet. 1961.');
  expect(read('description.txt')).toContain(CAUTION);

  // The script: with and without numbers, each cut that can be made, times, captions.
  expect(first.err).toMatch(/The cut far-too-short is not in the package\./);
  const files = Object.keys(JSON.parse(manifest).files);
  for (const name of [
    'script/script.md',
    'script/whole.md',
    'script/cut-short.md',
    'script/cut-short-live.md',
    // Names that differ in capitals alone, or end as the files of another cut do, have files of their own.
    'script/cut-short-2.md',
    'script/cut-short-live-2.md',
  ])
    expect(files).toContain(name);
  for (const name of [
    'captions/whole.vtt',
    'captions/cut-short.srt',
    'timeline.otio',
    'timeline-cut-short.otio',
  ])
    expect(files).toContain(name);
  const spoken = /pushes with about [\d.]+\skN/;
  expect(read('script/whole.md')).toMatch(spoken);
  expect(read('script/cut-short.md')).toMatch(spoken);
  expect(read('script/cut-short.md')).not.toContain('long line');
  expect(read('script/cut-short-live.md')).toContain('{{cold.thrust(vacuum) in kN, about}}');
  expect(read('timeline.otio')).toContain('"target_url": "scenes/01-one-cut-in-vacuum.png"');
  expect(read('timeline.otio')).toContain('push: safe to say');
  expect(read('scenes.csv')).toMatch(
    /whole,one,First,0,[\d.]+,\d+,cut-in-vacuum,scenes\/01-one-cut-in-vacuum\.png/,
  );
  expect(read('numbers-by-scene.csv')).toMatch(/one,push,cold\.thrust\(vacuum\),about [\d.]+.kN/);
  for (const name of files.filter(
    (name) => !/^(study\.yaml|script\/script\.md|.*\.(png|svg|srt))$/.test(name),
  ))
    expect(read(name), name).toContain(/\.vtt$|-reading\.html$/.test(name) ? CAUTION_SHORT : CAUTION);

  // Years later, elsewhere, and over the package itself: the same bytes, and nothing to correct.
  vi.useFakeTimers({ now: new Date('2037-05-05'), toFake: ['Date'] });
  const again = await runMain(['pack', at, '--out', packed]);
  vi.useRealTimers();
  expect(again.out).not.toContain('corrections.md');
  expect(read('manifest.json')).toBe(manifest);

  writeFileSync(join(at, 'study.yaml'), study(20));
  const changed = await runMain(['pack', at, '--out', packed, '--date', '2026-11-26']);
  expect(changed.out).toMatch(/published things have changed since the package before/);
  const note = read('corrections.md');
  expect(note).toContain(CAUTION);
  expect(note).toContain('## 2026-11-26');
  expect(note).toMatch(/- Cold, area ratio: ~~10(\.0+)?~~ → \*\*20(\.0+)?\*\*/);
  expect(note).toMatch(/Figures drawn anew: .*cut/);
  expect(read('description.txt')).toMatch(/2026-11-26: Cold, area ratio: was 10(\.0+)?, is 20/);
  expect(JSON.parse(read('manifest.json')).files['corrections.md'].bytes).toBe(Buffer.byteLength(note));
});

test('stopped before it is done: said, and nothing written', async () => {
  const said: string[] = [];
  const terminal = {
    out: () => undefined,
    err: (text: string) => void said.push(text),
    width: 80,
    elapsed: () => 0,
  };
  const out = join(place, 'never');
  expect(await packCommand(at, { out }, terminal, AbortSignal.abort())).toBe(1);
  expect(said).toContain('Stopped. Nothing was written.');
  expect(existsSync(out)).toBe(false);
});
