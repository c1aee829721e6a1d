/** Made-up fields of a few cells: what is drawn of them is told beforehand. */

import type { FlowField } from '../../src/answer/flow/index.ts';
import { axisShocks, mainShock, type PictureBlock } from '../../src/physics/wholeFlow/index.ts';

/** Squares of 0.1 m from the axis outwards; the pressure along the axis as given, the same further out. */
export function block(
  pressures: readonly number[],
  mach: readonly number[] = pressures.map(() => 2),
): PictureBlock {
  const [ni, nj] = [pressures.length, 4];
  const nodes = (of: (i: number, j: number) => number): Float32Array =>
    Float32Array.from({ length: (ni + 1) * (nj + 1) }, (_, k) => of(k % (ni + 1), Math.floor(k / (ni + 1))));
  const cells = (of: (i: number) => number): Float32Array =>
    Float32Array.from({ length: ni * nj }, (_, k) => of(k % ni));
  return {
    symmetry: 'round',
    ni,
    nj,
    axial: nodes((i) => 0.1 * i),
    radius: nodes((_, j) => 0.1 * j),
    pressure: cells((i) => pressures[i]!),
    mach: cells((i) => mach[i]!),
    density: cells((i) => pressures[i]! / 1e5),
    share: cells(() => 1),
    temperature: cells(() => 1000),
    along: cells(() => 2000),
    away: cells(() => 0),
  };
}

export function field(over: Partial<FlowField> = {}): FlowField {
  const jet = block([3e5, 1e5, 3e4, 1e4, 1e5, 1.5e5, 1.2e5, 9e4], [2, 3, 4, 5, 0.6, 0.8, 1.2, 1.5]);
  const shocks = axisShocks(jet, 0, 1);
  return {
    engine: 'bell',
    name: 'Birch <B>',
    form: 'round',
    altitude: 12_000,
    ambientPressure: 19_400,
    flightSpeed: 0,
    thinnest: false,
    mode: null,
    insideBell: false,
    fineness: 'coarse',
    kernel: 32,
    cells: 32,
    steps: 400,
    broke: 0,
    rescued: 0,
    steady: false,
    thrustCoefficient: { mean: 1.7, swing: 0.01, byModel: 1.71 },
    against: null,
    leaves: null,
    separation: null,
    lip: { axial: 0, radius: 0.3 },
    end: 0,
    shocks,
    mainShock: mainShock(shocks),
    firstCell: null,
    byLaw: { machDisk: 0.4, cellLength: null },
    seen: 0.6,
    walls: [
      {
        kind: 'wall',
        line: [
          [0, 0.3],
          [0.1, 0.35],
        ],
        side: { block: 0, row: 4, from: 0, to: 1 },
      },
    ],
    axisBlock: 0,
    blocks: [jet],
    ...over,
  };
}
