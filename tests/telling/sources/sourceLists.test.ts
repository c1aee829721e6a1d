import { describe, expect, test } from 'vitest';
import { BIBLIOGRAPHY, type UsedSource } from '../../../src/answer/cited/index.ts';
import { bibtex, escaped } from '../../../src/telling/sources/bibtex.ts';
import { cslJson } from '../../../src/telling/sources/cslJson.ts';
import { readableSources, referenceLine } from '../../../src/telling/sources/readable.ts';
import { programReference, referenceOf } from '../../../src/telling/sources/reference.ts';
import { readBibtex } from './readBibtex.ts';

const hostile = `}{\\end{document} @book{x, title={</script><script>alert(1)</script>\u202e\u0007 100 % $x_1^2$ # & ~`;

const cited = (id: string, rest: Partial<NonNullable<UsedSource['cited']>>): UsedSource => ({
  id,
  work: null,
  cited: { id, title: 'A Test Report', author: null, year: null, where: null, ...rest },
  words: null,
  usedFor: ['fact first'],
});

const used: readonly UsedSource[] = [
  ...BIBLIOGRAPHY.map(
    (work): UsedSource => ({
      id: work.id,
      work,
      cited: null,
      words: null,
      usedFor: ['thrust'],
    }),
  ),
  cited('report', {
    author: 'A. B. Wright, C. von Linden and D. Ng',
    year: 1971,
    where: 'doi 10.1234/ab.cd(5).',
  }),
  cited('page', { where: 'https://example.org/engine?x=1&y=2, read in spring' }),
  cited('evil', { title: hostile, author: hostile, where: hostile }),
  { id: 'published-1', work: null, cited: null, words: 'leaflet of the maker', usedFor: [] },
];
const references = [...used.map(referenceOf), programReference('1.2.3', 'A caution.')];

/** Types and fields of the schema csl-data.json, version 1.0.2, of the Citation Style Language project. */
const TYPES =
  'article article-journal article-magazine article-newspaper bill book broadcast chapter classic collection dataset document entry entry-dictionary entry-encyclopedia figure graphic hearing interview legal_case legislation manuscript map motion_picture musical_score pamphlet paper-conference patent performance periodical personal_communication post post-weblog regulation report review review-book software song speech standard thesis treaty webpage'.split(
    ' ',
  );
const TEXTS = 'title container-title volume issue page publisher number edition DOI URL note'.split(' ');

describe('CSL-JSON', () => {
  const items = JSON.parse(cslJson(references)) as Record<string, unknown>[];

  test('keeps the rules of the published schema', () => {
    expect(items.length).toBe(references.length);
    for (const { id, type, author, issued, ...rest } of items) {
      expect(typeof id).toBe('string');
      expect(TYPES).toContain(type);
      for (const name of (author ?? []) as Record<string, unknown>[]) {
        const keys = Object.keys(name).sort().join(' ');
        expect(['family given', 'literal']).toContain(keys);
        for (const part of Object.values(name)) expect(typeof part).toBe('string');
      }
      if (issued !== undefined) {
        expect(Object.keys(issued as object)).toEqual(['date-parts']);
        const [[year]] = (issued as { 'date-parts': number[][] })['date-parts'] as [[number]];
        expect(Number.isInteger(year)).toBe(true);
      }
      for (const [key, value] of Object.entries(rest)) {
        expect(TEXTS).toContain(key);
        expect(typeof value).toBe('string');
      }
    }
    expect(new Set(items.map(({ id }) => id)).size).toBe(items.length);
  });

  test('takes names, years and addresses of the study apart, and nothing that it cannot', () => {
    const report = items.find(({ id }) => id === 'report')!;
    expect(report['author']).toEqual([
      { family: 'Wright', given: 'A. B.' },
      { family: 'von Linden', given: 'C.' },
      { family: 'Ng', given: 'D.' },
    ]);
    expect(report['DOI']).toBe('10.1234/ab.cd(5)');
    expect(report['issued']).toEqual({ 'date-parts': [[1971]] });
    const page = items.find(({ id }) => id === 'page')!;
    expect(page['type']).toBe('webpage');
    expect(page['URL']).toBe('https://example.org/engine?x=1&y=2');
    expect(items.find(({ id }) => id === 'published-1')!['title']).toBe('leaflet of the maker');
  });

  test('names with initials first become family and given names', () => {
    const named = referenceOf(cited('two', { author: 'R. H. Schmucker, G. V. R. Rao' }));
    expect(named.authors).toEqual([
      { family: 'Schmucker', given: 'R. H.' },
      { family: 'Rao', given: 'G. V. R.' },
    ]);
    expect(referenceOf(cited('body', { author: 'NOAA, NASA, USAF' })).authors).toEqual([
      { literal: 'NOAA, NASA, USAF' },
    ]);
  });
});

describe('BibTeX', () => {
  const text = bibtex(references, ['Sources: a @question', 'A caution.']);
  const entries = readBibtex(text);

  test('is read back by an independent reader, entry by entry', () => {
    expect(entries.length).toBe(references.length);
    expect(new Set(entries.map(({ key }) => key)).size).toBe(entries.length);
    const gordon = entries.find(({ key }) => key === 'gordon-1994')!;
    expect(gordon.type).toBe('techreport');
    expect(gordon.fields).toMatchObject({
      author: 'Gordon, S. and McBride, B. J.',
      year: '1994',
      institution: 'NASA',
      number: 'NASA RP-1311',
    });
    references.forEach(({ title }, i) => {
      if (title !== null) expect(entries[i]!.fields['title']).toBe(`{${escaped(title)}}`);
    });
  });

  test('addresses stand as they are: styles set them letter by letter', () => {
    const page = entries.find(({ key }) => key === 'page')!;
    expect(page.fields['url']).toBe('https://example.org/engine?x=1&y=2');
  });

  test('hostile words open no entry, close no brace and run no command', () => {
    const evil = entries.find(({ key }) => key === 'evil')!;
    const title = evil.fields['title']!;
    // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
    expect(title).not.toMatch(/\\end|\u202e|\u0007|(?<!\\)[%$#&_]/);
    expect(title).toContain('\\textbackslash');
  });
});

describe('the readable list', () => {
  test('tells each source with what it is used for', () => {
    const text = readableSources(references, ['Sources', 'A caution.']);
    expect(text).toContain('[angelino-1964]');
    expect(referenceLine(references.find(({ id }) => id === 'angelino-1964')!)).toBe(
      'Angelino, G.: Approximate Method for Plug Nozzle Design. AIAA Journal 2(10), 1964, 1834–1835. doi:10.2514/3.2682.',
    );
    expect(text).toContain('Used for: thrust.');
    // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
    expect(text).not.toMatch(/[\u202e\u0007]/);
  });
});
