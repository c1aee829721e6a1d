import { describe, expect, it } from 'vitest';
import { tabulateSupersonic } from '../../../../src/physics/flow/gasTable.ts';
import {
  lossyTable,
  speedAtPressure,
  tubeGas,
  tubeStateAt,
} from '../../../../src/physics/flow/streamtubes/index.ts';
import { expandBurnt } from '../../../../src/physics/gas/index.ts';
import { burnt, species } from '../../gas/rows.ts';
import { perfectTubes } from './perfectGas.ts';

describe('the gas of a streamtube', () => {
  it('is the isentrope where nothing is lost, and only its pressure falls behind a shock in a gas that does not react', () => {
    const { gas, expansion } = perfectTubes(1.3);
    for (const mach of [1.1, 2, 4, 6]) {
      const exact = expansion.atMach(mach);
      const state = tubeStateAt(gas, exact.velocity, 0);
      expect(state.pressure / exact.pressure).toBeCloseTo(1, 6);
      expect(state.density / exact.density).toBeCloseTo(1, 6);
      expect(state.mach / mach).toBeCloseTo(1, 6);
      expect(state.temperature / exact.temperature).toBeCloseTo(1, 6);
      const lossy = tubeStateAt(gas, exact.velocity, Math.log(0.6));
      expect(lossy.pressure / exact.pressure).toBeCloseTo(0.6, 6);
      expect(lossy.mach).toBeCloseTo(state.mach, 12);
      expect(speedAtPressure(gas, lossy.pressure, Math.log(0.6)) / exact.velocity).toBeCloseTo(1, 9);
    }
  });

  it('shifts with the loss where the gas reacts: as an equilibrium from the same enthalpy at the lower pressure', () => {
    const expansion = expandBurnt(burnt('LOX', 'LCH4', 3.5), species, {
      pressure: 1e7,
      chemistry: { kind: 'shifting' },
    });
    const lowest = 1e4;
    const table = tabulateSupersonic(expansion, lowest);
    const gas = tubeGas(table, lossyTable(expansion, lowest, 320));
    for (const share of [0.9, 0.7, 0.5]) {
      const after = expansion.afterLoss!(share * 1e7);
      for (const mach of [1.5, 2.5, 3.5]) {
        const exact = after.atMach(mach);
        const state = tubeStateAt(gas, exact.velocity, Math.log(share));
        // What is linear in ln σ here is not so exactly: below a thousandth of the pressure.
        expect(Math.abs(state.pressure / exact.pressure - 1)).toBeLessThan(1e-3);
        expect(Math.abs(state.mach / mach - 1)).toBeLessThan(2e-4);
        // Without the shift the pressure is off by some percent.
        const held = tubeStateAt(tubeGas(table), exact.velocity, Math.log(share));
        if (share < 0.8) expect(Math.abs(held.pressure / exact.pressure - 1)).toBeGreaterThan(2e-3);
      }
    }
  });

  it('says where its table ends', () => {
    const { gas } = perfectTubes(1.3);
    expect(() => tubeStateAt(gas, gas.fastest * 1.01, 0)).toThrow(/outside/);
    expect(() => speedAtPressure(gas, 9e6, 0)).toThrow(/outside/);
  });
});
