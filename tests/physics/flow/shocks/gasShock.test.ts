import { describe, expect, test } from 'vitest';
import {
  type FlowAhead,
  gasShockAt,
  gasShockOfRise,
  gasShockOfTurn,
  greatestGasTurn,
  normalGasShock,
} from '../../../../src/physics/flow/shocks/gasShock.ts';
import { greatestTurnPerfect } from '../../../../src/physics/flow/shocks/perfectShock.ts';
import { shockGasOf } from '../../../../src/physics/flow/shocks/shockGas.ts';
import { expandBurnt, expandPerfect } from '../../../../src/physics/gas/index.ts';
import { burnt, species } from '../../gas/rows.ts';
import { problemCode } from '../../problemCode.ts';

const degree = Math.PI / 180;
const expansion = expandPerfect({ gamma: 1.4, molarMass: 0.029, temperature: 3000, pressure: 1e7 });
const gas = shockGasOf(expansion, 1e7 * 1e-6);

function ahead(mach: number): FlowAhead {
  const { pressure, density, velocity } = expansion.atMach(mach);
  return { pressure, density, speed: velocity };
}

const near = (value: number, wanted: number, share: number): void => {
  expect(Math.abs(value / wanted - 1), `${value} for ${wanted}`).toBeLessThan(share);
};

// NACA Report 1135 (1953), γ = 1.4, rows recomputed from its formulas; tolerances: the digits written here.
describe('shocks of any gas at constant total enthalpy, on a perfect gas', () => {
  test.each([
    [1.5, 0.7011, 2.4583, 1.8621],
    [2, 0.5774, 4.5, 2.6667],
    [3, 0.4752, 10.3333, 3.8571],
    [5, 0.4152, 29, 5],
    [10, 0.3876, 116.5, 5.7143],
  ])('normal, Mach %f: NACA Report 1135', (mach, behind, p, rho) => {
    const shock = normalGasShock(gas, ahead(mach));
    near(shock.machBehind, behind, 1.5e-4);
    near(shock.pressureRatio, p, 3e-5);
    near(shock.densityRatio, rho, 3e-5);
  });

  test.each([
    [2, 10, 39.314, 1.7066, 1.6405, 22.974],
    [2, 20, 53.423, 2.8429, 1.2102, 22.974],
    [3, 10, 27.383, 2.0545, 2.505, 34.073],
    [3, 20, 37.764, 3.7713, 1.9941, 34.073],
    [5, 20, 29.801, 7.0374, 3.0222, 41.118],
  ])('Mach %f turned by %f°: NACA Report 1135', (mach, turn, wave, p, behind, greatest) => {
    const shock = gasShockOfTurn(gas, ahead(mach), turn * degree);
    if (shock === null) throw new Error('no shock found');
    near(shock.waveAngle / degree, wave, 3e-5);
    near(shock.pressureRatio, p, 6e-5);
    near(shock.machBehind, behind, 6e-5);
    near(greatestGasTurn(gas, ahead(mach)).turn / degree, greatest, 3e-5);
  });

  test('the shock of a rise is the shock at its angle, from hardly any to a normal one', () => {
    for (const rise of [1.0002, 1.2, 4, 10.333]) {
      const shock = gasShockOfRise(gas, ahead(3), rise * ahead(3).pressure);
      near(shock.pressureRatio, rise, 1e-5);
      near(gasShockAt(gas, ahead(3), shock.waveAngle).turn, shock.turn, 1e-12);
    }
  });

  test('mass, momentum and energy are kept across it', () => {
    const before = ahead(4);
    const { behind, waveAngle, turn } = gasShockAt(gas, before, 35 * degree);
    const w1 = before.speed * Math.sin(waveAngle);
    const w2 = behind.speed * Math.sin(waveAngle - turn);
    near(behind.density * w2, before.density * w1, 1e-12);
    near(behind.pressure + behind.density * w2 * w2, before.pressure + before.density * w1 * w1, 1e-12);
    near(behind.speed * Math.cos(waveAngle - turn), before.speed * Math.cos(waveAngle), 1e-12);
    // cp T + V²/2 with T from p/ρ: the gas's own closed form.
    const total = ({ pressure, density, speed }: FlowAhead): number =>
      3.5 * (pressure / density) + speed ** 2 / 2;
    near(total(behind), total(before), 1e-8);
  });

  test('says what cannot be', () => {
    expect(problemCode(() => gasShockAt(gas, ahead(2), 25 * degree))).toBe('no-shock-at-angle');
    expect(problemCode(() => gasShockOfRise(gas, ahead(2), 5 * ahead(2).pressure))).toBe(
      'shock-rise-out-of-range',
    );
    expect(gasShockOfTurn(gas, ahead(2), 25 * degree)).toBeNull();
    expect(greatestTurnPerfect(2, 1.4)).toBeLessThan(25 * degree);
  });
});

describe('shocks in a gas whose composition follows', () => {
  const burning = expandBurnt(burnt('LOX', 'LCH4', 3.5), species, {
    pressure: 1e7,
    chemistry: { kind: 'shifting' },
  });
  const lowest = 1e3;
  const reacting = shockGasOf(burning, lowest);
  const still = { ...reacting, shift: null };
  const flowAt = (mach: number): FlowAhead => {
    const { pressure, density, velocity } = burning.atMach(mach);
    return { pressure, density, speed: velocity };
  };

  /** Density [kg/m³] of the gas in equilibrium anew at the pressure and speed behind: the stagnation pressure by bisection. */
  function densityOf({ pressure, speed }: FlowAhead): number {
    let [low, high] = [Math.log(pressure), Math.log(1e7)];
    for (let i = 0; i < 40; i++) {
      const middle = 0.5 * (low + high);
      if (burning.afterLoss!(Math.exp(middle)).atPressure(pressure).velocity < speed) low = middle;
      else high = middle;
    }
    return burning.afterLoss!(Math.exp(high)).atPressure(pressure).density;
  }

  // The quotient p/ρ is linear in the logarithm of the loss here and not quite so in the gas.
  test.each([
    [1.5, 90],
    [2.5, 90],
    [3.5, 90],
    [2.5, 35],
    [3.5, 30],
  ])('Mach %f at %f°: as the gas in equilibrium anew at the same enthalpy', (mach, angle) => {
    const { behind } = gasShockAt(reacting, flowAt(mach), angle * degree);
    near(behind.density, densityOf(behind), 3e-3);
  });

  test('the composition matters behind a strong shock', () => {
    const { behind } = gasShockAt(still, flowAt(3.5), Math.PI / 2);
    expect(Math.abs(behind.density / densityOf(behind) - 1)).toBeGreaterThan(6e-3);
  });
});
