import { beforeAll, describe, expect, it } from 'vitest';
import type { Crew } from '../../../src/answer/asked/crew.ts';
import { localCrew } from '../../../src/answer/asked/localCrew.ts';
import type { Told } from '../../../src/answer/asked/model.ts';
import { compileExpression, compileTest, scopeOf } from '../../../src/answer/expression/index.ts';
import { findNeed } from '../../../src/answer/needs/findNeed.ts';
import { askWords, ownersById } from '../../../src/answer/sentences/askWords.ts';
import { sweep } from '../../../src/answer/sweeps/index.ts';
import { openDataShelf } from '../../../src/faces/disk/data.ts';
import { airAtGeometricAltitude } from '../../../src/physics/air/index.ts';
import { knownNames, readStudy, type Study } from '../../../src/study/index.ts';

/** Invented. */
const TEXT = `plumeline: 1
question: How does it rise?
engines:
  bell:
    propellants: { gamma: 1.2, molarMass: 22 g/mol, temperature: 3500 K }
    chamber: { pressure: 100 bar }
    size: { thrust: 800 kN, at: vacuum }
    nozzle: { kind: bell, areaRatio: 25, throatAngle: 33 deg, lipAngle: 9 deg }
vehicles:
  booster:
    first: { engine: bell, count: 5, propellant: 210 t, dry: 16 t }
    second: { specificImpulse: 355 s, thrust: 300 kN, propellant: 36 t, dry: 3.6 t, coast: 5 s }
    drag: { area: 11 m2 }
    orbit: { altitude: 200 km }
  dart:
    first: { engine: bell, propellant: 20 t, dry: 6 t }
    drag: { area: 2 m2 }
    payload: 500 kg
`;

let study: Study;
let crew: Crew;
beforeAll(async () => {
  const shelf = openDataShelf();
  const read = readStudy(TEXT, knownNames(await shelf.propellants()));
  if (!read.ok) throw new Error(read.problems.map(({ what }) => what).join(' '));
  study = read.study;
  crew = await localCrew(study, shelf);
}, 120_000);

async function ask(text: string): Promise<Told> {
  const compiled = compileExpression(text, scopeOf(study));
  if (!compiled.ok) return { ok: false, problem: compiled.problem };
  const [told] = await crew.tell(compiled.value.asks, [{}]);
  const value = compiled.value.evaluate(told!.map((one) => (one.ok ? one.value : null)));
  const one = told!.find(({ ok }) => !ok) ?? told![0]!;
  return one.ok && value !== null ? { ...one, value } : one;
}

async function numberOf(text: string): Promise<number> {
  const told = await ask(text);
  if (!told.ok) throw new Error(`${text}: ${told.problem.what}`);
  return told.value;
}

const TIMES = [3, 17.3, 45.5, 60, 88.8, 130.2];

