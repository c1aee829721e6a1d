import { expect, test } from 'vitest';
import { solveStudyLive } from '../../src/answer/solve.ts';
import { shelf, studyOf } from './solveText.ts';

const propellants =
  'propellants: { oxidiser: oxygen, fuel: methane, ratio: 3.5 }, chamber: { pressure: 100 bar }';
const text = (areaRatio: number): string =>
  `a: { ${propellants}, size: { throat: 200 mm }, nozzle: { kind: cone, areaRatio: ${areaRatio}, halfAngle: 15 deg } }
b: { like: a, size: { same: exit, as: a }, nozzle: { kind: ideal, areaRatio: 40 } }
c: { like: a, size: { throat: 100 mm }, nozzle: { kind: ideal, areaRatio: 10 } }
`;

test('a study solved on one before has the answer of a fresh one', async () => {
  const [first, second] = [await studyOf(text(20)), await studyOf(text(25))];
  const before = await solveStudyLive(first, shelf);
  const again = await solveStudyLive(second, shelf, { before: { study: first, ...before, vehicles: null } });
  const fresh = await solveStudyLive(second, shelf);
  expect(again.answer).toEqual(fresh.answer);
  // The engine that has not moved is the same object; one that takes its size from a moved one is not.
  expect(again.solutions.get('c')).toBe(before.solutions.get('c'));
  expect(again.answer.engines.c).toBe(before.answer.engines.c);
  expect(again.solutions.get('b')).not.toBe(before.solutions.get('b'));
});

test('a pause that throws ends the work', async () => {
  let pauses = 0;
  const study = await studyOf(text(20));
  const solving = solveStudyLive(study, shelf, {
    pause: () => {
      pauses += 1;
      return pauses < 3 ? Promise.resolve() : Promise.reject(new Error('overtaken'));
    },
  });
  await expect(solving).rejects.toThrow('overtaken');
  expect(pauses).toBe(3);
});
