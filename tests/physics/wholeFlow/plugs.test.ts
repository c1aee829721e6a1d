import { expect, test, vi } from 'vitest';
import { flowKernel } from '../../../src/physics/euler/index.ts';
import { expandPerfect } from '../../../src/physics/gas/index.ts';
import { nozzleModel } from '../../../src/physics/nozzle/index.ts';
import {
  type BlockFlow,
  basePressureOf,
  plugFlow,
  preparePlug,
  pushesOfPlug,
  settle,
  sizeOfPlug,
  thrustOfPlug,
} from '../../../src/physics/wholeFlow/index.ts';

// A field takes seconds; on a busy machine many.
vi.setConfig({ testTimeout: 300_000 });

test.each([
  ['annular', 30, 0.25, 5_000],
  ['linear', 12, 0.4, 20_000],
] as const)(
  'a plug (%s) in thin air: the push of its gas, base aside, as by characteristics within 0.5 %',
  (form, areaRatio, kept, ambient) => {
    const expansion = expandPerfect({ gamma: 1.2, molarMass: 0.022, temperature: 3500, pressure: 100e5 });
    const throatRadius = 0.1;
    const model = nozzleModel({ kind: 'plug', form, areaRatio, kept }, expansion);
    const contour = model.contour!(throatRadius, {
      contractionRatio: 3,
      characteristicLength: 1,
      convergingAngle: Math.PI / 6,
    });
    const prepared = preparePlug({
      expansion,
      cowl: contour.wall,
      plug: contour.plug!.wall,
      width: contour.plug!.width ?? null,
      throatRadius,
      kernel: flowKernel(64),
    });
    const air = { pressure: ambient, density: ambient / (287 * 260), speed: 0 };
    let from: readonly BlockFlow[] | null = null;
    const found = [8, 16].map((across) => {
      const plug = plugFlow(prepared, { air }, sizeOfPlug(prepared, 8, across), from);
      const settled = settle(plug.flow, {
        least: 600,
        most: 2400,
        watch: () => {
          const { stream, massFlow } = pushesOfPlug(plug);
          return [thrustOfPlug(plug), basePressureOf(plug), stream, massFlow];
        },
        still: [1e-3, 1, 1e-3, 1e-3],
      });
      from = settled.averages.blocks();
      const [, , stream, massFlow] = settled.watched;
      return { plug, settled, pushes: { stream: stream!.mean, massFlow: massFlow!.mean } };
    });
    const throat = Math.PI * throatRadius ** 2;
    const unit = expansion.chamber.pressure * throat;
    const massFlow = expansion.throat.massFlux * throat;
    const { parts } = model.at(ambient);
    const stream = parts
      .filter(({ surface }) => surface !== 'base')
      .reduce((sum, { coefficient }) => sum + coefficient, 0);
    const [coarse, fine] = found.map(
      ({ pushes }) => pushes.stream / unit / (pushes.massFlow / massFlow) / stream - 1,
    );
    // For each kilogram of gas: the curved walls of the throat let half a per cent less through than the model’s straight one.
    expect(Math.abs(fine!)).toBeLessThan(4e-3);
    expect(Math.abs(coarse!)).toBeLessThan(0.008);
    for (const { pushes, plug, settled } of found) {
      const passes = pushes.massFlow / massFlow;
      expect(passes).toBeGreaterThan(0.99);
      expect(passes).toBeLessThan(0.998);
      expect(settled.steady).toBe(true);
      // In thin air the base hangs on the gas round it, not on the air.
      expect(basePressureOf(plug)).toBeGreaterThan(1.5 * ambient);
    }
  },
);
