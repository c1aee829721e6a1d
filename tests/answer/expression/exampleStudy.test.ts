import { expect, test } from 'vitest';
import { localCrew } from '../../../src/answer/asked/localCrew.ts';
import { openDataShelf } from '../../../src/faces/disk/data.ts';
import { alder, compiled } from './alderScope.ts';

test('what the example study says holds at its middle values, what it keeps to discuss does not', {
  timeout: 60_000,
}, async () => {
  const crew = await localCrew(alder, openDataShelf());
  for (const { id, holds, said } of alder.sentences) {
    const decided = compiled(holds!);
    const [told] = await crew.tell(decided.asks, [{}]);
    const values = told!.map((one) => (one.ok ? one.value : null));
    expect(decided.decide(values), id).toMatchObject({ holds: said, absent: null });
  }
});

test('what is said over ranges is decided from what the engines give', { timeout: 60_000 }, async () => {
  const crew = await localCrew(alder, openDataShelf());
  const decide = async (text: string) => {
    const test = compiled(text);
    const [told] = await crew.tell(test.asks, [{}]);
    return test.decide(told!.map((one) => (one.ok ? one.value : null)));
  };
  // Less air outside never takes thrust away from a nozzle that runs full: F = F_vac − p_a A_e.
  expect((await decide('bell.thrust(z) rises for z from pad to vacuum')).holds).toBe(true);
  expect((await decide('bell.thrust(z) falls for z from pad to vacuum')).holds).toBe(false);
  // The place where the exit pressure matches the air, found by the range, is that of the catalogue.
  const matched = await decide(
    'for every z from 0 km to 40 km, bell.exitPressure < air.pressure(z) or z > bell.matched.altitude - 100 m',
  );
  expect(matched.holds).toBe(true);
  // A gas does not push harder on the wall the further it has expanded.
  expect((await decide('bell.wall.pressure(areaRatio e) falls for e from 2 to 25')).holds).toBe(true);
});
