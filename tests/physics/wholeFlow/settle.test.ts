import { describe, expect, test } from 'vitest';
import { ProblemError } from '../../../src/numerics/problem.ts';
import {
  type Flow,
  meshBlock,
  newFlow,
  perfectFieldGas,
  type SidePart,
} from '../../../src/physics/euler/index.ts';
import { NotSettled, settle } from '../../../src/physics/wholeFlow/index.ts';

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

describe('a field that breaks', () => {
  /** Still air whose step breaks where told; and how each was asked for. */
  function breaking(breaks: (asked: number) => boolean, code = 'field-broke') {
    const still = boxWith(() => 1);
    const asked: { readonly courant: number; readonly blurred: boolean }[] = [];
    const flow = Object.create(still, {
      relax: {
        value: (courant: number, blurred: boolean) => {
          asked.push({ courant, blurred });
          if (breaks(asked.length)) throw new ProblemError({ code, what: 'No state.', mend: 'None.' });
        },
      },
    }) as Flow;
    return { flow, asked };
  }

  test('goes on at first order for 40 steps and with half the step, which grows again', () => {
    const { flow, asked } = breaking((count) => count === 31);
    const { broke, steps } = settled(flow, 400, 400);
    expect([broke, steps]).toEqual([1, 400]);
    expect(asked).toHaveLength(401);
    const [usual, first] = [asked[0]!, asked[31]!];
    expect(usual.blurred).toBe(false);
    expect(first).toEqual({ courant: usual.courant / 2, blurred: true });
    expect(asked.filter(({ blurred }) => blurred)).toHaveLength(40);
    expect(asked.at(-1)).toEqual(usual);
  });

  test('again and again is given up with what was wrong, in ever shorter steps', () => {
    const { flow, asked } = breaking((count) => count > 10);
    expect(() => settled(flow, 400, 400)).toThrow('No state.');
    try {
      settled(breaking((count) => count > 10).flow, 400, 400);
    } catch (error) {
      // The last that held is told: ten steps, and then none.
      const { last } = error as NotSettled;
      expect(error).toBeInstanceOf(NotSettled);
      expect([last.steps, last.steady, last.broke]).toEqual([10, false, 12]);
      expect(last.watched).toEqual([{ mean: 1, swing: 0 }]);
      expect(last.averages.blocks()[0]!.pressure).toEqual(new Float64Array(4).fill(1));
    }
    expect(asked.at(-1)!.courant).toBeLessThan(asked[0]!.courant / 1000);
  });

  test('for want of a thread, half stepped, is not gone on with, nor told', () => {
    const { flow, asked } = breaking((count) => count > 10, 'flow-thread-lost');
    let thrown: unknown = null;
    try {
      settled(flow, 400, 400);
    } catch (error) {
      thrown = error;
    }
    expect(thrown).toBeInstanceOf(ProblemError);
    expect(thrown).not.toBeInstanceOf(NotSettled);
    expect(asked).toHaveLength(11);
  });
});

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
