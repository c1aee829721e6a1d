import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { findUnit, formatQuantity, parseQuantity, toSI } from '../../src/study/units.ts';
import { type QuantityKind, quantityKinds, unitSpellings, unitTable } from '../../src/study/unitTable.ts';

const si = (text: string, ...kinds: QuantityKind[]): number => {
  const parsed = parseQuantity(text, ...kinds);
  if (!parsed.ok) throw new Error(`${text}: ${parsed.problem.code}`);
  return parsed.value.value;
};
const spread = (text: string, ...kinds: QuantityKind[]): number | null => {
  const parsed = parseQuantity(text, ...kinds);
  if (!parsed.ok) throw new Error(`${text}: ${parsed.problem.code}`);
  return parsed.value.plusMinus;
};
const code = (text: string, ...kinds: QuantityKind[]): string => {
  const parsed = parseQuantity(text, ...kinds);
  return parsed.ok ? `ok ${parsed.value.value}` : parsed.problem.code;
};
const mend = (text: string, ...kinds: QuantityKind[]): string => {
  const parsed = parseQuantity(text, ...kinds);
  return parsed.ok ? '' : `${parsed.problem.what} ${parsed.problem.mend}`;
};

describe('units, exact by definition', () => {
  // Factors: NIST Special Publication 811 (2008), appendix B.8 (bold there: exact), and the definitions behind
  // them; from memory. Each right-hand side is the decimal of the definition, not a product of our own factors.
  test.each<[string, QuantityKind, number]>([
    ['1 Pa', 'pressure', 1],
    ['1 hPa', 'pressure', 100],
    ['1 kPa', 'pressure', 1000],
    ['1 MPa', 'pressure', 1e6],
    ['1 bar', 'pressure', 1e5],
    ['1 mbar', 'pressure', 100],
    ['1 atm', 'pressure', 101325],
    ['760 Torr', 'pressure', 101325],
    ['760 torr', 'pressure', 101325],
    ['1 mmHg', 'pressure', 133.322387415],
    ['1e5 Pa', 'pressure', 1e5],
    ['1 m', 'length', 1],
    ['1 mm', 'length', 0.001],
    ['1 cm', 'length', 0.01],
    ['1 km', 'length', 1000],
    ['1 in', 'length', 0.0254],
    ['1 ft', 'length', 0.3048],
    ['1 mi', 'length', 1609.344],
    ['1 nmi', 'length', 1852],
    ['1 kg', 'mass', 1],
    ['1 g', 'mass', 0.001],
    ['1 t', 'mass', 1000],
    ['1 lb', 'mass', 0.45359237],
    ['1 N', 'force', 1],
    ['1 kN', 'force', 1000],
    ['1 MN', 'force', 1e6],
    ['1 kgf', 'force', 9.80665],
    ['1 tf', 'force', 9806.65],
    ['1 lbf', 'force', 4.4482216152605],
    ['1 klbf', 'force', 4448.2216152605],
    ['1 K', 'temperature', 1],
    ['0 °C', 'temperature', 273.15],
    ['9 °R', 'temperature', 5],
    ['1 s', 'time', 1],
    ['1 ms', 'time', 0.001],
    ['1 min', 'time', 60],
    ['1 h', 'time', 3600],
    ['1 m/s', 'speed', 1],
    ['1 km/s', 'speed', 1000],
    ['1 ft/s', 'speed', 0.3048],
    ['36 km/h', 'speed', 10],
    ['1 kg/s', 'massFlow', 1],
    ['1 lb/s', 'massFlow', 0.45359237],
    ['180 deg', 'angle', Math.PI],
    ['180°', 'angle', Math.PI],
    ['1 rad', 'angle', 1],
    ['97.5 %', 'share', 0.975],
    ['0.975', 'share', 0.975],
    ['22 g/mol', 'molarMass', 0.022],
    ['0.022 kg/mol', 'molarMass', 0.022],
    ['22 kg/kmol', 'molarMass', 0.022],
    ['1 J/kg', 'energyPerMass', 1],
    ['1 kJ/kg', 'energyPerMass', 1000],
    ['1 MJ/kg', 'energyPerMass', 1e6],
    ['1 cal/g', 'energyPerMass', 4184],
    ['-50 kJ/mol', 'energyPerMole', -50000],
    ['1 J/mol', 'energyPerMole', 1],
    ['1 kcal/mol', 'energyPerMole', 4184],
    ['1 kg/m³', 'density', 1],
    ['1 g/cm³', 'density', 1000],
    ['1 g/cm^3', 'density', 1000],
    ['1 g cm⁻³', 'density', 1000],
    ['1 kg/L', 'density', 1000],
  ])('%s', (text, kind, expected) => {
    expect(si(text, kind)).toBe(expected);
  });

  test.each<[string, QuantityKind, number, number]>([
    // Digits as NIST SP 811 prints them, from memory; the tolerance is half of the last digit.
    ['1 psi', 'pressure', 6894.757, 5e-4],
    ['1 ksi', 'pressure', 6.894757e6, 5e-1],
    ['1 torr', 'pressure', 133.3224, 5e-5],
    ['1 lb/ft³', 'density', 16.01846, 5e-6],
    ['32 °F', 'temperature', 273.15, 1e-12],
    ['212 °F', 'temperature', 373.15, 1e-12],
    ['-40 °F', 'temperature', 233.15, 1e-12],
    ['1 deg', 'angle', 0.01745329, 5e-9],
    ['1 mi/h', 'speed', 0.44704, 1e-15],
  ])('%s to the digits printed', (text, kind, expected, tolerance) => {
    expect(Math.abs(si(text, kind) - expected)).toBeLessThanOrEqual(tolerance);
  });

  test('every unit offered in a message is known and of its kind', () => {
    for (const [kind, { usual }] of Object.entries(quantityKinds)) {
      for (const unit of usual) expect(code(`1 ${unit}`, kind as QuantityKind)).toMatch(/^ok/);
    }
    for (const symbol of unitSpellings.values()) expect(unitTable.has(symbol)).toBe(true);
  });
});

