/** Where the shaders find a flow: one buffer of each kind for all blocks together, their cells with ghosts one behind the other. */

import { CELL_VALUES } from '../field.ts';

/** Words of the lists’ entries. */
export const WIDE = { cells: 2, faces: 3, ghosts: 6, marks: 4, corners: 2 } as const;

/** Kinds of ghosts. */
export const GHOST = { copy: 0, carried: 1, mirror: 2, given: 3, far: 4, pressed: 5, reservoir: 6 } as const;

/** Places of a reservoir’s table, even in √(1 − p/p₀). */
export const RESERVOIR_PLACES = 512;

/** What the shaders count. */
export const STATUS = {
  /** Cells that broke: in the first stage, in the second, while tangents were renewed. */ broke: 0,
  tries: 3,
  /** Steps still to take. */ left: 4,
  steps: 5,
  rescued: 6,
  failed: 7,
  firstBroken: 8,
  someBlurred: 9,
  /** Bits of the shortest step [s]. */ shortest: 10,
  words: 11,
} as const;

/** The head of all shaders: bindings, where things lie, and the numbers of the scheme. */
export function shaderHead(
  counts: Readonly<Record<string, number>>,
  shares: Readonly<Record<string, number>>,
): string {
  const constants = [
    ...Object.entries(counts).map(([name, count]) => `const ${name} = ${count}u;`),
    ...Object.entries(shares).map(([name, share]) => `const ${name} = f32(${share});`),
  ];
  const words = Object.entries(STATUS).map(([name, at]) => `const S_${name} = ${at}u;`);
  const kinds = Object.entries(GHOST).map(([name, at]) => `const G_${name} = ${at}u;`);
  const values = CELL_VALUES.map((name, at) => `const V_${name} = ${at}u;`);
  return /* wgsl */ `
${[...constants, ...words, ...kinds, ...values].join('\n')}

struct Case {
  /** Cells with ghosts of all blocks. */ all: u32,
  cells: u32, faces: u32, ghosts: u32, marks: u32, corners: u32,
  /** Where the lists begin. */ cellsAt: u32, facesAt: u32, ghostsAt: u32, marksAt: u32, cornersAt: u32,
  /** Where the gases stand among the numbers. */ inner: u32, outer: u32,
  /** 1: each cell its own step. */ own: u32,
  /** 1: without slopes. */ flat: u32,
  courant: f32,
  seconds: f32,
  /** Longest of the own steps over the shortest; 0: any. */ spread: f32,
}

@group(0) @binding(0) var<uniform> flow: Case;
@group(0) @binding(1) var<storage, read_write> field: array<f32>;
@group(0) @binding(2) var<storage, read> mesh: array<f32>;
@group(0) @binding(3) var<storage, read_write> flux: array<f32>;
/** Shocks of each cell (1 across the first index, 2 across the second), then steps for which it goes without slopes. */
@group(0) @binding(4) var<storage, read_write> marks: array<atomic<u32>>;
@group(0) @binding(5) var<storage, read> lists: array<u32>;
@group(0) @binding(6) var<storage, read> numbers: array<f32>;
@group(0) @binding(7) var<storage, read_write> status: array<atomic<u32>>;

/** Stage of the step: 0 or 1. */
override stage: u32 = 0;

fn value(kind: u32, cell: u32) -> f32 { return field[kind * flow.all + cell]; }
fn put(kind: u32, cell: u32, to: f32) { field[kind * flow.all + cell] = to; }
fn keptPlace(kind: u32, cell: u32) -> u32 { return (9u + kind) * flow.all + cell; }
fn secondsPlace(cell: u32) -> u32 { return 18u * flow.all + cell; }
fn metric(kind: u32, cell: u32) -> f32 { return mesh[kind * flow.all + cell]; }
fn told(word: u32) -> u32 { return atomicLoad(&status[word]); }

/** Nothing more is to be done. */
fn over() -> bool { return told(S_left) == 0u || told(S_failed) != 0u; }
fn brokeBefore(phase: u32) -> bool {
  return (phase > 0u && told(S_broke) > 0u) || (phase > 1u && told(S_broke + 1u) > 0u);
}
fn withoutSlopes() -> bool { return flow.flat == 1u || told(S_tries) == TRIES; }

/** By its bits, for shaders may take it that no number is none. */
fn isAboveNothing(x: f32) -> bool {
  let bits = bitcast<u32>(x);
  return bits > 0u && bits < 0x7f800000u;
}

/** Noted, and to go without slopes with all beside it. */
fn broke(phase: u32, cell: u32, stride: u32) {
  atomicAdd(&status[S_broke + phase], 1u);
  atomicMin(&status[S_firstBroken], cell);
  for (var row = 0u; row < 3u; row++) {
    for (var column = 0u; column < 3u; column++) {
      atomicStore(&marks[flow.all + cell + row * stride + column - stride - 1u], BLURRED_STEPS);
    }
  }
}
`;
}
