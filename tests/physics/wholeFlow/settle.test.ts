import { describe, expect, test } from 'vitest';
import {
  type Flow,
  meshBlock,
  newFlow,
  perfectFieldGas,
  type SidePart,
} from '../../../src/physics/euler/index.ts';
import { settle } from '../../../src/physics/wholeFlow/index.ts';

const air = perfectFieldGas(1.4);

/** A box of still air whose pressure after so many steps is as told. */
function boxWith(pressureAfter: (steps: number) => number): Flow {
  const mesh = meshBlock('flat', 2, 2, (i, j) => [i, j]);
  const sides = (['iLow', 'iHigh', 'jLow', 'jHigh'] as const).map(
    (side): SidePart => ({ side, from: 0, to: 2, kind: { is: 'wall' } }),
  );
  const start = () => ({ density: 1, u: 0, v: 0, pressure: pressureAfter(0), share: 1 });
  const flow = newFlow({ blocks: [{ mesh, sides }], gases: { inner: air, outer: air }, start });
  let steps = 0;
  return Object.create(flow, {
    relax: {
      value: () => {
        steps += 1;
        flow.fields[0]!.pressure.fill(pressureAfter(steps));
      },
    },
  }) as Flow;
}

const settled = (flow: Flow, least: number, most: number) =>
  settle(flow, { least, most, watch: ({ fields }) => [fields[0]!.pressure[0]!], still: [1e-3] });

describe('the mean of a field', () => {
  // Twice the pressure at first; a thousandth off after 400 steps, e^(−400/58), and 0.4 of that after as many again.
  const falling = (steps: number): number => 1 + Math.exp(-steps / 58);

  test.each([200, 600])(
    'that comes to rest holds nothing of its way there, asked for %i steps at least',
    (least) => {
      const { averages, steady, steps, watched } = settled(boxWith(falling), least, 3000);
      expect(steady).toBe(true);
      expect(steps).toBeGreaterThanOrEqual(least);
      const [mean] = averages.blocks()[0]!.pressure;
      // As still as what was watched.
      expect(Math.abs(mean! / watched[0]!.mean - 1)).toBeLessThan(1e-3);
      expect(mean!).toBeLessThan(falling(steps - 150));
      expect(mean!).toBeGreaterThan(falling(steps));
    },
  );

  test('that never comes to rest is over the last half of its steps', () => {
    // Twenty swings of a tenth in 800 steps about 2, after 800 about 1.
    const swinging = (steps: number): number =>
      (steps <= 800 ? 2 : 1) + 0.1 * Math.sin((2 * Math.PI * steps) / 80 + 0.5);
    const { averages, steady } = settled(boxWith(swinging), 300, 1600);
    expect(steady).toBe(false);
    expect(averages.blocks()[0]!.pressure[0]).toBeCloseTo(1, 9);
  });
});
