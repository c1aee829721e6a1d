import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { localCrew } from '../../../src/answer/asked/localCrew.ts';
import { compileExpression, scopeOf } from '../../../src/answer/expression/index.ts';
import { openDataShelf } from '../../../src/faces/disk/data.ts';
import { knownNames } from '../../../src/study/names.ts';
import { readStudy } from '../../../src/study/read.ts';
import { questions } from './entries/index.ts';

const starters = fileURLToPath(new URL('../../../starters/', import.meta.url));
const shelf = openDataShelf();
const known = knownNames(await shelf.propellants());

async function benchOf(starter: string) {
  const read = readStudy(readFileSync(`${starters}${starter}/study.yaml`, 'utf8'), {
    file: 'study.yaml',
    ...known,
  });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return { crew: await localCrew(read.study, shelf), scope: scopeOf(read.study) };
}

it.each(questions)(
  '$slug: each number lies in its band found by other means',
  async ({ starter, numbers }) => {
    const { crew, scope } = await benchOf(starter);
    for (const { expression, perSI, band } of numbers) {
      const compiled = compileExpression(expression, scope);
      if (!compiled.ok) throw new Error(`${expression}: ${compiled.problem.what}`);
      const { asks, evaluate } = compiled.value;
      const [told = []] = await crew.tell(asks, [{}]);
      const value = evaluate(told.map((one) => (one.ok ? one.value : null)));
      expect(value, expression).not.toBeNull();
      expect(value! * perSI, expression).toBeGreaterThanOrEqual(band.least);
      expect(value! * perSI, expression).toBeLessThanOrEqual(band.greatest);
    }
  },
);

it('the bands are finite and have a way to fail', () => {
  for (const { slug, numbers } of questions) {
    for (const { band, how } of numbers) {
      expect(Number.isFinite(band.least) && Number.isFinite(band.greatest), slug).toBe(true);
      expect(band.greatest, slug).toBeGreaterThan(band.least);
      expect(how.length, slug).toBeGreaterThan(20);
    }
  }
});

it('no two questions have one name', () => {
  expect(new Set(questions.map(({ slug }) => slug)).size).toBe(questions.length);
});
