import { expect, test } from 'vitest';
import { pressureBehindPump, pumpPower } from '../../../src/physics/cycle/index.ts';

const PSI = 6894.757293168361;
const HORSEPOWER = 745.6998715822702;
const POUND = 0.45359237;

// Hydraulic horsepower = gallons a minute · psi / 1714 (handbook rule, from memory); flow of a public turbopump (Smithsonian, seen).
test('42 500 gallons a minute raised by 1500 psi', () => {
  const volume = (42_500 * 3.785411784e-3) / 60;
  const power = pumpPower({ massFlow: volume * 1000, density: 1000, efficiency: 1, from: 0, to: 1500 * PSI });
  expect(power / HORSEPOWER / ((42_500 * 1500) / 1714)).toBeCloseTo(1, 3);
});

// Flows of a textbook booster of that size (E. Logan, ed., Handbook of Turbomachinery, abstract seen); discharge pressures and
// efficiencies of the F-1’s pumps from memory; its turbopump: about 55 000 hp (test coverage of 2013, seen). Ten per cent: rounded data.
test('pumps of a booster of 1.5 million pounds', () => {
  const oxidiser = pumpPower({
    massFlow: 4070 * POUND,
    density: 1141.3,
    efficiency: 0.746,
    from: 65 * PSI,
    to: 1600 * PSI,
  });
  const fuel = pumpPower({
    massFlow: 1700 * POUND,
    density: 805,
    efficiency: 0.726,
    from: 45 * PSI,
    to: 1870 * PSI,
  });
  expect(Math.abs((oxidiser + fuel) / HORSEPOWER / 55_000 - 1)).toBeLessThan(0.1);
});

test('a pump that has nothing to raise takes nothing, and drops add up', () => {
  expect(pumpPower({ massFlow: 1, density: 1000, efficiency: 0.7, from: 2e5, to: 1e5 })).toBe(0);
  expect(pressureBehindPump(100e5, 0.2, 0.05)).toBeCloseTo(125e5, 6);
});
