/** The script in docs/script.md, and those that come with the program, are read without a problem. */

import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readStudy } from '../../../src/study/index.ts';
import { readScriptOf } from '../../../src/telling/script/index.ts';

const read = (path: string): string => readFileSync(new URL(`../../../${path}`, import.meta.url), 'utf8');

function studyOf(path: string) {
  const outcome = readStudy(read(path));
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  return outcome.study;
}

const inDocs = /```script\n([\s\S]*?)```/.exec(read('docs/script.md'))![1]!;

test.each([
  ['docs/script.md', inDocs, 'examples/alder-booster/study.yaml'],
  ['the example', read('examples/alder-booster/script.md'), 'examples/alder-booster/study.yaml'],
  ['the blank starter', read('starters/blank/script.md'), 'starters/blank/study.yaml'],
])('%s', (_, text, study) => {
  const { script, problems } = readScriptOf(text, studyOf(study));
  expect(problems.map(({ what }) => what)).toEqual([]);
  expect(script.scenes.length).toBeGreaterThan(0);
  expect(
    script.scenes.flatMap(({ lines }) => lines.filter(({ says }) => says !== undefined)).length,
  ).toBeGreaterThan(0);
});
