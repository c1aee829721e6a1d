import { describe, expect, test } from 'vitest';
import { compileExpression, compileTest } from '../../../src/answer/expression/index.ts';
import { alderScope, refused } from './alderScope.ts';

describe('dimensions are checked before anything runs, each with its place', () => {
  test.each([
    [
      'bell.exit.pressure > bell.exit.velocity',
      'This compares a pressure with a speed.',
      'bell.exit.pressure > bell.exit.velocity',
    ],
    [
      'bell.areaRatio > 2 and bell.exit.diameter + 3 s > 2 m',
      'This adds a time to a length.',
      'bell.exit.diameter + 3 s',
    ],
    ['bell.exit.diameter - 3 s > 2 m', 'This takes a time from a length.', 'bell.exit.diameter - 3 s'],
    [
      'ln(bell.exit.pressure) > 1',
      'This takes ln of a pressure; it needs a plain number.',
      'bell.exit.pressure',
    ],
    ['sin(2 bar) > 1', 'This takes sin of a pressure; it needs an angle.', '2 bar'],
    [
      '2 ^ bell.exit.pressure > 1',
      'The exponent is a pressure; only a plain number can be one.',
      'bell.exit.pressure',
    ],
    [
      'bell.exit.pressure ^ bell.areaRatio > 1',
      'A pressure is raised to a power that is not a fixed number, so its kind is not known.',
      'bell.areaRatio',
    ],
    ['max(2 bar, 3 km) > 1 bar', 'max is taken of a pressure and a length.', '3 km'],
    ['bell.exit.pressure > 2', 'This compares a pressure with a plain number.', 'bell.exit.pressure > 2'],
    [
      'bell.thrust(z) is constant for z from pad to 3 km within 3 km',
      'The tolerance is a length, but a force is compared.',
      '3 km',
    ],
    [
      'bell.exit.pressure is about 2 bar within 3 km',
      'The tolerance is a length, but a pressure is compared.',
      '3 km',
    ],
    [
      'bell.thrust(3 s) > 2 kN',
      'Thrust is not of one moment of a flight; a time says nothing here.',
      'bell.thrust(3 s)',
    ],
    [
      'bell.thrust(3) > 2 kN',
      'In the brackets stands a plain number; an altitude, a pressure or a time is expected.',
      '3',
    ],
    [
      'bell.thrust(pad, chamber.pressure = 3 km) > 2 kN',
      'Here a pressure is expected, but this is a length.',
      '3 km',
    ],
    ['bell.thrust(pad, throttle = 3 km) > 2 kN', 'Here a share is expected, but this is a length.', '3 km'],
    [
      'bell.massFlow * bell.exit.velocity * 2 m > 3 kg',
      'This compares a quantity in kg·m²/s² with a mass.'.replace('a quantity in kg·m²/s²', 'an energy'),
      'bell.massFlow * bell.exit.velocity * 2 m > 3 kg',
    ],
    [
      'bell.massFlow * bell.exit.diameter > 3 kg',
      'This compares a quantity in kg·m/s with a mass.',
      'bell.massFlow * bell.exit.diameter > 3 kg',
    ],
    [
      'bell.specificImpulse(vacuum, propellants.ratio = r) is highest for r from 2 to 4 between 3 bar and 4 bar',
      'r is a plain number, but this limit is a pressure.',
      '3 bar',
    ],
  ])('%s', (text, what, part) => {
    const problem = refused(text);
    expect(problem.what).toBe(what);
    expect(problem.part).toBe(part);
    expect(problem.where).toBe(`sign ${problem.start + 1} of the text`);
    expect(problem.mend).not.toBe('');
  });
});

