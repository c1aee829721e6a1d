import { expect, test } from 'vitest';
import { type SourcesOf, usedSources } from '../../../src/answer/cited/index.ts';

test('a source that the study calls as the program calls another work has a key of its own, and says what it is in the study', () => {
  const source = { id: 'Air-1976', title: 'A poem', author: null, year: null, where: null };
  const study = { sources: [source], facts: [], engines: [], sweeps: [], maps: [], needs: [] };
  const of = {
    study,
    answer: { engines: {}, vehicles: [] },
    solutions: new Map(),
    sentences: [],
    analogies: [],
    rows: [],
  } as unknown as SourcesOf;
  const used = usedSources(of);
  // The air is part of every answer.
  expect(used.map(({ id }) => id)).toEqual(['air-1976', 'Air-1976-of-study']);
  expect(used[1]!.cited).toBe(source);
  expect(used[1]!.usedFor).toContain('in the study as [Air-1976]');
});
