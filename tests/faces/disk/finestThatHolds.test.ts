import { expect, test } from 'vitest';
import { type Fineness, FlowBroke, type FlowField } from '../../../src/answer/flow/index.ts';
import { finestThatHolds } from '../../../src/faces/disk/finestThatHolds.ts';
import { type Problem, ProblemError } from '../../../src/numerics/problem.ts';

const flowsUpTo = (breaksAt: Fineness | null) => ({
  async at(place: number, fineness: Fineness): Promise<FlowField> {
    if (fineness === breaksAt)
      throw new ProblemError({ code: 'field-broke', what: `Broke at ${place}.`, mend: 'None.' });
    return { fineness } as FlowField;
  },
});

test('where a finer field breaks the last that held is given, and why', async () => {
  const told: Problem[] = [];
  const field = await finestThatHolds(flowsUpTo('fine'), 3, 'finest', (problem) => told.push(problem));
  expect(field.fineness).toBe('normal');
  expect(told.map(({ what }) => what)).toEqual(['Broke at 3.']);
});

test('where all hold it is as fine as asked for; where none does the problem is thrown', async () => {
  expect((await finestThatHolds(flowsUpTo(null), 0, 'fine')).fineness).toBe('fine');
  await expect(finestThatHolds(flowsUpTo('coarse'), 0, 'fine')).rejects.toThrow('Broke at 0.');
});

test('where the coarsest broke on its way to rest it is given as it was last, with the reason', async () => {
  const problem = { code: 'field-broke', what: 'No state.', mend: 'None.' };
  const flows = {
    at: async () => {
      throw new FlowBroke(problem, { fineness: 'coarse', steps: 40 } as FlowField);
    },
  };
  expect(await finestThatHolds(flows, 0, 'fine')).toEqual({ fineness: 'coarse', steps: 40, ended: problem });
});
