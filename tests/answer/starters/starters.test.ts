import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { compileTest, scopeOf } from '../../../src/answer/expression/index.ts';
import { knownNames, readStudy } from '../../../src/study/index.ts';
import { shelf } from '../solveText.ts';

const folder = new URL('../../../starters/', import.meta.url);
const names = knownNames(await shelf.propellants());

describe.each(readdirSync(folder))('the starter %s', (name) => {
  const outcome = readStudy(readFileSync(new URL(`${name}/study.yaml`, folder), 'utf8'), {
    file: 'study.yaml',
    ...names,
  });

  it('is read without a problem or a warning', () => {
    expect(outcome.ok ? outcome.warnings : outcome.problems).toEqual([]);
  });

  it('has a test that compiles beside each of its sentences', () => {
    if (!outcome.ok) throw new Error('it was not read');
    const scope = scopeOf(outcome.study);
    for (const { id, holds } of outcome.study.sentences) {
      const compiled = holds === null ? null : compileTest(holds, scope);
      expect(compiled?.ok === true ? 'compiles' : compiled?.problem.what, id).toBe('compiles');
    }
  });
});
