import { describe, expect, test } from 'vitest';
import {
  cellAt,
  type Field,
  type FlowPoint,
  type FlowSetup,
  flowKernel,
  type MeshBlock,
  meshBlock,
  middleOf,
  newFlow,
  perfectFieldGas,
  type SidePart,
} from '../../../src/physics/euler/index.ts';
import { burstSetup } from './kernel/kernelCases.ts';

const air = perfectFieldGas(1.4);
const ONE = { inner: air, outer: air };
const wall = { is: 'wall' } as const;
const free = { is: 'free' } as const;

function around(
  mesh: MeshBlock,
  kinds: Readonly<Record<SidePart['side'], SidePart['kind']>>,
): readonly SidePart[] {
  return (['iLow', 'iHigh', 'jLow', 'jHigh'] as const).map((side) => ({
    side,
    from: 0,
    to: side.startsWith('i') ? mesh.nj : mesh.ni,
    kind: kinds[side],
  }));
}

/** Each side met by the opposite one. */
function endless(mesh: MeshBlock): readonly SidePart[] {
  const to = (side: SidePart['side']) => ({ is: 'joined', block: 0, side, from: 0, up: true }) as const;
  return around(mesh, { iLow: to('iHigh'), iHigh: to('iLow'), jLow: to('jHigh'), jHigh: to('jLow') });
}

function run(setup: FlowSetup, time: number): Field {
  const flow = newFlow(setup);
  while (flow.time < time) flow.step(Math.min(flow.stableStep(0.6), time - flow.time));
  return flow.fields[0]!;
}

function settleTo(setup: FlowSetup, steps: number): Field {
  const flow = newFlow(setup);
  for (let n = 0; n < steps; n++) flow.relax(0.7);
  return flow.fields[0]!;
}

function sumOver(field: Field, value: (cell: number) => number): number {
  let sum = 0;
  for (let j = 0; j < field.mesh.nj; j++)
    for (let i = 0; i < field.mesh.ni; i++) {
      const cell = cellAt(field.mesh, i, j);
      sum += field.mesh.volume[cell]! * value(cell);
    }
  return sum;
}

