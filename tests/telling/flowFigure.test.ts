import { describe, expect, test } from 'vitest';
import type { FlowField } from '../../src/answer/flow/index.ts';
import { flowTable } from '../../src/faces/cli/text/flowText.ts';
import { axisShocks, firstCell, mainShock, type PictureBlock } from '../../src/physics/wholeFlow/index.ts';
import { CAUTION_SHORT } from '../../src/telling/caution.ts';
import { figureFlow } from '../../src/telling/figures/figureFlow.ts';
import { flowLines } from '../../src/telling/figures/flowPlane.ts';
import { textsOf } from '../../src/telling/scene/scene.ts';
import { sceneToSvg } from '../../src/telling/scene/svg.ts';

/** Squares of 0.1 m from the axis outwards; the pressure along the axis as given, the same further out. */
function block(pressures: readonly number[], mach: readonly number[] = pressures.map(() => 2)): PictureBlock {
  const [ni, nj] = [pressures.length, 4];
  const nodes = (of: (i: number, j: number) => number): Float32Array =>
    Float32Array.from({ length: (ni + 1) * (nj + 1) }, (_, k) => of(k % (ni + 1), Math.floor(k / (ni + 1))));
  const cells = (of: (i: number) => number): Float32Array =>
    Float32Array.from({ length: ni * nj }, (_, k) => of(k % ni));
  return {
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

function field(over: Partial<FlowField> = {}): FlowField {
  const jet = block([3e5, 1e5, 3e4, 1e4, 1e5, 1.5e5, 1.2e5, 9e4], [2, 3, 4, 5, 0.6, 0.8, 1.2, 1.5]);
  const shocks = axisShocks(jet, 0, 1);
  return {
    engine: 'bell',
    name: 'Birch <B>',
    form: 'round',
    altitude: 12_000,
    ambientPressure: 19_400,
    thinnest: false,
    mode: null,
    fineness: 'coarse',
    kernel: 32,
    cells: 32,
    steps: 400,
    broke: 0,
    rescued: 0,
    steady: false,
    thrustCoefficient: { mean: 1.7, swing: 0.01, byModel: 1.71 },
    leaves: null,
    separation: null,
    lip: { axial: 0, radius: 0.3 },
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

describe('shocks on the axis', () => {
  test('a Mach disk where the pressure rises most and the flow turns subsonic', () => {
    const [shock, ...more] = axisShocks(field().blocks[0]!, 0, 1);
    expect(more).toEqual([]);
    // From the fourth middle, 0.35 m, to the fifth.
    expect(shock!.behind).toBeCloseTo(0.4, 6);
    expect(shock!.pressureRise).toBeCloseTo(15, 4);
    expect(shock!.machAhead).toBe(5);
    expect(shock!.disk).toBe(true);
  });

  test('weak rises are the nozzle’s own; a cell ends where the pressure is farthest on its first side again', () => {
    const wave = block([2e5, 1.4e5, 0.8e5, 0.6e5, 0.9e5, 1.3e5, 1.2e5, 0.9e5]);
    expect(mainShock(axisShocks(wave, 0, 1))).toBeNull();
    expect(firstCell(wave, 0, 1e5, 1)).toBeCloseTo(0.55, 6);
    expect(firstCell(wave, 0, 1e5, 0.4)).toBeNull();
  });
});

test('a table of flows says which field broke on its way', () => {
  const table = flowTable([field(), field({ broke: 1 })], 200);
  expect(table).toContain('400, mean, broke 1×');
  expect(table.match(/On its way the field broke once/g)).toHaveLength(1);
});

describe('a computed flow as a figure', () => {
  test.each(['16:9', '9:16', '1:1', 'print'] as const)('%s: finding, what it is, the caution', (size) => {
    const scene = figureFlow(field(), 'pressure', { size, theme: 'light' });
    expect(scene.title).toBe(
      'At 12\u00a0km the Mach disk of Birch <B>’s jet stands 400\u00a0mm behind the lip.',
    );
    const words = textsOf(scene.children)
      .map(({ text }) => text)
      .join(' ');
    expect(words).toContain('inviscid, computed');
    expect(words).toContain('No turbulence');
    expect(words).toContain(CAUTION_SHORT);
    const svg = sceneToSvg(scene);
    expect(svg).not.toContain('<B>');
    expect(svg).not.toContain('NaN');
  });

  test('what it is made to do, and what is not seen, is said', () => {
    const drawn = (over: Partial<FlowField>) =>
      figureFlow(field(over), 'density gradient', { size: '16:9', theme: 'dark' });
    expect(drawn({ leaves: { axial: 0.05, by: 'Schmucker 1973' } }).description).toContain(
      'made to leave the wall at the estimate of Schmucker 1973',
    );
    expect(drawn({ mainShock: null }).title).toContain('no strong shock');
    expect(drawn({ form: 'plug' }).title).toContain('round Birch <B>’s plug');
    expect(drawn({ thinnest: true }).title).toContain('In all but vacuum');
    expect(drawn({}).description).not.toContain('On its way');
    expect(drawn({ broke: 2, rescued: 7 }).description).toContain(
      'On its way the field broke 2 times and went on with shorter steps, at first order for a while; it took some of its cells at first order in 7 of 400 steps.',
    );
  });

  test('the density’s change over a length, on a field where it is known', () => {
    const even = block(Array.from({ length: 6 }, (_, i) => 1e5 * Math.exp(0.2 * i)));
    // ln ρ rises by 0.2 over each 0.1 m: by 0.6 over 0.3 m.
    for (const { value } of flowLines(even, 'density gradient', 0.3).flat())
      expect(value).toBeCloseTo(0.6, 4);
  });
});
