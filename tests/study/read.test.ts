import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { knownNames } from '../../src/study/names.ts';
import { readStudy } from '../../src/study/read.ts';

const propellants = JSON.parse(readFileSync('data/propellants.json', 'utf8')).propellants;

test('the example is read', () => {
  const text = readFileSync('examples/alder-booster/study.yaml', 'utf8');
  const outcome = readStudy(text, knownNames(propellants));
  console.log(JSON.stringify(outcome, null, 1));
  expect(outcome.ok).toBe(true);
});
