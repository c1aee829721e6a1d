import { describe, expect, test } from 'vitest';
import { nuAtMach, tabulateSupersonic } from '../../../src/physics/flow/gasTable.ts';
import { obliqueShockPerfect } from '../../../src/physics/flow/shocks/perfectShock.ts';
import { shockGasOf } from '../../../src/physics/flow/shocks/shockGas.ts';
import { expandPerfect } from '../../../src/physics/gas/index.ts';
import { nozzleModel } from '../../../src/physics/nozzle/index.ts';
import { greatestTurnIntoVacuumPerfect, type Plume, plumeSource } from '../../../src/physics/plume/index.ts';
import { lipTurn } from '../../../src/physics/plume/lipTurn.ts';

const degree = Math.PI / 180;

function turnAt(mach: number, gamma: number, lipOverAmbient: number) {
  const expansion = expandPerfect({ gamma, molarMass: 0.022, temperature: 3000, pressure: 1e7 });
  const table = tabulateSupersonic(expansion, 1e-2);
  const { pressure } = expansion.atMach(mach);
  return lipTurn(
    table,
    shockGasOf(expansion, 1e-2),
    { nu: nuAtMach(table, mach), angle: 0 },
    pressure / lipOverAmbient,
    1e-2,
  ).turn;
}

describe('the turn of the boundary at the lip', () => {
  // NACA Report 1135 (1953), Prandtl–Meyer angles of a perfect gas, recomputed.
  test.each([
    [3, 1.4, 2, 3.4736, 8.351],
    [3, 1.2, 5, 3.853, 21.543],
    [2.5, 1.4, 4, 3.4231, 18.164],
  ])('under-expanded: Mach %f, γ %f, p_e/p_a %f', (mach, gamma, ratio, boundaryMach, turn) => {
    const lip = turnAt(mach, gamma, ratio);
    expect(lip.regime).toBe('under-expanded');
    expect(Math.abs(lip.boundaryMach / boundaryMach - 1)).toBeLessThan(3e-5);
    expect(Math.abs(lip.turn / degree - turn)).toBeLessThan(1e-3);
  });

  test('over-expanded: the oblique shock of the tables, inwards', () => {
    // NACA Report 1135: Mach 3 turned by 10° has p₂/p₁ = 2.0545 and M₂ = 2.5050.
    const lip = turnAt(3, 1.4, 1 / obliqueShockPerfect(3, 1.4, 10 * degree).pressureRatio);
    expect(lip.regime).toBe('over-expanded');
    expect(lip.turn / degree).toBeCloseTo(-10, 4);
    expect(lip.boundaryMach).toBeCloseTo(2.505, 3);
    expect(lip.shockAngle! / degree).toBeCloseTo(27.383, 2);
  });

  test('is nothing where the pressures match', () => {
    expect(turnAt(3, 1.3, 1)).toMatchObject({ regime: 'matched', shockAngle: null });
    expect(Math.abs(turnAt(3, 1.3, 1).turn)).toBeLessThan(1e-6);
  });

  // NACA Report 1135: exact.
  test.each([
    [1.4, 130.454],
    [1.3, 159.199],
    [1.25, 180],
    [1.2, 208.496],
  ])('γ %f: the greatest turn into a vacuum', (gamma, turn) => {
    expect(greatestTurnIntoVacuumPerfect(gamma) / degree).toBeCloseTo(turn, 3);
  });
});

describe('the plume of a nozzle', () => {
  const expansion = expandPerfect({ gamma: 1.2, molarMass: 0.022, temperature: 3500, pressure: 1e7 });
  const ideal = nozzleModel({ kind: 'ideal', areaRatio: 10 }, expansion);
  const source = plumeSource(ideal);
  const exit = ideal.exit.pressure;

  const all = ({ lip, fullyExpanded, cellLength, machDisk, meeting, outline }: Plume) => [
    lip,
    fullyExpanded,
    cellLength,
    machDisk,
    meeting,
    outline,
  ];

  test('gives every number or why there is none, from vacuum to unchoked', () => {
    for (const ambient of [0, 1e-3, 1, 1e3, 0.5 * exit, exit, 1.2 * exit, 3 * exit, 20 * exit, 0.9e7]) {
      for (const one of all(source.at(ambient))) {
        expect(one.value === null, `${ambient}`).toBe(one.absent !== null);
        if (one.absent !== null) expect(one.absent).toMatch(/\.$/);
      }
    }
  });

  test('in vacuum the boundary is turned as far as the gas data let it, less than the perfect gas could', () => {
    const { lip, cellLength, machDisk, outline } = source.at(0);
    const most =
      greatestTurnIntoVacuumPerfect(1.2) -
      // ν at the exit, by the turn of the same exit to the table's end.
      nuAtMach(tabulateSupersonic(expansion, 1e-2), ideal.exit.mach!);
    expect(lip.value!.turn).toBeGreaterThan(0.6 * most);
    expect(lip.value!.turn).toBeLessThan(most);
    expect(lip.value!.boundaryPressure).toBe(source.lowestPressure);
    expect(cellLength.value).toBeNull();
    expect(machDisk.value).toBeNull();
    expect(outline.value!.computed[0]!.axial).toBeCloseTo(0, 12);
  });

  test('the outline begins at the lip, and the sketch where what is computed ends', () => {
    for (const share of [0.02, 0.3, 0.8, 1, 1.2]) {
      const { computed, sketched } = source.at(share * exit).outline.value!;
      expect(computed[0]!.radius).toBeCloseTo(Math.sqrt(10), 9);
      expect(sketched[0]).toEqual(computed[computed.length - 1]);
      for (const { radius } of [...computed, ...sketched]) expect(radius).toBeGreaterThan(0);
    }
  });

  test('the jet widens as the surroundings thin out', () => {
    const widest = [1, 0.5, 0.2, 0.05].map((share) =>
      Math.max(...source.at(share * exit).outline.value!.computed.map(({ radius }) => radius)),
    );
    for (let i = 1; i < widest.length; i++) expect(widest[i]!).toBeGreaterThan(widest[i - 1]!);
  });

  test('a cone’s jet leaves along its wall where the pressure at the lip matches', () => {
    const cone = nozzleModel({ kind: 'cone', areaRatio: 10, halfAngle: 15 * degree }, expansion);
    const { lip } = plumeSource(cone).at(exit);
    expect(lip.value!.lipAngle).toBeCloseTo(15 * degree, 9);
    const { outline, lip: matched } = plumeSource(cone).at(lip.value!.lipPressure);
    expect(matched.value!.regime).toBe('matched');
    const [first, second] = outline.value!.computed;
    const angle = Math.atan2(second!.radius - first!.radius, second!.axial - first!.axial);
    expect(angle / degree).toBeCloseTo(15, 0);
  });
});
