import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Resvg } from '@resvg/resvg-js';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { localCrew } from '../../../src/answer/asked/localCrew.ts';
import { catalogue } from '../../../src/answer/catalogue.ts';
import { CAUTION } from '../../../src/answer/caution.ts';
import { type CheckedSentence, checkSentences } from '../../../src/answer/sentences/index.ts';
import { type SolvedStudy, solveStudyLive } from '../../../src/answer/solve.ts';
import { sweep, sweepRequestOf } from '../../../src/answer/sweeps/index.ts';
import { openDataShelf } from '../../../src/faces/disk/data.ts';
import { type PackedStudy, packStudy } from '../../../src/faces/package/packStudy.ts';
import type { Study } from '../../../src/study/model.ts';
import { knownNames } from '../../../src/study/names.ts';
import { readStudy } from '../../../src/study/read.ts';
import { CAUTION_SHORT } from '../../../src/telling/caution.ts';
import type { Swept } from '../../../src/telling/figures/sweptFigures.ts';

/** A perfect gas through an ideal nozzle: quick to pack. */
const small = `plumeline: 1
question: Which?
engines:
  cold:
    name: Cold
    propellants: { gamma: 1.4, molarMass: 28 g/mol, temperature: 300 K }
    chamber: { pressure: 70 bar, efficiency: 100 % }
    size: { throat: 100 mm }
    nozzle: { kind: ideal, areaRatio: 10 }
`;

let place: string;
let packed: PackedStudy;
let study: Study;
let solved: SolvedStudy;
let sentences: readonly CheckedSentence[];
let swept: Swept;
let text: string;

async function solve(yaml: string): Promise<{ study: Study; solved: SolvedStudy }> {
  const shelf = openDataShelf();
  const outcome = readStudy(yaml, { file: 'study.yaml', ...knownNames(await shelf.propellants()) });
  if (!outcome.ok) throw new Error(outcome.problems.map((problem) => problem.what).join(' '));
  return { study: outcome.study, solved: await solveStudyLive(outcome.study, shelf, { version: '0.0.0' }) };
}

beforeAll(async () => {
  place = await mkdtemp(join(tmpdir(), 'plumeline-pack-'));
  text = await readFile(new URL('../../../examples/alder-booster/study.yaml', import.meta.url), 'utf8');
  ({ study, solved } = await solve(text));
  const crew = await localCrew(study, openDataShelf());
  sentences = await checkSentences(study, crew, { flips: false });
  const own = study.sweeps.map((input) => sweepRequestOf(study, { ...input, points: 9 }));
  swept = { sweeps: await Promise.all(own.map((request) => sweep(study, crew, request))), maps: [] };
  packed = await packStudy(
    { study, text, solved, sentences, analogies: [], comparison: null, swept },
    join(place, 'one'),
  );
});
afterAll(() => rm(place, { recursive: true, force: true }));

const file = (name: string, from = packed.folder): Promise<Buffer> =>
  readFile(join(from, ...name.split('/')));

/** Cells of one RFC 4180 line. */
const cellsOf = (line: string): readonly string[] =>
  [...line.matchAll(/(?:^|,)(?:"((?:[^"]|"")*)"|([^,]*))/g)].map(
    ([, quoted, bare]) => quoted?.replaceAll('""', '"') ?? bare ?? '',
  );

