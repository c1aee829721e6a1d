import { describe, expect, test } from 'vitest';
import { expandPerfect } from '../../../src/physics/gas/index.ts';
import { nozzleModel } from '../../../src/physics/nozzle/index.ts';
import { plugFlow, preparePlug, sizeOfPlug } from '../../../src/physics/wholeFlow/index.ts';
import { rowsAcross } from '../../../src/physics/wholeFlow/plugRows.ts';
import type { Place } from '../../../src/physics/wholeFlow/polyLine.ts';

const LIP_LINE = { inner: [0, 9], outer: [0, 10] } as const satisfies Record<string, Place>;
const MANY = 1000;

/** Heights of the rows from wall to edge, over the first of so many even ones. */
function heights(wall: Place, edge: Place, round: boolean, even = false): readonly number[] {
  const row = rowsAcross(LIP_LINE, MANY, { even, round });
  const places = Array.from({ length: MANY + 1 }, (_, j) => row(wall, edge, j)[1]);
  expect(places[0]).toBeCloseTo(wall[1], 12);
  expect(places[MANY]).toBeCloseTo(edge[1], 12);
  return places.slice(1).map((place, j) => ((place - places[j]!) * MANY) / (edge[1] - wall[1]));
}

describe('rows across the gas of a plug', () => {
  test('at the lip the last is a tenth of an even one, and each a little higher than the next', () => {
    const rows = heights(LIP_LINE.inner, LIP_LINE.outer, true);
    const even = rows[0]!;
    expect(rows.at(-1)! / even).toBeCloseTo(0.1, 2);
    for (let j = 1; j < MANY; j++) {
      expect(rows[j]).toBeLessThanOrEqual(rows[j - 1]! + 1e-9);
      expect((rows[j - 1]! - rows[j]!) / rows[j]!).toBeLessThan(0.005);
    }
  });

  test('far from the lip they are even; by a round wall of small radius low, a flat one has none', () => {
    for (const height of heights([9, 8], [9, 10], true)) expect(height).toBeCloseTo(1, 9);
    const thin = heights([9, 0.4], [9, 2.4], true);
    expect(thin[0]! / thin.at(-1)!).toBeCloseTo(0.3, 2);
    for (const height of heights([9, 0.4], [9, 2.4], false)) expect(height).toBeCloseTo(1, 9);
    for (const height of heights(LIP_LINE.inner, LIP_LINE.outer, true, true))
      expect(height).toBeCloseTo(1, 9);
  });
});

test.each(['annular', 'linear'] as const)(
  'meshes of plugs (%s) of many area ratios in thick and thin air, none of their cells folded',
  (form) => {
    const expansion = expandPerfect({ gamma: 1.2, molarMass: 0.022, temperature: 3000, pressure: 50e5 });
    for (const areaRatio of [4, 8, 10, 13.3, 17.4, 25, 60])
      for (const kept of [0.2, 0.6]) {
        const contour = nozzleModel({ kind: 'plug', form, areaRatio, kept }, expansion).contour!(0.1, {
          contractionRatio: 3,
          characteristicLength: 1,
          convergingAngle: Math.PI / 6,
        });
        const { wall, width } = contour.plug!;
        const prepared = preparePlug({
          expansion,
          cowl: contour.wall,
          plug: wall,
          width: width ?? null,
          throatRadius: 0.1,
        });
        for (const pressure of [1e5, 1e4, 1e3, 50]) {
          const air = { pressure, density: pressure / (287 * 250), speed: 0 };
          for (const timed of [false, true])
            expect(() => plugFlow(prepared, { air }, sizeOfPlug(prepared, 8, 8, timed), null)).not.toThrow();
        }
      }
  },
);