describe('what is written', () => {
  test('± : one unit for both, a unit each, a share of the value, a difference of temperature', () => {
    expect(si('97.5 ± 1 %', 'share')).toBe(0.975);
    expect(spread('97.5 ± 1 %', 'share')).toBe(0.01);
    expect(spread('97.5 % ± 1 %', 'share')).toBe(0.01);
    expect(spread('3.5 +/- 0.1', 'number')).toBe(0.1);
    expect(spread('3.5±0.1', 'number')).toBe(0.1);
    expect(spread('100 bar ± 2 %', 'pressure')).toBe(2e5);
    expect(spread('100 bar ± 50 kPa', 'pressure')).toBe(5e4);
    expect(spread('100 ± 2 bar', 'pressure')).toBe(2e5);
    expect(spread('3.5', 'number')).toBe(null);
    expect(si('20 °C ± 5 °C', 'temperature')).toBe(293.15);
    expect(spread('20 °C ± 5 °C', 'temperature')).toBe(5);
    expect(spread('20 ± 5 °C', 'temperature')).toBe(5);
    expect(spread('20 °C ± 5 K', 'temperature')).toBe(5);
    expect(spread('68 °F ± 9 °F', 'temperature')).toBe(5);
    expect(code('20 °C ± 5 %', 'temperature')).toBe('plus-minus-unreadable');
    expect(code('3.5 ± -0.1', 'number')).toBe('plus-minus-unreadable');
    expect(code('3.5 ± 0.1 ± 0.2', 'number')).toBe('plus-minus-unreadable');
    expect(code('3.5 ± 2 %', 'number')).toBe('unit-of-other-kind');
    expect(code('100 bar ± 2 m', 'pressure')).toBe('unit-of-other-kind');
  });

  test('spaces and minus signs of every kind', () => {
    expect(si('100\u00a0bar', 'pressure')).toBe(1e7);
    expect(si('100\u202fbar', 'pressure')).toBe(1e7);
    expect(si('100bar', 'pressure')).toBe(1e7);
    expect(si('\u221250 kJ/mol', 'energyPerMole')).toBe(-50000);
    expect(si('1e\u22123 bar', 'pressure')).toBe(100);
    expect(si('+5 km', 'length')).toBe(5000);
    expect(si('.5 m', 'length')).toBe(0.5);
    expect(si('2700 º C'.replace(' C', 'C'), 'temperature')).toBe(2973.15);
  });

  test('gauge against absolute is never guessed', () => {
    for (const text of ['100 barg', '100 bar gauge', '100 bar(g)', '1450 psig', '1450 PSIG', '10 MPag']) {
      expect(code(text, 'pressure')).toBe('pressure-gauge');
      expect(mend(text, 'pressure')).toContain('add the ambient');
    }
    expect(si('100 bara', 'pressure')).toBe(1e7);
    expect(si('100 bar absolute', 'pressure')).toBe(1e7);
    expect(si('1 psia', 'pressure')).toBe(si('1 psi', 'pressure'));
  });

  test('commas and groups are refused with both readings', () => {
    // Thousands come in threes, so only three digits leave two readings.
    expect(mend('3,5', 'number')).toMatch(/decimals. Write 3\.5, with a point\.$/);
    expect(mend('97,5 bar', 'pressure')).toContain('Write 97.5, with');
    expect(mend('1,000 kN', 'force')).toContain('1.000 or 1000');
    expect(code('1,000,000 N', 'force')).toBe('thousands-mark');
    expect(mend('1,234,567.5 N', 'force')).toContain('1234567.5');
    expect(mend('1 000 kN', 'force')).toContain('1000');
    expect(code("1'000 kN", 'force')).toBe('thousands-mark');
    expect(code('1.000,5', 'number')).toBe('number-unreadable');
  });

  test('what is no number, no unit, or too large', () => {
    expect(code('', 'pressure')).toBe('quantity-empty');
    expect(code('bar', 'pressure')).toBe('number-unreadable');
    expect(code('100', 'pressure')).toBe('unit-missing');
    expect(code('0', 'pressure')).toBe('unit-missing');
    expect(code('1e400', 'number')).toBe('number-not-finite');
    expect(code('1e308 km', 'length')).toBe('number-not-finite');
    expect(code('1e400 bar', 'pressure')).toBe('number-not-finite');
    expect(code('1 ± 1e400', 'number')).toBe('number-not-finite');
    expect(code('NaN', 'number')).toBe('number-unreadable');
    expect(code('.inf', 'number')).toBe('number-unreadable');
    expect(code('012', 'number')).toBe('number-unreadable');
    expect(code('0x10', 'number')).toBe('unit-unknown');
    expect(code('1_000', 'number')).toBe('number-unreadable');
    expect(code('1.2.3', 'number')).toBe('number-unreadable');
    expect(code('25 %', 'number')).toBe('unit-of-other-kind');
    expect(code('3 m', 'pressure')).toBe('unit-of-other-kind');
    expect(code('3 m K', 'pressure')).toBe('unit-of-other-kind');
    expect(code('3 °C/m', 'temperature')).toBe('unit-unknown');
    expect(code('3 °C²', 'temperature')).toBe('unit-unknown');
  });

  test('the nearest unit is named', () => {
    expect(mend('100 barr', 'pressure')).toContain('Did you mean bar?');
    expect(mend('10 Mpa', 'pressure')).toContain('Did you mean MPa?');
    expect(mend('800 KN', 'force')).toContain('Did you mean kN?');
    expect(mend('5 tons', 'mass')).toContain('several tons');
    expect(mend('100', 'length', 'pressure')).toContain('a length or a pressure');
  });
});

