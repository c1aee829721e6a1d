/** Slopes of a row by van Leer’s harmonic mean: see slopes.ts of the reference. */

import { BLURRED, DENSITY, PRESSURE, place, SHARE, U, V } from './block';
import { lanes, marked } from './lanes';

// @ts-ignore: decorator
@inline
function slope<T extends number>(at: usize, step: usize, live: v128): v128 {
  const here = v128.load(at);
  const behind = v128.sub<T>(here, v128.load(at - step));
  const ahead = v128.sub<T>(v128.load(at + step), here);
  const product = v128.mul<T>(behind, ahead);
  const mean = v128.div<T>(v128.add<T>(product, product), v128.add<T>(behind, ahead));
  return v128.and(mean, v128.and(live, v128.gt<T>(product, v128.splat<T>(<T>0))));
}

/**
 * Five rows of slopes: density, u, v, pressure, share.
 * @param row bytes from the arrays’ beginning to that of the row of cells
 * @param from first cell of the row @param step bytes to the next cell along the index
 */
export function slopesOfRow<T extends number>(
  block: usize,
  row: usize,
  from: i32,
  count: i32,
  step: usize,
  out: usize,
  width: usize,
  flat: bool,
): void {
  const first = <usize>from * sizeof<T>();
  const end = first + <usize>count * sizeof<T>();
  if (flat) {
    for (let k = 0; k < 5; k++) memory.fill(out + <usize>k * width, 0, width);
    return;
  }
  const density = place(block, DENSITY) + row;
  const u = place(block, U) + row;
  const v = place(block, V) + row;
  const pressure = place(block, PRESSURE) + row;
  const share = place(block, SHARE) + row;
  const blurred = place(block, BLURRED) + row / sizeof<T>();
  for (let at = first; at < end; at += 16) {
    const live = v128.not(marked<T>(blurred + at / sizeof<T>()));
    v128.store(out + at, slope<T>(density + at, step, live));
    v128.store(out + at + width, slope<T>(u + at, step, live));
    v128.store(out + at + 2 * width, slope<T>(v + at, step, live));
    v128.store(out + at + 3 * width, slope<T>(pressure + at, step, live));
    v128.store(out + at + 4 * width, slope<T>(share + at, step, live));
  }
}
