import { beforeAll, describe, expect, it } from 'vitest';
import { rowAt } from '../../../src/answer/conditions.ts';
import type { SolvedStudy } from '../../../src/answer/solve.ts';
import { LOSSES, thrustRings } from '../../../src/telling/clips/thrustRings.ts';
import { solveText } from '../../answer/solveText.ts';

let solved: SolvedStudy;

beforeAll(async () => {
  solved = await solveText(`
bell: { propellants: { oxidiser: oxygen, fuel: methane, ratio: 3.5 }, chamber: { pressure: 100 bar }, size: { throat: 200 mm }, nozzle: { kind: bell, areaRatio: 30, length: 80 % } }
cone: { propellants: { oxidiser: oxygen, fuel: methane, ratio: 3.5 }, chamber: { pressure: 60 bar }, size: { throat: 100 mm }, nozzle: { kind: cone, areaRatio: 60, halfAngle: 15 deg } }
plug: { propellants: { oxidiser: oxygen, fuel: methane, ratio: 3.5 }, chamber: { pressure: 100 bar }, size: { throat: 200 mm }, nozzle: { kind: plug, form: annular, areaRatio: 40, kept: 30 % } }
`);
});

const ringsOf = (id: string, ambient: number) => {
  const solution = solved.solutions.get(id)!;
  const row = rowAt(solution, ambient, null);
  return { row, ...thrustRings(solved.answer.engines[id]!, row) };
};

describe('the rings of a nozzle', () => {
  it.each([
    ['bell', 0],
    ['bell', 30_000],
    ['bell', 101_325],
    ['cone', 0],
    ['cone', 101_325],
    ['plug', 0],
    ['plug', 101_325],
  ])('of the %s at %d Pa add up to its thrust', (id, ambient) => {
    const { row, pieces, largestOffset } = ringsOf(id, ambient);
    // A sum of some thirty numbers in double precision.
    expect(pieces.reduce((sum, { force }) => sum + force, 0) / row.thrust!).toBeCloseTo(1, 12);
    expect(pieces.at(-1)!.surface).toBe(LOSSES);
    expect(pieces.at(-1)!.sum / row.thrust!).toBeCloseTo(1, 12);
    for (const { surface, force } of row.thrustParts) {
      const own = pieces.filter((piece) => piece.surface === surface);
      expect(own.reduce((sum, piece) => sum + piece.force, 0) / (force || 1)).toBeCloseTo(
        force === 0 ? 0 : 1,
        10,
      );
    }
    // Trapezoids over some fifty places of the wall against the model's own integral.
    expect(largestOffset).toBeLessThan(0.01);
    expect(pieces.filter(({ pressure }) => pressure !== null).length).toBeGreaterThanOrEqual(24);
  });

  it('push on an opening wall in vacuum, pull on a closing one; the last rings of a wide bell pull back at the pad', () => {
    const vacuum = ringsOf('bell', 0).pieces;
    expect(vacuum.filter(({ surface }) => surface === 'nozzle wall').every(({ force }) => force > 0)).toBe(
      true,
    );
    expect(
      vacuum
        .filter(({ surface, to }) => surface === 'converging wall' && to! > -0.05)
        .every(({ force }) => force < 0),
    ).toBe(true);
    const pad = ringsOf('bell', 101_325).pieces.filter(({ surface }) => surface === 'nozzle wall');
    expect(pad.at(-1)!.force).toBeLessThan(0);
  });

  it('of the bell agree with the thrust of one-dimensional flow by the rings of its wall: F = Σ p ΔA in vacuum', () => {
    const { wall } = solved.answer.engines.bell!;
    const raw = wall.slice(1).reduce((sum, b, i) => {
      const a = wall[i]!;
      return a.axial < 0
        ? sum
        : sum + ((a.pressure + b.pressure) / 2) * Math.PI * (b.radius ** 2 - a.radius ** 2);
    }, 0);
    const rings = ringsOf('bell', 0).pieces.filter(({ surface }) => surface === 'nozzle wall');
    // Of the wall's own push: what the model's finer integral makes of the same pressures.
    expect(rings.reduce((sum, { force }) => sum + force, 0) / raw).toBeCloseTo(1, 2);
  });
});
