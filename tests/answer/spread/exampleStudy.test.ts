import { expect, test } from 'vitest';
import { localCrew } from '../../../src/answer/asked/localCrew.ts';
import { distributionOf } from '../../../src/answer/spread/distribution.ts';
import { drawAsks, mattersMost, shareOf } from '../../../src/answer/spread/index.ts';
import { openDataShelf } from '../../../src/faces/disk/data.ts';
import { alder } from '../expression/alderScope.ts';
import { askOf } from './fakeCrew.ts';

const RATIO = 'engines.bell.propellants.ratio';
const EFFICIENCY = 'engines.bell.chamber.efficiency';
const asks = ['bell', 'plug'].flatMap((engine) => [
  { ...askOf(engine, 'specificImpulse'), ambient: { kind: 'vacuum' } as const },
  { ...askOf(engine, 'thrust'), ambient: { kind: 'altitude', altitude: 0 } as const },
]);

test('a dozen solved points stand for bell and plug of the example', { timeout: 60_000 }, async () => {
  const crew = await localCrew(alder, openDataShelf());
  const drawn = await drawAsks(alder, asks, crew);
  expect(drawn.solved).toBeLessThanOrEqual(16);
  expect(drawn.unknowns.flatMap((each) => (each.kind === 'input' ? [each.path] : []))).toEqual([
    RATIO,
    EFFICIENCY,
  ]);

  // Fresh points, solved: as far off as the points held out say, all errors of models at nought.
  const stated = [
    { value: 3.5, plusMinus: 0.05 },
    { value: 0.975, plusMinus: 0.01 },
  ].map((each) => distributionOf(each, { lowest: null, highest: null })!);
  const places = [
    [0.04, 0.3],
    [0.35, 0.97],
    [0.6, 0.12],
    [0.97, 0.7],
    [0.8, 0.5],
    [0.2, 0.85],
  ] as const;
  const told = await crew.tell(
    asks,
    places.map(([u, v]) => ({ [RATIO]: stated[0]!.quantile(u), [EFFICIENCY]: stated[1]!.quantile(v) })),
  );
  asks.forEach((_, ask) => {
    const misses = places.map(([u, v], i) => {
      const one = told[i]![ask]!;
      const unit = drawn.unknowns.map((each, d) => (each.kind === 'input' ? [u, v][d]! : 0.5));
      return drawn.at(drawn.placeOf(unit), [ask])[0]! - (one.ok ? one.value : Number.NaN);
    });
    const missed = Math.sqrt(misses.reduce((sum, miss) => sum + miss * miss, 0) / misses.length);
    expect(missed).toBeLessThan(2 * drawn.asks[ask]!.surfaceError);
    const { values, surfaceError } = drawn.asks[ask]!;
    expect(surfaceError).toBeLessThan(0.02 * (Math.max(...values) - Math.min(...values)));
  });

  // Both take the same efficiency of the same chamber: it moves both alike and says little about their difference.
  const share = shareOf(drawn, [drawn.asks[0]!, drawn.asks[2]!], ([bell, plug]) => plug! > bell!);
  expect(share).toMatchObject({ share: 1, undecided: 0 });
  const own = mattersMost(drawn, [0], ([bell]) => bell!);
  expect(own[0]!.unknown).toMatchObject({ path: EFFICIENCY });
  const between = mattersMost(drawn, [0, 2], ([bell, plug]) => plug! - bell!);
  expect(
    between.find(({ unknown }) => unknown.kind === 'input' && unknown.path === EFFICIENCY)!.share,
  ).toBeLessThan(0.05);
});
