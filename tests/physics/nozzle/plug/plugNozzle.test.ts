import { describe, expect, test } from 'vitest';
import {
  nozzleModel,
  plugChamberParts,
  plugChamberPush,
  plugOf,
} from '../../../../src/physics/nozzle/index.ts';
import type { PlugSpec } from '../../../../src/physics/nozzle/plug/spec.ts';
import { problemCode } from '../../problemCode.ts';
import { degrees, perfectGas } from '../perfectGas.ts';

const p0 = 1e7;
const gas = perfectGas({ gamma: 1.2, pressure: p0 });
const whole: PlugSpec = { kind: 'plug', form: 'annular', areaRatio: 60, kept: 1 };

function plug(change: Partial<PlugSpec> = {}, losses: 'default' | 'none' = 'default') {
  return plugOf(nozzleModel({ ...whole, ...change }, gas, losses))!;
}
const ideal = (areaRatio: number, ambient: number): number =>
  nozzleModel({ kind: 'ideal', areaRatio }, gas).at(ambient).thrustCoefficientIfFull;
const bound = (areaRatio: number, ambient: number): number =>
  nozzleModel({ kind: 'adapting', areaRatio }, gas).at(ambient).thrustCoefficient!;

describe('whole plug', () => {
  test.each([
    ['annular', 60],
    ['annular', 25],
    ['annular', 10],
    ['linear', 60],
    ['linear', 25],
    ['linear', 10],
  ] as const)(
    '%s, ε %d: at design and in vacuum within 0.2 %% of the ideal thrust coefficient, both ways',
    (form, areaRatio) => {
      const model = plug({ form, areaRatio });
      for (const ambient of [model.matchedAmbient, 0.5 * model.matchedAmbient, 0]) {
        const { thrustCoefficient, boundary } = model.at(ambient);
        expect(Math.abs(thrustCoefficient! / ideal(areaRatio, ambient) - 1)).toBeLessThan(2e-3);
        expect(Math.abs(boundary! / ideal(areaRatio, ambient) - 1)).toBeLessThan(2e-3);
      }
    },
  );

  test('has no base and no wake', () => {
    const model = plug();
    expect([model.baseArea, model.base(0), model.wakeClosesAt]).toEqual([0, null, null]);
  });
});

describe('thrust by surfaces and by the boundary', () => {
  const designs: readonly Partial<PlugSpec>[] = [
    {},
    { kept: 0.3 },
    { kept: 0.3, form: 'linear' },
    { areaRatio: 15, kept: 0.4, innerMach: 1 },
    { areaRatio: 25, kept: 0.15 },
  ];
  test.each(designs)(
    '%o: agree within 0.3 % from a pressure ratio of 20 to vacuum, the parts adding up',
    (change) => {
      const model = plug(change);
      for (const ratio of [20, 30, 50, 100, 200, 400, 800, 1600, 6400, Number.POSITIVE_INFINITY]) {
        const { thrustCoefficient, boundary, parts } = model.at(p0 / ratio);
        expect(parts.reduce((sum, { coefficient }) => sum + coefficient, 0)).toBeCloseTo(
          thrustCoefficient!,
          12,
        );
        expect(Math.abs(boundary! / thrustCoefficient! - 1)).toBeLessThan(4e-3);
      }
    },
  );

  test('names where the push acts', () => {
    const names = plug({ kept: 0.3 })
      .at(0)
      .parts.map(({ surface }) => surface);
    expect(names).toEqual(['chamber and converging wall', 'inner cowl', 'plug', 'base']);
  });

  test('stays below the bound that no nozzle of its area ratio beats', () => {
    for (const kept of [1, 0.6, 0.3, 0.15]) {
      const model = plug({ kept });
      for (const ratio of [20, 50, 100, 400, 1600, 1e5]) {
        const { thrustCoefficient } = model.at(p0 / ratio);
        // 0.1 %: what the integration of the walls leaves.
        expect(thrustCoefficient!).toBeLessThan(bound(60, p0 / ratio) * 1.001);
      }
    }
  });
});

describe('above the design pressure ratio', () => {
  test('acts like a fixed nozzle: the wall frozen, F = F_vac − p_a A_e', () => {
    // Hagemann, Immich, Terhardt, AIAA 98-3522 (abstract read): adaptation up to the design pressure ratio only.
    const model = plug();
    const vacuum = model.at(0).thrustCoefficient!;
    for (const share of [0.2, 0.6, 1]) {
      const ambient = share * model.matchedAmbient;
      expect(model.at(ambient).thrustCoefficient!).toBeCloseTo(vacuum - (60 * ambient) / p0, 9);
      const { stations } = model.flowAt(ambient);
      expect(stations.map(({ pressure }) => pressure)).toEqual(
        model.flowAt(0).stations.map(({ pressure }) => pressure),
      );
    }
  });
});