describe('names', () => {
  test.each([
    ['bel.thrust(0 km) > 1 N', 'engine-unknown', 'bell, plug or adapting'],
    ['bell.thrst(0 km) > 1 N', 'quantity-unknown', 'bell.thrust'],
    ['thrust(0 km) > 1 N', 'engine-missing', 'bell.thrust'],
    ['bell > 1 N', 'quantity-missing', 'bell.thrust(vacuum)'],
    ['bell.thrust(pad, nozzle.kept = 30 %) > 1 N', 'input-unknown', 'nozzle.length'],
    ['bell.thrust(pad, areaRatios = 30) > 1 N', 'input-unknown', 'throttle'],
    ['bell.thrust(pad, ratio = 30) > 1 N', 'input-unknown', 'propellants.ratio'],
    ['air.pressure(10 km, throttle = 60 %) > 1 Pa', 'input-not-expected', ''],
    ['bell.thrust(pad, vacuum) > 1 N', 'place-twice', 'point'],
    ['bell.thrust(pad, chamber.pressure = 3 bar, chamber.pressure = 4 bar) > 1 N', 'input-twice', ''],
    ['bell.thrust(pad, chamber.efficiency = 130 %) > 1 N', 'input-out-of-range', '100 %'],
    ['bell.thrust(bell.matched.altitude) > 1 N', 'place-not-fixed', 'for every'],
    ['bell.thrust(-1 bar) > 1 N', 'pressure-negative', 'absolute'],
    ['bell.comparison.difference > 1', 'quantity-of-pair', ''],
  ])('%s: %s', (text, code, mend) => {
    const problem = refused(text);
    expect(problem.code).toBe(code);
    expect(problem.mend).toContain(mend);
  });
});

describe('slips of writing', () => {
  test.each([
    ['', 'text-unreadable', ''],
    ['   ', 'text-unreadable', ''],
    ['bell.areaRatio', 'no-comparison', 'Compare'],
    ['bell.areaRatio > ', 'text-unreadable', ''],
    ['> 3', 'text-unreadable', ''],
    ['bell.areaRatio > 3 4', 'number-unreadable', '1450'],
    ['bell.thrust(pad) > 1 450 N', 'number-unreadable', '1450'],
    ['bell.exit.pressure > 3 kpas', 'unit-unknown', 'Did you mean kPa'],
    ['bell.exit.pressure > 3 barg', 'pressure-gauge', 'absolute'],
    ['bell.exit.pressure > 3 bar gauge', 'pressure-gauge', 'absolute'],
    ['bell.areaRatio = 3', 'equality-without-tolerance', 'within'],
    ['bell.areaRatio is 3', 'equality-without-tolerance', 'within'],
    ['bell.areaRatio is exactly 3', 'equality-without-tolerance', 'within'],
    ['bell.areaRatio == 3', 'equality-without-tolerance', 'within'],
    ['bell.areaRatio != 3', 'text-unreadable', 'differs from'],
    ['bell.areaRatio > 3 && bell.areaRatio < 4', 'text-unreadable', 'Write “and”.'],
    ['bell.areaRatio > 3 || bell.areaRatio < 4', 'text-unreadable', 'Write “or”.'],
    ['bell.thrust(z) > 1 kN for every z from pad to vacuum', 'text-unreadable', 'stands in front'],
    ['always bell.areaRatio > 2', 'text-unreadable', 'for every z'],
    ['bell.areaRatio is bigger than 2 by 5 %', 'text-unreadable', 'before “than”'],
    ['bell thrust in vacuum > 2 kN', 'text-unreadable', 'joined by a dot'],
    ['bell.thrust(vacuum) > 70,000 lbf', 'text-unreadable', 'nothing is put between thousands'],
    ['bell.thrust(space) > 2 kN', 'name-unknown', 'A place is vacuum'],
    ['bell.areaRatio > 2 ** 3', 'text-unreadable', '^'],
    ['(bell.areaRatio > 2', 'text-unreadable', 'Write )'],
    ['bell.areaRatio > 2)', 'text-unreadable', 'Delete it'],
    ['bell.areaRatio > 2,5', 'text-unreadable', 'point'],
    ['bell.thrust() > 2 N', 'text-unreadable', 'vacuum'],
    ['bell.thrust(0,5 bar) > 2 N', 'place-unlike', ''],
    ['min(3) > 2', 'arguments-wrong', 'min(a, b)'],
    ['abs(3, 4) > 2', 'arguments-wrong', 'abs(x)'],
    ['log(3) > 2', 'function-unknown', 'ln'],
    ['bell.areaRatio and bell.areaRatio > 2', 'number-for-test', ''],
    ['(bell.areaRatio > 2) + 1 > 2', 'test-for-number', ''],
    ['bell.thrust(z) rises', 'text-unreadable', 'for'],
    ['bell.thrust(z) is highest for z from pad to 40 km', 'text-unreadable', 'between'],
    ['bell.chamber.composition(species H2O > 2', 'text-unreadable', ')'],
    ['bell.areaRatio > 2; drop it', 'text-unreadable', ''],
    ['bell.areaRatio > 1e999', 'number-not-finite', ''],
    ['bell.areaRatio > 2 💥', 'text-unreadable', ''],
  ])('“%s”: %s', (text, code, mend) => {
    const problem = refused(text);
    expect(problem.code).toBe(code);
    expect(problem.mend).toContain(mend);
    expect(problem.start).toBeLessThanOrEqual(problem.end);
    expect(problem.end).toBeLessThanOrEqual(text.length);
  });
});

