import { describe, expect, test } from 'vitest';
import { ProblemError } from '../../../src/numerics/problem.ts';
import type { Tangent } from '../../../src/physics/euler/index.ts';
import { expandBurnt, expandPerfect } from '../../../src/physics/gas/index.ts';
import { chamberSide } from '../../../src/physics/wholeFlow/chamberSide.ts';
import { expansionGas } from '../../../src/physics/wholeFlow/index.ts';
import { thermometer } from '../../../src/physics/wholeFlow/thermometer.ts';
import { burnt, species } from '../gas/rows.ts';

const burning = (kind: 'shifting' | 'frozen') =>
  expandBurnt(burnt('LOX', 'LCH4', 3.4), species, { pressure: 1e7, chemistry: { kind } });

const soundSpeed = ({ kappa, zeta }: Tangent, density: number, pressure: number): number =>
  Math.sqrt(((kappa + 1) * pressure + zeta) / (kappa * density));

describe('the gas of a field from an expansion', () => {
  test('a perfect gas stays one', () => {
    const gas = expansionGas(
      expandPerfect({ gamma: 1.25, molarMass: 0.02, temperature: 3000, pressure: 50e5 }),
    );
    const tangent: Tangent = { kappa: 0, eta: 1, zeta: 1 };
    gas.tangent(1, 1e5, tangent);
    expect(tangent.kappa).toBeCloseTo(4, 12);
    expect([tangent.eta, tangent.zeta]).toEqual([0, 0]);
  });

  test.each(['shifting', 'frozen'] as const)(
    'methane and oxygen, %s: energy and sound speed along the expansion',
    (kind) => {
      const expansion = burning(kind);
      const gas = expansionGas(expansion);
      const tangent: Tangent = { kappa: 1, eta: 0, zeta: 0 };
      const energyAt = (pressure: number, density: number): number => {
        gas.tangent(density, pressure, tangent);
        return (tangent.kappa * pressure + tangent.eta * density + tangent.zeta) / density;
      };
      const { chamber } = expansion;
      const zero =
        energyAt(chamber.pressure, chamber.density) - (chamber.enthalpy - chamber.pressure / chamber.density);
      // Against all that the gas gives up from the chamber on.
      const whole = chamber.enthalpy - expansion.atPressure(1e-4 * chamber.pressure).enthalpy;
      for (const share of [0.9, 0.5, 0.1, 0.01, 1e-3, 1e-4]) {
        const state = expansion.atPressure(share * chamber.pressure);
        const energy = state.enthalpy - state.pressure / state.density;
        const error = Math.abs(energyAt(state.pressure, state.density) - zero - energy) / whole;
        expect(error, `energy at ${share}`).toBeLessThan(2e-3);
        const sound = soundSpeed(tangent, state.density, state.pressure);
        expect(Math.abs(sound / state.soundSpeed! - 1), `sound at ${share}`).toBeLessThan(0.01);
      }
    },
  );

  test('behind a loss of stagnation pressure the gas is hotter, and the table knows it', () => {
    const expansion = burning('shifting');
    const gas = expansionGas(expansion);
    const lost = expansion.afterLoss!(0.03 * expansion.chamber.pressure);
    const state = lost.atPressure(0.01 * expansion.chamber.pressure);
    const tangent: Tangent = { kappa: 1, eta: 0, zeta: 0 };
    gas.tangent(state.density, state.pressure, tangent);
    const sound = soundSpeed(tangent, state.density, state.pressure);
    expect(Math.abs(sound / state.soundSpeed! - 1)).toBeLessThan(0.01);
  });

  test.each(['shifting', 'frozen'] as const)(
    'methane and oxygen, %s: temperatures along the expansion and behind a loss',
    (kind) => {
      const expansion = burning(kind);
      const temperatureAt = thermometer(expansionGas(expansion));
      const { pressure } = expansion.chamber;
      const lost = expansion.afterLoss?.(0.03 * pressure);
      const states = [
        ...[0.9, 0.5, 0.1, 0.01, 1e-3].map((share) => expansion.atPressure(share * pressure)),
        ...(lost === undefined ? [] : [lost.atPressure(0.01 * pressure)]),
      ];
      for (const { density, pressure: here, temperature } of states)
        expect(Math.abs(temperatureAt(1, density, here) / temperature - 1), `${here} Pa`).toBeLessThan(5e-3);
    },
  );

  test('exhaust and air in one cell have one temperature', () => {
    // p/ρ = T (Y R₁ + (1 − Y) R₂): 8.31446/0.02 and, of air, 8.31432/0.0289644 J/(kg K).
    const expansion = expandPerfect({ gamma: 1.25, molarMass: 0.02, temperature: 3000, pressure: 50e5 });
    const temperatureAt = thermometer(expansionGas(expansion));
    for (const share of [0, 0.3, 1]) {
      const constant = share * (8.31446 / 0.02) + (1 - share) * (8.31432 / 0.0289644);
      expect(temperatureAt(share, 1e5 / (constant * 800), 1e5)).toBeCloseTo(800, 1);
    }
  });

  test('where states behind shocks are not found at some pressures, the nearest ones serve there', () => {
    const whole = burning('shifting');
    const { pressure } = whole.chamber;
    const none = new ProblemError({ code: 'none', what: 'No such state.', mend: 'Take another.' });
    const gas = expansionGas({
      ...whole,
      afterLoss: (rest) => {
        if (rest > 0.6 * pressure) throw none;
        return whole.afterLoss!(rest);
      },
    });
    const tangent: Tangent = { kappa: 1, eta: 0, zeta: 0 };
    for (const share of [0.95, 0.8, 0.65]) {
      const state = whole.atPressure(share * pressure);
      gas.tangent(state.density, state.pressure, tangent);
      const sound = soundSpeed(tangent, state.density, state.pressure);
      expect(Math.abs(sound / state.soundSpeed! - 1), `sound at ${share}`).toBeLessThan(0.02);
    }
    const bare = {
      ...whole,
      afterLoss: () => {
        throw none;
      },
    };
    expect(() => expansionGas(bare)).toThrow(ProblemError);
  });

  test('the chamber’s side: density and speed as of the expansion', () => {
    const expansion = burning('shifting');
    const side = chamberSide(expansion);
    if (side.is !== 'reservoir') throw new Error('no reservoir');
    for (const share of [0.999, 0.98, 0.9, 0.7]) {
      const state = expansion.atPressure(share * expansion.chamber.pressure);
      const { density, speed } = side.at(state.pressure);
      expect(Math.abs(density / state.density - 1)).toBeLessThan(1e-3);
      expect(Math.abs(speed / state.velocity - 1)).toBeLessThan(1e-3);
    }
  });
});
