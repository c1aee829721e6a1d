/** Flows through time on disk: what is kept is not computed again. */

import { mkdtemp, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { FlowField, TimedChoices } from '../../../src/answer/flow/index.ts';
import type { EngineSolution } from '../../../src/answer/solution.ts';
import { keptMoments } from '../../../src/faces/disk/keptMoments.ts';

/** Stands for a flow of seconds; how many moments were computed. */
let computed = 0;
let breaksAt = -1;
vi.mock('../../../src/answer/flow/timedFlow.ts', () => ({
  *timedFields(_solution: unknown, _place: unknown, { frames }: TimedChoices) {
    for (let moment = 0; moment <= frames; moment++) {
      computed += 1;
      const ended =
        moment === breaksAt ? { ended: { code: 'field-broke', what: 'Broke.', mend: 'None.' } } : {};
      yield {
        name: `moment ${moment}`,
        cells: Float32Array.of(moment),
        moment: ended,
      } as unknown as FlowField;
      if (moment === breaksAt) return;
    }
  },
}));

let folder: string;
beforeEach(async () => {
  computed = 0;
  breaksAt = -1;
  folder = await mkdtemp(join(tmpdir(), 'plumeline-moments-'));
});
afterEach(() => rm(folder, { recursive: true }));

const solution = { input: { id: 'cold' }, contour: { wall: [] }, expansion: { chamber: {} } };
const choices: TimedChoices = {
  event: { is: 'throttle', to: 0.6 },
  ramp: 1e-3,
  until: 4e-3,
  frames: 2,
  fineness: 'coarse',
  bits: 32,
};

async function all(over: Partial<TimedChoices> = {}, options: { readonly fresh?: boolean } = {}) {
  const found: FlowField[] = [];
  const place = { altitude: 0, ambientPressure: 101_325 };
  const asked = { ...choices, ...over };
  for await (const field of keptMoments(solution as unknown as EngineSolution, place, asked, {
    folder,
    ...options,
  }))
    found.push(field);
  return found;
}

test('the second time nothing is computed; another event, or what is asked afresh, is', async () => {
  const first = await all();
  expect(computed).toBe(3);
  expect(await all()).toEqual(first);
  expect(computed).toBe(3);
  await all({}, { fresh: true });
  expect(computed).toBe(6);
  await all({ event: { is: 'throttle', to: 0.5 } });
  expect(computed).toBe(9);
  await all({ frames: 1 });
  expect(computed).toBe(11);
});

test('where a moment is missing all are computed anew', async () => {
  await all();
  const [one] = await readdir(folder);
  await rm(join(folder, one!));
  expect(await all()).toHaveLength(3);
  expect(computed).toBe(6);
});

test('one that broke on its way is kept as it is, with why it ended', async () => {
  breaksAt = 1;
  const first = await all();
  expect(first).toHaveLength(2);
  expect(first.at(-1)!.moment!.ended!.what).toBe('Broke.');
  expect(await all()).toEqual(first);
  expect(computed).toBe(2);
});
