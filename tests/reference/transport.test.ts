import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { openDataShelf } from '../../src/faces/disk/data.ts';
import { compileTransport, transportOf } from '../../src/physics/gas/index.ts';

/*
 * Reference: Cantera 3.2.0 (a general-purpose library, BSD licence), mixture-averaged transport; made by
 * scripts/reference/make_transport_reference.py. `same`: on this program's constants; `other`: on those of GRI-Mech 3.0.
 */

interface Values {
  readonly viscosity: number;
  readonly conductivity: number;
}
interface Table {
  readonly mixtures: Readonly<Record<string, Readonly<Record<string, number>>>>;
  readonly cases: readonly {
    readonly mixture: string;
    readonly temperature: number;
    readonly same: Values;
    readonly other: Values;
  }[];
}

const { mixtures, cases } = JSON.parse(
  readFileSync(new URL('transport-reference.json', import.meta.url), 'utf8'),
) as Table;
const shelf = openDataShelf();
const rows = await shelf.transport();
const species = await shelf.species(['H', 'C', 'N', 'O', 'Al', 'Cl', 'F', 'He', 'Ar']);
const data = compileTransport(species, rows);

function worst(
  against: 'same' | 'other',
  value: keyof Values,
): { readonly share: number; readonly at: string } {
  let found = { share: 0, at: '' };
  for (const one of cases) {
    const ours = transportOf(mixtures[one.mixture]!, one.temperature, data)[value];
    const share = Math.abs(ours / one[against][value] - 1);
    if (share > found.share) found = { share, at: `${one.mixture}, ${one.temperature} K` };
  }
  return found;
}

describe('viscosity and conductivity against Cantera', () => {
  // Same Chapman–Enskog formula and Wilke rule; the collision integral is another fit. Largest found: 0.41 %.
  test('viscosity on the same constants within 0.6 %', () => {
    const { share, at } = worst('same', 'viscosity');
    expect(share, at).toBeLessThan(0.006);
    expect(share).toBeGreaterThan(0);
  });

  // Warnatz's formula there, modified Eucken here: they differ by how vibration carries heat. Largest: 6.9 %.
  test('conductivity on the same constants within 8 %', () => {
    const { share, at } = worst('same', 'conductivity');
    expect(share, at).toBeLessThan(0.08);
  });

  // Other constants: dipoles stand in the potentials there. Largest: 5.0 and 5.1 %.
  test('on other published constants viscosity and conductivity within 6 %', () => {
    const viscosity = worst('other', 'viscosity');
    expect(viscosity.share, viscosity.at).toBeLessThan(0.06);
    const conductivity = worst('other', 'conductivity');
    expect(conductivity.share, conductivity.at).toBeLessThan(0.06);
  });

  // Widely tabulated at 300 K, 1 bar (from memory): 17.9, 8.96 µPa s; 25.9, 182 mW/(m K).
  test.each([
    ['N2', 17.9e-6, 25.9e-3],
    ['H2', 8.96e-6, 182e-3],
  ])('%s at 300 K', (name, viscosity, conductivity) => {
    const found = transportOf({ [name]: 1 }, 300, data);
    expect(Math.abs(found.viscosity / viscosity - 1)).toBeLessThan(0.02);
    expect(Math.abs(found.conductivity / conductivity - 1)).toBeLessThan(0.04);
  });
});

describe('the constants', () => {
  test('every row is of a gas of the species data, once, with plausible numbers', () => {
    const gases = new Set(species.filter(({ phase }) => phase === 'gas').map(({ name }) => name));
    expect(rows.filter((row) => !gases.has(row.species))).toEqual([]);
    expect(new Set(rows.map((row) => row.species)).size).toBe(rows.length);
    for (const { diameter, wellDepth } of rows) {
      expect(diameter).toBeGreaterThan(2e-10);
      expect(diameter).toBeLessThan(7e-10);
      expect(wellDepth).toBeGreaterThan(10);
      expect(wellDepth).toBeLessThan(3000);
    }
  });
});
