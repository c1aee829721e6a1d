import { describe, expect, it } from 'vitest';
import type { Told } from '../../../src/answer/asked/model.ts';
import { sweep } from '../../../src/answer/sweeps/index.ts';
import type { Sweep, SweepRequest } from '../../../src/answer/sweeps/model.ts';
import { ProblemError } from '../../../src/numerics/problem.ts';
import type { Study } from '../../../src/study/model.ts';
import { studyOf } from '../solveText.ts';
import { fakeCrew, inputIn } from './fakeCrew.ts';

const engines = `
bell: { propellants: { oxidiser: oxygen, fuel: methane, ratio: 3.5 }, chamber: { pressure: 100 bar, efficiency: 97.5 % }, size: { thrust: 800 kN, at: vacuum }, nozzle: { kind: bell, areaRatio: 25 } }
plug: { like: bell, size: { same: throat, as: bell }, nozzle: { kind: plug, areaRatio: 60, kept: 30 % } }
`;
const study: Study = await studyOf(engines.trim());

const request = (
  of: readonly string[],
  over: string,
  from: number,
  to: number,
  rest: Partial<SweepRequest> = {},
): SweepRequest => ({
  id: null,
  title: null,
  of,
  range: { over, from, to, spacing: 'even' },
  engines: null,
  points: 33,
  ...rest,
});

/** A sweep whose only engine's answer is a function of the input at the path, or of the input set on the ask. */
function followed(f: (x: number) => number | Told, rest: Partial<SweepRequest> = {}, of = ['bell.massFlow']) {
  const crew = fakeCrew((_, point) => f(point['engines.bell.nozzle.areaRatio']!));
  return sweep(study, crew, request(of, 'nozzle.areaRatio', 10, 100, rest));
}

async function problemOf(work: Promise<unknown>) {
  const error = await work.then(
    () => null,
    (caught: unknown) => caught,
  );
  if (!(error instanceof ProblemError)) throw new Error(`no problem: ${String(error)}`);
  return error.problem;
}

const hole: Told = { ok: false, problem: { code: 'no-wall', what: 'No wall.', mend: 'Another.' } };

describe('an optimum', () => {
  // Closed forms with their known highest place [–]; placed to 2e-4 of the range of 90, hence ±0.02.
  it.each([
    ['a parabola', (x: number) => 5 - (x - 41.3) ** 2 / 100, 41.3],
    ['a lopsided bump, x exp(−x/30)', (x: number) => x * Math.exp(-x / 30), 30],
    ['a roof with a sharp ridge', (x: number) => -Math.abs(x - 77.7), 77.7],
    ['a flat top, −(x − 62)⁴', (x: number) => -(((x - 62) / 40) ** 4), 62],
  ])('is placed: %s', async (name, f, place) => {
    const { curves } = await followed(f);
    const { highest, course } = curves[0]!;
    expect(highest!.at).toBe('inside');
    // The fourth power is flat to rounding within 0.5 of its top.
    expect(Math.abs(highest!.x - place)).toBeLessThan(name.includes('flat') ? 0.5 : 0.02);
    expect(highest!.y).toBeCloseTo(f(place), 2);
    expect(course).toBe('has its highest inside');
  });

  it('is placed where the range goes in equal ratios', async () => {
    const f = (x: number) => -((Math.log(x) - Math.log(33)) ** 2);
    const range = { over: 'nozzle.areaRatio', from: 2, to: 500, spacing: 'in equal ratios' } as const;
    const { curves } = await followed(f, { range });
    expect(Math.abs(curves[0]!.highest!.x / 33 - 1)).toBeLessThan(2e-3);
  });

  it('is the lowest place as well, and the end where a curve only rises', async () => {
    const bowl = await followed((x) => (x - 20) ** 2);
    expect(bowl.curves[0]!.lowest).toMatchObject({ at: 'inside' });
    expect(bowl.curves[0]!.lowest!.x).toBeCloseTo(20, 1);
    expect(bowl.curves[0]!.highest).toMatchObject({ at: 'end', x: 100 });
    const line = await followed((x) => 3 * x);
    expect(line.curves[0]).toMatchObject({
      course: 'rises',
      highest: { at: 'end', x: 100 },
      lowest: { at: 'end', x: 10 },
    });
  });

  it('does not exist where nothing changes', async () => {
    const { curves, crossings } = await followed(() => 7, {}, ['bell.massFlow', 'bell.massFlow + 0 kg/s']);
    expect(curves[0]!.course).toBe('stays the same');
    expect(crossings).toEqual([]);
  });

  it('beside a hole is said to lie there', async () => {
    const { curves } = await followed((x) => (x > 55 ? hole : x));
    expect(curves[0]!.highest!.at).toBe('hole');
    expect(curves[0]!.highest!.x).toBeGreaterThan(54);
  });
});

