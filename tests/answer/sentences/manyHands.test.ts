import { expect, test } from 'vitest';
import { crewOf, type Hand } from '../../../src/answer/asked/crewOf.ts';
import type { Told } from '../../../src/answer/asked/model.ts';
import { checkSentences } from '../../../src/answer/sentences/index.ts';
import { studyOf } from '../solveText.ts';
import { enginesWith, PRESSURE, RATIO } from '../spread/fakeCrew.ts';

const sentences = [
  'a.massFlow > 100 kg/s',
  'a.thrust(z) rises for z from pad to vacuum',
  'a.thrust(vacuum) is 1.33 times a.thrust(pad) within 2 %',
  'for some z from 0 km to 30 km, a.thrust(z) is a.massFlow * (3 km/s) within 1 %',
];

/** A smooth engine with a model of its own error; every answer comes after another while. */
function hand(pauses: number): Hand {
  let turn = 0;
  return {
    async work(asks, { [RATIO]: ratio = 3.5, [PRESSURE]: pressure = 1e7 }) {
      for (let pause = 0; pause < (turn++ * pauses) % 7; pause++) await Promise.resolve();
      return asks.map(({ quantity, ambient }): Told => {
        const air = ambient?.kind === 'altitude' ? Math.exp(-ambient.altitude / 7000) : 0;
        const flow = (100 * pressure) / 1e7 - 3 * (ratio - 3.4) ** 2;
        const value = quantity === 'massFlow' ? flow : 3200 * flow - 8e4 * air + 10 * Math.sin(ratio);
        const error = {
          name: 'friction on the wall',
          low: 0.99 * value,
          high: 1.02 * value,
          source: 'invented',
        };
        return { ok: true, value, scatter: [error], alternatives: [] };
      });
    },
  };
}

test('many hands come to the same sentences as one, to the last digit', async () => {
  const text = sentences.map((holds, i) => `  - { id: s${i}, say: It is so., holds: '${holds}' }`).join('\n');
  const study = await studyOf(
    enginesWith('3.5 ± 0.1', '90 bar to 110 bar', '100 bar'),
    `sentences:\n${text}`,
  );
  const checked = (hands: readonly Hand[]): ReturnType<typeof checkSentences> =>
    checkSentences(study, crewOf(hands));
  const alone = await checked([hand(0)]);
  expect(alone.map(({ problem }) => problem)).toEqual([null, null, null, null]);
  expect(new Set(alone.map(({ verdict }) => verdict)).size).toBeGreaterThan(1);
  expect(await checked([hand(3), hand(5)])).toEqual(alone);
  expect(await checked([hand(1), hand(2), hand(4)])).toEqual(alone);
});
