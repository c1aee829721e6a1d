import { expect, test } from 'vitest';
import { attempt } from '../../../src/numerics/problem.ts';
import { expandPerfect } from '../../../src/physics/gas/index.ts';
import { nozzleModel } from '../../../src/physics/nozzle/index.ts';
import { preparePlug } from '../../../src/physics/wholeFlow/index.ts';
import { acrossFlow, lengthAt, polyLine, radiusAt } from '../../../src/physics/wholeFlow/polyLine.ts';

// By hand: two sides of 3-4-5 triangles.
const line = polyLine([
  [0, 0],
  [3, 4],
  [7, 7],
]);

test('a line is found by its axial distance, and by what lies square to a flow', () => {
  expect(lengthAt(line, 3)).toBeCloseTo(5, 12);
  expect(lengthAt(line, 5)).toBeCloseTo(7.5, 12);
  expect(radiusAt(line, 5)).toBeCloseTo(5.5, 12);
  // Of a flow along the second side, square to it at its middle.
  expect(acrossFlow(line, [5 - 3, 5.5 + 4], Math.atan2(3, 4))).toBeCloseTo(7.5, 12);
});

test('it begins at 0 where it begins beyond; of a place that it does not reach it says from where to where it goes, and what to do', () => {
  expect(lengthAt(line, -1)).toBe(0);
  const short = attempt(() => lengthAt(line, 8));
  expect(short).toMatchObject({ ok: false, problem: { code: 'flow-wall-short', facts: { toAxial: 7 } } });
  expect(() => lengthAt(line, 8)).toThrow(
    'a wall from 0 m at a radius of 0 m to 7 m at a radius of 7 m does not come to 8 m behind the throat. Make the nozzle longer',
  );
  expect(() => acrossFlow(line, [20, 1], 0)).toThrow(
    'the line that stands square to the flow at 20 m at a radius of 1 m',
  );
});

test('a plug without a cowl behind its throat has a mesh behind the line of its throat', () => {
  const expansion = expandPerfect({ gamma: 1.13, molarMass: 0.022, temperature: 3500, pressure: 1e7 });
  const spec = { kind: 'plug', form: 'annular', areaRatio: 5, kept: 0.3 } as const;
  const { wall, plug } = nozzleModel(spec, expansion).contour!(0.1, {
    contractionRatio: 3,
    characteristicLength: 1,
    convergingAngle: Math.PI / 6,
  });
  const { shape } = preparePlug({
    expansion,
    cowl: wall,
    plug: plug!.wall,
    throatRadius: 0.1,
    width: null,
  });
  const lip = wall.at(-1)!;
  const behind = plug!.wall.findIndex(({ part }) => part === 'nozzle');
  const { axial, radius } = plug!.wall[behind - 1]!;
  const last = shape.ring.at(-1)!;
  for (const [x, r] of [shape.plug[0]!, last.inner]) {
    expect(x).toBeCloseTo(axial, 12);
    expect(r).toBeCloseTo(radius, 12);
  }
  expect(last.outer).toEqual([lip.axial, lip.radius]);
});
