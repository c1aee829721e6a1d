/** What an expression names: whose, which quantity, and where. */

import { describe, expect, it } from 'vitest';
import { kilometresOf, namedIn, oneNamedIn } from '../../../src/faces/workbench/state/namedIn.ts';

const owners = ['bell', 'plug', 'booster'];

describe('quantities named in an expression', () => {
  it('are told with owner, place and what stands in brackets', () => {
    expect(namedIn('plug.thrust(12 km, throttle = 60 %) > 2 * bell.exit.pressure', owners)).toEqual([
      {
        owner: 'plug',
        quantity: 'thrust',
        expression: 'plug.thrust(12 km, throttle = 60 %)',
        place: '12 km, throttle = 60 %',
      },
      { owner: 'bell', quantity: 'exit.pressure', expression: 'bell.exit.pressure', place: null },
    ]);
  });

  it('of a vehicle are found by the name below it; strangers are left alone', () => {
    expect(
      namedIn('booster.payload(engine = plug) - booster.speed(60 s)', owners).map(({ quantity }) => quantity),
    ).toEqual(['flight.payload', 'flight.points.speed']);
    expect(namedIn('nobody.thrust(pad) + bell.wingspan + 3.5', owners)).toEqual([]);
  });

  it('are one only where nothing stands beside it', () => {
    expect(oneNamedIn('bell.thrust(pad)', owners)?.place).toBe('pad');
    expect(oneNamedIn('bell.thrust(pad) - 3 kN', owners)).toBeNull();
    expect(oneNamedIn('bell.thrust(pad) / plug.thrust(pad)', owners)).toBeNull();
  });
});

describe('a place on the altitude scale', () => {
  it('is read from altitudes, pressures and names', () => {
    expect(kilometresOf('12 km')).toBe(12);
    expect(kilometresOf('pad')).toBe(0);
    expect(kilometresOf('vacuum')).toBe(Number.POSITIVE_INFINITY);
    // U.S. Standard Atmosphere 1976, table I: 0.26500 bar at 10 km geometric.
    expect(kilometresOf('0.265 bar')).toBeCloseTo(10, 2);
    expect(kilometresOf('engine = plug')).toBeNull();
    expect(kilometresOf(null)).toBeNull();
  });
});
