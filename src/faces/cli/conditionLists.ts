/** `1 bar, 0.2 bar, 0 Pa` and `5 km, 12 km`, as options of the command line. */

import { parseQuantity, type QuantityKind } from '../../study/index.ts';
import { BadInput } from './badInput.ts';

interface Allowed {
  readonly lowest: number;
  readonly highest: number;
  readonly words: string;
}

/** @throws BadInput when a part is no quantity of the kind, or outside what is allowed */
function quantityList(text: string, kind: QuantityKind, option: string, allowed: Allowed): readonly number[] {
  const parts = text.split(',').map((part) => part);
  return parts.map((part, i) => {
    const next = parts[i + 1];
    if (next !== undefined && /^[+-]?\d+$/.test(part) && /^\d+\s*\D/.test(next)) {
      throw new BadInput([
        {
          code: 'decimal-comma',
          what: `${option}: “${part}” has no unit.`,
          mend: `If ${part},${next} is one value, write ${part}.${next}, with a point; commas stand between values, and each needs its unit.`,
        },
      ]);
    }
    const parsed = parseQuantity(part, kind);
    if (!parsed.ok) throw new BadInput([{ ...parsed.problem, what: `${option}: ${parsed.problem.what}` }]);
    const { value } = parsed.value;
    if (value >= allowed.lowest && value <= allowed.highest) return value;
    throw new BadInput([
      {
        code: 'condition-outside',
        what: `${option}: “${part}” is outside ${allowed.words}.`,
        mend: `Give values from ${allowed.words}, with commas between them.`,
      },
    ]);
  });
}

/** [Pa] */
export function ambientList(text: string): readonly number[] {
  return quantityList(text, 'pressure', '--ambient', {
    lowest: 0,
    highest: Number.MAX_VALUE,
    words: '0 Pa upwards',
  });
}

/** [m] geometric */
export function altitudeList(text: string): readonly number[] {
  return quantityList(text, 'length', '--altitude', {
    lowest: -5000,
    highest: 1_000_000,
    words: '−5 km to 1000 km',
  });
}