describe('a package', () => {
  test('has a page, figures in three shapes as SVG and PNG, numbers, the study and a manifest that fits', async () => {
    for (const name of [
      'index.html',
      'numbers.csv',
      'numbers.json',
      'sentences.json',
      'study.yaml',
      'README.txt',
      'manifest.json',
    ]) {
      expect(packed.files).toContain(name);
    }
    const svgs = packed.files.filter((name) => name.endsWith('.svg'));
    expect(svgs.length).toBeGreaterThanOrEqual(12);
    for (const svg of svgs) expect(packed.files).toContain(svg.replace('.svg', '.png'));
    const manifest = JSON.parse((await file('manifest.json')).toString());
    for (const [name, { bytes }] of Object.entries<{ bytes: number }>(manifest.files)) {
      expect((await file(name)).length).toBe(bytes);
    }
  });

  test('says the caution in every file but the study as its owner wrote it', async () => {
    for (const name of packed.files.filter((name) => name !== 'study.yaml')) {
      const content = (await file(name)).toString(name.endsWith('.png') ? 'latin1' : 'utf8');
      const words = name.endsWith('.svg') ? CAUTION_SHORT.split(';')[0]! : CAUTION.split(',')[0]!;
      expect(content, name).toContain(words);
    }
    const page = (await file('index.html')).toString();
    expect(page).toContain(CAUTION);
    expect(CAUTION).toMatch(/solid mixtures/);
    expect(CAUTION).toMatch(/local law and codes/);
    expect(CAUTION).toMatch(/licensed people/);
  });

  test('each sweep of the study has its figures and its table, and the page leads to both', async () => {
    expect(study.sweeps.length).toBeGreaterThan(0);
    const page = (await file('index.html')).toString();
    for (const { id } of study.sweeps) {
      for (const shape of ['16x9', '9x16', '1x1']) {
        expect(packed.files).toContain(`figures/sweep-${id}-${shape}.svg`);
        expect(packed.files).toContain(`figures/sweep-${id}-${shape}.png`);
      }
      expect(page).toContain(`href="figures/sweep-${id}.csv"`);
      const table = (await file(`figures/sweep-${id}.csv`)).toString();
      expect(table.split('\r\n').length).toBeGreaterThan(9);
    }
  });

  test('is the same bytes each time', async () => {
    // Worked out anew, as the command does: a live engine that was asked before answers from a nearer start.
    const anew = await solve(text);
    const again = await packStudy(
      { study, text, solved: anew.solved, sentences, analogies: [], comparison: null, swept },
      join(place, 'two'),
    );
    expect(again.files).toEqual(packed.files);
    for (const name of packed.files) {
      expect((await file(name)).equals(await file(name, again.folder)), name).toBe(true);
    }
  });

  test('asks nothing from outside and holds no script', async () => {
    const page = (await file('index.html')).toString();
    expect(page).not.toMatch(/<script|<link|<iframe|<object|javascript:/i);
    expect(page).not.toMatch(/(?:src|href)="(?!figures\/|#)/);
    expect(page.replaceAll('http://www.w3.org/2000/svg', '')).not.toMatch(/https?:/);
    expect(page.length).toBeLessThan(2_000_000);
  });

  test('every number of the CSV has its name in the catalogue and is the answer’s own', async () => {
    const names = new Set(catalogue.map((entry) => entry.name));
    const lines = (await file('numbers.csv')).toString().trim().split('\r\n').slice(2);
    expect(lines.length).toBeGreaterThan(200);
    for (const line of lines) {
      const [engine = '', path = '', name = '', , value = ''] = cellsOf(line);
      expect(names.has(name), name).toBe(true);
      // A band stands under the whole name of its quantity, dots and all.
      const band = /^bands\.(.+)\.(low|high)$/.exec(path);
      const keys = band ? ['bands', band[1]!, band[2]!] : path.split(/[.[\]]+/).filter(Boolean);
      const own = keys.reduce<unknown>(
        (at, key) => (at as Record<string, unknown>)[key],
        solved.answer.engines[engine],
      );
      expect(value === '' ? null : Number(value)).toBe(own);
    }
  });

  test('the figures are drawings that an independent reader draws', async () => {
    for (const name of packed.files.filter((name) => name.endsWith('16x9.svg'))) {
      const drawn = new Resvg((await file(name)).toString(), { font: { loadSystemFonts: false } });
      expect([drawn.width, drawn.height]).toEqual([1920, 1080]);
    }
  });

  test('replaces an earlier package, never another folder', async () => {
    const out = join(place, 'small');
    const own = { ...(await solve(small)), text: small, sentences: [], analogies: [], comparison: null };
    const first = await packStudy(own, out);
    const again = await packStudy(own, out);
    expect(again.files).toEqual(first.files);
    await writeFile(join(out, 'my-notes.txt'), 'mine');
    await expect(packStudy(own, out)).rejects.toThrow(/my-notes\.txt/);
    expect((await file('my-notes.txt', out)).toString()).toBe('mine');
  });

  test('stopped while it draws, it writes nothing and leaves nothing behind', async () => {
    const stop = new AbortController();
    const stopped = packStudy(
      {
        study,
        text,
        solved,
        sentences,
        analogies: [],
        comparison: null,
        signal: stop.signal,
        onFigure: (_, which) => {
          if (which === 2) stop.abort(new Error('enough'));
        },
      },
      join(place, 'stopped'),
    );
    await expect(stopped).rejects.toThrow('enough');
    expect((await readdir(place)).filter((name) => name.includes('stopped'))).toEqual([]);
  });

  test('hostile words of a study are words in every file', async () => {
    const evil = `</title><script>alert(1)</script><img src=x onerror=alert(2)>\\u202e"'&`;
    const hostile = small
      .replace(/^question:.*$/m, `question: "${evil.replaceAll('"', '\\"')}"`)
      .replace('name: Cold', `name: "=cmd|' /C calc'!A0 <b onload=alert(3)>"`);
    expect(hostile).toContain('onload');
    const other = await solve(hostile);
    const bad = await packStudy(
      { ...other, text: hostile, sentences: [], analogies: [], comparison: null },
      join(place, 'hostile'),
    );
    for (const name of bad.files.filter((name) => /\.(html|svg)$/.test(name))) {
      const content = (await file(name, bad.folder)).toString();
      // The explorable page has two scripts of its own, and no other.
      const own = name === 'explore.html' ? /<script(?: type="application\/json" id="data")?>/g : /$^/g;
      expect(content.match(own)?.length ?? 0, name).toBe(name === 'explore.html' ? 2 : 0);
      expect(content.replace(own, ''), name).not.toMatch(/<script|<img|<b onload/i);
      expect(content, name).not.toContain('\u202e');
    }
    for (const name of bad.files.filter((name) => name.endsWith('16x9.svg'))) {
      const svg = (await file(name, bad.folder)).toString();
      expect(() => new Resvg(svg, { font: { loadSystemFonts: false } })).not.toThrow();
    }
    const csv = (await file('numbers.csv', bad.folder)).toString();
    expect(csv).not.toMatch(/(^|,)=cmd/m);
  });
});