describe('below it', () => {
  test('adapts: far above a nozzle of its area ratio that flows full, within some percent of the bound', () => {
    const model = plug({ kept: 0.3 });
    for (const ratio of [30, 60, 100]) {
      const here = model.at(p0 / ratio).thrustCoefficient!;
      expect(here).toBeGreaterThan(model.at(p0 / ratio).thrustCoefficientIfFull + 0.1);
      expect(here / bound(60, p0 / ratio)).toBeGreaterThan(0.95);
    }
  });

  test('no wall point upstream of the cut is left out from a pressure ratio of 20 to twice the design’s', () => {
    const model = plug({ kept: 0.3 });
    const cut = model.geometry.cut.axial;
    for (const ratio of [20, 25, 30, 40, 60, 100, 200, 400, 800, (2 * p0) / model.matchedAmbient]) {
      const { stations, notComputed } = model.flowAt(p0 / ratio);
      expect(notComputed).toBeNull();
      expect(stations.at(-1)!.axial).toBeGreaterThan(0.99 * cut);
    }
  });

  test('where its flow turns subsonic there is a reason instead of a number', () => {
    const at = plug({ kept: 0.3 }).at(p0 / 3);
    expect(at.thrustCoefficient).toBeNull();
    expect(at.absent).toMatch(/subsonic behind a strong shock.*Ask at a lower ambient pressure/s);
  });
});

describe('cut plug', () => {
  const model = plug({ kept: 0.3 });

  test('the shorter, the larger its base and the less its thrust without the base', () => {
    const kept = [1, 0.7, 0.4, 0.2, 0.1].map((share) => plug({ kept: share }));
    for (let i = 1; i < kept.length; i++) {
      expect(kept[i]!.baseArea).toBeGreaterThan(kept[i - 1]!.baseArea);
      const withoutBase = (one: typeof model): number =>
        one.at(0).thrustCoefficient! -
        (one.at(0).parts.find(({ surface }) => surface === 'base')?.coefficient ?? 0);
      expect(withoutBase(kept[i]!)).toBeLessThan(withoutBase(kept[i - 1]!));
    }
  });

  test('its wake closes near or below the design pressure, earlier on the way up the shorter it is', () => {
    // M. Onofri et al., AIAA 2002-0584 (summary read; details from memory).
    const closes = [0.5, 0.3, 0.2, 0.15].map((kept) => plug({ kept }).wakeClosesAt!);
    for (let i = 1; i < closes.length; i++) expect(closes[i]!).toBeGreaterThan(closes[i - 1]!);
    expect(model.wakeClosesAt! / model.matchedAmbient).toBeLessThan(2);
    expect(model.wakeClosesAt! / model.matchedAmbient).toBeGreaterThan(0.2);
  });

  test('its thrust has no step where the ambient pressure begins to reach the wall', () => {
    const below = model.at(0.999 * model.frozenBelow).thrustCoefficient!;
    const above = model.at(1.001 * model.frozenBelow).thrustCoefficient!;
    expect(Math.abs(above / below - 1)).toBeLessThan(1e-3);
  });

  test('kept outside 0 to 100 % is refused', () => {
    expect(problemCode(() => plug({ kept: 1.2 }))).toBe('kept-outside-range');
    expect(problemCode(() => plug({ kept: -0.1 }))).toBe('kept-outside-range');
  });
});

describe('modules', () => {
  test('take off a published share of the vacuum thrust, told as a part of its own; none with losses: none', () => {
    const plain = plug({ kept: 0.3 }).at(0).thrustCoefficient!;
    const modules = { number: 24, shape: 'rectangular' } as const;
    const at = plug({ kept: 0.3, modules }).at(0);
    expect(at.thrustCoefficient! / plain).toBeCloseTo(1 - 0.005, 9);
    expect(at.parts.at(-1)!.surface).toBe('lost between modules');
    expect(plug({ kept: 0.3, modules }, 'none').at(0).thrustCoefficient).toBeCloseTo(plain, 12);
  });

  test('round ones must fit side by side: the error says how many do', () => {
    expect(problemCode(() => plug({ modules: { number: 900, shape: 'round' } }))).toBe('modules-do-not-fit');
    const round = plug({ modules: { number: 24, shape: 'round' } });
    // d = √(4 ε_i A_t/(π n)) against 2π r_lip, by hand.
    const innerAreaRatio = gas.atMach(round.innerMach).areaRatio;
    const gap = 1 - (24 * 2 * Math.sqrt(innerAreaRatio / 24)) / (2 * Math.PI * Math.sqrt(60));
    expect(round.modules!.gap).toBeCloseTo(gap, 3);
  });
});

