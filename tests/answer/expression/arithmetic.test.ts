import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { unitTable } from '../../../src/study/unitTable.ts';
import { expressed, holds, refused } from './alderScope.ts';

const value = (text: string): number | null => expressed(text).evaluate([]);

describe('precedence is that of ordinary algebra', () => {
  test.each([
    ['2 + 3 * 4', 14],
    ['(2 + 3) * 4', 20],
    ['2 - 3 - 4', -5],
    ['24 / 4 / 2', 3],
    ['24 / 4 * 2', 12],
    ['2 ^ 3 ^ 2', 512],
    ['-2 ^ 2', -4],
    ['(-2) ^ 2', 4],
    ['2 ^ -1', 0.5],
    ['2 * -3', -6],
    ['- - 3', 3],
    ['3²', 9],
    ['2³ + 1', 9],
    ['twice 3 + 1', 7],
    ['twice 3 ^ 2', 18],
    ['half of 3 * 4', 6],
    ['2 × 3 ÷ 6 − 1', 0],
    ['1.5e3 + .5', 1500.5],
    ['abs(-3) + min(4, 2, 3) * max(1, 5)', 13],
    ['sqrt(16) + ln(exp(2))', 6],
    ['sin(30 deg) + cos(60 deg) + tan(45 deg)', 2],
  ])('%s = %d', (text, expected) => {
    expect(value(text)).toBeCloseTo(expected, 12);
  });
});

describe('units', () => {
  test('every unit of the study is read behind a number, to its exact size', () => {
    for (const [symbol, { times, over, zero = 0 }] of unitTable) {
      expect(value(`3 ${symbol}`), symbol).toBeCloseTo((3 * times) / over + zero, 9);
    }
  });

  test.each([
    ['3 km / 2 s', 1500],
    ['3 km/2 s', 1500],
    ['36 km/h', 10],
    ['9.80665 m/s²', 9.80665],
    ['2 kg/m^3', 2],
    ['(3 m)^2', 9],
    ['3 m^2', 3],
    ['500 psi absolute', 3447378.6],
    ['5 per cent + 5 percent + 5 %', 0.15],
    ['20 °C', 293.15],
    ['2 seconds + 1 min', 62],
    ['5 µm * 1e6', 5],
  ])('%s', (text, expected) => {
    expect(value(text)! / expected).toBeCloseTo(1, 6);
  });

  test('a power of a quantity has the power of its kind', () => {
    expect(expressed('(4 m^2)^(1/2)').dimension).toEqual([0, 1, 0, 0, 0, 0]);
    expect(expressed('sqrt(bell.thrust(0 km) / (1 bar))').dimension).toEqual([0, 1, 0, 0, 0, 0]);
    expect(expressed('bell.thrust(0 km) / (bell.massFlow * 9.80665 m/s^2)').dimension).toEqual([
      0, 0, 1, 0, 0, 0,
    ]);
  });

  test('temperatures are absolute, differences of them are in kelvin', () => {
    expect(holds('20 °C < 300 K')).toBe(true);
    expect(holds('20 °C > 293.15 K - 0.1 K')).toBe(true);
    expect(refused('20 °C + 3 K > 290 K').code).toBe('degrees-in-arithmetic');
    expect(refused('2 * 20 °C > 290 K').code).toBe('degrees-in-arithmetic');
    expect(refused('bell.exit.temperature - plug.exit.temperature > 20 °C').code).toBe(
      'difference-with-degrees',
    );
    expect(holds('295 K is 20 °C within 3 °C')).toBe(true);
    expect(holds('297 K is 20 °C within 3 °C')).toBe(false);
  });
});

describe('multiples in words', () => {
  test.each([
    ['twice 3', 6],
    ['double 3', 6],
    ['three times 3', 9],
    ['2.5 times 4', 10],
    ['a third of 9', 3],
    ['22 % of 50', 11],
    ['50 % of 20 % of 10 + 1', 2],
    ['one quarter of 8', 2],
    ['two thirds of 9', 6],
    ['three quarters of 8', 6],
    ['a tenth of 5', 0.5],
    ['half 5', 2.5],
    ['twice as much as 4', 8],
    ['ten times as large as 4', 40],
    ['a hundred times 2', 200],
  ])('%s', (text, expected) => {
    expect(value(text)).toBeCloseTo(expected, 12);
  });
});

