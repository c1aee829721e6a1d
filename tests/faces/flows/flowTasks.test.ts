/** What is computed first, and how much of it. */

import { expect, test } from 'vitest';
import { CLIMB } from '../../../src/answer/flow/index.ts';
import { flowTasks, type Looked, nextTask, placeAt, progressOf } from '../../../src/faces/flows/flowTasks.ts';

function order(looked: Looked): readonly string[] {
  const tasks = flowTasks(['bell']);
  const done: string[] = [];
  for (let task = nextTask(tasks, looked); task !== null; task = nextTask(tasks, looked)) {
    done.push(`${task.place} ${task.level}`);
    task.level += 1;
  }
  expect(progressOf(tasks, looked)).toEqual({ done: done.length, of: done.length });
  return done;
}

test('the whole climb: coarse from the pad up, the place that is looked at made fine as soon as it is there', () => {
  const all = order({ altitude: 4_100 });
  expect(all).toHaveLength(2 * CLIMB.length);
  expect(all.slice(0, 5)).toEqual(['0 0', '1 0', '2 0', '2 1', '3 0']);
  // Then fine from there outwards.
  expect(all.slice(CLIMB.length + 1, CLIMB.length + 5).sort()).toEqual(['0 1', '1 1', '3 1', '4 1']);
});

test('one place alone: it, and the coarse fields that it begins from', () => {
  expect(order({ altitude: 0, only: 'here' })).toEqual(['0 0', '0 1']);
  expect(order({ altitude: 4_100, only: 'here' })).toEqual(['0 0', '1 0', '2 0', '2 1']);
  expect(order({ altitude: null, only: 'here' })).toHaveLength(CLIMB.length + 1);
});

test('the nearest place in the air’s pressure', () => {
  expect([0, 900, 1_100, 41_000].map(placeAt)).toEqual([0, 0, 1, CLIMB.length - 2]);
  expect(placeAt(null)).toBe(CLIMB.length - 1);
});
