import { expect, test, vi } from 'vitest';
import { flowKernel } from '../../../src/physics/euler/index.ts';
import { expandPerfect } from '../../../src/physics/gas/index.ts';
import { chamberAndNozzleContour } from '../../../src/physics/nozzle/index.ts';
import {
  prepareRound,
  roundFlow,
  roundSize,
  settle,
  thrustOf,
} from '../../../src/physics/wholeFlow/index.ts';

// A field takes seconds; on a busy machine many.
vi.setConfig({ testTimeout: 120_000 });

const R = 0.1;
const expansion = expandPerfect({ gamma: 1.2, molarMass: 0.022, temperature: 3500, pressure: 100e5 });
const { wall } = chamberAndNozzleContour({ kind: 'bell', areaRatio: 15, length: 0.8 }, R, {
  contractionRatio: 3,
  characteristicLength: 1,
  convergingAngle: Math.PI / 6,
});

function thrustBy(bits: 32 | 64 | null): number {
  const kernel = bits === null ? null : flowKernel(bits);
  const prepared = prepareRound({ expansion, wall, throatRadius: R, kernel });
  const air = { pressure: 60_000, density: 0.8, speed: 0 };
  const round = roundFlow(prepared, { air, leavesAt: null }, roundSize(prepared, 8, 8), null);
  const watch = () => [thrustOf(round)];
  return settle(round.flow, { least: 600, most: 600, watch, still: [1e-3] }).watched[0]!.mean;
}

test('an engine has the same thrust by the reference and by the kernel, on 64 bits and on 32', () => {
  const reference = thrustBy(null);
  expect(Math.abs(thrustBy(64) / reference - 1)).toBeLessThan(1e-9);
  // This one comes to rest, and differs by 1e-7; finer ones, whose jets sway, by 3e-5.
  expect(Math.abs(thrustBy(32) / reference - 1)).toBeLessThan(3e-5);
});
