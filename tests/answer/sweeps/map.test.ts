import { describe, expect, it } from 'vitest';
import type { Told } from '../../../src/answer/asked/model.ts';
import { sweepMap } from '../../../src/answer/sweeps/index.ts';
import type { MapRequest, SweepMap } from '../../../src/answer/sweeps/model.ts';
import { studyOf } from '../solveText.ts';
import { fakeCrew } from './fakeCrew.ts';

const study = await studyOf(
  'bell: { propellants: { oxidiser: oxygen, fuel: methane, ratio: 3.5 }, chamber: { pressure: 100 bar, efficiency: 97.5 % }, size: { throat: 200 mm }, nozzle: { kind: bell, areaRatio: 25 } }',
);

const request: MapRequest = {
  id: null,
  title: null,
  of: 'bell.specificImpulse(vacuum)',
  across: { over: 'propellants.ratio', from: 2, to: 4, spacing: 'even' },
  up: { over: 'nozzle.areaRatio', from: 10, to: 100, spacing: 'in equal ratios' },
  engines: null,
  points: 17,
};

function mapped(f: (ratio: number, areaRatio: number) => number | Told, onUpdate?: (map: SweepMap) => void) {
  const crew = fakeCrew((_, point) =>
    f(point['engines.bell.propellants.ratio']!, point['engines.bell.nozzle.areaRatio']!),
  );
  return sweepMap(study, crew, request, onUpdate === undefined ? {} : { onUpdate });
}

/** Highest at 3.21 and 40. */
const hill = (r: number, e: number): number => 300 - 40 * (r - 3.21) ** 2 - 20 * Math.log(e / 40) ** 2;

describe('a map', () => {
  it('places its highest value between the points of its grid', async () => {
    const { highest, lowest } = await mapped(hill);
    expect(highest!.at).toBe('inside');
    // A 32nd of a cell: 0.004 across, 0.5 % up.
    expect(Math.abs(highest!.x - 3.21)).toBeLessThan(0.005);
    expect(Math.abs(highest!.y / 40 - 1)).toBeLessThan(0.006);
    expect(highest!.value).toBeCloseTo(300, 2);
    expect(lowest!.at).toBe('end');
  });

  it('comes coarse first and finer then, each place worked out once', async () => {
    const sizes: number[] = [];
    const found = await mapped(hill, ({ across, up, provisional }) => {
      sizes.push(across.length * up.length);
      expect(provisional).toBe(true);
    });
    expect(sizes).toEqual([25, 81, 289]);
    expect(found.values).toHaveLength(289);
    expect(found.up[8]).toBeCloseTo(Math.sqrt(10 * 100), 9);
  });

  it('has lines of equal value where the closed form has it', async () => {
    const { levels } = await mapped((r, e) => 100 * r + e);
    expect(levels.length).toBeGreaterThan(4);
    for (const { value, lines } of levels) {
      for (const { x, y } of lines.flat()) expect(100 * x + y).toBeCloseTo(value, 6);
    }
  });

  it('keeps places without a value apart, with their reason', async () => {
    const hole: Told = { ok: false, problem: { code: 'no-wall', what: 'No wall.', mend: 'Another.' } };
    const { holes, values, highest } = await mapped((r, e) => (r > 3.5 ? hole : r + e));
    expect(holes).toHaveLength(1);
    expect(holes[0]!.problem.code).toBe('no-wall');
    expect(holes[0]!.places).toHaveLength(values.filter((value) => value === null).length);
    expect(highest!.x).toBe(3.5);
  });

  it('says what is held', async () => {
    const { held } = await mapped(hill);
    expect(held.short).toBe('Throat held at 200 mm: thrust and propellant flow follow.');
    expect(held.lines[0]).toBe('bell: throat 200 mm, chamber pressure 100 bar, bell of 80 % length.');
  });
});