describe('a crossing', () => {
  const two = ['bell.massFlow', 'plug.massFlow'];
  const crossing = (one: (x: number) => number, other: (x: number) => number) => {
    const crew = fakeCrew((ask, point) => {
      const x = point['engines.bell.chamber.pressure']! / 1e5;
      return ask.engine === 'bell' ? one(x) : other(x);
    });
    return sweep(study, crew, request(two, 'chamber.pressure', 10e5, 100e5));
  };

  it('is placed where two closed forms are equal', async () => {
    // x² = 50 x at x = 50; √x = 2 + x/50 at x = 38.1966… and 261.8 (beyond the range).
    const square = await crossing(
      (x) => x ** 2,
      (x) => 50 * x,
    );
    expect(square.crossings).toHaveLength(1);
    expect(square.crossings[0]!.x / 1e5).toBeCloseTo(50, 2);
    expect(square.crossings[0]).toMatchObject({ curves: [1, 0], jump: false });
    const root = await crossing(Math.sqrt, (x) => 2 + x / 9.5492);
    const [first] = root.crossings;
    expect(Math.sqrt(first!.x / 1e5) - 2 - first!.x / 1e5 / 9.5492).toBeCloseTo(0, 4);
  });

  it('is found as often as it happens', async () => {
    const { crossings } = await crossing(
      (x) => Math.sin(x / 10),
      () => 0,
    );
    // Zeros of sin(x/10) between 10 and 100: 10π, 20π, 30π.
    expect(crossings.map(({ x }) => x / 1e5 / 10 / Math.PI)).toEqual(
      [1, 2, 3].map((n) => expect.closeTo(n, 3)),
    );
  });

  it('at a jump is told as one', async () => {
    const { crossings } = await crossing(
      (x) => (x < 43 ? 10 : 20),
      () => 15,
    );
    expect(crossings).toHaveLength(1);
    expect(crossings[0]!.jump).toBe(true);
    expect(crossings[0]!.x / 1e5).toBeCloseTo(43, 1);
  });

  it('is not looked for between a pressure and a flow', async () => {
    const crew = fakeCrew((_, point) => point['engines.bell.chamber.pressure']!);
    const of = ['bell.massFlow', 'bell.exit.pressure'];
    expect((await sweep(study, crew, request(of, 'chamber.pressure', 1e5, 9e5))).crossings).toEqual([]);
  });
});

describe('a hole', () => {
  it('is a stretch with its reason, its edges found to a 250th of the range', async () => {
    const { curves } = await followed((x) => (x > 40 && x < 61 ? hole : x));
    const { holes, points, course } = curves[0]!;
    expect(holes).toHaveLength(1);
    expect(holes[0]!.problem.code).toBe('no-wall');
    expect(Math.abs(holes[0]!.from - 40)).toBeLessThan(90 / 250);
    expect(Math.abs(holes[0]!.to - 61)).toBeLessThan(90 / 250);
    expect(points.filter(({ y }) => y === null).length).toBeGreaterThan(2);
    expect(course).toBe('rises');
  });

  it('reaches the end of the range where the values do not begin again', async () => {
    const { curves } = await followed((x) => (x > 70 ? hole : x));
    expect(curves[0]!.holes[0]!.to).toBe(100);
  });

  it('can be all there is', async () => {
    const { curves } = await followed(() => hole);
    expect(curves[0]).toMatchObject({ course: 'has no value', highest: null, lowest: null });
    expect(curves[0]!.holes).toMatchObject([{ from: 10, to: 100 }]);
  });
});