describe('smooth flow', () => {
  /** An isentropic vortex carried along unchanged: Shu, ICASE Report 97-65 (1997), section 4. */
  const vortex = (x: number, y: number): FlowPoint => {
    const [dx, dy] = [x - 5, y - 5];
    const r2 = dx * dx + dy * dy;
    const swirl = (5 / (2 * Math.PI)) * Math.exp((1 - r2) / 2);
    const temperature = 1 - ((0.4 * 25) / (8 * 1.4 * Math.PI ** 2)) * Math.exp(1 - r2);
    const density = temperature ** 2.5;
    return { density, u: 1 - swirl * dy, v: 1 + swirl * dx, pressure: density * temperature, share: 0 };
  };

  test('a vortex crosses the field at second order', () => {
    const errorOf = (n: number): number => {
      const mesh = meshBlock('flat', n, n, (i, j) => [(10 * i) / n, (10 * j) / n]);
      const field = run({ blocks: [{ mesh, sides: endless(mesh) }], gases: ONE, start: vortex }, 10);
      let error = 0;
      for (let j = 0; j < n; j++)
        for (let i = 0; i < n; i++) {
          const exact = vortex(...middleOf(mesh, i, j)).density;
          error += Math.abs(field.density[cellAt(mesh, i, j)]! - exact) / (n * n);
        }
      return error;
    };
    const [coarse, fine] = [errorOf(24), errorOf(48)];
    // A limiter flattens the one extreme: the order of the mean error lies a little below two.
    expect(Math.log2(coarse / fine)).toBeGreaterThan(1.7);
    // Against a density that falls to a half in the middle.
    expect(fine).toBeLessThan(5e-3);
  });

  test('mass, momentum and energy stay as they are but for round-off', () => {
    const mesh = meshBlock('flat', 24, 20, (i, j) => [
      i / 24 + 0.01 * Math.sin((2 * Math.PI * j) / 20),
      j / 20 + 0.01 * Math.sin((2 * Math.PI * i) / 24),
    ]);
    const start = (x: number, y: number): FlowPoint => ({
      density: 1 + 0.5 * Math.sin(2 * Math.PI * x),
      u: Math.cos(2 * Math.PI * y),
      v: 0.5,
      pressure: x > 0.5 ? 5 : 1,
      share: 0,
    });
    const flow = newFlow({ blocks: [{ mesh, sides: endless(mesh) }], gases: ONE, start });
    const field = flow.fields[0]!;
    const sums = (): readonly number[] => [
      sumOver(field, (c) => field.density[c]!),
      sumOver(field, (c) => field.density[c]! * field.u[c]!),
      sumOver(field, (c) => field.density[c]! * field.v[c]!),
      sumOver(field, (c) => field.energy[c]!),
    ];
    const before = sums();
    for (let n = 0; n < 60; n++) flow.step(flow.stableStep(0.5));
    sums().forEach((sum, i) => {
      expect(Math.abs(sum - before[i]!), `sum ${i}`).toBeLessThan(1e-12 * before[3]!);
    });
    expect(flow.rescued).toBe(0);
  });

  test('in a closed round box mass, energy and the gas that is marked stay as they are but for round-off', () => {
    const n = 20;
    const mesh = meshBlock('round', n, n, (i, j) => [
      (i + 0.3 * Math.sin(j) * Math.sin((Math.PI * i) / n)) / n,
      (j + 0.3 * Math.sin(2 * i) * Math.sin((Math.PI * j) / n)) / n,
    ]);
    const start = (x: number, y: number): FlowPoint => {
      const isIn = x * x + y * y < 0.3;
      return { density: isIn ? 3 : 1, u: 0, v: 0, pressure: isIn ? 20 : 1, share: isIn ? 1 : 0 };
    };
    const sides = around(mesh, { iLow: wall, iHigh: wall, jLow: wall, jHigh: wall });
    const flow = newFlow({ blocks: [{ mesh, sides }], gases: ONE, start });
    const { density, energy, share } = flow.fields[0]!;
    const sums = (): readonly number[] => [
      sumOver(flow.fields[0]!, (c) => density[c]!),
      sumOver(flow.fields[0]!, (c) => energy[c]!),
      sumOver(flow.fields[0]!, (c) => density[c]! * share[c]!),
    ];
    const before = sums();
    for (let k = 0; k < 200; k++) flow.step(flow.stableStep(0.5));
    for (const [k, sum] of sums().entries()) expect(Math.abs(sum / before[k]! - 1)).toBeLessThan(1e-12);
    // The shock has come back from the walls.
    expect(flow.time).toBeGreaterThan(0.4);
  });

  test.each(['flat', 'round'] as const)('a uniform %s flow stays uniform on a crooked mesh', (symmetry) => {
    const n = 16;
    const mesh = meshBlock(symmetry, n, n, (i, j) => [
      i + 0.3 * Math.sin(j) * Math.sin((Math.PI * i) / n),
      j + 0.3 * Math.sin(2 * i) * Math.sin((Math.PI * j) / n),
    ]);
    const uniform: FlowPoint = { density: 1.2, u: 300, v: 0, pressure: 1e5, share: 0 };
    const given = { is: 'given', at: () => uniform } as const;
    const sides = around(mesh, { iLow: given, iHigh: given, jLow: wall, jHigh: wall });
    const field = run({ blocks: [{ mesh, sides }], gases: ONE, start: () => uniform }, 0.05);
    for (let j = 0; j < n; j++)
      for (let i = 0; i < n; i++) {
        const cell = cellAt(mesh, i, j);
        expect(Math.abs(field.pressure[cell]! / 1e5 - 1)).toBeLessThan(1e-11);
        expect(Math.abs(field.v[cell]!)).toBeLessThan(1e-8);
      }
  });

  test('what is alike on both sides stays alike', () => {
    const n = 24;
    const mesh = meshBlock('flat', n, n, (i, j) => [i / n - 0.5, j / n - 0.5]);
    const sides = around(mesh, { iLow: wall, iHigh: wall, jLow: wall, jHigh: wall });
    const start = (x: number, y: number): FlowPoint => ({
      density: 1,
      u: 0,
      v: 0,
      pressure: x * x + y * y < 0.04 ? 10 : 0.1,
      share: 0,
    });
    const field = run({ blocks: [{ mesh, sides }], gases: ONE, start }, 0.1);
    for (let j = 0; j < n; j++)
      for (let i = 0; i < n; i++) {
        const here = field.pressure[cellAt(mesh, i, j)]!;
        for (const other of [cellAt(mesh, n - 1 - i, j), cellAt(mesh, i, n - 1 - j), cellAt(mesh, j, i)])
          expect(Math.abs(field.pressure[other]! / here - 1)).toBeLessThan(1e-10);
      }
  });
});

