import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { compileTest } from '../../../src/answer/expression/index.ts';
import { alderScope } from './alderScope.ts';

const page = readFileSync(new URL('../../../docs/sentences.md', import.meta.url), 'utf8');

const linesOf = (kind: string): readonly string[] =>
  [...page.matchAll(new RegExp(`^\`\`\`${kind}\\n([^]*?)^\`\`\``, 'gm'))].flatMap(([, block]) =>
    block!.split('\n').filter((line) => line !== ''),
  );

describe('the examples of docs/sentences.md', () => {
  test('are many', () => {
    expect(linesOf('test').length).toBeGreaterThan(50);
    expect(linesOf('refused').length).toBeGreaterThanOrEqual(10);
  });
  test.each(linesOf('test'))('%s', (text) => {
    expect(compileTest(text, alderScope)).toMatchObject({ ok: true });
  });
  test.each(linesOf('refused'))('refused: %s', (text) => {
    expect(compileTest(text, alderScope)).toMatchObject({ ok: false, problem: { mend: expect.any(String) } });
  });
});
