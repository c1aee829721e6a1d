/** Where a block lies in memory: 32-bit words at its address, see kernelMemory.ts, which writes them. */

// @ts-ignore: decorator
@inline
export function word(block: usize, at: i32): i32 {
  return load<i32>(block + (<usize>at << 2));
}

// @ts-ignore: decorator
@inline
export function place(block: usize, at: i32): usize {
  return <usize>load<u32>(block + (<usize>at << 2));
}

export const NI = 0;
export const NJ = 1;
export const STRIDE = 2;
export const ROUND = 3;
/** Arrays of cells. */
export const DENSITY = 4;
export const U = 5;
export const V = 6;
export const PRESSURE = 7;
export const SHARE = 8;
export const KAPPA = 9;
export const ETA = 10;
export const ZETA = 11;
export const ENERGY = 12;
/** As they were before the step, in the same order. */
export const KEPT = 13;
export const VOLUME = 22;
export const PLANE = 23;
/** Faces at the place of the cell before them: unit normal and area. */
export const I_X = 24;
export const I_Y = 25;
export const I_AREA = 26;
export const J_X = 27;
export const J_Y = 28;
export const J_AREA = 29;
/** Bytes. */
export const SHOCK_I = 30;
export const SHOCK_J = 31;
export const BLURRED = 32;
export const I_WALL = 33;
export const J_WALL = 34;
export const SECONDS = 35;
/** Rows of work space, each as long as a row of cells and a little more; those of each thread one behind the other. */
export const ROWS = 36;
export const ROW_BYTES = 37;
/** Cells that broke. */
export const BROKEN = 38;