describe('names that every object has are just unknown names', () => {
  for (const name of [
    ...Object.getOwnPropertyNames(Object.prototype),
    'prototype',
    'eval',
    'Function',
    'globalThis',
    'process',
    'require',
  ]) {
    test(name, () => {
      for (const text of [
        `${name} > 1`,
        `${name}(1) > 1`,
        `bell.${name} > 1`,
        `bell.${name}(vacuum) > 1`,
        `${name}.thrust(vacuum) > 1 N`,
        `bell.thrust(vacuum, ${name} = 1) > 1 N`,
        `bell.thrust(vacuum, ${name} 1) > 1 N`,
        `bell.thrust(${name}) > 1 N`,
        `bell.constructor.${name} > 1`,
        `1 ${name} > 1`,
      ]) {
        expect(compileTest(text, alderScope)).toMatchObject({ ok: false });
        expect(compileExpression(text, alderScope)).toMatchObject({ ok: false });
      }
    });
  }

  test('a variable may bear such a name and is just a variable', () => {
    expect(
      compileTest('for every constructor from 0 km to 3 km: bell.thrust(constructor) > 1 N', alderScope).ok,
    ).toBe(true);
    expect(refused('for every __proto__ from 0 km to 3 km: bell.thrust(__proto__) > 1 N').code).toBe(
      'name-taken',
    );
  });
});

describe('limits', () => {
  test('length', () => {
    expect(refused(`bell.areaRatio > ${'1 + '.repeat(2000)}1`).code).toBe('text-too-long');
    expect(compileTest(`bell.areaRatio > ${'1+'.repeat(1900)}1`, alderScope).ok).toBe(true);
  });
  test('depth', () => {
    expect(refused(`bell.areaRatio > ${'('.repeat(500)}1${')'.repeat(500)}`).code).toBe('nested-too-deep');
    expect(refused(`bell.areaRatio > ${'-'.repeat(500)}1`).code).toBe('nested-too-deep');
    expect(refused(`bell.areaRatio > ${'2^'.repeat(500)}1`).code).toBe('nested-too-deep');
    expect(refused(`${'not '.repeat(500)}bell.areaRatio > 1`).code).toBe('nested-too-deep');
    expect(refused(`bell.areaRatio > ${'twice '.repeat(500)}1`).code).toBe('nested-too-deep');
    expect(refused(`bell.areaRatio ${'is not '.repeat(3)}> 1`).code).toBe('text-unreadable');
    expect(compileTest(`bell.areaRatio > ${'('.repeat(50)}1${')'.repeat(50)}`, alderScope).ok).toBe(true);
  });
});
