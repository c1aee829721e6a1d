import { expect, test } from 'vitest';
import { bandOf, bandOfAsk } from '../../../src/answer/sentences/bandOf.ts';
import { drawnAsks } from '../../../src/answer/sentences/drawnAsks.ts';
import { drawAsks } from '../../../src/answer/spread/index.ts';
import { studyOf } from '../solveText.ts';
import { askOf, enginesWith, fakeCrew } from '../spread/fakeCrew.ts';
import { withAlternatives, z } from './closedForms.ts';

test('the band of one ask is that of its value in every draw that has one, by every model', async () => {
  const study = await studyOf(enginesWith('3.5 ± 0.1', '100 bar', '100 bar'));
  const problem = { code: 'none', what: 'No flow.', mend: 'Raise it.' };
  const crew = fakeCrew((ask, point) => {
    if (ask.engine === 'a')
      return withAlternatives(100 + z(point), { Stark: 90 - z(point), Schmucker: 100 + z(point) });
    return z(point) > 1 ? { ok: false, problem } : 50 + z(point);
  });
  const asks = [askOf('a'), askOf('b')];
  const drawn = drawnAsks(await drawAsks(study, asks, crew), study);
  const choices = [undefined, ...drawn.alternatives];
  expect(choices.length).toBe(3);
  for (const place of [0, 1]) {
    const whole = bandOf(drawn, choices, { places: [place] }, (row) => row[place] ?? null);
    expect(bandOfAsk(drawn, choices, place)).toEqual(whole);
  }
  // 95 % of a ± stays within two deviations; the other model lies lower. Where there is no value, none counts.
  const [one, other] = [bandOfAsk(drawn, choices, 0)!, bandOfAsk(drawn, choices, 1)!];
  expect(one.low).toBeCloseTo(90 - 1.96, 0);
  expect(one.high).toBeCloseTo(100 + 1.96, 0);
  expect(other.high).toBeLessThan(51.5);
});
