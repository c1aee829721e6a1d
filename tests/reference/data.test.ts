import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { openDataShelf } from '../../src/faces/disk/data.ts';
import { ProblemError } from '../../src/numerics/problem.ts';
import type { SpeciesRecord, ThermoRange } from '../../src/physics/gas/records.ts';

/** Standard atomic weights [g/mol], IUPAC 1999 (from memory), as the dataset uses them. */
const atomicMass: Readonly<Record<string, number>> = {
  H: 1.00794,
  He: 4.002602,
  C: 12.0107,
  N: 14.0067,
  O: 15.9994,
  F: 18.9984032,
  Al: 26.981538,
  Cl: 35.453,
  Ar: 39.948,
};
/** The gas constant with which the polynomials were fitted [J/(mol K)]. */
const gasConstantOfFit = 8.31451;
const roomTemperature = 298.15;

const heatCapacity = ({ a }: ThermoRange, T: number) =>
  a[0]! / T ** 2 + a[1]! / T + a[2]! + a[3]! * T + a[4]! * T ** 2 + a[5]! * T ** 3 + a[6]! * T ** 4;
const enthalpy = ({ a, b }: ThermoRange, T: number) =>
  -a[0]! / T ** 2 +
  (a[1]! * Math.log(T)) / T +
  a[2]! +
  (a[3]! * T) / 2 +
  (a[4]! * T ** 2) / 3 +
  (a[5]! * T ** 3) / 4 +
  (a[6]! * T ** 4) / 5 +
  b[0]! / T;
const entropy = ({ a, b }: ThermoRange, T: number) =>
  -a[0]! / (2 * T ** 2) -
  a[1]! / T +
  a[2]! * Math.log(T) +
  a[3]! * T +
  (a[4]! * T ** 2) / 2 +
  (a[5]! * T ** 3) / 3 +
  (a[6]! * T ** 4) / 4 +
  b[1]!;
const rangeAt = (row: SpeciesRecord, T: number) =>
  row.ranges.find((range) => range.Tmin <= T && T <= range.Tmax);
const massOf = (elements: Readonly<Record<string, number>>) =>
  Object.entries(elements).reduce((sum, [element, count]) => sum + count * atomicMass[element]!, 0) / 1000;

const shelf = openDataShelf();
const all = await shelf.species(Object.keys(atomicMass));
const propellants = await shelf.propellants();
const named = new Map(all.map((row) => [row.name, row]));

