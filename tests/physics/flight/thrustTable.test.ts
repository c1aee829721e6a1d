import { describe, expect, it } from 'vitest';
import { tabulatedThrust } from '../../../src/physics/flight/index.ts';

const TOP = 101_325;

describe('a table of thrust over the air’s pressure', () => {
  it('is exact for a nozzle that flows full: thrust falls in a straight line', () => {
    const table = tabulatedThrust((pressure) => ({ thrust: 8e5 - 1.07 * pressure }), TOP);
    for (const pressure of [0, 3, 700, 12_345, 54_321, TOP]) {
      expect(table(pressure)).toBeCloseTo(8e5 - 1.07 * pressure, 6);
    }
  });

  it('meets a bent curve within a few ten-thousandths, and asks the model less than a hundred times', () => {
    let asked = 0;
    const bent = (pressure: number): number => 9e5 - 40 * pressure ** 0.75 - 0.2 * pressure;
    const table = tabulatedThrust((pressure) => {
      asked += 1;
      return { thrust: bent(pressure) };
    }, TOP);
    for (let i = 0; i <= 200; i++) {
      const pressure = (TOP * i) / 200;
      // The middle of an interval is met within 2e-4; elsewhere in it the cubic may be off by a little more.
      expect(Math.abs(table(pressure) - bent(pressure)) / 9e5).toBeLessThan(4e-4);
    }
    expect(asked).toBeLessThan(100);
  });

  it('meets a corner wherever it lies, within five ten-thousandths', () => {
    for (let corner = 20_000; corner < 40_000; corner += 431) {
      const bent = (pressure: number): number =>
        9e5 - 4 * Math.min(pressure, corner) - 2 * Math.max(0, pressure - corner);
      const table = tabulatedThrust((pressure) => ({ thrust: bent(pressure) }), TOP);
      for (let pressure = corner - 9_000; pressure < corner + 9_000; pressure += 100) {
        expect(Math.abs(table(pressure) - bent(pressure)) / 9e5).toBeLessThan(5e-4);
      }
    }
  });

  it('keeps a jump a jump, between the values on its sides', () => {
    const jump = (pressure: number): number => (pressure > 40_000 ? 7e5 : 7.6e5);
    const table = tabulatedThrust((pressure) => ({ thrust: jump(pressure) }), TOP);
    for (let pressure = 0; pressure <= TOP; pressure += 37) {
      const thrust = table(pressure);
      expect(thrust).toBeGreaterThanOrEqual(7e5 - 1e-6);
      expect(thrust).toBeLessThanOrEqual(7.6e5 + 1e-6);
      if (Math.abs(pressure - 40_000) > 50) expect(thrust).toBeCloseTo(jump(pressure), 6);
    }
  });

  it('says why where there is no thrust, and where nothing is tabulated', () => {
    const table = tabulatedThrust(
      (pressure) => (pressure > 80_000 ? { absent: 'The throat does not choke.' } : { thrust: 1e5 }),
      TOP,
    );
    expect(table(50_000)).toBeCloseTo(1e5, 6);
    expect(() => table(95_000)).toThrow('no computed thrust');
    expect(() => table(2 * TOP)).toThrow('tabulated');
  });
});
