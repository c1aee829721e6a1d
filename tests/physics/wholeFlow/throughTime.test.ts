import { beforeAll, expect, test, vi } from 'vitest';
import { cellAt, type Field, flowKernel } from '../../../src/physics/euler/index.ts';
import { expandPerfect } from '../../../src/physics/gas/index.ts';
import { chamberAndNozzleContour, nozzleModel } from '../../../src/physics/nozzle/index.ts';
import {
  axisPressure,
  type ChamberLevel,
  feedOf,
  inTime,
  NOZZLE,
  prepareRound,
  type RoundCase,
  roundFlow,
  roundSize,
  settle,
  thrustOf,
} from '../../../src/physics/wholeFlow/index.ts';

// A flow through time takes seconds; on a busy machine many.
vi.setConfig({ testTimeout: 300_000 });

const PRESSURE = 100e5;
const R = 0.1;
const UNIT = PRESSURE * Math.PI * R * R;
const AMBIENT = 26_000;
const spec = { kind: 'bell', areaRatio: 15, length: 0.8 } as const;
const expansion = expandPerfect({ gamma: 1.2, molarMass: 0.022, temperature: 3500, pressure: PRESSURE });
const { wall } = chamberAndNozzleContour(spec, R, {
  contractionRatio: 3,
  characteristicLength: 1,
  convergingAngle: Math.PI / 6,
});
const prepared = prepareRound({ expansion, wall, throatRadius: R, kernel: flowKernel(64) });
const size = roundSize(prepared, 8, 8);
const at: RoundCase = {
  air: { pressure: AMBIENT, density: AMBIENT / (287 * 260), speed: 0 },
  leavesAt: null,
};

function settledFlow() {
  const round = roundFlow(prepared, at, size, null);
  const { averages, watched } = settle(round.flow, {
    least: 600,
    most: 900,
    watch: () => [thrustOf(round), axisPressure(round)],
    still: [1e-3, 1],
  });
  return { blocks: averages.blocks(), coefficient: watched[0]!.mean / UNIT, feed: feedOf(round.flow) };
}

let full: ReturnType<typeof settledFlow>;
beforeAll(() => {
  full = settledFlow();
}, 300_000);

/** Of the whole block [kg], [J]. */
function held({ mesh, density, energy }: Field) {
  let [mass, all] = [0, 0];
  for (let j = 0; j < mesh.nj; j++)
    for (let i = 0; i < mesh.ni; i++) {
      const cell = cellAt(mesh, i, j);
      mass += 2 * Math.PI * mesh.volume[cell]! * density[cell]!;
      all += 2 * Math.PI * mesh.volume[cell]! * energy[cell]!;
    }
  return { mass, energy: all };
}

test('a feed that falls to 60 %: what leaves is what comes and what was held, and it ends as a steady flow does', () => {
  const level: ChamberLevel = { share: 1, full: full.feed };
  const round = roundFlow(prepared, { ...at, level }, size, full.blocks);
  const { flow } = round;
  const gains = () => {
    const out = flow.through(NOZZLE, { side: 'iHigh', from: 0, to: size.across });
    const into = flow.through(NOZZLE, { side: 'iLow', from: 0, to: size.across });
    return { mass: -out.mass - into.mass, energy: -out.energy - into.energy, passed: out };
  };
  const before = held(flow.fields[NOZZLE]!);
  const sums = { mass: 0, energy: 0, massPassed: 0, energyPassed: 0 };
  while (flow.time < 4e-4) {
    level.share = 1 - 0.4 * (flow.time / 4e-4);
    const from = gains();
    const seconds = flow.stableStep(0.2);
    flow.step(seconds);
    const to = gains();
    sums.mass += (seconds * (from.mass + to.mass)) / 2;
    sums.energy += (seconds * (from.energy + to.energy)) / 2;
    sums.massPassed += seconds * to.passed.mass;
    sums.energyPassed += seconds * to.passed.energy;
  }
  const after = held(flow.fields[NOZZLE]!);
  // A share of what it held is gone; its sums close on what passed to the order of the steps.
  expect(after.mass / before.mass).toBeLessThan(0.95);
  expect(Math.abs(after.mass - before.mass - sums.mass) / sums.massPassed).toBeLessThan(2e-3);
  expect(Math.abs(after.energy - before.energy - sums.energy) / sums.energyPassed).toBeLessThan(2e-3);
  for (const _time of inTime(flow, [8e-3], () => {
    level.share = 0.6;
  }))
    expect(flow.time).toBeCloseTo(8e-3, 12);
  // A perfect gas at 60 % is the same flow in air of 1/0.6 of the pressure.
  const { thrustCoefficientIfFull } = nozzleModel(spec, expansion).at(AMBIENT / 0.6);
  expect(Math.abs(thrustOf(round) / UNIT / (0.6 * thrustCoefficientIfFull) - 1)).toBeLessThan(5e-3);
});

test('from air at rest to full thrust: it ends as the steady flow', () => {
  const level: ChamberLevel = { share: 0, full: full.feed };
  const round = roundFlow(prepared, { ...at, level, unlit: true }, size, null);
  expect(Math.abs(thrustOf(round) / UNIT)).toBeLessThan(1e-6);
  // Put in at once, little of the full feed comes into a chamber at the air's pressure: no faster than sound, a few
  // times the full speed at a contraction of 3, and at 0.26 % of the density.
  level.share = 1;
  const comes = feedOf(round.flow) / full.feed;
  expect(comes).toBeGreaterThan(0);
  expect(comes).toBeLessThan(0.05);
  level.share = 0;
  const times = [1e-3, 8e-3];
  const seen = [
    ...inTime(round.flow, times, (time) => {
      level.share = Math.min(1, time / 2e-3);
    }),
  ];
  expect(seen).toEqual(times);
  expect(Math.abs(thrustOf(round) / UNIT / full.coefficient - 1)).toBeLessThan(3e-3);
  // All along the wall too.
  const { mesh, pressure, share } = round.flow.fields[NOZZLE]!;
  const steady = full.blocks[NOZZLE]!.pressure;
  for (let i = 0; i < mesh.ni; i++) {
    const cell = cellAt(mesh, i, mesh.nj - 1);
    expect(Math.abs(pressure[cell]! / steady[(mesh.nj - 1) * mesh.ni + i]! - 1)).toBeLessThan(0.02);
    expect(share[cell]!).toBeGreaterThan(0.99);
  }
});