describe('a flight at a time', () => {
  it('begins with the numbers of lift-off and passes the end of the first stage', async () => {
    expect(await numberOf('booster.mass(0 s) / booster.liftoffMass')).toBeCloseTo(1, 12);
    expect(await numberOf('booster.thrust(0 s) / booster.liftoffThrust')).toBeCloseTo(1, 12);
    expect(await numberOf('booster.altitude(0 s)')).toBe(0);
    const end = await numberOf('booster.firstStageTime');
    // Before the jump all is as at the end; behind it the empty stage is gone and nothing pushes for 5 s.
    expect(await numberOf(`booster.speed(${end} s) / booster.firstStageEndSpeed`)).toBeCloseTo(1, 9);
    const dropped =
      (await numberOf(`booster.mass(${end - 1e-6} s)`)) - (await numberOf(`booster.mass(${end + 1e-6} s)`));
    expect(dropped / 16e3).toBeCloseTo(1, 6);
    for (const after of [0.5, 2.5, 4.5]) expect(await numberOf(`booster.thrust(${end + after} s)`)).toBe(0);
    expect(await numberOf(`booster.thrust(${end + 5.2} s)`)).toBe(300e3);
  });

  it('rises by its speed: dz/dt = v sin γ, ds/dt = v cos γ R/(R + z)', async () => {
    for (const t of TIMES) {
      const rate = async (name: string): Promise<number> =>
        ((await numberOf(`booster.${name}(${t + 0.05} s)`)) -
          (await numberOf(`booster.${name}(${t - 0.05} s)`))) /
        0.1;
      const up = await numberOf(`booster.speed(${t} s) * sin(booster.pathAngle(${t} s))`);
      const along = await numberOf(`booster.speed(${t} s) * cos(booster.pathAngle(${t} s))`);
      const altitude = await numberOf(`booster.altitude(${t} s)`);
      // Speed and angle run straight within a second, each within parts in ten thousand.
      expect(Math.abs((await rate('altitude')) / up - 1)).toBeLessThan(2e-3);
      const ground = (along * 6_371_000) / (6_371_000 + altitude);
      // The round Earth's mean radius; which one is meant moves this by a part in a hundred thousand at most.
      expect(Math.abs((await rate('downrange')) - ground)).toBeLessThan(1e-3 * up + 0.1);
    }
  });

  it('has q = ½ ρ v² and M = v/a of the 1976 standard air within its interpolation, 0.1 %', async () => {
    for (const t of TIMES.slice(1)) {
      const air = airAtGeometricAltitude(await numberOf(`booster.altitude(${t} s)`));
      const speed = await numberOf(`booster.speed(${t} s)`);
      const q = await numberOf(`booster.dynamicPressure(${t} s)`);
      expect(Math.abs(q / (0.5 * air.density * speed ** 2) - 1)).toBeLessThan(1e-3);
      const mach = await numberOf(`booster.mach(${t} s)`);
      expect(Math.abs(mach / (speed / air.soundSpeed!) - 1)).toBeLessThan(1e-3);
    }
  });

  it('burns what its engines burn', async () => {
    const flow = await numberOf('(booster.mass(20 s) - booster.mass(40 s)) / 20 s');
    expect(flow / (5 * (await numberOf('bell.massFlow')))).toBeCloseTo(1, 6);
  });

  it('takes other inputs, another minute, and bears the engine’s errors', async () => {
    expect(await numberOf('booster.speed(1 min)')).toBe(await numberOf('booster.speed(60 s)'));
    expect(await numberOf('booster.speed(60 s, first.dry = 20 t)')).toBeLessThan(
      await numberOf('booster.speed(60 s)'),
    );
    const told = await ask('booster.altitude(60 s)');
    if (!told.ok) throw new Error(told.problem.what);
    expect(told.scatter.length).toBeGreaterThan(0);
    for (const { low, high } of told.scatter) expect(Math.min(low, high)).toBeLessThan(Math.max(low, high));
  });

  it.each([
    ['booster.altitude(-1 s)', 'time-out-of-range', 'lift-off'],
    ['booster.altitude', 'time-missing', 'booster.altitude(60 s)'],
    ['booster.altitude(10 km)', 'ambient-not-expected', 'booster.altitude(60 s)'],
    ['booster.payload(60 s)', 'time-not-expected', 'Leave the time out'],
    ['bell.thrust(60 s)', 'time-not-expected', 'booster.thrust(60 s)'],
    ['air.pressure(60 s)', 'time-not-expected', 'Leave the time out'],
    ['booster.time(60 s)', 'quantity-not-asked', 'booster.altitude(60 s)'],
    ['booster.altitude(60)', 'place-unlike', '(60 s)'],
    ['booster.altitude(60 s, 70 s)', 'place-twice', 'Keep one'],
    ['booster.altitude(60 s) + booster.speed(60 s)', 'adds-unlike', ''],
    ['booster.altitude(2000 s)', 'flight-over', 'where the engine stops on the orbit'],
    ['dart.altitude(2000 s)', 'flight-over', 'at its highest point'],
    ['dart.mach(dart.firstStageTime)', 'place-not-fixed', ''],
  ])('%s: %s', async (text, code, words) => {
    const told = await ask(text);
    if (told.ok) throw new Error(`${text} is told`);
    expect(told.problem.code).toBe(code);
    expect(`${told.problem.what} ${told.problem.mend}`).toContain(words);
  });

  it('follows a vehicle without an orbit to its highest point', async () => {
    expect(await numberOf('dart.thrust(100 s)')).toBe(0);
    expect(await numberOf('dart.altitude(100 s)')).toBeLessThan(await numberOf('dart.highestPoint'));
  });
});

describe('a time that moves', () => {
  const holds = async (text: string): Promise<boolean | null> => {
    const compiled = compileTest(text, scopeOf(study));
    if (!compiled.ok) throw new Error(compiled.problem.what);
    const [told] = await crew.tell(compiled.value.asks, [{}]);
    return compiled.value.holds(told!.map((one) => (one.ok ? one.value : null)));
  };

  it('is a range of its own, evenly spaced', async () => {
    const compiled = compileTest('for every t from 1 s to 2 min, booster.speed(t) < 3 km/s', scopeOf(study));
    if (!compiled.ok) throw new Error(compiled.problem.what);
    expect(compiled.value.ranges[0]).toMatchObject({
      of: 'time',
      spacing: 'even',
      words: 'tested at 33 times from 1 s to 2 min',
    });
    expect(await holds('booster.altitude(t) rises for t from 0 s to 120 s')).toBe(true);
    expect(await holds('booster.mass(t) falls for t from 0 s to 300 s')).toBe(true);
    expect(await holds('for every time t from 0 s to 120 s, booster.mach(t) < 1')).toBe(false);
    const peak = await numberOf('highest(booster.dynamicPressure(t) for t from 20 s to 120 s at 101 points)');
    expect(peak / (await numberOf('booster.maxDynamicPressure'))).toBeCloseTo(1, 2);
  });

  it('is swept, and needed', async () => {
    const range = { over: 'time', from: 0, to: 100, spacing: 'even' } as const;
    const found = await sweep(study, crew, {
      id: 'way',
      title: null,
      of: ['booster.altitude', 'booster.altitude(60 s)'],
      range,
      engines: null,
      points: 5,
    });
    const at = async (t: number): Promise<number> => numberOf(`booster.altitude(${t} s)`);
    const [own, fixed] = found.curves;
    for (const { x, y } of own!.points) expect(y).toBeCloseTo(await at(x), 6);
    for (const { y } of fixed!.points) expect(y).toBeCloseTo(await at(60), 6);
    const need = await findNeed(
      study,
      crew,
      { id: 'when', title: null, so: 'booster.altitude >= 10 km', range, engines: null },
      { bands: false },
    );
    expect(need.found).toHaveLength(1);
    expect(await at(need.found[0]!.x)).toBeCloseTo(10_000, -1);
    expect(found.held.short).toContain('The flight stays');
  });

  it('is said in words', () => {
    const compiled = compileExpression('booster.altitude(60 s)', scopeOf(study));
    if (!compiled.ok) throw new Error(compiled.problem.what);
    expect(askWords(compiled.value.asks[0]!, ownersById(study))).toBe(
      'the altitude in flight of booster 60 s after lift-off',
    );
  });
});
