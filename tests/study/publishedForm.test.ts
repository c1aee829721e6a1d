import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { openDataShelf } from '../../src/faces/disk/data.ts';
import { DEFAULT_CONTRACTION_RATIO } from '../../src/physics/nozzle/index.ts';
import { chamberFields } from '../../src/study/form.ts';
import { studyJsonSchema } from '../../src/study/jsonSchema.ts';
import { readStudy } from '../../src/study/read.ts';
import { studyFilePage } from '../../src/study/referencePage.ts';
import { describeStudyProblem } from '../../src/study/report.ts';
import { parseQuantity } from '../../src/study/units.ts';
import { goodStudy } from './badStudies.ts';

const file = (path: string): string => readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8');

describe('the published form of a study', () => {
  test('JSON Schema in docs/ is the one that the reader’s table gives', () => {
    expect(JSON.parse(file('docs/study.schema.json'))).toEqual(studyJsonSchema());
  });

  test('reference page in docs/ is the one that table and propellants give', async () => {
    expect(file('docs/study-file.md')).toBe(studyFilePage(await openDataShelf().propellants()));
  });

  test('studies and messages printed in the reference page are what the reader takes and says', () => {
    const page = file('docs/study-file.md');
    const studies = [...page.matchAll(/```yaml\n([\s\S]*?)```/g)].map((match) => match[1]!);
    expect(studies.length).toBeGreaterThan(0);
    for (const text of studies) expect(readStudy(text).ok).toBe(true);
    const told = readStudy(goodStudy.replace('100 bar', '100 barr'));
    expect(page).toContain(told.ok ? 'no problem' : describeStudyProblem(told.problems[0]!));
    const quantities = [...page.matchAll(/`((?:\d[^`]*(?:±|\+\/-)[^`]*))`/g)].map((match) => match[1]!);
    expect(quantities.length).toBeGreaterThan(4);
    for (const text of quantities) {
      expect(parseQuantity(text, 'share', 'number', 'pressure', 'temperature', 'force').ok, text).toBe(true);
    }
  });

  test('the contraction ratio taken where none is stated is one and the same everywhere', () => {
    expect(Number(chamberFields.contractionRatio.byDefault)).toBe(DEFAULT_CONTRACTION_RATIO);
    for (const page of ['docs/methods/nozzle-contour.md', 'docs/methods/delivered.md']) {
      const text = file(page).replace(/\s+/g, ' ');
      expect(text).toMatch(new RegExp(`contraction ratio (of )?${DEFAULT_CONTRACTION_RATIO}\\b`));
      expect(text).toContain('8 d^−0.6 + 1.25');
    }
  });

  // ajv is an independent reader of JSON Schema.
  const check = new Ajv2020({ strict: true, strictTypes: false }).compile(studyJsonSchema());

  test.each(['examples/alder-booster/study.yaml', 'starters/blank/study.yaml'])('accepts %s', (path) => {
    expect(check(parse(file(path))), JSON.stringify(check.errors)).toBe(true);
  });

  test('accepts a good study and refuses what the reader refuses by form', () => {
    expect(check(parse(goodStudy)), JSON.stringify(check.errors)).toBe(true);
    for (const wrong of [
      goodStudy.replace('areaRatio: 25', 'areaRation: 25'),
      goodStudy.replace('kind: bell', 'kind: belle'),
      goodStudy.replace('losses: default', 'losses: some'),
      goodStudy.replace('question: Which one lifts more?', ''),
    ]) {
      expect(check(parse(wrong))).toBe(false);
    }
  });
});
