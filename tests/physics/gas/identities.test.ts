/** Laws that every state must obey, whatever the numbers: no outside value is needed, and none of ours is trusted. */
import { describe, expect, test } from 'vitest';
import {
  type EquilibriumState,
  equilibrate,
  equilibriumState,
  expandBurnt,
  workFor,
} from '../../../src/physics/gas/index.ts';
import { burnt, mixed, species } from './rows.ts';

const mixtures = {
  'oxygen, hydrogen 6': burnt('LOX', 'LH2', 6),
  'oxygen, methane 3.5': burnt('LOX', 'LCH4', 3.5),
  'tetroxide, MMH 2': burnt('N2O4', 'MMH', 2),
  'fluorine, hydrogen 8': burnt('LF2', 'LH2', 8),
  'perchlorate, aluminium, binder': mixed({ AP: 0.68, Al: 0.18, HTPB: 0.14 }),
};
const temperatures = [900, 1800, 2700, 3600];
const pressures = [1e4, 1e6, 3e7];

const cases = Object.entries(mixtures).flatMap(([name, reactants]) =>
  temperatures.flatMap((temperature) =>
    pressures.map(
      (pressure) =>
        [`${name}, ${temperature} K, ${pressure / 1e5} bar`, reactants, temperature, pressure] as const,
    ),
  ),
);

function stateAt(
  reactants: (typeof mixtures)[keyof typeof mixtures],
  temperature: number,
  pressure: number,
): EquilibriumState {
  const work = workFor(reactants, species);
  equilibrate(work, pressure, { kind: 'temperature', temperature });
  return equilibriumState(work);
}

describe('every equilibrium', () => {
  test.each(cases)('%s', (_, reactants, temperature, pressure) => {
    const here = stateAt(reactants, temperature, pressure);
    // Element balance.
    expect(here.balanceResidual).toBeLessThan(1e-12);
    const shares = Object.values(here.composition());
    expect(Math.abs(shares.reduce((sum, share) => sum + share, 0) - 1)).toBeLessThan(1e-9);
    // p = ρ R T / M of the gas.
    const R = 8.31446261815324;
    expect(Math.abs(pressure / ((here.density * R * temperature) / here.molarMassGas) - 1)).toBeLessThan(
      1e-13,
    );

    const dT = 1e-4 * temperature;
    const hot = stateAt(reactants, temperature + dT, pressure);
    const cold = stateAt(reactants, temperature - dT, pressure);
    const samePhases = [hot, cold].every(
      (other) => other.phases.map((p) => p.phase).join() === here.phases.map((p) => p.phase).join(),
    );
    // A range of the data ends at 1000 K, a phase may come or go: then there is no derivative to compare.
    if (!samePhases || here.cpEquilibrium === null) return;
    const cp = (hot.enthalpy - cold.enthalpy) / (2 * dT);
    expect(Math.abs(here.cpEquilibrium / cp - 1)).toBeLessThan(2e-5);
    // ds = cp dT / T at constant pressure.
    const ds = (hot.entropy - cold.entropy) / (2 * dT);
    expect(Math.abs((ds * temperature) / here.cpEquilibrium - 1)).toBeLessThan(2e-5);
    const volume = (state: EquilibriumState): number => Math.log(1 / state.density);
    const dlnVdlnT = ((volume(hot) - volume(cold)) / (2 * dT)) * temperature;
    expect(Math.abs(here.dlnVdlnT! - dlnVdlnT)).toBeLessThan(2e-5);

    const up = stateAt(reactants, temperature, pressure * 1.0002);
    const down = stateAt(reactants, temperature, pressure / 1.0002);
    const dlnp = 2 * Math.log(1.0002);
    expect(Math.abs(here.dlnVdlnp! - (volume(up) - volume(down)) / dlnp)).toBeLessThan(2e-5);
    // Maxwell: (∂s/∂p)_T = −(∂V/∂T)_p.
    const dsdp = (up.entropy - down.entropy) / dlnp / pressure;
    expect(Math.abs(-dsdp / (here.dlnVdlnT! / (here.density * temperature)) - 1)).toBeLessThan(2e-5);
  });
});