describe('points', () => {
  it('come coarse first, then where the curve bends', async () => {
    const seen: number[] = [];
    const crew = fakeCrew((_, point) => Math.tanh((point['engines.bell.nozzle.areaRatio']! - 30) / 2));
    const found = await sweep(study, crew, request(['bell.massFlow'], 'nozzle.areaRatio', 10, 100), {
      onUpdate: ({ curves, provisional }) => {
        expect(provisional).toBe(true);
        seen.push(curves[0]!.points.length);
      },
    });
    expect(seen[0]).toBe(9);
    expect([...seen].sort((a, b) => a - b)).toEqual(seen);
    const xs = found.curves[0]!.points.map(({ x }) => x);
    expect(xs.length).toBeLessThanOrEqual(33 + 20);
    expect(xs).toEqual([...new Set(xs)].sort((a, b) => a - b));
    expect(xs.filter((x) => Math.abs(x - 30) < 10).length).toBeGreaterThan(xs.filter((x) => x > 60).length);
    expect(found.provisional).toBe(false);
  });

  it('of a straight line are few', async () => {
    const crew = fakeCrew((_, point) => point['engines.bell.nozzle.areaRatio']!);
    await sweep(study, crew, request(['bell.massFlow'], 'nozzle.areaRatio', 10, 100));
    expect(crew.asked).toBe(9);
  });

  it('are whole where the input is a whole number', async () => {
    const modular = await studyOf(`${engines.trim().replace('kept: 30 %', 'kept: 30 %, modules: 24')}`);
    const crew = fakeCrew((_, point) => -((point['engines.plug.nozzle.modules']! - 17) ** 2));
    const { curves } = await sweep(modular, crew, request(['plug.massFlow'], 'nozzle.modules', 10, 30));
    expect(curves[0]!.points.map(({ x }) => x)).toEqual(Array.from({ length: 21 }, (_, i) => 10 + i));
    expect(curves[0]!.highest).toMatchObject({ x: 17, at: 'inside' });
  });
});

describe('what moves', () => {
  const asked = async (
    of: readonly string[],
    over: string,
    from: number,
    to: number,
    rest: Partial<SweepRequest> = {},
  ) => {
    const seen: { readonly ask: unknown; readonly point: unknown }[] = [];
    const crew = fakeCrew((ask, point) => {
      seen.push({ ask, point });
      return 1;
    });
    await sweep(study, crew, request(of, over, from, to, rest));
    return seen[0]! as { ask: Parameters<Parameters<typeof fakeCrew>[0]>[0]; point: Record<string, number> };
  };

  it('is what the study states, where no engine is named: who inherits it moves along', async () => {
    const { point, ask } = await asked(['plug.massFlow'], 'chamber.pressure', 20e5, 30e5);
    expect(point).toEqual({ 'engines.bell.chamber.pressure': 20e5 });
    expect(ask.inputs).toEqual([]);
  });

  it('is a default of all engines that have it from one', async () => {
    const { point } = await asked(['bell.massFlow'], 'chamber.contractionRatio', 2, 4);
    expect(point).toEqual({
      'engines.bell.chamber.contractionRatio': 2,
      'engines.plug.chamber.contractionRatio': 2,
    });
  });

  it('is one engine alone, where it is named', async () => {
    const { point, ask } = await asked(['plug.massFlow'], 'chamber.pressure', 20e5, 30e5, {
      engines: ['plug'],
    });
    expect(point).toEqual({});
    expect(inputIn(ask, 'chamber.pressure')).toBe(20e5);
  });

  it('is not what an expression sets itself', async () => {
    const { ask } = await asked(
      ['plug.massFlow(chamber.pressure = 50 bar)'],
      'chamber.pressure',
      20e5,
      30e5,
      { engines: ['plug'] },
    );
    expect(ask.inputs).toEqual([{ input: 'chamber.pressure', value: 50e5 }]);
  });

  it('is an input that the study leaves to the program', async () => {
    const { point, ask } = await asked(['plug.massFlow'], 'nozzle.innerMach', 1.5, 3);
    expect(point).toEqual({});
    expect(inputIn(ask, 'nozzle.innerMach')).toBe(1.5);
  });

  it('is the place that an expression leaves open', async () => {
    const over = await asked(['bell.thrust'], 'altitude', 1000, 2000);
    expect(over.ask.ambient).toEqual({ kind: 'altitude', altitude: 1000 });
    const fixed = await asked(['bell.thrust(vacuum)'], 'altitude', 1000, 2000);
    expect(fixed.ask.ambient).toEqual({ kind: 'vacuum' });
    const empty = await asked(['bell.thrust'], 'ambientPressure', 0, 1e5);
    expect(empty.ask.ambient).toEqual({ kind: 'vacuum' });
  });

  it('is the throttle', async () => {
    const { ask } = await asked(['bell.thrust(vacuum)'], 'throttle', 0.5, 1);
    expect(ask.throttle).toBe(0.5);
  });
});

