import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { localCrew } from '../../../src/answer/asked/localCrew.ts';
import { quantity } from '../../../src/answer/catalogue.ts';
import { compileExpression, scopeOf } from '../../../src/answer/expression/index.ts';
import { solveStudy } from '../../../src/answer/solve.ts';
import { openDataShelf } from '../../../src/faces/disk/data.ts';
import { knownNames } from '../../../src/study/names.ts';
import { readStudy } from '../../../src/study/read.ts';
import { sceneToSvg } from '../../../src/telling/index.ts';
import { questions } from './entries/index.ts';
import { type Answered, questionsPage } from './page.ts';
import { type Drawable, pictureOf } from './pictures.ts';

const root = fileURLToPath(new URL('../../../', import.meta.url));
/** `npm run docs` writes the page and its pictures; else they are compared. */
const write = process.env.PLUMELINE_WRITE_DOCS === '1';
const shelf = openDataShelf();
const known = knownNames(await shelf.propellants());

const solved = new Map<string, Promise<Drawable>>();
function drawable(starter: string): Promise<Drawable> {
  const found = solved.get(starter) ?? solve(starter);
  solved.set(starter, found);
  return found;
}
async function solve(starter: string): Promise<Drawable> {
  const text = readFileSync(`${root}starters/${starter}/study.yaml`, 'utf8');
  const read = readStudy(text, { file: 'study.yaml', ...known });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const { study } = read;
  return { study, crew: await localCrew(study, shelf), answer: await solveStudy(study, shelf) };
}

const answered: Answered[] = [];

it.each(questions)('$slug: each number lies in its band, and the picture is up to date', async (question) => {
  const bench = await drawable(question.starter);
  const values: number[] = [];
  const models = new Set<string>();
  for (const { expression, perSI, band } of question.numbers) {
    const compiled = compileExpression(expression, scopeOf(bench.study));
    if (!compiled.ok) throw new Error(`${expression}: ${compiled.problem.what}`);
    const { asks, evaluate } = compiled.value;
    for (const { quantity: name } of asks) models.add(quantity(name).model);
    const [told = []] = await bench.crew.tell(asks, [{}]);
    const value = evaluate(told.map((one) => (one.ok ? one.value : null)));
    expect(value, expression).not.toBeNull();
    expect(value! * perSI, expression).toBeGreaterThanOrEqual(band.least);
    expect(value! * perSI, expression).toBeLessThanOrEqual(band.greatest);
    values.push(value!);
  }
  const scene = await pictureOf(question.figure, bench);
  sameAsFile(`docs/pictures/questions/${question.slug}.svg`, sceneToSvg(scene, { steadyWidths: true }));
  answered.push({ question, values, models: methodPages(models), title: scene.title });
});

it('the page is the one that these answers make', () => {
  expect(answered).toHaveLength(questions.length);
  sameAsFile('docs/questions.md', questionsPage(answered));
});

/** What only the study says has no page of methods. */
function methodPages(models: ReadonlySet<string>): readonly string[] {
  return [...models].filter((model) => model !== 'study-file').sort();
}

function sameAsFile(path: string, text: string): void {
  if (write) {
    mkdirSync(`${root}docs/pictures/questions`, { recursive: true });
    writeFileSync(root + path, text);
  }
  expect(sameButForRounding(readFileSync(root + path, 'utf8'), text), `${path}: run npm run docs`).toBe(true);
}

const NUMBER = /-?\d+(?:\.\d+)?/g;

/** Another processor rounds the last digit of a coordinate another way: by a twentieth of a pixel, or a thousandth. */
function sameButForRounding(one: string, other: string): boolean {
  if (one.replace(NUMBER, '#') !== other.replace(NUMBER, '#')) return false;
  const [left, right] = [one, other].map((text) =>
    [...text.matchAll(NUMBER)].map(([digits]) => Number(digits)),
  );
  return left!.every((x, i) => Math.abs(x - right![i]!) <= 0.05 + 1e-3 * Math.abs(x));
}

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
