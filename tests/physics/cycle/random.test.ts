import { expect, test } from 'vitest';
import { attempt } from '../../../src/numerics/problem.ts';
import { randomStream } from '../../../src/numerics/randomStream.ts';
import {
  balanceClosed,
  balanceOpen,
  exhaustOf,
  generatorGas,
  type Pumped,
} from '../../../src/physics/cycle/index.ts';
import { fedWith } from './fed.ts';

const pairs = await Promise.all(
  (
    [
      ['LOX', 'LH2', 5.5],
      ['LOX', 'LCH4', 3.4],
      ['LOX', 'RP-1', 2.4],
      ['N2O4', 'UDMH', 2.5],
    ] as const
  ).map(async ([oxidiser, fuel, ratio]) => ({ fed: await fedWith(oxidiser, fuel), ratio })),
);

const SEED = 20261125;
const REASONS = ['cycle-cannot-close', 'turbine-temperature-out-of-reach', 'turbine-gas-hotter-than-chamber'];

// 200 cycles with all inputs at random: each is balanced with finite numbers, or says why it cannot be.
test(`random cycles, seed ${SEED}`, () => {
  const next = randomStream(SEED);
  const between = (low: number, high: number): number => low + (high - low) * next();
  let balanced = 0;
  for (let i = 0; i < 200; i++) {
    const { fed, ratio } = pairs[i % pairs.length]!;
    const fuel = 10 ** between(0, 3);
    const pumped: Pumped = {
      fed,
      chamberPressure: between(10e5, 250e5),
      flow: { oxidiser: fuel * ratio, fuel },
      drops: { injector: between(0.1, 0.3), jacket: between(0, 0.4), lines: between(0.01, 0.06) },
      tankPressure: between(1e5, 6e5),
      pumpEfficiency: { oxidiser: between(0.5, 0.85), fuel: between(0.5, 0.85) },
      pumpPressureLimit: 600e5,
    };
    const excess = next() < 0.5 ? 'fuel' : 'oxidiser';
    const outcome = attempt(() => {
      const gas = generatorGas(fed, excess, between(650, 1150), pumped.chamberPressure);
      const efficiency = between(0.4, 0.85);
      if (i % 2 === 0)
        return [balanceClosed({ ...pumped, kind: 'stagedCombustion', excess, gas, efficiency })];
      const open = {
        ...pumped,
        kind: 'gasGenerator',
        gas,
        efficiency,
        pressureRatio: between(4, 30),
        exhaustAreaRatio: 3,
      } as const;
      return [balanceOpen(open), exhaustOf(open)];
    });
    if (!outcome.ok) expect(REASONS, outcome.problem.what).toContain(outcome.problem.code);
    else {
      balanced += 1;
      const numbers = outcome.value
        .flatMap((one) => Object.values(one))
        .filter((one) => typeof one === 'number');
      expect(numbers.every(Number.isFinite)).toBe(true);
    }
  }
  expect(balanced).toBeGreaterThan(120);
});
