/**
 * Numbers with the digits that their span allows, in the units of the audience.
 * Factors to customary units: A. Thompson, B. N. Taylor, NIST Special Publication 811 (2008), appendix B.8 (from memory):
 * 1 lbf = 4.448 221 615 260 5 N, 1 psi = 6 894.757 Pa, 1 ft = 0.3048 m, °F = 9/5 K − 459.67.
 */

import { expect, test } from 'vitest';
import { randomStream } from '../../../src/numerics/randomStream.ts';
import { convertedDigits, digitsAllowed, roundedTo } from '../../../src/telling/script/rounding.ts';
import { tellNumber } from '../../../src/telling/script/tellNumber.ts';
import { NUMBER, PRESSURE, piece, TEMPERATURE, TIME, told } from './told.ts';

const plain = (text: string): string => text.replaceAll('\u00a0', ' ').replaceAll('\u202f', ' ');
const text = (...args: Parameters<typeof tellNumber>): string => plain(tellNumber(...args).text);

test.each([
  // The last digit is the first that the ± leaves open: 343 ± 5 s, 840 ± 160 kg, 2.15 ± 0.05.
  [343, [338, 348], 3],
  [840, [629, 948], 1],
  [2.15, [2.1, 2.2], 3],
  // One digit, 0.02, would lie outside.
  [0.0247, [0.022, 0.032], 2],
  [97.68, [73.3, 97.9], 3],
  [1.96, [1.7, 2.1], 2],
  [343.0174, [343.0174, 343.0174], 3],
] as const)('%s within %s has %s digits', (value, [low, high], digits) => {
  expect(digitsAllowed(value, low, high)).toBe(digits);
});

test('what is said lies in what it may be, and with one digit fewer it would not, or say less than is known', () => {
  const next = randomStream(7);
  for (let i = 0; i < 3000; i++) {
    const value = 10 ** (6 * next() - 3);
    const [down, up] = [value * 0.3 * next() ** 2, value * 0.3 * next() ** 2];
    const [low, high] = [value - down, value + up];
    const digits = digitsAllowed(value, low, high);
    const { value: said } = roundedTo(value, digits, true);
    if (digits < 3) expect(said >= low && said <= high, `${value} ${low} ${high}`).toBe(true);
    if (digits === 1) continue;
    const fewer = roundedTo(value, digits - 1, true);
    const isOutside = fewer.value < low || fewer.value > high;
    expect(isOutside || fewer.step > (high - low) / 2, `${value} ${low} ${high}`).toBe(true);
  }
});

test.each([
  ['metric', '800 kN', 'eight hundred kilonewtons'],
  // 800 kN = 179 847 lbf; one digit more than 100 kN would claim 10 000 lbf = 44 kN.
  ['customary', '180 000 lbf', 'a hundred and eighty thousand pounds of force'],
  [
    'both',
    '800 kN (180 000 lbf)',
    'eight hundred kilonewtons, or a hundred and eighty thousand pounds of force',
  ],
] as const)('a thrust for an audience of %s units', (audience, written, said) => {
  const found = tellNumber(piece('x', { digits: 2 }), told('x', 801_300, [790_000, 812_000]), audience);
  expect(plain(found.text)).toBe(written);
  expect(found.spoken).toBe(said);
});

test('a converted number never looks more exact than its source', () => {
  const next = randomStream(11);
  for (let i = 0; i < 3000; i++) {
    const value = 10 ** (6 * next() - 1);
    const source = roundedTo(value, 1 + Math.floor(3 * next()), true);
    const factor = [0.2248089, 145.0377e-3, 3.28084, 2.204623, 0.6213712][Math.floor(5 * next())]!;
    const digits = convertedDigits(source, factor, source.value * factor);
    const { step } = roundedTo(source.value * factor, digits, true);
    if (digits > 1)
      expect(step, `${source.value} × ${factor}`).toBeGreaterThanOrEqual(source.step * factor * (1 - 1e-9));
  }
});

test('what is stated exactly is converted with three digits', () => {
  const chamber = told('p', 100e5, [100e5, 100e5], { dimension: PRESSURE, quantity: 'chamber.pressure' });
  expect(text(piece('p'), chamber, 'both')).toBe('100 bar (1450 psi)');
});

test('a temperature has the zero of its scale, a difference has none', () => {
  const gas = { dimension: TEMPERATURE, quantity: 'chamber.temperature' };
  // 3600 K = 6020.33 °F; 100 K of difference are 180 °F.
  expect(text(piece('T', { digits: 4 }), told('T', 3600, [3590, 3610], gas), 'customary')).toBe('6020 °F');
  const difference = told('d', 100, [90, 110], { ...gas, isDifference: true });
  expect(text(piece('d', { digits: 3 }), difference, 'customary')).toBe('180 °F');
  expect(text(piece('T', { unit: '°C' }), told('T', 300, [300, 300], gas), 'metric')).toBe('26.9 °C');
});

test('about stands before what is rounded, and not before what is exact', () => {
  expect(
    text(piece('t', { about: true }), told('t', 343.02, [338, 348], { dimension: TIME }), 'metric'),
  ).toBe('about 343 s');
  expect(text(piece('t', { about: true }), told('t', 25, [25, 25], { dimension: NUMBER }), 'metric')).toBe(
    '25',
  );
  const both = tellNumber(
    piece('F', { about: true, digits: 2 }),
    told('F', 801_300, [790_000, 812_000]),
    'both',
  );
  expect(plain(both.text)).toBe('about 800 kN (180 000 lbf)');
});

test('a span close to the whole is said as it is written', () => {
  const share = told('g', 1.004, [1.003, 1.005], { dimension: NUMBER, quantity: null });
  const found = tellNumber(piece('g', { span: true, unit: '%' }), share, 'metric');
  expect(plain(found.text)).toBe('about 100.4 %');
  expect(found.spoken).toBe('about one hundred point four per cent');
});

test('as words, bare, in per cent, as a span', () => {
  const ratio = told('r', 15.94, [15.8, 16.1], { dimension: NUMBER });
  expect(text(piece('r', { about: true, spoken: true }), ratio, 'metric')).toBe('about fifteen point nine');
  const share = told('s', 0.0243, [0.022, 0.032], { dimension: NUMBER });
  expect(text(piece('s', { unit: '%', digits: 2 }), share, 'metric')).toBe('2.4 %');
  const thrust = told('F', 801_300, [790_000, 812_000], { quantity: 'thrust' });
  expect(text(piece('F', { bare: true, digits: 2 }), thrust, 'customary')).toBe('800');
  const gain = told('g', 2.4, [0.6, 3.9], { dimension: TIME, quantity: 'specificImpulse' });
  const span = tellNumber(piece('g', { span: true }), gain, 'metric');
  expect(plain(span.text)).toBe('between 0.5 and 4 s');
  expect(span.spoken).toBe('between zero point five and four seconds');
});

test('what has no value, or another kind of unit, says so', () => {
  const missing = tellNumber(piece('x', { unit: 'bar' }), told('x', 1), 'metric');
  expect(missing).toMatchObject({
    text: '[no value: x]',
    value: null,
    problem: { code: 'unit-of-other-kind' },
  });
  expect(tellNumber(piece('y'), undefined, 'metric').problem?.code).toBe('number-not-told');
});
