import { expect, test } from 'vitest';
import { tell } from '../../../src/answer/asked/tell.ts';
import { BARTZ_SCATTER } from '../../../src/physics/heat/index.ts';
import { solveText } from '../solveText.ts';

const { solutions } = await solveText(
  `hot: { propellants: { oxidiser: oxygen, fuel: methane, ratio: 3.4 }, chamber: { pressure: 50 bar }, size: { throat: 100 mm }, nozzle: { kind: bell, areaRatio: 20 } }
cold: { propellants: { gas: nitrogen, temperature: 700 K }, chemistry: frozen, chamber: { pressure: 50 bar }, size: { throat: 100 mm }, nozzle: { kind: bell, areaRatio: 4 } }`,
);

function told(engine: string, quantity: string, distance: number | null = null) {
  const station = distance === null ? null : ({ kind: 'distance', distance } as const);
  const found = tell(solutions.get(engine)!, {
    engine,
    quantity,
    ambient: null,
    throttle: null,
    station,
    inputs: [],
  });
  if (!found.ok) throw new Error(found.problem.what);
  return found;
}

test('the error of Bartz moves what the layer carries, not what the gas radiates', () => {
  const peak = told('hot', 'heat.peakFlux');
  const radiation = told('hot', 'heat.radiationFlux', told('hot', 'heat.peakAt').value).value;
  const [band] = peak.scatter;
  expect(radiation / peak.value).toBeGreaterThan(0.02);
  expect((band!.low - radiation) / (BARTZ_SCATTER.low * (peak.value - radiation))).toBeCloseTo(1, 3);
  expect((band!.high - radiation) / (BARTZ_SCATTER.high * (peak.value - radiation))).toBeCloseTo(1, 3);
});

test('a gas that is colder than the wall takes heat from it: its greatest flux lies below zero', () => {
  expect(told('cold', 'heat.total').value).toBeLessThan(0);
  expect(told('cold', 'heat.peakFlux').value).toBeLessThan(0);
});
