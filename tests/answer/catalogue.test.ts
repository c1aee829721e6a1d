import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { catalogue, findQuantity, quantityNameAt } from '../../src/answer/catalogue.ts';
import { quantitiesPage } from '../../src/answer/quantitiesPage.ts';
import { solveText } from './solveText.ts';

const docs = (path: string): string => fileURLToPath(new URL(`../../docs/${path}`, import.meta.url));

const twoEngines = `
bell: { name: Bell, propellants: { oxidiser: oxygen, fuel: methane, ratio: 3.5 }, chamber: { pressure: 100 bar }, size: { throat: 200 mm }, nozzle: { kind: bell, areaRatio: 15 } }
wide: { name: Wide, like: bell, nozzle: { kind: bell, areaRatio: 60 } }`;

/** Every number of a value with its path, arrays as `[i]`. */
function numbersIn(value: unknown, path: string): readonly (readonly [string, number])[] {
  if (typeof value === 'number') return [[path, value]];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) =>
    numbersIn(inner, Array.isArray(value) ? `${path}[${key}]` : path === '' ? key : `${path}.${key}`),
  );
}

describe('the catalogue of quantities', () => {
  test('how good a computed flow is, is said as on its page', () => {
    const page = readFileSync(docs('methods/flow-field.md'), 'utf8');
    const { typicalError } = catalogue.find(({ name }) => name === 'wholeFlow.thrustCoefficient')!;
    const shares = typicalError.match(/[\d.]+ %|[\d.]+ to [\d.]+ %/g) ?? [];
    expect(shares).toEqual(['0.2 %', '0.2 to 0.3 %', '0.2 %', '0.5 %', '1.1 %', '0.7 %', '4.7 %']);
    for (const [share, row] of [
      ['0.2 %', 'bell of area ratio 15 in air of 0.6'],
      ['0.2 to 0.3 %', 'plugs, annular and linear'],
      ['0.2 %', 'expansion–deflection nozzles'],
      ['0.5 %', 'five such with the wake open'],
      ['0.7 %', 'the same | mass flow by a straight sonic line | 1.1'],
      ['4.7 %', 'sonic orifice'],
    ] as const)
      expect(page.split('\n').find((line) => line.startsWith(`| ${row}`))).toContain(share);
  });

  test('knows every number of a solved answer', async () => {
    const { answer } = await solveText(twoEngines, 'ambients: [0.2 bar]');
    const numbers = numbersIn(answer, '');
    expect(numbers.length).toBeGreaterThan(1000);
    const unknown = numbers
      .map(([path]) => path)
      .filter((path) => {
        const row = /^comparison\.quantities\[(\d+)\]/.exec(path);
        const compared = row ? answer.comparison?.quantities[Number(row[1])]?.quantity : undefined;
        const name = quantityNameAt(path, compared);
        return name === undefined || findQuantity(name) === undefined;
      });
    expect(unknown).toEqual([]);
  });

  test('has no two quantities of one name', () => {
    expect(new Set(catalogue.map(({ name }) => name)).size).toBe(catalogue.length);
  });

  test('tells of every quantity what it is, its equation, source and limits', () => {
    for (const entry of catalogue) {
      for (const text of [entry.label, entry.meaning, entry.equation, entry.source, entry.limits]) {
        expect(text.length, entry.name).toBeGreaterThan(0);
      }
      expect(entry.meaning, entry.name).toMatch(/\.$/);
      expect(entry.unit.perSI, entry.name).toBeGreaterThan(0);
    }
  });

  test.each([
    ['engines.bell.altitudes[3].thrust', 'thrust'],
    ['engines.bell.ambients[0].flow.lipPressure', 'flow.lipPressure'],
    ['engines.bell.vacuum.thrust', 'vacuum.thrust'],
    ['engines.bell.chamber.composition.H2O', 'chamber.composition'],
    ['engines.bell.contour.wall[4].angle', 'contour.wall.angle'],
    ['engines.bell.bands.vacuum.thrust.low', 'vacuum.thrust'],
    ['comparison.crossings[0]', 'comparison.crossing'],
  ])('%s is %s', (path, name) => {
    expect(quantityNameAt(path)).toBe(name);
  });

  test('names pages that are there', () => {
    const pages = [...new Set(catalogue.map(({ model }) => model))].map((model) =>
      model === 'study-file' ? 'study-file.md' : `methods/${model}.md`,
    );
    expect(pages.filter((page) => !existsSync(docs(page)))).toEqual([]);
  });

  test('models named by an answer have their pages', async () => {
    const { answer } = await solveText(twoEngines);
    const models = Object.values(answer.engines).flatMap((engine) => engine.models);
    expect(models.filter((model) => !existsSync(docs(`methods/${model}.md`)))).toEqual([]);
  });

  // After a change of the catalogue: npx vitest run tests/answer/catalogue.test.ts -u
  test('is what docs/quantities.md says', async () => {
    await expect(quantitiesPage()).toMatchFileSnapshot(docs('quantities.md'));
  });
});