describe('slipstream', () => {
  const model = plug({ kept: 0.3 });

  test('none at rest', () => {
    const [still, plain] = [model.at(4e4, 0), model.at(4e4)];
    expect(still.parts).toEqual(plain.parts);
    expect(still.boundary).toBe(plain.boundary);
  });

  test('near Mach 1 it lowers what plug and open base feel, and the thrust', () => {
    const rest = model.at(4e4).thrustCoefficient!;
    const flying = model.at(4e4, 1);
    expect(flying.thrustCoefficient!).toBeLessThan(rest);
    // Some percent, of the size of the transonic losses that NASA TN D-4462 is about (title read); more would be a slip.
    expect(flying.thrustCoefficient! / rest).toBeGreaterThan(0.93);
    expect(flying.parts.some(({ surface }) => surface === 'slipstream')).toBe(true);
    expect(Math.abs(flying.boundary! / flying.thrustCoefficient! - 1)).toBeLessThan(4e-3);
  });

  test('in vacuum there is none', () => {
    expect(model.at(0, 3).parts).toEqual(model.at(0).parts);
  });
});

describe('walls to scale', () => {
  const model = plug({ kept: 0.3 });
  const contour = model.contour!(0.1, {
    contractionRatio: 3,
    characteristicLength: 1,
    convergingAngle: degrees(30),
  });
  const { plug: side } = contour;

  test('chamber holds L* times the throat area, and is three times as wide as the throat', () => {
    const count = contour.wall.filter(({ part }) => part !== 'nozzle').length;
    let volume = 0;
    for (let i = 1; i < count; i++) {
      const corners = [contour.wall[i - 1]!, contour.wall[i]!, side!.wall[i]!, side!.wall[i - 1]!];
      // Pappus: area of the quadrilateral times the way of its middle.
      let area = 0;
      corners.forEach((a, k) => {
        const b = corners[(k + 1) % 4]!;
        area += 0.5 * (a.axial * b.radius - b.axial * a.radius);
      });
      volume += Math.abs(area) * 2 * Math.PI * (corners.reduce((sum, { radius }) => sum + radius, 0) / 4);
    }
    // 1 %: pieces of a duct whose sides are curved.
    expect(Math.abs(volume / (Math.PI * 0.01) - 1)).toBeLessThan(0.01);
    const [outer, inner] = [contour.wall[count - 1]!, side!.wall[count - 1]!];
    const slant = Math.hypot(outer.axial - inner.axial, outer.radius - inner.radius);
    expect((Math.PI * slant * (outer.radius + inner.radius)) / (Math.PI * 0.01)).toBeCloseTo(1, 9);
  });

  test.each([
    { areaRatio: 60 },
    { areaRatio: 25 },
    { areaRatio: 10, innerMach: 1 },
    { areaRatio: 6, innerMach: 2 },
    { areaRatio: 60, form: 'linear' },
    { areaRatio: 10, form: 'linear', innerMach: 1 },
  ] as const)(
    '%o: injector face and chamber walls push as the flow through the throat line, so that the sum is within 0.3 %% of the boundary',
    (change) => {
      const one = plug({ kept: 0.3, ...change });
      const walls = one.contour!(0.1, {
        contractionRatio: 3,
        characteristicLength: 1,
        convergingAngle: degrees(30),
      });
      const push = plugChamberPush({ ...walls, plug: walls.plug! }, gas);
      for (const ambient of [0, 3e4]) {
        const at = one.at(ambient);
        const parts = plugChamberParts(at.parts, push, gas, ambient);
        expect(parts[0]!.surface).toBe('injector face');
        const sum = parts.reduce((total, { coefficient }) => total + coefficient, 0);
        expect(Math.abs(sum / at.boundary! - 1)).toBeLessThan(3e-3);
      }
    },
  );

  test('lip, base and lengths are those of the design', () => {
    expect(side!.lipRadius).toBeCloseTo(0.1 * Math.sqrt(60), 12);
    expect(side!.baseArea).toBeCloseTo(Math.PI * side!.baseRadius ** 2, 9);
    expect(side!.keptLength / side!.wholeLength).toBeCloseTo(0.3, 9);
    expect(side!.baseArea / (Math.PI * 0.01)).toBeCloseTo(model.baseArea, 9);
    expect(contour.exitRadius).toBe(side!.lipRadius);
  });

  test('a chamber that would cross the axis is refused', () => {
    const outward = plug({ areaRatio: 6, innerMach: 2.5 });
    const long = { contractionRatio: 3, characteristicLength: 40, convergingAngle: degrees(30) };
    expect(problemCode(() => outward.contour!(0.1, long))).toBe('plug-chamber-meets-axis');
  });
});