describe('species data', () => {
  it('holds every species once', () => {
    expect(all.length).toBe(229);
    expect(named.size).toBe(229);
    expect(all.filter((row) => row.phase === 'gas').length).toBe(213);
  });

  it('gives the tabulated enthalpy at 298.15 K from the coefficients', () => {
    let compared = 0;
    for (const row of all) {
      const range = rangeAt(row, roomTemperature);
      if (range === undefined) continue;
      const h = enthalpy(range, roomTemperature) * gasConstantOfFit * roomTemperature;
      expect(Math.abs(h - row.hf298), row.name).toBeLessThan(2);
      compared += 1;
    }
    // Those left out begin above room temperature (liquids and one high-temperature solid) or end below it (ice).
    const left = all.filter((row) => rangeAt(row, roomTemperature) === undefined).map((row) => row.name);
    expect(left.sort()).toEqual(
      ['Al(L)', 'Al2O3(L)', 'AlCl3(L)', 'AlN(L)', 'H2O(cr)', 'NH4Cl(III)', 'NH4F(L)'].sort(),
    );
    expect(compared + left.length).toBe(all.length);
  });

  it('states the molar mass of its formula', () => {
    for (const row of all)
      expect(Math.abs(row.molarMass - massOf(row.elements)), row.name).toBeLessThan(2e-8);
  });

  it('joins its temperature ranges', () => {
    let joins = 0;
    for (const row of all) {
      row.ranges.forEach((range, k) => {
        expect(range.Tmin).toBeLessThan(range.Tmax);
        expect(range.a.length).toBe(7);
        expect(range.b.length).toBe(2);
        expect([...range.a, ...range.b].every(Number.isFinite)).toBe(true);
        const next = row.ranges[k + 1];
        if (next === undefined) return;
        joins += 1;
        const T = range.Tmax;
        expect(next.Tmin, row.name).toBe(T);
        // AlOCl has a kink at 1000 K and the solids AlN, Al4C3 a step in cp at 300 K in the dataset itself.
        const loose = row.name === 'AlOCl';
        const stepped = loose || row.phase !== 'gas';
        const cpStep = Math.abs(heatCapacity(range, T) - heatCapacity(next, T));
        expect(cpStep, `cp of ${row.name}`).toBeLessThan(stepped ? 0.015 : 1e-6);
        const hStep = Math.abs(enthalpy(range, T) - enthalpy(next, T));
        expect(hStep, `h of ${row.name}`).toBeLessThan(loose ? 0.001 : row.phase === 'gas' ? 1e-6 : 1e-3);
        const sStep = Math.abs(entropy(range, T) - entropy(next, T));
        expect(sStep, `s of ${row.name}`).toBeLessThan(loose ? 0.0015 : row.phase === 'gas' ? 1e-6 : 1e-3);
      });
    }
    expect(joins).toBeGreaterThan(213);
  });

  it('covers 200 K to 6000 K without a gap for every gas', () => {
    const short = all.filter(
      (row) => row.phase === 'gas' && (row.ranges[0]!.Tmin > 200 || row.ranges.at(-1)!.Tmax < 6000),
    );
    expect(short.map((row) => row.name)).toEqual([]);
  });

  it('has equal Gibbs energies of solid and liquid at the melting points', () => {
    const melting: readonly [string, string, number, number][] = [
      ['Al(cr)', 'Al(L)', 933.61, 1e-5],
      ['AlCl3(cr)', 'AlCl3(L)', 465.7, 1e-5],
      ['Al2O3(a)', 'Al2O3(L)', 2327, 1e-5],
      ['AlN(cr)', 'AlN(L)', 2700, 1e-5],
      ['H2O(cr)', 'H2O(L)', 273.15, 5e-4],
    ];
    for (const [solid, liquid, T, tolerance] of melting) {
      const gibbs = (name: string) => {
        const range = rangeAt(named.get(name)!, T)!;
        return enthalpy(range, T) - entropy(range, T);
      };
      expect(Math.abs(gibbs(solid) - gibbs(liquid)), solid).toBeLessThan(tolerance);
    }
  });

  /**
   * CODATA key values for thermodynamics (Cox, Wagman, Medvedev, Hemisphere 1989), from memory:
   * heat of formation [kJ/mol] and standard entropy [J/(mol K)] at 298.15 K, 1 bar.
   */
  const keyValues: readonly [string, number, number][] = [
    ['H', 217.998, 114.717],
    ['O', 249.18, 161.059],
    ['N', 472.68, 153.301],
    ['F', 79.38, 158.751],
    ['Cl', 121.301, 165.19],
    ['H2', 0, 130.68],
    ['O2', 0, 205.152],
    ['N2', 0, 191.609],
    ['He', 0, 126.153],
    ['Ar', 0, 154.846],
    ['H2O', -241.826, 188.835],
    ['H2O(L)', -285.83, 69.95],
    ['CO', -110.53, 197.66],
    ['CO2', -393.51, 213.785],
    ['NH3', -45.94, 192.77],
    ['HF', -273.3, 173.779],
    ['HCl', -92.31, 186.902],
    ['Al2O3(a)', -1675.7, 50.92],
    ['C(gr)', 0, 5.74],
  ];
  it('agrees with the CODATA key values', () => {
    for (const [name, heatOfFormation, standardEntropy] of keyValues) {
      const range = rangeAt(named.get(name)!, roomTemperature)!;
      const h = (enthalpy(range, roomTemperature) * gasConstantOfFit * roomTemperature) / 1000;
      expect(Math.abs(h - heatOfFormation), `h of ${name}`).toBeLessThan(0.05);
      const s = entropy(range, roomTemperature) * gasConstantOfFit;
      expect(Math.abs(s - standardEntropy), `s of ${name}`).toBeLessThan(0.05);
    }
  });

  it('cites its source in every file', () => {
    const index = readJson('species/index.json') as {
      files: { name: string; file: string; gases: number; condensed: number; contains: string[] }[];
    };
    let rows = 0;
    for (const entry of index.files) {
      const content = readJson(`species/${entry.file}`) as {
        source: Record<string, unknown>;
        species: SpeciesRecord[];
      };
      for (const key of ['dataset', 'publication', 'obtainedFrom', 'licence', 'changesMade'])
        expect(content.source[key], `${key} of ${entry.file}`).toBeTruthy();
      for (const row of content.species) expect(row.refCode, row.name).not.toBe('');
      expect(content.species.filter((row) => row.phase === 'gas').length).toBe(entry.gases);
      expect(content.species.length).toBe(entry.gases + entry.condensed);
      expect([...new Set(content.species.flatMap((row) => Object.keys(row.elements)))].sort()).toEqual(
        [...entry.contains].sort(),
      );
      rows += content.species.length;
    }
    expect(rows).toBe(all.length);
  });
});

