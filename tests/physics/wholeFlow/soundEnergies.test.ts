/** The exhaust as a table, at every state that a field may come to: a pressure from its energy, and a speed of sound. */

import { expect, test } from 'vitest';
import type { Tangent } from '../../../src/physics/euler/index.ts';
import { expandBurnt } from '../../../src/physics/gas/index.ts';
import { expansionGas } from '../../../src/physics/wholeFlow/index.ts';
import { soundEnergies } from '../../../src/physics/wholeFlow/soundEnergies.ts';
import { burnt, species } from '../gas/rows.ts';

test.each([
  ['LOX', 'LCH4', 3.4, 1e7, 'shifting'],
  ['LOX', 'LH2', 6, 7e6, 'shifting'],
  ['LOX', 'RP-1', 2.4, 3e7, 'shifting'],
  ['LOX', 'LCH4', 3.4, 1e6, 'frozen'],
] as const)(
  '%s and %s at %d to one, %d Pa, %s: κ and the exponent of the isentrope are a gas’s',
  (oxidiser, fuel, ratio, pressure, kind) => {
    const gas = expansionGas(
      expandBurnt(burnt(oxidiser, fuel, ratio), species, { pressure, chemistry: { kind } }),
    );
    if (!('table' in gas.as)) throw new Error('no table');
    const { x, y } = gas.as.table;
    const tangent: Tangent = { kappa: 0, eta: 0, zeta: 0 };
    // Also far thinner, colder and hotter than the table goes: a field may pass there on its way.
    for (let lnP = x.from - 5; lnP < x.from + x.step * x.count + 1; lnP += x.step / 3)
      for (let lnTheta = y.from - 0.7; lnTheta < y.from + y.step * y.count + 0.7; lnTheta += y.step / 2) {
        const [p, theta] = [Math.exp(lnP), Math.exp(lnTheta)];
        gas.tangent(p / theta, p, tangent);
        const exponent = (tangent.kappa + 1 + tangent.zeta / p) / tangent.kappa;
        const where = `at ${p.toPrecision(3)} Pa, p/ρ ${theta.toPrecision(3)} J/kg`;
        // Of a gas of atoms κ is 1.5; cubics between the values may go a little below what holds at them.
        expect(tangent.kappa, where).toBeGreaterThan(1);
        expect(exponent, where).toBeGreaterThan(1);
        expect(exponent, where).toBeLessThan(2);
      }
  },
);

test('energies that are a gas’s stay as they are, but for the rounding; those that are none are lifted', () => {
  const thetas = Array.from({ length: 40 }, (_, k) => 1e5 * 1.03 ** k);
  const perfect = () => Float64Array.from(thetas, (theta) => 5 * theta);
  const rows = [perfect(), perfect(), perfect()];
  soundEnergies(rows, thetas, 0.4);
  for (const row of rows)
    for (const [k, energy] of row.entries())
      expect(Math.abs(energy / (5 * thetas[k]!) - 1)).toBeLessThan(1e-12);
  const dented = [perfect(), perfect()];
  dented[0]![20] = 0;
  soundEnergies(dented, thetas, 0.4);
  const [low] = dented;
  for (let k = 1; k < 40; k++)
    expect(low![k]! - low![k - 1]!).toBeGreaterThan(1.4 * (thetas[k]! - thetas[k - 1]!));
});
