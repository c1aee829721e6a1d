/** The threads are those of the build, as a user runs them. */

import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { localCrew } from '../../../src/answer/asked/localCrew.ts';
import type { Ask } from '../../../src/answer/asked/model.ts';
import type { ThreadCrew } from '../../../src/faces/crew/threadCrew.ts';
import { shelf, studyOf } from '../../answer/solveText.ts';

const built = fileURLToPath(new URL('../../../dist/faces/crew/threadCrew.js', import.meta.url));

const study = await studyOf(`
a:
  propellants: { oxidiser: oxygen, fuel: hydrogen, ratio: 6 }
  chamber: { pressure: 100 bar }
  size: { throat: 200 mm }
  nozzle: { kind: cone, areaRatio: 10 }
b:
  like: a
  nozzle: { kind: cone, areaRatio: 20 }
`);
const asks: readonly Ask[] = ['a', 'b'].map((engine) => ({
  engine,
  quantity: 'specificImpulse',
  ambient: { kind: 'vacuum' },
  throttle: null,
  station: null,
  inputs: [],
}));
const points = [5, 5.5, 6, 6.5].map((ratio) => ({ 'engines.a.propellants.ratio': ratio }));

// `npm test` builds first; a single run of this file on unbuilt sources has no threads to test.
describe.skipIf(!existsSync(built))('a crew of threads', () => {
  let crew: ThreadCrew;
  beforeAll(async () => {
    const { threadCrew } = (await import(built)) as typeof import('../../../src/faces/crew/threadCrew.ts');
    crew = await threadCrew(study, 2);
  });
  afterAll(() => crew.dismiss());

  // Equilibria start from those found before, so the order of the work shows in the last digits: 1e-10 of a number and no more.
  it('tells what one thread tells', async () => {
    expect(crew.size).toBe(2);
    const values = (told: Awaited<ReturnType<ThreadCrew['tell']>>): readonly number[] =>
      told.flat().map((one) => (one.ok ? one.value : Number.NaN));
    const many = values(await crew.tell(asks, points));
    const alone = values(await (await localCrew(study, shelf)).tell(asks, points));
    expect(many).toHaveLength(8);
    many.forEach((value, i) => {
      expect(Math.abs(value / alone[i]! - 1)).toBeLessThan(1e-10);
    });
  });

  it('stops when told and goes on with the next question', async () => {
    const stop = new AbortController();
    const work = crew.tell(asks, points, { signal: stop.signal });
    stop.abort(new Error('no longer wanted'));
    await expect(work).rejects.toThrow('no longer wanted');
    await expect(crew.tell(asks, points.slice(0, 1))).resolves.toHaveLength(1);
  });

  it('hands on what is wrong with a point', async () => {
    await expect(crew.tell(asks, [{ 'engines.a.nothing': 1 }])).rejects.toMatchObject({
      problem: { code: 'input-not-stated' },
    });
  });
});
