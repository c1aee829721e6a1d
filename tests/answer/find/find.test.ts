/** What a person types and what is meant by it; the phrases are common speech of the trade, no source. */

import { describe, expect, it } from 'vitest';
import { findQuantities, fitOf, indexOf, rank, readWanted, wordsOf } from '../../../src/answer/find/index.ts';

const owners = [
  { id: 'bell', name: 'Alder B' },
  { id: 'plug', name: 'Alder P' },
];
const found = (typed: string, most = 1) =>
  findQuantities(readWanted(typed, owners))
    .slice(0, most)
    .map(({ item }) => item.name);

describe('quantities by plain words', () => {
  it.each([
    ['exit pressure at 10 km', 'exitPressure'],
    ['exit pressure', 'exitPressure'],
    ['isp in vacuum', 'specificImpulse'],
    ['isp', 'specificImpulse'],
    ['specific impulse at 12 km', 'specificImpulse'],
    ['thrust at sea level', 'thrust'],
    ['what is the thrust of the plug at 5 km', 'thrust'],
    ['how much push at the pad', 'thrust'],
    ['thrst at 3 km', 'thrust'],
    ['mass flow', 'massFlow'],
    ['area ratio', 'areaRatio'],
    ['chamber temperature', 'chamber.temperature'],
    ['payload', 'flight.payload'],
    ['air pressure at 30 km', 'air.pressure'],
    ['characteristic velocity', 'characteristicVelocity'],
    ['throat diameter', 'throat.diameter'],
    ['thrust coefficient in vacuum', 'thrustCoefficient'],
  ])('%s → %s', (typed, name) => {
    expect(found(typed)).toEqual([name]);
  });

  it('finds nothing where nothing fits or nothing was typed', () => {
    expect(found('zebra crossing', 5)).toEqual([]);
    expect(found('', 5)).toEqual([]);
    expect(found('   ', 5)).toEqual([]);
  });
});

describe('what was typed, taken apart', () => {
  it.each([
    ['exit pressure at 10 km', { kind: 'altitude', altitude: 10_000 }],
    ['exit pressure 10km', { kind: 'altitude', altitude: 10_000 }],
    ['thrust at 2,5 km', { kind: 'altitude', altitude: 2500 }],
    ['thrust in vacuum', { kind: 'vacuum' }],
    ['thrust at the pad', { kind: 'altitude', altitude: 0 }],
    ['thrust at 0.5 bar', { kind: 'pressure', pressure: 50_000 }],
    ['thrust at 50 kpa', { kind: 'pressure', pressure: 50_000 }],
  ])('%s', (typed, at) => {
    expect(readWanted(typed, owners).at).toEqual(at);
  });

  it('knows no place where none is said, nor one above all air', () => {
    expect(readWanted('exit pressure', owners).at).toBeNull();
    expect(readWanted('thrust at 9000000 km', owners).at).toBeNull();
  });

  it('takes engines out by name or id, whole words alone', () => {
    expect(readWanted('Alder B thrust', owners)).toEqual({ at: null, owners: ['bell'], words: 'thrust' });
    expect(readWanted('thrust of the plug', owners).owners).toEqual(['plug']);
    expect(readWanted('bells and plugs against bell-shaped', owners).owners).toContain('bell');
    expect(readWanted('bellows', owners).owners).toEqual([]);
  });
});

describe('ranking', () => {
  const items = indexOf([
    { label: 'A plug is always better than a bell.' },
    { label: 'Sweeps' },
    { label: 'Thrust over area ratio', also: 'area-ratio' },
    { label: 'Models', about: 'losses, friction, drops' },
  ]);
  it('puts the label before what is said at length, and forgives one letter', () => {
    expect(rank('sweep', items)[0]?.item.label).toBe('Sweeps');
    expect(rank('frction', items)[0]?.item.label).toBe('Models');
    expect(rank('better bell', items)[0]?.item.label).toMatch(/always better/);
  });

  it('never scores a fit below a worse one of the same word', () => {
    const fits = [
      fitOf('thrust', 'thrust'),
      fitOf('thru', 'thrust'),
      fitOf('th', 'thrust'),
      fitOf('x', 'thrust'),
    ];
    expect([...fits].sort((a, b) => b - a)).toEqual(fits);
    expect(fits.at(-1)).toBe(0);
    expect(wordsOf('exitPressure, Düsen')).toEqual(['exit', 'pressure', 'dusen']);
  });
});

describe('a comma in a number typed', () => {
  it.each([
    ['thrust at 35,000 ft', { kind: 'altitude', altitude: 10668 }],
    ['thrust at 0,5 bar', { kind: 'pressure', pressure: 50000 }],
    ['thrust at 1,5 km', { kind: 'altitude', altitude: 1500 }],
    ['thrust at 50,000 Pa', { kind: 'pressure', pressure: 50000 }],
  ])('%s', (typed, at) => {
    expect(readWanted(typed, owners).at).toEqual(at);
  });
});
