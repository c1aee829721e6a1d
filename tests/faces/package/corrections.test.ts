import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test, vi } from 'vitest';
import { CAUTION } from '../../../src/answer/caution.ts';
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
