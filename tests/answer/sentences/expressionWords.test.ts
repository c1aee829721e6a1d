import { describe, expect, test } from 'vitest';
import { checkOne, isOf, z } from './closedForms.ts';

const said = (text: string | null): string => (text ?? '').replaceAll('\u00a0', ' ');

/** Nothing of the form of a formula: no dotted name, no call, no sign of arithmetic between words. */
const FORMULA = /\b[a-z]\w*\.\w|\w\(|\w [*/^] |\bln\b/;

const fake: Parameters<typeof checkOne>[1] = (ask, point) => {
  const size = { thrust: 1e5, 'exit.area': 1, specificImpulse: 300, massFlow: 100 }[ask.quantity] ?? 1e4;
  return (isOf(ask, 'a', ask.quantity) ? 1 : 0.7) * size + 1e-4 * size * z(point);
};

describe('expressions of several numbers are told as a sentence', () => {
  test.each([
    'a.thrust(vacuum) > a.thrust(20 km) + air.pressure(20 km) * a.exit.area',
    'a.massFlow - b.massFlow > half of a.massFlow',
    'a.massFlow - b.massFlow > 2 % of a.massFlow',
    'b.massFlow - a.massFlow > 2 % of a.massFlow',
    'a.massFlow * ln(1 + a.thrust(vacuum) / (3 kN)) > b.massFlow * ln(1 + b.thrust(vacuum) / (3 kN))',
    '9.80665 m/s² * a.specificImpulse(vacuum) * ln(1 / 0.1) > 10 km/s',
    'a.areaRatio * a.thrust(vacuum) / a.thrust(pad) > 3',
    'for every z from pad to vacuum: a.thrust(z) - b.thrust(z) > 2 % of a.thrust(z)',
    'a.specificImpulse(vacuum, nozzle.areaRatio = e) is highest for e from 10 to 40 at 5 points between 10 and 40',
  ])('%s', async (holds) => {
    const found = await checkOne({ holds }, fake, { flips: false });
    const words = said(found.wording ?? found.instead);
    expect(words).not.toBe('');
    expect(words).not.toMatch(FORMULA);
    expect(found.saidNumbers.map((one) => one.words).join(' ')).not.toMatch(FORMULA);
  });

  test('both sides of a rule, by how much the one is more than the other', async () => {
    const found = await checkOne(
      { holds: 'a.thrust(vacuum) is about a.thrust(20 km) + air.pressure(20 km) * a.exit.area' },
      ({ quantity, ambient }) =>
        quantity === 'thrust'
          ? ambient?.kind === 'vacuum'
            ? 1.1e5
            : 1e5
          : quantity === 'exit.area'
            ? 2
            : 5e3,
    );
    // 1.1e5 = 1e5 + 5e3 · 2
    expect(said(found.wording)).toBe(
      'The thrust of a in vacuum is the same as the thrust of a at 20 km plus the air pressure at 20 km times the exit area of a.',
    );
  });

  test('what is too complex is told by what it is worked out from', async () => {
    const holds = 'a.massFlow * ln(1 + a.massFlow / (3 kg/s)) > b.massFlow * ln(1 + b.massFlow / (3 kg/s))';
    const found = await checkOne({ holds }, (ask) => (isOf(ask, 'a') ? 200 : 100), { flips: false }, '3.5');
    // 200 ln(1 + 200/3) / (100 ln(1 + 100/3)) = 2.384, told within 1.5 %
    expect(said(found.wording)).toBe(
      'What the test works out from the propellant flow of a is about 2.4 times what it works out for b.',
    );
  });
});