describe('steady supersonic flow', () => {
  const inflow = (mach: number): FlowPoint => ({ density: 1.4, u: mach, v: 0, pressure: 1, share: 0 });

  /** A channel whose floor turns by an angle a third of the way on. */
  function behindTurn(degrees: number, mach: number): { readonly pressure: number; readonly mach: number } {
    const [ni, nj] = [60, 40];
    const slope = Math.tan((degrees * Math.PI) / 180);
    const mesh = meshBlock('flat', ni, nj, (i, j) => {
      const x = (1.5 * i) / ni;
      const floor = Math.max(0, x - 0.5) * slope;
      return [x, floor + ((1 - floor) * j) / nj];
    });
    const start = inflow(mach);
    const sides = around(mesh, {
      iLow: { is: 'given', at: () => start },
      iHigh: free,
      jLow: wall,
      jHigh: free,
    });
    const field = settleTo({ blocks: [{ mesh, sides }], gases: ONE, start: () => start }, 400);
    // Beside the wall, well behind the corner and short of the end.
    const cell = cellAt(mesh, 50, 4);
    const speed = Math.hypot(field.u[cell]!, field.v[cell]!);
    return {
      pressure: field.pressure[cell]!,
      mach: speed / Math.sqrt((1.4 * field.pressure[cell]!) / field.density[cell]!),
    };
  }

  test('an oblique shock: NACA Report 1135 (1953), M = 2 turned by 10°', () => {
    const { pressure, mach } = behindTurn(10, 2);
    // Shock at 39.31°: p2/p1 = (2.8 (2 sin 39.314°)² − 0.4) / 2.4, M2 by the same relations.
    expect(pressure).toBeCloseTo(1.7066, 2);
    expect(mach).toBeCloseTo(1.6405, 2);
  });

  test('a Prandtl–Meyer corner: M = 2 turned away by 10°', () => {
    const { pressure, mach } = behindTurn(-10, 2);
    // ν(2) = 26.380°, ν = 36.380° belongs to M = 2.385 (NACA Report 1135, table II); p2/p1 isentropic.
    expect(mach).toBeCloseTo(2.385, 2);
    expect(pressure).toBeCloseTo(((1 + 0.2 * 4) / (1 + 0.2 * 2.385 ** 2)) ** 3.5, 2);
  });

  test.each(['flat', 'round'] as const)(
    'a supersonic source (%s): area ratio and Mach number',
    (symmetry) => {
      const [ni, nj] = [60, 12];
      const round = symmetry === 'round';
      const mesh = meshBlock(symmetry, ni, nj, (i, j) => {
        const r = 1 + i / ni;
        const angle = ((round ? 0.6 : 0.3) * j) / nj;
        return [r * Math.cos(angle), r * Math.sin(angle)];
      });
      const at = (r: number, x: number, y: number): FlowPoint => {
        const mach = machAt(areaOf(1.5) * r ** (round ? 2 : 1));
        const t = 1 / (1 + 0.2 * mach * mach);
        const speed = mach * Math.sqrt(1.4 * t);
        const length = Math.hypot(x, y);
        return {
          density: t ** 2.5,
          u: (speed * x) / length,
          v: (speed * y) / length,
          pressure: t ** 3.5,
          share: 0,
        };
      };
      const given = (j: number): FlowPoint => {
        const [x, y] = middleOf(mesh, 0, j);
        return at(1, x, y);
      };
      const sides = around(mesh, { iLow: { is: 'given', at: given }, iHigh: free, jLow: wall, jHigh: wall });
      const field = settleTo(
        { blocks: [{ mesh, sides }], gases: ONE, start: (x, y) => at(Math.hypot(x, y), x, y) },
        400,
      );
      for (let j = 1; j < nj - 1; j++) {
        const [x, y] = middleOf(mesh, ni - 2, j);
        const exact = at(Math.hypot(x, y), x, y);
        const cell = cellAt(mesh, ni - 2, j);
        // Cells as long as a thirtieth to a sixtieth of the way to the source; they leave 0.1 %.
        expect(Math.abs(field.pressure[cell]! / exact.pressure - 1)).toBeLessThan(2e-3);
        expect(Math.abs(field.density[cell]! / exact.density - 1)).toBeLessThan(2e-3);
      }
    },
  );
});