describe('a band', () => {
  const scatter = (value: number, low: number, high: number): Told => ({
    ok: true,
    value,
    scatter: [{ name: 'friction', low, high, source: 'closed form' }],
    alternatives: [],
  });

  it('cancels what both sides of a difference share', async () => {
    const crew = fakeCrew((ask) => (ask.engine === 'bell' ? scatter(100, 95, 105) : scatter(103, 98, 108)));
    const of = ['plug.massFlow - bell.massFlow', 'plug.massFlow'];
    const { curves } = await sweep(study, crew, request(of, 'chamber.pressure', 10e5, 90e5));
    expect(curves[0]!.points[0]).toMatchObject({ y: 3, low: null, high: null });
    expect(curves[1]!.points[0]).toMatchObject({ y: 103, low: 98, high: 108 });
    expect(curves[1]!.bandOf).toEqual(['friction']);
  });

  it('adds up independent errors as the root of their squares, each side by itself', async () => {
    const told: Told = {
      ok: true,
      value: 10,
      scatter: [
        { name: 'one', low: 7, high: 11, source: '' },
        { name: 'two', low: 12, high: 6, source: '' },
      ],
      alternatives: [],
    };
    const { curves } = await sweep(
      study,
      fakeCrew(() => told),
      request(['bell.massFlow'], 'chamber.pressure', 1e5, 9e5),
    );
    // Down: 3 and 4 → 5; up: 1 and 2 → √5.
    expect(curves[0]!.points[0]!.low).toBeCloseTo(5, 12);
    expect(curves[0]!.points[0]!.high).toBeCloseTo(10 + Math.sqrt(5), 12);
  });

  it('reaches to each published alternative', async () => {
    const told: Told = {
      ok: true,
      value: 10,
      scatter: [],
      alternatives: [
        { of: 'separation criterion', by: 'A', value: 9 },
        { of: 'separation criterion', by: 'B', value: 12 },
        { of: 'separation criterion', by: 'C', value: null },
      ],
    };
    const { curves } = await sweep(
      study,
      fakeCrew(() => told),
      request(['bell.massFlow'], 'chamber.pressure', 1e5, 9e5),
    );
    expect(curves[0]!.points[0]).toMatchObject({ y: 10, low: 9, high: 12 });
  });
});

