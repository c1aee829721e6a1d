import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type FlowTeam, flowTeam } from '../../../src/faces/crew/flowTeam.ts';
import { attempt } from '../../../src/numerics/problem.ts';
import {
  apartFlow,
  flowKernel,
  meshBlock,
  newFlow,
  perfectFieldGas,
  type SidePart,
  type StepTeam,
} from '../../../src/physics/euler/index.ts';
import { burst as burstInStrips, unevenSetup } from '../../physics/euler/apart/apartCases.ts';
import { box, burst } from '../../physics/euler/kernel/kernelCases.ts';
import { type BuiltThread, builtThread } from './builtThread.ts';

let hand: BuiltThread;
let silent: BuiltThread;
beforeAll(async () => {
  hand = await builtThread('../../../src/faces/crew/flowHand.ts');
  silent = await builtThread('./silentHand.ts');
});
afterAll(() => {
  hand.remove();
  silent.remove();
});

async function withTeam<T>(team: FlowTeam | null, work: (team: FlowTeam) => T): Promise<T> {
  expect(team).not.toBeNull();
  try {
    return work(team!);
  } finally {
    await team!.dismiss();
  }
}

const air = perfectFieldGas(1.4);

/** A box of gas that sways. */
function swaying(team: StepTeam | null) {
  const n = 16;
  return newFlow({
    blocks: [
      {
        mesh: meshBlock('flat', n, n, (i, j) => [i / n, j / n]),
        sides: (['iLow', 'iHigh', 'jLow', 'jHigh'] as const).map(
          (side): SidePart => ({ side, from: 0, to: n, kind: { is: 'wall' } }),
        ),
      },
    ],
    gases: { inner: air, outer: air },
    start: (x, y) => ({ density: 1, u: Math.sin(6 * y), v: 0, pressure: 1 + 0.3 * x, share: 0 }),
    kernel: flowKernel(64, team),
  });
}

describe.each([2, 3, 5])('%i threads give the numbers of one, bit by bit', (threads) => {
  test.each([64, 32] as const)('on floats of %i bits', (bits) =>
    withTeam(flowTeam({ threads, fewest: 0, file: hand.file }), (team) => {
      // Two blocks, a table, walls, a far side; through time, and each cell by its own steps.
      for (const own of [false, true]) expect(burst(bits, 40, own, team)).toEqual(burst(bits, 40, own));
      // The hands were at it.
      expect(team.leave).not.toBeNull();
      expect(box(bits, 'blast', 0.5, 20, team)).toEqual(box(bits, 'blast', 0.5, 20));
      // Cells that break are those of one thread, and so is what is told where nothing helps.
      const tossed = box(bits, 'tossed', 0.6, 8, team);
      expect(tossed.rescued).toBeGreaterThan(0);
      expect(tossed).toEqual(box(bits, 'tossed', 0.6, 8));
      const broken = box(bits, 'blast', 2.5, 4, team);
      expect(broken.problem).toContain('has no state any more at x');
      expect(broken).toEqual(box(bits, 'blast', 2.5, 4));
    }),
  );
});

test('strips that take steps of their own lengths have the numbers of one thread, bit by bit', () =>
  withTeam(flowTeam({ threads: 3, fewest: 0, file: hand.file }), (team) => {
    const by = (each: StepTeam | null) => {
      const flow = apartFlow({ ...unevenSetup(burstInStrips), kernel: flowKernel(32, each) });
      for (let n = 0; n < 6; n++) flow.advance(0.8, 1);
      return { steps: flow.steps, cells: flow.fields.map(({ pressure }) => [...pressure]) };
    };
    expect(by(team)).toEqual(by(null));
    expect(team.leave).not.toBeNull();
  }));

test('one team goes from field to field and back', () =>
  withTeam(flowTeam({ threads: 2, fewest: 0, file: hand.file }), (team) => {
    const [alone, one, other] = [swaying(null), swaying(team), swaying(team)];
    for (let n = 0; n < 6; n++) {
      alone.step(1e-3);
      one.step(1e-3);
      other.step(1e-3);
    }
    expect([...one.fields[0]!.density]).toEqual([...alone.fields[0]!.density]);
    expect([...other.fields[0]!.density]).toEqual([...alone.fields[0]!.density]);
  }));

test('a thread that answers no more is told, and then at once', () =>
  withTeam(flowTeam({ threads: 2, fewest: 0, file: silent.file, patience: 300 }), (team) => {
    const flow = swaying(team);
    const first = attempt(() => flow.step(1e-3));
    expect(first.ok ? null : first.problem).toMatchObject({
      code: 'flow-thread-lost',
      mend: expect.stringContaining('one thread'),
    });
    const began = performance.now();
    expect(attempt(() => flow.step(1e-3)).ok).toBe(false);
    expect(performance.now() - began).toBeLessThan(200);
  }));

test('a thread that fails is told without waiting for it', () =>
  withTeam(flowTeam({ threads: 2, fewest: 0, file: hand.file, patience: 60_000 }), (team) => {
    // Its work names a kernel that there is not.
    const misled: StepTeam = { ...team, send: (work) => team.send({ ...work, bits: 16 as 32 }) };
    const taken = attempt(() => swaying(misled).step(1e-3));
    expect(taken.ok ? '' : taken.problem.what).toContain('stopped with an error');
  }));

test('threads that were sent away step nothing more, whatever they were at', async () => {
  const team = flowTeam({ threads: 2, fewest: 0, file: hand.file })!;
  const flow = swaying(team);
  flow.step(1e-3);
  await team.dismiss();
  const taken = attempt(() => flow.step(1e-3));
  expect(taken.ok ? null : taken.problem.code).toBe('flow-team-dismissed');
});

test('fields of few cells are left to one thread', () =>
  withTeam(flowTeam({ threads: 2, fewest: 16 * 16 + 1, file: silent.file, patience: 300 }), (team) => {
    swaying(team).step(1e-3);
    expect(team.leave).toBeNull();
  }));

test('strips of few cells are left to one thread, apart and together, from four times as many cells on', () =>
  withTeam(flowTeam({ threads: 2, fewest: 1000, file: silent.file, patience: 300 }), (team) => {
    const setup = unevenSetup(burstInStrips);
    const cells = setup.blocks.reduce((sum, { mesh: { ni, nj } }) => sum + ni * nj, 0);
    expect(cells).toBeGreaterThan(team.fewest);
    expect(cells).toBeLessThan(4 * team.fewest);
    const flow = apartFlow({ ...setup, kernel: flowKernel(32, team) });
    for (let n = 0; n < 3; n++) flow.advance(0.8, 1);
    flow.step(flow.stableStep(0.8));
    expect(team.leave).toBeNull();
  }));

test('one thread is no team, nor are those of a program that is not built', () => {
  expect(flowTeam({ threads: 1, fewest: 0, file: hand.file })).toBeNull();
  expect(flowTeam({ threads: 2, fewest: 0, file: new URL('./nothing.js', import.meta.url) })).toBeNull();
});
