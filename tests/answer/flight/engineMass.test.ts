/** A vehicle that leaves the mass of its engines to the published relations. */
import { beforeAll, describe, expect, it } from 'vitest';
import { localCrew } from '../../../src/answer/asked/localCrew.ts';
import type { Told } from '../../../src/answer/asked/model.ts';
import { compileExpression, scopeOf } from '../../../src/answer/expression/index.ts';
import { engineMass } from '../../../src/physics/cycle/index.ts';
import { shelf, solveText, studyOf } from '../solveText.ts';

/** Invented. */
const ENGINES = `bell:
  propellants: { oxidiser: oxygen, fuel: kerosene, ratio: 2.4 }
  chamber: { pressure: 100 bar }
  size: { thrust: 800 kN, at: vacuum }
  nozzle: { kind: ideal, areaRatio: 20 }
  cycle: { kind: stagedCombustion, rich: oxidiser }
wide:
  like: bell
  size: { same: throat, as: bell }
  nozzle: { areaRatio: 45 }
bare:
  propellants: { oxidiser: oxygen, fuel: kerosene, ratio: 2.4 }
  chamber: { pressure: 100 bar }
  size: { thrust: 800 kN, at: vacuum }
  nozzle: { kind: ideal, areaRatio: 20 }`;
const vehicles = `vehicles:
  booster:
    first: { engine: bell, count: 5, propellant: 210 t, dry: 11 t, engineMass: estimated }
    second: { specificImpulse: 355 s, thrust: 300 kN, propellant: 36 t, dry: 3.6 t }
    drag: { area: 11 m2 }
    orbit: { altitude: 200 km }
  plain:
    like: booster
    first: { engineMass: included }
compare: { base: bell, other: wide }`;

let ask: (text: string) => Promise<Told & { readonly ok: true }>;
beforeAll(async () => {
  const study = await studyOf(ENGINES, vehicles);
  const crew = await localCrew(study, shelf);
  const scope = scopeOf(study);
  ask = async (text) => {
    const compiled = compileExpression(text, scope);
    if (!compiled.ok) throw new Error(compiled.problem.what);
    const [told] = await crew.tell(compiled.value.asks, [{}]);
    const one = told![0]!;
    if (!one.ok) throw new Error(`${one.problem.what} ${one.problem.mend}`);
    return one;
  };
}, 120_000);

const RELATIONS = 'relations for the mass of engines';

describe('engines whose mass is estimated', () => {
  it('weigh what the relations say of their thrust and area ratio, each of them', async () => {
    const masses = await ask('booster.enginesMass');
    // The cycle is closed, so the thrust of the whole engine is the chamber's; kerosene is no hydrogen.
    expect(masses.value / (5 * engineMass(800e3, 20, false).value)).toBeCloseTo(1, 6);
    const band = masses.scatter.find(({ name }) => name === RELATIONS)!;
    const { low, high } = engineMass(800e3, 20, false);
    expect(band.low / (5 * low)).toBeCloseTo(1, 6);
    expect(band.high / (5 * high)).toBeCloseTo(1, 6);
  });

  it('are the same to the flight as that much dry mass', async () => {
    const { value: payload } = await ask('booster.payload');
    const { value: engines } = await ask('booster.enginesMass');
    const plain = await ask(`plain.payload(first.dry = ${11_000 + engines} kg)`);
    expect(plain.value).toBeCloseTo(payload, 0);
  });

  it('give the payload the band of the relations, heavier engines at its lower end', async () => {
    const payload = await ask('booster.payload');
    const band = payload.scatter.find(({ name }) => name === RELATIONS)!;
    const { low, high, value } = engineMass(800e3, 20, false);
    // What a kilogram of the first stage costs, by hand from two flights.
    const heavier = await ask('booster.payload(first.dry = 11.2 t)');
    const perKilogram = (heavier.value - payload.value) / 200;
    expect(perKilogram).toBeLessThan(-0.05);
    expect((band.high - payload.value) / (5 * (high - value) * perKilogram)).toBeCloseTo(1, 1);
    expect((band.low - payload.value) / (5 * (low - value) * perKilogram)).toBeCloseTo(1, 1);
    const plain = await ask('plain.payload');
    expect(plain.scatter.map(({ name }) => name)).not.toContain(RELATIONS);
  });

  it('are exchanged with the engine: the other one brings its own mass', async () => {
    const [own, other] = [await ask('booster.enginesMass'), await ask('booster.enginesMass(engine = wide)')];
    const { value: thrust } = await ask('wide.thrust(vacuum)');
    expect(other.value / (5 * engineMass(thrust, 45, false).value)).toBeCloseTo(1, 6);
    expect(other.value).toBeGreaterThan(1.03 * own.value);
  });
});

describe('in the answer', () => {
  it('the mass is told with its band, compared, and not told to be held', async () => {
    const { answer } = await solveText(ENGINES, vehicles);
    const [booster, plain] = answer.vehicles;
    expect(booster!.own!.notes.join(' ')).toMatch(
      /Mass taken for 5 bell of the first stage: 4\.\d t \(2\.\d t to \d\.\d t\), by published relations/,
    );
    const rows = booster!.comparison!.rows.map(({ quantity }) => quantity);
    expect(rows).toContain('flight.enginesMass');
    expect(booster!.comparison!.held).toContain('dry masses without the engines below');
    expect(plain!.own!.enginesMass).toBeUndefined();
    expect(plain!.comparison!.held).not.toContain('without the engines');
  });

  it('an engine without a cycle has no such mass, and the vehicle says so', async () => {
    const { answer } = await solveText(ENGINES, vehicles.replace('engine: bell', 'engine: bare'));
    const [booster, plain] = answer.vehicles;
    expect(booster!.own).toBeNull();
    expect(booster!.problem).toMatchObject({ code: 'cycle-not-stated' });
    expect(plain!.own).not.toBeNull();
  });
});

it('a vehicle that only just lifts says so, with the engine it does it with', async () => {
  // More propellant on the same five engines, until they hardly lift it.
  const heavy = vehicles.replace('propellant: 210 t', 'propellant: 292 t').replace('36 t', '30 t');
  const { answer } = await solveText(ENGINES, heavy);
  const { liftoffThrustToWeight, notes } = answer.vehicles[0]!.own!;
  expect(liftoffThrustToWeight).toBeLessThan(1.03);
  expect(notes.join(' ')).toContain('With bell it only just lifts: thrust over weight on the pad is 1.0');
});
