/** Flows that ask everything of a step, taken by the reference or by a kernel; in Node and in a browser. */

import { attempt } from '../../../../src/numerics/problem.ts';
import {
  cellAt,
  evenTable,
  type Field,
  type Flow,
  type FlowKernel,
  type FlowPoint,
  type FlowSetup,
  flowKernel,
  meshBlock,
  newFlow,
  perfectFieldGas,
  type SidePart,
  type StepTeam,
  tabledFieldGas,
} from '../../../../src/physics/euler/index.ts';

export type By = 32 | 64 | 'reference';

export interface CaseFields {
  /** Cells of all blocks one behind the other, without ghosts. */ readonly density: readonly number[];
  readonly u: readonly number[];
  readonly v: readonly number[];
  readonly pressure: readonly number[];
  readonly share: readonly number[];
  readonly rescued: number;
  readonly mass: number;
  readonly time: number;
}
export const COMPARED = ['density', 'u', 'v', 'pressure', 'share'] as const;

/** e = θ/(γ − 1) with γ from 1.3 when cold to 1.15 when hot and thin: smooth, as a table. */
const exhaust = tabledFieldGas(
  evenTable(
    { from: Math.log(1e3), step: 0.3, count: 33 },
    { from: Math.log(2e4), step: 0.12, count: 40 },
    Float64Array.from({ length: 33 * 40 }, (_, k) => {
      const [x, y] = [Math.floor(k / 40) / 33, (k % 40) / 40];
      const gamma = 1.3 - 0.1 * y - 0.05 * (1 - x) * y;
      return Math.exp(Math.log(2e4) + 0.12 * (k % 40)) / (gamma - 1);
    }),
  ),
);
const air = perfectFieldGas(1.4);
const wall = { is: 'wall' } as const;

/** Hot exhaust bursts from one of two crooked round blocks into the still air of the other, walls all round but a far end. */
export function burstSetup(): FlowSetup {
  const [ni, nj] = [22, 17];
  const node = (from: number) => (i: number, j: number) =>
    [
      from + 0.05 * i + 0.01 * Math.sin(j) * Math.sin((Math.PI * i) / ni),
      0.04 * j + 0.006 * Math.sin(2 * i) * Math.sin((Math.PI * j) / nj),
    ] as const;
  const joined = (block: number, side: SidePart['side']) =>
    ({ is: 'joined', block, side, from: 0, up: true }) as const;
  const still: FlowPoint = { density: 1.2, u: 0, v: 0, pressure: 1e5, share: 0 };
  const part = (side: SidePart['side'], kind: SidePart['kind']): SidePart => ({
    side,
    from: 0,
    to: side.startsWith('i') ? nj : ni,
    kind,
  });
  return {
    blocks: [
      {
        mesh: meshBlock('round', ni, nj, node(0)),
        sides: [
          part('iLow', wall),
          part('iHigh', joined(1, 'iLow')),
          part('jLow', wall),
          part('jHigh', wall),
        ],
      },
      {
        mesh: meshBlock('round', ni, nj, node(0.05 * ni)),
        sides: [
          part('iLow', joined(0, 'iHigh')),
          part('iHigh', { is: 'far', air: still }),
          part('jLow', wall),
          part('jHigh', wall),
        ],
      },
    ],
    gases: { inner: exhaust, outer: air },
    start: (x, y) => (x < 0.7 && y < 0.4 ? { density: 3, u: 400, v: 50, pressure: 3e6, share: 1 } : still),
  };
}

export function burst(by: By, steps: number, own: boolean, team: StepTeam | null = null): CaseFields {
  const flow = newFlow({ ...burstSetup(), kernel: kernelBy(by, team) });
  for (let n = 0; n < steps; n++) {
    if (own) flow.relax(0.6);
    else flow.step(flow.stableStep(0.5));
  }
  return told(flow);
}

function kernelBy(by: By, team: StepTeam | null): FlowKernel | null {
  return by === 'reference' ? null : flowKernel(by, team);
}

const blast = (x: number, y: number): FlowPoint => ({
  density: 1,
  u: 0,
  v: 0,
  pressure: (x - 0.4) ** 2 + (y - 0.5) ** 2 < 0.02 ? 1000 : 0.01,
  share: 0,
});
/** Tossed about so fast that the second order finds no state in places. */
const tossed = (x: number, y: number): FlowPoint => ({
  density: 1 + 0.5 * Math.sin(40 * y) * Math.sin(30 * x),
  u: 20 * Math.sin(40 * x + 3 * y),
  v: 20 * Math.cos(37 * x * y),
  pressure: 1 + 0.9 * Math.sin(50 * x),
  share: 0,
});

/** A flat box of one gas. */
export function boxSetup(which: 'blast' | 'tossed'): FlowSetup {
  const n = 21;
  return {
    blocks: [
      {
        mesh: meshBlock('flat', n, n, (i, j) => [i / n, j / n]),
        sides: (['iLow', 'iHigh', 'jLow', 'jHigh'] as const).map((side) => ({
          side,
          from: 0,
          to: n,
          kind: wall,
        })),
      },
    ],
    gases: { inner: air, outer: air },
    start: which === 'blast' ? blast : tossed,
  };
}

export function box(
  by: By,
  which: 'blast' | 'tossed',
  courant: number,
  steps: number,
  team: StepTeam | null = null,
): CaseFields & { readonly problem: string | null } {
  const flow = newFlow({ ...boxSetup(which), kernel: kernelBy(by, team) });
  const taken = attempt(() => {
    for (let k = 0; k < steps; k++) flow.step(flow.stableStep(courant));
  });
  return { ...told(flow), problem: taken.ok ? null : taken.problem.what };
}

export function told(flow: Pick<Flow, 'fields' | 'rescued' | 'time'>): CaseFields {
  const all = (of: (field: Field) => ArrayLike<number>): number[] =>
    flow.fields.flatMap((field) => {
      const { ni, nj } = field.mesh;
      return Array.from({ length: ni * nj }, (_, k) =>
        Number(of(field)[cellAt(field.mesh, k % ni, Math.floor(k / ni))]),
      );
    });
  const volumes = all(({ mesh }) => mesh.volume);
  const density = all((field) => field.density);
  return {
    density,
    u: all((field) => field.u),
    v: all((field) => field.v),
    pressure: all((field) => field.pressure),
    share: all((field) => field.share),
    rescued: flow.rescued,
    mass: density.reduce((sum, rho, k) => sum + rho * volumes[k]!, 0),
    time: flow.time,
  };
}

/** Largest and mean difference of each value, against the largest of the reference. */
export function differences(
  of: CaseFields,
  reference: CaseFields,
): Readonly<Record<(typeof COMPARED)[number], { readonly most: number; readonly mean: number }>> {
  const differ = (key: (typeof COMPARED)[number]) => {
    // Where all are 0, as the share of a gas that is not there, the difference itself.
    const scale = Math.max(...reference[key].map(Math.abs)) || 1;
    const off = of[key].map((value, k) => Math.abs(value - reference[key][k]!) / scale);
    return { most: Math.max(...off), mean: off.reduce((a, b) => a + b, 0) / off.length };
  };
  return {
    density: differ('density'),
    u: differ('u'),
    v: differ('v'),
    pressure: differ('pressure'),
    share: differ('share'),
  };
}