/** A/A* of a perfect gas of γ = 1.4 at a Mach number, and back above sound: NACA Report 1135, equation 80. */
function areaOf(mach: number): number {
  return ((1 + 0.2 * mach * mach) / 1.2) ** 3 / mach;
}
function machAt(area: number): number {
  let [low, high] = [1, 50];
  for (let n = 0; n < 80; n++) {
    const mid = (low + high) / 2;
    if (areaOf(mid) < area) low = mid;
    else high = mid;
  }
  return (low + high) / 2;
}

describe('two gases', () => {
  const [pressure, speed] = [1e5, 100];
  const gases = { inner: perfectFieldGas(1.18), outer: air };
  const carried =
    (isInner: (x: number, y: number) => boolean, v: number) =>
    (x: number, y: number): FlowPoint => ({
      density: isInner(x, y) ? 0.12 : 1.2,
      u: speed,
      v,
      pressure,
      share: isInner(x, y) ? 1 : 0,
    });

  // Wanted: one part in a thousand. It is kept to round-off, which on 32 bits is some 1e-5.
  test.each([
    [null, 1e-9],
    [64, 1e-9],
    [32, 1e-4],
  ] as const)(
    'a contact between them, carried along, leaves pressure and speed uniform; by the reference (null) or a kernel: %s',
    (bits, bound) => {
      const cells = 60;
      const mesh = meshBlock('flat', cells, 1, (i, j) => [i / cells, j / cells]);
      const sides = around(mesh, { iLow: free, iHigh: free, jLow: wall, jHigh: wall });
      const start = carried((x) => x < 0.3, 0);
      const kernel = bits === null ? null : flowKernel(bits);
      const field = run({ blocks: [{ mesh, sides }], gases, start, kernel }, 0.003);
      let inner = 0;
      for (let i = 0; i < cells; i++) {
        const cell = cellAt(mesh, i, 0);
        expect(Math.abs(field.pressure[cell]! / pressure - 1)).toBeLessThan(bound);
        expect(Math.abs(field.u[cell]! / speed - 1)).toBeLessThan(bound);
        inner += field.share[cell]! / cells;
      }
      // It has gone 0.3 of the length.
      expect(inner).toBeGreaterThan(0.55);
      expect(inner).toBeLessThan(0.65);
    },
  );

  test.each([
    [null, 1e-9],
    [64, 1e-9],
    [32, 1e-4],
  ] as const)(
    'a round bubble of a gas that is a table, carried askew over a crooked mesh, does so too: %s',
    (bits, bound) => {
      const n = 24;
      const mesh = meshBlock('flat', n, n, (i, j) => [
        (i + 0.3 * Math.sin(j)) / n,
        (j + 0.3 * Math.sin(2 * i)) / n,
      ]);
      const sides = around(mesh, { iLow: free, iHigh: free, jLow: free, jHigh: free });
      const start = carried((x, y) => (x - 0.35) ** 2 + (y - 0.4) ** 2 < 0.04, 60);
      const tabled = { inner: burstSetup().gases.inner, outer: air };
      const kernel = bits === null ? null : flowKernel(bits);
      const setup = { blocks: [{ mesh, sides }], gases: tabled, start, kernel };
      const inner = (field: Field, weight: (i: number, j: number) => number): number => {
        let sum = 0;
        for (let j = 0; j < n; j++)
          for (let i = 0; i < n; i++) {
            const cell = cellAt(mesh, i, j);
            sum += field.share[cell]! * field.density[cell]! * mesh.volume[cell]! * weight(i, j);
          }
        return sum;
      };
      const middle = (field: Field): number =>
        inner(field, (i, j) => middleOf(mesh, i, j)[0]) / inner(field, () => 1);
      const from = middle(run(setup, 0));
      const field = run(setup, 0.002);
      for (let j = 0; j < n; j++)
        for (let i = 0; i < n; i++) {
          const cell = cellAt(mesh, i, j);
          expect(Math.abs(field.pressure[cell]! / pressure - 1)).toBeLessThan(bound);
          expect(Math.abs(field.u[cell]! / speed - 1)).toBeLessThan(bound);
          expect(Math.abs(field.v[cell]! / 60 - 1)).toBeLessThan(bound);
        }
      // It has gone five cells; its edge is spread over two to three of them, not alike ahead and behind.
      expect(Math.abs((middle(field) - from) / (speed * 0.002) - 1)).toBeLessThan(0.06);
    },
  );
});

