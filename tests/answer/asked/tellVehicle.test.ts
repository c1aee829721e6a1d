import { beforeAll, describe, expect, it } from 'vitest';
import { localCrew } from '../../../src/answer/asked/localCrew.ts';
import type { Told } from '../../../src/answer/asked/model.ts';
import { toldOfAVehicle } from '../../../src/answer/asked/tellVehicle.ts';
import { compileExpression, scopeOf } from '../../../src/answer/expression/index.ts';
import { openDataShelf } from '../../../src/faces/disk/data.ts';
import { knownNames, readStudy, type Study } from '../../../src/study/index.ts';

/** Perfect gas and bells: quick to solve. Invented. */
const TEXT = `plumeline: 1
question: What does it carry?
engines:
  bell:
    propellants: { gamma: 1.2, molarMass: 22 g/mol, temperature: 3500 K }
    chamber: { pressure: 100 bar }
    size: { thrust: 800 kN, at: vacuum }
    nozzle: { kind: bell, areaRatio: 25, throatAngle: 33 deg, lipAngle: 9 deg }
  wide:
    like: bell
    size: { same: throat, as: bell }
    nozzle: { areaRatio: 40 }
vehicles:
  booster:
    first: { engine: bell, count: 5, propellant: 210 t, dry: 16 t }
    second: { specificImpulse: 355 s, thrust: 300 kN, propellant: 36 t, dry: 3.6 t }
    drag: { area: 11 m2 }
    orbit: { altitude: 200 km }
    reliability: { each: 99 %, allowedOut: 1 }
  dart:
    first: { engine: bell, propellant: 20 t, dry: 6 t }
    drag: { area: 2 m2 }
    payload: 500 kg
`;

let study: Study;
let ask: (text: string) => Promise<Told>;
beforeAll(async () => {
  const shelf = openDataShelf();
  const read = readStudy(TEXT, knownNames(await shelf.propellants()));
  if (!read.ok) throw new Error(read.problems.map(({ what }) => what).join(' '));
  study = read.study;
  const crew = await localCrew(study, shelf);
  const scope = scopeOf(study);
  ask = async (text) => {
    const compiled = compileExpression(text, scope);
    if (!compiled.ok) return { ok: false, problem: compiled.problem };
    const [told] = await crew.tell(compiled.value.asks, [{}]);
    const value = compiled.value.evaluate(told!.map((one) => (one.ok ? one.value : null)));
    const one = told![0]!;
    return one.ok && value !== null ? { ...one, value } : one;
  };
}, 120_000);

const numberOf = async (text: string): Promise<number> => {
  const told = await ask(text);
  if (!told.ok) throw new Error(told.problem.what);
  return told.value;
};

describe('a vehicle asked in an expression', () => {
  it('carries more with less mass and carries the whole difference where that mass is on its last stage', async () => {
    const payload = await numberOf('booster.payload');
    expect(payload).toBeGreaterThan(2_000);
    expect(await numberOf('booster.payload(first.dry = 18 t)')).toBeLessThan(payload);
    // The last stage's dry mass and the payload are one mass until the end: kilogram for kilogram, within the search's error.
    expect(payload - (await numberOf('booster.payload(second.dry = 3.8 t)'))).toBeCloseTo(200, 0);
  });

  it('takes another engine below, and inputs of an engine', async () => {
    const wide = await numberOf('booster.meanSpecificImpulse(engine = wide)');
    const moved = await numberOf(
      'booster.meanSpecificImpulse(bell.nozzle.areaRatio = 40, bell.size.thrust = 800 kN)',
    );
    expect(wide).toBeGreaterThan(0);
    expect(Math.abs(wide / moved - 1)).toBeLessThan(0.01);
  });

  it('gives every engine the same answer, whoever asks first', async () => {
    const shelf = openDataShelf();
    const values = await Promise.all(
      [0, 1].map(async (order) => {
        const crew = await localCrew(study, shelf);
        const asks = ['booster.payload', 'booster.payload(first.dry = 20 t)'].map((text) => {
          const compiled = compileExpression(text, scopeOf(study));
          if (!compiled.ok) throw new Error(compiled.problem.what);
          return compiled.value.asks[0]!;
        });
        const told = (await crew.tell(order === 0 ? asks : [...asks].reverse(), [{}]))[0]!;
        const found = told.map((one) => (one.ok ? one.value : null));
        return order === 0 ? found : found.reverse();
      }),
    );
    expect(values[0]).toEqual(values[1]);
  });

  it('has a budget that closes and numbers within what real ascents have', async () => {
    const rest = await numberOf('booster.budgetRest');
    const ideal = await numberOf('booster.idealVelocity');
    expect(Math.abs(rest / ideal)).toBeLessThan(1e-6);
    // Humble, Henry & Larson 1995 (from memory), with room around.
    expect(await numberOf('booster.gravityLoss')).toBeGreaterThan(1000);
    expect(await numberOf('booster.gravityLoss')).toBeLessThan(1900);
    expect(await numberOf('booster.dragLoss')).toBeLessThan(160);
  });

  it('counts engines out', async () => {
    expect(await numberOf('booster.thrustLeftOneOut')).toBeCloseTo(0.8, 12);
    // 0.99⁵ + 5 · 0.99⁴ · 0.01, by hand.
    expect(await numberOf('booster.chanceOfSuccess')).toBeCloseTo(0.99 ** 5 + 5 * 0.99 ** 4 * 0.01, 12);
    expect(await numberOf('booster.liftoffThrust(first.stopped = 1) / booster.liftoffThrust')).toBeCloseTo(
      0.8,
      6,
    );
  });

  it('rises to a highest point with a stated payload, and has no orbit then', async () => {
    expect(await numberOf('dart.highestPoint')).toBeGreaterThan(50_000);
    expect(await numberOf('dart.highestPoint(payload = 1500 kg)')).toBeLessThan(
      await numberOf('dart.highestPoint'),
    );
    const told = await ask('dart.payload');
    expect(told.ok && told.value).toBe(500);
    expect((await ask('dart.massToOrbit')).ok).toBe(false);
  });

  it.each([
    ['booster.thrust(vacuum)', 'engine'],
    ['bell.payload', 'catalogue'],
    ['booster.paylod', 'vehicle'],
    ['booster.payload(engine = belt)', 'not an engine'],
    ['booster.payload(throttle = 50 %)', 'throttles by itself'],
    ['booster.payload(first.dry = 3 m)', 'mass'],
    ['booster', 'not a number'],
  ])('%s is refused in words', async (text, words) => {
    const told = await ask(text);
    expect(told.ok).toBe(false);
    if (!told.ok) expect(`${told.problem.what} ${told.problem.mend}`).toContain(words);
  });

  it('tells every quantity, or says why not', async () => {
    for (const name of toldOfAVehicle) {
      const told = await ask(`booster.${name.replace(/^(flight|vehicle)\./, '')}`);
      if (told.ok) expect(Number.isFinite(told.value), name).toBe(true);
      else expect(told.problem.what, name).not.toBe('');
    }
  });
});