describe('data shelf', () => {
  it('gives only species of the elements asked for, whatever their order', async () => {
    const some = await shelf.species(['C', 'H', 'O']);
    expect(some).toEqual(await shelf.species(['O', 'H', 'C']));
    expect(some).toEqual(
      all.filter((row) => Object.keys(row.elements).every((element) => 'C H O'.split(' ').includes(element))),
    );
    expect(some.length).toBeGreaterThan(60);
  });

  it('refuses an element of which it has no species, naming those it has', async () => {
    const refused = await shelf.species(['H', 'Xe', 'B']).then(
      () => undefined,
      (error: unknown) => error,
    );
    expect(refused).toBeInstanceOf(ProblemError);
    expect((refused as ProblemError).problem.what).toContain('Xe, B');
    expect((refused as ProblemError).problem.mend).toContain('Al');
  });
});

describe('propellant data', () => {
  it('can be called by names that each mean one propellant', () => {
    const owner = new Map<string, string>();
    for (const row of propellants) {
      for (const name of row.alsoCalled) expect(name).toBe(name.toLowerCase());
      for (const name of new Set([row.id.toLowerCase(), row.name.toLowerCase(), ...row.alsoCalled])) {
        expect(owner.get(name), `"${name}" means ${owner.get(name)} and ${row.id}`).toBeUndefined();
        owner.set(name, row.id);
      }
    }
    // Everyday names, from common usage (no source).
    expect(
      ['oxygen', 'lox', 'methane', 'hydrogen', 'kerosene', 'hydrazine', 'mmh', 'peroxide'].map((name) =>
        owner.get(name),
      ),
    ).toEqual(['LOX', 'LOX', 'LCH4', 'LH2', 'RP-1', 'N2H4', 'MMH', 'H2O2-98']);
  });

  it('is made of elements that the species data has, in the stated molar mass', () => {
    for (const row of propellants) {
      for (const element of Object.keys(row.elements)) expect(atomicMass[element], row.id).toBeDefined();
      // Blends state their formula to eight decimals and their molar mass to seven digits.
      expect(Math.abs(row.molarMass / massOf(row.elements) - 1), row.id).toBeLessThan(1e-5);
    }
  });

  it('states enthalpy, uncertainty, density and their sources', () => {
    for (const row of propellants as readonly ((typeof propellants)[number] & {
      enthalpyPerMole: number;
    })[]) {
      expect(row.enthalpySource.length, row.id).toBeGreaterThan(8);
      expect(row.densitySource.length, row.id).toBeGreaterThan(8);
      expect(row.hazard.length, row.id).toBeGreaterThan(40);
      expect(row.hazard, row.id).toContain('safety data sheet');
      expect(row.enthalpy).toBe(row.enthalpyPerMole / row.molarMass);
      // Water is the most bound of them, hydrazine and nitrous oxide the least.
      expect(row.enthalpy, row.id).toBeGreaterThan(-16e6);
      expect(row.enthalpy, row.id).toBeLessThan(2e6);
      expect(row.enthalpyUncertainty, row.id).toBeGreaterThanOrEqual(0);
      expect(row.temperature).toBeGreaterThan(15);
      expect(row.temperature).toBeLessThanOrEqual(298.15);
      expect(row.density).toBeGreaterThan(0.05);
      expect(row.density).toBeLessThan(3000);
    }
  });

  /**
   * Heats of formation of liquids [kJ/mol] as widely tabulated (CRC Handbook and NIST WebBook, from memory), at
   * 298.15 K. The data follows another compilation, hence the bound of 2.5 kJ/mol.
   */
  it('agrees with widely tabulated heats of formation', () => {
    const liquids: readonly [string, number][] = [
      ['water', -285.83],
      ['methanol', -239.2],
      ['ethanol', -277.6],
      ['isopropanol', -318.1],
      ['N2H4', 50.6],
      ['N2O4', -19.5],
      ['HNO3', -174.1],
      ['MMH', 54.2],
      ['UDMH', 48.9],
      ['nitromethane', -112.6],
      ['AP', -295.8],
      ['GCH4', -74.6],
    ];
    for (const [id, value] of liquids) {
      const row = propellants.find((candidate) => candidate.id === id)!;
      expect(Math.abs((row.enthalpy * row.molarMass) / 1000 - value), id).toBeLessThan(2.5);
    }
  });
});

function readJson(name: string): unknown {
  return JSON.parse(readFileSync(new URL(`../../data/${name}`, import.meta.url), 'utf8'));
}