test('what has no value is told, never NaN', () => {
  const { evaluate, absent } = expressed('1 / (bell.massFlow - plug.massFlow)');
  expect(evaluate([5, 4])).toBe(1);
  expect(evaluate([4, 4])).toBeNull();
  expect(absent([4, 4])).toMatchObject({ ask: null, why: 'This divides by zero.' });
  expect(absent([4, null])).toMatchObject({ ask: 1, expression: 'plug.massFlow' });
  expect(absent([5, 4])).toBeNull();
  expect(expressed('sqrt(bell.massFlow - plug.massFlow)').absent([1, 2])?.why).toContain('square root');
  expect(expressed('exp(bell.massFlow / (1 kg/s))').evaluate([1e4])).toBeNull();
  for (const text of ['1 / 0 > 1', 'sqrt(-1) > 1', 'ln(0) > 1', '10 ^ 400 > 1', '(-8) ^ (1/3) > 1']) {
    expect(refused(text).code).toBe('arithmetic-without-value');
  }
});

/** A tree, its text with brackets only where needed or at random, and its value by JavaScript itself. */
interface Sample {
  readonly text: string;
  readonly value: number;
}

const samples = fc.letrec<{ any: Sample }>((tie) => ({
  any: fc.oneof(
    { maxDepth: 6, withCrossShrink: true },
    fc
      .float({ min: Math.fround(0.01), max: 100, noNaN: true })
      .map((x) => ({ text: String(Number(x.toFixed(3))), value: Number(x.toFixed(3)) })),
    ...(['+', '-', '*', '/'] as const).map((operator) =>
      fc.tuple(tie('any'), tie('any')).map(([a, b]) => ({
        text: `(${a.text}) ${operator} (${b.text})`,
        value: {
          '+': a.value + b.value,
          '-': a.value - b.value,
          '*': a.value * b.value,
          '/': a.value / b.value,
        }[operator],
      })),
    ),
    tie('any').map((a) => ({ text: `-(${a.text})`, value: -a.value })),
    tie('any').map((a) => ({ text: `sqrt(${a.text})`, value: Math.sqrt(a.value) })),
    tie('any').map((a) => ({ text: `exp(${a.text})`, value: Math.exp(a.value) })),
    tie('any').map((a) => ({ text: `ln(${a.text})`, value: Math.log(a.value) })),
    fc
      .tuple(tie('any'), tie('any'))
      .map(([a, b]) => ({ text: `max(${a.text}, ${b.text})`, value: Math.max(a.value, b.value) })),
    fc
      .tuple(tie('any'), fc.integer({ min: -3, max: 4 }))
      .map(([a, n]) => ({ text: `(${a.text}) ^ ${n}`, value: a.value ** n })),
  ),
}));

test('random trees give what JavaScript’s own arithmetic gives', () => {
  let compared = 0;
  fc.assert(
    fc.property(samples.any, (sample) => {
      const text = `${sample.text} + 0 * bell.areaRatio`;
      if (text.length > 4000) return;
      // Asked numbers keep a whole tree from being worked out while it is compiled, so nothing is refused.
      const asked = text.replace(/\d+(?:\.\d+)?/, '$& * plug.areaRatio');
      let got: number | null;
      try {
        const expression = expressed(asked);
        got = expression.evaluate(expression.asks.map(() => 1));
      } catch (error) {
        expect(String(error)).toMatch(/divides by zero|square root|logarithm|too large|power has no value/);
        return;
      }
      if (got === null) return;
      compared += 1;
      // Every finite value agrees to the last rounding; where JavaScript’s passes through infinity ours has none.
      expect(
        Object.is(got, sample.value + 0) || Math.abs(got - sample.value) <= 1e-12 * Math.abs(sample.value),
      ).toBe(true);
    }),
    { seed: 4, numRuns: 3000 },
  );
  expect(compared).toBeGreaterThan(1000);
});

test('precedence without brackets is that of JavaScript', () => {
  const operand = fc.integer({ min: 1, max: 30 }).map(String);
  const chain = fc.array(fc.tuple(fc.constantFrom('+', '-', '*', '/'), operand), {
    minLength: 1,
    maxLength: 12,
  });
  fc.assert(
    fc.property(operand, chain, (first, rest) => {
      const text = first + rest.map(([operator, x]) => ` ${operator} ${x}`).join('');
      expect(value(text)).toBeCloseTo(byHand(text), 9);
    }),
    { seed: 5, numRuns: 1000 },
  );
});

/** Products first, then sums, each from the left. */
function byHand(text: string): number {
  const [first, ...tokens] = text.split(' ');
  let sum = 0;
  let product = Number(first);
  for (let i = 0; i < tokens.length; i += 2) {
    const x = Number(tokens[i + 1]);
    if (tokens[i] === '*') product *= x;
    else if (tokens[i] === '/') product /= x;
    else {
      sum += product;
      product = tokens[i] === '+' ? x : -x;
    }
  }
  return sum + product;
}
