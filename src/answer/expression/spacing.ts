/** How the points of a range are spaced: evenly (times always), in equal ratios, or closer at the low end. */

import type { RangePlace, TestedRange } from './model.ts';
import { type Ends, TOP } from './rangeEnds.ts';
import type { RangeUse } from './rangeUse.ts';

/** Ranges whose ends differ by this factor are spaced in equal ratios. */
const WIDE = 10;
/** Altitudes are spaced as u to this power: closer where the air is dense. */
const LOW_END = 1.5;

export interface Scale {
  readonly spacing: TestedRange['spacing'];
  /** Value at a share u of the range. */ readonly at: (u: number) => number;
}

export function scaleOf({ from, to }: Ends, use: RangeUse): Scale {
  const low = from === 'vacuum' ? TOP : from;
  const high = to === 'vacuum' ? TOP : to;
  const [least, most] = [Math.min(low, high), Math.max(low, high)];
  if (use.of === 'altitude') {
    const up = high > low;
    const at = (u: number): number => least + (most - least) * (up ? u : 1 - u) ** LOW_END;
    return { spacing: 'closer at the low end', at };
  }
  if (use.of === 'pressure' && least === 0) {
    const up = high > low;
    return { spacing: 'closer at the low end', at: (u) => most * (up ? u : 1 - u) ** 2 };
  }
  if (use.of !== 'time' && least > 0 && most / least >= WIDE) {
    return { spacing: 'in equal ratios', at: (u) => low * (high / low) ** u };
  }
  return { spacing: 'even', at: (u) => low + (high - low) * u };
}

export function pointsOf({ from, to }: Ends, { at }: Scale, count: number): readonly RangePlace[] {
  const vacuum = from === 'vacuum' || to === 'vacuum';
  const steps = count - (vacuum ? 2 : 1);
  const values = Array.from({ length: steps + 1 }, (_, i): RangePlace => at(i / steps));
  // The ends are as written, not as rounded on the way.
  if (typeof from === 'number') values[0] = from;
  if (typeof to === 'number') values[steps] = to;
  if (from === 'vacuum') return ['vacuum', ...values];
  return to === 'vacuum' ? [...values, 'vacuum'] : values;
}
