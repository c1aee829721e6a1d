import { expect, test } from 'vitest';
import { mapKey, ownSweeps, shownKey, TRIAL } from '../../../src/faces/workbench/state/ownSweeps.ts';
import type { Study } from '../../../src/study/model.ts';

const study = {
  sweeps: [{ id: 'length', title: null }],
  maps: [{ id: 'length', title: 'Length and ratio' }],
} as unknown as Pick<Study, 'sweeps' | 'maps'>;

test('what the study brings is shown before anything that could be tried out', () => {
  expect(shownKey(null, ownSweeps(study))).toBe('length');
  expect(shownKey(null, ownSweeps({ ...study, sweeps: [] }))).toBe(mapKey('length'));
  expect(shownKey(null, ownSweeps({ sweeps: [], maps: [] }))).toBeNull();
});

test('what somebody has chosen stays: a map, the one to try out, or one that is gone', () => {
  const own = ownSweeps(study);
  expect(shownKey(mapKey('length'), own)).toBe(mapKey('length'));
  expect(shownKey(TRIAL, own)).toBeNull();
  expect(shownKey('gone', own)).toBeNull();
});
