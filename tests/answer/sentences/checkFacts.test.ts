import { describe, expect, test } from 'vitest';
import { checkFacts, failsAsSaid } from '../../../src/answer/sentences/index.ts';
import type { Study } from '../../../src/study/model.ts';
import { studyOf } from '../solveText.ts';
import { enginesWith } from '../spread/fakeCrew.ts';

/** All invented. */
const facts = async (fact: string): Promise<Study> =>
  studyOf(
    enginesWith('3.5', '100 bar', '100 bar'),
    `facts:\n  - { id: run, say: It ran for 162 s., ${fact} }
sources: { book: { title: The Alder book, author: A. Alder, year: 1970 }, log: { title: The log } }`,
  );

describe('reported facts', () => {
  test('are told as reported, with the whole citation', async () => {
    const [found] = checkFacts(await facts('value: 162 s, at: on the stand, sources: [book]'));
    expect(found).toMatchObject({
      verdict: 'reported',
      share: null,
      problem: null,
      conditions: ['on the stand'],
    });
    expect(found!.sources).toEqual(['[book] A. Alder, (1970), The Alder book']);
    expect(failsAsSaid(found!)).toBe(false);
  });

  test('without a source fail', async () => {
    const [found] = checkFacts(await facts('value: 162 s'));
    expect(found!.problem?.code).toBe('citation-missing');
    expect(failsAsSaid(found!)).toBe(true);
  });

  const two = (chosen: number): string =>
    `value: 162 s, sources: [book], disagree: { values: [{ value: 162 s, source: book }, { value: 160 s, source: log }], chosen: ${chosen}, because: it was measured. }`;
  test('that sources disagree on give both values and the chosen one with its reason', async () => {
    const [found] = checkFacts(await facts(two(1)));
    expect(found!.problem).toBeNull();
    expect(found!.why).toContain('162 s (book), 160 s (log). 162 s is followed: it was measured.');
    expect(found!.sources).toHaveLength(2);
  });

  test('that say the other value than the chosen one fail', async () => {
    const [found] = checkFacts(await facts(two(2)));
    expect(found!.problem?.code).toBe('fact-not-chosen');
  });
});