describe('what cannot be', () => {
  test('a folded mesh, an open side, a state without pressure are refused in words', () => {
    expect(() => meshBlock('flat', 2, 2, (i, j) => [-i, j])).toThrow(/folded/);
    expect(() => meshBlock('round', 2, 2, (i, j) => [i, j - 1])).toThrow(/axis/);
    const mesh = meshBlock('flat', 2, 2, (i, j) => [i, j]);
    const start = (): FlowPoint => ({ density: 1, u: 0, v: 0, pressure: 1, share: 0 });
    expect(() => newFlow({ blocks: [{ mesh, sides: [] }], gases: ONE, start })).toThrow(/not said/);
    expect(() =>
      newFlow({
        blocks: [{ mesh, sides: endless(mesh) }],
        gases: ONE,
        start: () => ({ density: 1, u: 0, v: 0, pressure: 0, share: 0 }),
      }),
    ).toThrow(/no state of a gas/);
    expect(() => perfectFieldGas(1)).toThrow(/no gas/);
  });

  test('a step far too long leaves the field as it was, and says where', () => {
    const mesh = meshBlock('flat', 20, 1, (i, j) => [i / 20, j / 20]);
    const sides = around(mesh, { iLow: wall, iHigh: wall, jLow: wall, jHigh: wall });
    const start = (x: number): FlowPoint => ({
      density: 1,
      u: 0,
      v: 0,
      pressure: x < 0.5 ? 1000 : 1,
      share: 0,
    });
    const flow = newFlow({ blocks: [{ mesh, sides }], gases: ONE, start });
    const before = [...flow.fields[0]!.pressure];
    expect(() => flow.step(1)).toThrow(/has no state any more at x/);
    for (let i = 0; i < 20; i++) {
      const cell = cellAt(mesh, i, 0);
      expect(flow.fields[0]!.pressure[cell]).toBe(before[cell]);
    }
    expect(flow.time).toBe(0);
  });
});
