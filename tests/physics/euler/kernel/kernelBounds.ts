/**
 * How far the kernel may be from the reference, against the largest value of each kind.
 *
 * On 64 bits both do the same sums in another order: a step rounds some hundred numbers by 1.1e-16 each, and in a hundred
 * steps of a flow with shocks that grows to some 1e-14; 1e-11 leaves room for other processors.
 * On 32 bits each rounding is 6e-8: some 1e-5 in the same number of steps. Towards rest, where a shock still moves on its
 * way, it may stand elsewhere by a share of a cell: there the mean over the cells is held to the bound, and the largest
 * difference to fifty times that.
 */

import { expect } from 'vitest';
import { COMPARED, type differences } from './kernelCases.ts';

export const BOUNDS = {
  64: { time: 1e-11, rest: 1e-11, mass: 1e-13 },
  32: { time: 1e-4, rest: 5e-4, mass: 1e-6 },
} as const;

const MOST = 50;

export function agreesWith(off: ReturnType<typeof differences>, bound: number): void {
  for (const key of COMPARED) {
    expect(off[key].mean, key).toBeLessThan(bound);
    expect(off[key].most, key).toBeLessThan(MOST * bound);
  }
}
