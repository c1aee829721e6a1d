import { describe, expect, it } from 'vitest';
import { parseQuantity } from '../../src/study/units.ts';
import type { QuantityKind } from '../../src/study/unitTable.ts';
import { studyOf } from '../answer/solveText.ts';

const read = (text: string, kind: QuantityKind) => {
  const parsed = parseQuantity(text, kind);
  if (!parsed.ok) throw new Error(parsed.problem.what);
  return parsed.value;
};

describe('ranges', () => {
  it.each<[string, QuantityKind, number, number]>([
    ['95 to 97 %', 'share', 0.95, 0.97],
    ['95 % to 97 %', 'share', 0.95, 0.97],
    ['95–97 %', 'share', 0.95, 0.97],
    ['3.4 … 3.6', 'number', 3.4, 3.6],
    ['3.4...3.6', 'number', 3.4, 3.6],
    ['900 kPa to 10 bar', 'pressure', 9e5, 1e6],
    ['−5 to 5 km', 'length', -5000, 5000],
    ['-10 to 20 °C', 'temperature', 263.15, 293.15],
  ])('%s lies anywhere between its ends', (text, kind, low, high) => {
    const { value, plusMinus, spread } = read(text, kind);
    expect(spread?.kind).toBe('even');
    expect(spread!.low).toBeCloseTo(low, 9);
    expect(spread!.high).toBeCloseTo(high, 9);
    expect(value).toBeCloseTo((low + high) / 2, 9);
    expect(plusMinus).toBeNull();
  });

  it.each(['3.4 to 3.6 most likely 3.55', '3.4 to 3.6, most likely 3.55'])(
    '%s has a peak, which is taken',
    (text) => {
      expect(read(text, 'number')).toMatchObject({
        value: 3.55,
        spread: { kind: 'triangular', low: 3.4, high: 3.6, peak: 3.55 },
      });
    },
  );

  it.each([
    ['97 to 95 %', 'lower end first'],
    ['95 to 95 %', 'lower end first'],
    ['3.4 to 3.6 most likely 3.7', 'between the two ends'],
    ['3.4 ± 0.1 to 3.6', 'either'],
    ['3.4 to much', 'number'],
    ['3.4-3.6', 'with “to”'],
    ['3.4 − 3.6', 'with “to”'],
  ])('%s is refused', (text, mend) => {
    const parsed = parseQuantity(text, 'share', 'number');
    expect(parsed.ok ? '' : `${parsed.problem.what} ${parsed.problem.mend}`).toContain(mend);
  });

  it('stay with their engine, in a braced list as well, and both ends are held to what is allowed', async () => {
    const engine = (ratio: string): string => `
a:
  propellants: { oxidiser: oxygen, fuel: methane, ratio: ${ratio} }
  chamber: { pressure: 100 bar }
  size: { throat: 200 mm }
  nozzle: { kind: cone, areaRatio: 10 }
`;
    const study = await studyOf(engine('3.4 to 3.6 most likely 3.5'));
    expect(study.engines[0]!.propellants).toMatchObject({
      mixture: { ratio: { value: 3.5, spread: { low: 3.4, high: 3.6 } } },
    });
    await expect(studyOf(engine('-1 to 3.6'))).rejects.toThrow('outside the range');
  });
});