describe('what is printed', () => {
  test('significant digits, true minus, no-break spaces', () => {
    expect(formatQuantity(1e7, 'bar', 3)).toBe('100\u00a0bar');
    expect(formatQuantity(1e7, 'psi', 4)).toBe('1450\u00a0psi');
    expect(formatQuantity(-50000, 'J/mol', 3)).toBe('\u221250000\u00a0J/mol');
    expect(formatQuantity(-0.05, '', 2)).toBe('\u22120.050');
    expect(formatQuantity(0.975, '%', 4, 0.01)).toBe('97.50\u00a0±\u00a01.00\u00a0%');
    expect(formatQuantity(0.975, '%', 3, 0.01)).toBe('97.5\u00a0±\u00a01.0\u00a0%');
    expect(formatQuantity(3.5, '', 2, 0.05)).toBe('3.50\u00a0±\u00a00.05');
    expect(formatQuantity(293.15, '°C', 3, 5)).toBe('20.0\u00a0±\u00a05.0\u00a0°C');
    expect(formatQuantity(Math.PI / 6, 'deg', 3)).toBe('30.0\u00a0deg');
    expect(formatQuantity(0, 'm', 3)).toBe('0\u00a0m');
    expect(formatQuantity(123456, '', 3)).toBe('123000');
    expect(formatQuantity(1.5e20, 'Pa', 2)).toBe('1.5e20\u00a0Pa');
    expect(formatQuantity(1.5e-9, 'm', 2)).toBe('1.5e\u22129\u00a0m');
    expect(() => formatQuantity(Number.NaN, 'm', 2)).toThrow(RangeError);
    expect(() => formatQuantity(1, 'furlong', 2)).toThrow(RangeError);
  });

  test('reads back as the value that was printed', () => {
    const kinds = (Object.keys(quantityKinds) as QuantityKind[]).flatMap((kind) =>
      (quantityKinds[kind].usual.length > 0 ? quantityKinds[kind].usual : ['']).map((unit) => ({
        kind,
        unit,
      })),
    );
    fc.assert(
      fc.property(
        fc.constantFrom(...kinds),
        fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e30, max: 1e30 }),
        fc.option(fc.double({ noNaN: true, min: 0, max: 1e6 })),
        ({ kind, unit }, shown, plusMinus) => {
          const scale =
            unit === '' ? { dimension: [0, 0, 0, 0, 0, 0] as const, times: 1, over: 1 } : findUnit(unit)!;
          const value = toSI(shown, scale);
          fc.pre(Math.abs(shown) > 1e-20 || shown === 0);
          const back = parseQuantity(formatQuantity(value, unit, 17, plusMinus), kind);
          if (!back.ok) throw new Error(back.problem.what);
          // 17 significant digits name a double uniquely; the zero of a temperature scale costs its last bits.
          const tolerance = 4 * Number.EPSILON * Math.max(Math.abs(value), scale.zero ?? 0);
          expect(Math.abs(back.value.value - value)).toBeLessThanOrEqual(tolerance);
          if (plusMinus === null) expect(back.value.plusMinus).toBe(null);
          else expect(back.value.plusMinus).not.toBe(null);
        },
      ),
      { numRuns: 3000 },
    );
  });

  test('any text at all is a quantity or a problem, never a crash and never a value that is not finite', () => {
    const signs = fc.string({
      unit: fc.constantFrom(...'0123456789.,eE+-±%/·^²³ barPsimkgNKC°()'),
      maxLength: 24,
    });
    fc.assert(
      fc.property(fc.oneof(fc.string({ unit: 'binary' }), signs), (text) => {
        for (const kind of Object.keys(quantityKinds) as QuantityKind[]) {
          const parsed = parseQuantity(text, kind);
          if (!parsed.ok) expect(parsed.problem.mend).not.toBe('');
          else {
            expect(Number.isFinite(parsed.value.value)).toBe(true);
            expect(parsed.value.plusMinus === null || parsed.value.plusMinus >= 0).toBe(true);
          }
        }
      }),
      { numRuns: 3000 },
    );
  });
});