describe('a request that is none', () => {
  const none = (
    of: readonly string[],
    over: string,
    from: number,
    to: number,
    rest: Partial<SweepRequest> = {},
  ) =>
    problemOf(
      sweep(
        study,
        fakeCrew(() => 1),
        request(of, over, from, to, rest),
      ),
    );

  it.each([
    ['bell.massFlow', 'nozzle.aeraRatio', 10, 20, 'input-unknown', 'nozzle.areaRatio'],
    ['bell.massFlow', 'altitud', 10, 20, 'input-unknown', 'altitude'],
    ['bell.massFlow', 'nozzle.areaRatio', 0.5, 20, 'sweep-out-of-range', 'range'],
    ['bell.massFlow', 'nozzle.areaRatio', 20, 10, 'sweep-backwards', 'from'],
    ['bell.massFlow', 'engines.bel.nozzle.areaRatio', 10, 20, 'engine-unknown', 'bell'],
    ['bell.thrust(vacuum)', 'throttle', 0, 1, 'sweep-out-of-range', 'range'],
  ])('tells what to mend: %s over %s from %s to %s', async (of, over, from, to, code, mend) => {
    const problem = await none([of], over, from, to);
    expect(problem.code).toBe(code);
    expect(problem.mend).toContain(mend);
  });

  it('is a text that is no expression, with its place', async () => {
    const problem = await none(['bell.massFlo'], 'nozzle.areaRatio', 10, 20);
    expect(problem.facts).toMatchObject({ start: 0, end: 12 });
    expect(problem.where).toBe('bell.massFlo');
  });

  it('is an open place, where no surroundings move', async () => {
    expect((await none(['bell.thrust'], 'nozzle.areaRatio', 10, 20)).code).toBe('ambient-missing');
  });

  it('is none at all, or more curves than can be told apart', async () => {
    expect((await none([], 'nozzle.areaRatio', 10, 20)).code).toBe('sweep-curves');
  });
});

describe('a signal', () => {
  it('ends the sweep at once', async () => {
    const controller = new AbortController();
    const reason = new Error('enough');
    const crew = fakeCrew((_, point) => Math.sin(point['engines.bell.nozzle.areaRatio']!));
    const work = sweep(study, crew, request(['bell.massFlow'], 'nozzle.areaRatio', 10, 100), {
      signal: controller.signal,
      onUpdate: () => controller.abort(reason),
    });
    await expect(work).rejects.toBe(reason);
    expect(crew.asked).toBeLessThanOrEqual(9);
  });
});

describe('what is held', () => {
  const heldAt = async (
    of: readonly string[],
    over: string,
    from: number,
    to: number,
    rest: Partial<SweepRequest> = {},
  ): Promise<Sweep['held']> =>
    (
      await sweep(
        study,
        fakeCrew(() => 1),
        request(of, over, from, to, rest),
      )
    ).held;

  it('says that a held thrust sizes the throat anew', async () => {
    const { short, lines } = await heldAt(['bell.massFlow'], 'nozzle.areaRatio', 10, 20);
    expect(short).toBe('Thrust held at 800 kN in vacuum: the throat is sized anew at each point.');
    expect(lines[0]).toContain('chamber pressure 100 bar');
    expect(lines[0]).toContain('mixture ratio 3.5');
    expect(lines[0]).not.toContain('area ratio');
  });

  it('leaves out what moves', async () => {
    const { lines } = await heldAt(['bell.massFlow'], 'chamber.pressure', 10e5, 20e5);
    expect(lines[0]).not.toContain('chamber pressure');
    expect(lines[0]).toContain('area ratio 25');
  });

  it('tells engines apart whose sizes are fixed differently', async () => {
    const { short } = await heldAt(['bell.massFlow', 'plug.massFlow'], 'chamber.pressure', 10e5, 20e5);
    expect(short).toContain('bell: thrust held at 800 kN');
    expect(short).toContain('plug: throat held at that of bell');
  });

  it('says that surroundings change no engine', async () => {
    expect((await heldAt(['bell.thrust'], 'altitude', 0, 20e3)).short).toContain(
      'only their surroundings change',
    );
  });
});
