import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { catalogue } from '../../../src/answer/catalogue.ts';
import { BIBLIOGRAPHY, citesNothing, worksNamedIn } from '../../../src/answer/cited/index.ts';
import { WORKS_OF_MODELS } from '../../../src/answer/cited/worksOfModels.ts';
import { CRITERIA } from '../../../src/physics/nozzle/separation/criteria.ts';

const root = new URL('../../../', import.meta.url);
const read = (path: string): string => readFileSync(new URL(path, root), 'utf8');
const json = (path: string): unknown => JSON.parse(read(path));

/** Every text under a key that names a source, in any file of data. */
function sourcesIn(value: unknown): readonly string[] {
  if (Array.isArray(value)) return value.flatMap(sourcesIn);
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, item]) =>
    typeof item === 'string' && /^(source|enthalpySource|densitySource|publication)$/.test(key)
      ? [item]
      : sourcesIn(item),
  );
}

const data = [
  ...['propellants', 'walls', 'transport', 'species/index', 'coolants/index', 'coolants/methane'].flatMap(
    (name) => sourcesIn(json(`data/${name}.json`)),
  ),
];

/** A year that a text gives, found in the works it is taken to name. */
function yearsMissed(text: string): readonly number[] {
  const works = worksNamedIn(text);
  const years = [...text.matchAll(/\b(?:19|20)\d\d\b/g)].map(([year]) => Number(year));
  return years.filter(
    (year) =>
      !works.some(
        ({ year: own, title, number, pages }) =>
          own === year || [title, number, pages].some((part) => part?.includes(String(year)) === true),
      ),
  );
}

describe('the bibliography', () => {
  test('has every source that the catalogue names: the work itself, or a word that none is needed', () => {
    const sources = [...new Set(catalogue.map(({ source }) => source))];
    expect(sources.length).toBeGreaterThan(30);
    expect(sources.filter((text) => worksNamedIn(text).length === 0 && !citesNothing(text))).toEqual([]);
    // Page numbers that look like years are pages of the work.
    const missed = sources.filter((text) => yearsMissed(text).length > 0 && !/, 1834/.test(text));
    expect(missed).toEqual([]);
  });

  test('has the works named in typical errors and by the criteria of separation', () => {
    const texts = [
      ...catalogue.map(({ typicalError }) => typicalError),
      ...CRITERIA.map(({ source }) => source),
    ];
    expect(texts.filter((text) => yearsMissed(text).length > 0)).toEqual([]);
  });

  test('has the source of every row of data', () => {
    expect(data.length).toBeGreaterThan(100);
    const strangers = data.filter((text) => worksNamedIn(text).length === 0 && !citesNothing(text));
    expect([...new Set(strangers)]).toEqual([]);
  });

  test('names for each model what its page names', () => {
    const inUse = new Set(catalogue.map(({ model }) => model));
    for (const file of readdirSync(new URL('docs/methods/', root))) {
      const name = file.replace(/\.md$/, '');
      const named = worksNamedIn(read(`docs/methods/${file}`)).map(({ id }) => id);
      const listed = WORKS_OF_MODELS[name] ?? [];
      // A model that no quantity of the catalogue rests on yet need not be listed whole.
      if (inUse.has(name)) expect(listed, name).toEqual(named);
      else
        expect(
          listed.filter((id) => !named.includes(id)),
          name,
        ).toEqual([]);
    }
  });

  test('has each work once, named somewhere, with an author or a title', () => {
    const ids = BIBLIOGRAPHY.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    const said = new Set(
      [
        ...catalogue.flatMap(({ source, typicalError }) => [source, typicalError]),
        ...data,
        ...readdirSync(new URL('docs/methods/', root)).map((file) => read(`docs/methods/${file}`)),
      ]
        .flatMap(worksNamedIn)
        .map(({ id }) => id),
    );
    expect(ids.filter((id) => !said.has(id))).toEqual([]);
    for (const { id, authors, title, container, publisher, number } of BIBLIOGRAPHY) {
      expect(id).toMatch(/^[a-z0-9-]+$/);
      expect(authors.length > 0 || title !== null, id).toBe(true);
      expect(
        [title, container, publisher, number].some((part) => (part ?? null) !== null),
        id,
      ).toBe(true);
    }
  });
});