describe('the sound speed', () => {
  test.each(Object.entries(mixtures))('of %s is (∂p/∂ρ)_s', (_, reactants) => {
    const work = workFor(reactants, species);
    equilibrate(work, 5e6, { kind: 'temperature', temperature: 3000 });
    const here = equilibriumState(work);
    const at = (pressure: number): EquilibriumState => {
      equilibrate(work, pressure, { kind: 'entropy', entropy: here.entropy });
      return equilibriumState(work);
    };
    const up = at(5e6 * 1.0005);
    const down = at(5e6 / 1.0005);
    const squared = (up.pressure - down.pressure) / (up.density - down.density);
    expect(Math.abs(here.soundSpeed! ** 2 / squared - 1)).toBeLessThan(1e-5);
  });
});

describe('every expansion', () => {
  test.each(
    Object.entries(mixtures).flatMap(([name, reactants]) =>
      (['shifting', 'frozen'] as const).map((kind) => [`${name}, ${kind}`, reactants, kind] as const),
    ),
  )('%s keeps entropy, energy and mass', (_, reactants, kind) => {
    const expansion = expandBurnt(reactants, species, { pressure: 7e6, chemistry: { kind } });
    const { chamber, throat } = expansion;
    expect(
      Math.abs(chamber.enthalpy - reactants.enthalpy) / (Math.abs(reactants.enthalpy) + 1e5),
    ).toBeLessThan(1e-10);
    const places = [
      expansion.atAreaRatio(5, 'subsonic'),
      expansion.atAreaRatio(1.2, 'subsonic'),
      throat,
      ...[1.5, 5, 20, 60].map((ratio) => expansion.atAreaRatio(ratio, 'supersonic')),
    ];
    for (const place of places) {
      expect(Math.abs(place.entropy / chamber.entropy - 1)).toBeLessThan(1e-10);
      const energy = place.enthalpy + place.velocity ** 2 / 2;
      expect(Math.abs(energy - chamber.enthalpy) / (chamber.cpFrozen * chamber.temperature)).toBeLessThan(
        1e-9,
      );
      expect(Math.abs((place.massFlux * place.areaRatio) / throat.massFlux - 1)).toBeLessThan(1e-9);
    }
    // No state of the flow carries more than the throat.
    for (const factor of [0.98, 1.02]) {
      expect(expansion.atPressure(throat.pressure * factor).massFlux).toBeLessThan(throat.massFlux);
    }
    const again = expansion.atMach(1.5);
    expect(Math.abs(expansion.atPressure(again.pressure).mach! - 1.5)).toBeLessThan(1e-9);
  });

  test('frozen from a place lies between frozen and shifting, and meets both ends', () => {
    const reactants = burnt('LOX', 'LH2', 6);
    // Vacuum specific impulse times g0 at an area ratio: the push per kilogram.
    const speed = (chemistry: Parameters<typeof expandBurnt>[2]['chemistry']): number => {
      const exit = expandBurnt(reactants, species, { pressure: 1e7, chemistry }).atAreaRatio(
        50,
        'supersonic',
      );
      return exit.velocity + exit.pressure / exit.massFlux;
    };
    const frozen = speed({ kind: 'frozen' });
    const shifting = speed({ kind: 'shifting' });
    const between = [1.01, 2, 5, 20].map((areaRatio) => speed({ kind: 'frozenFrom', areaRatio }));
    for (const value of between) {
      expect(value).toBeGreaterThan(frozen);
      expect(value).toBeLessThanOrEqual(shifting * (1 + 1e-9));
    }
    expect([...between]).toEqual([...between].sort((a, b) => a - b));
  });
});
