import { beforeAll, describe, expect, test } from 'vitest';
import type { Ask, AskedAmbient, AskedStation, Told } from '../../../src/answer/asked/model.ts';
import { tell, toldOfAnEngine } from '../../../src/answer/asked/tell.ts';
import { tellAir, toldOfAir } from '../../../src/answer/asked/tellAir.ts';
import { toldOfAVehicle } from '../../../src/answer/asked/tellVehicle.ts';
import { catalogue, findQuantity } from '../../../src/answer/catalogue.ts';
import type { EngineAnswer, Reason } from '../../../src/answer/model.ts';
import type { SolvedStudy } from '../../../src/answer/solve.ts';
import { airAtGeometricAltitude } from '../../../src/physics/air/index.ts';
import { solveText } from '../solveText.ts';
import { askOfPath } from './askOfPath.ts';
import { leaves } from './leaves.ts';

const engines = `
bell: { name: Bell, propellants: { oxidiser: oxygen, fuel: methane, ratio: 3.5 }, chamber: { pressure: 100 bar }, size: { throat: 200 mm }, nozzle: { kind: bell, areaRatio: 60 } }
plug: { name: Plug, like: bell, nozzle: { kind: plug, areaRatio: 40, kept: 30 %, modules: 24, machOne: 8 km } }
dual: { name: Dual, like: bell, nozzle: { kind: dualBell, areaRatio: 80, baseAreaRatio: 25, extensionLength: 80 % } }
skirt: { name: Skirt, like: bell, nozzle: { kind: extendableSkirt, areaRatio: 80, shortAreaRatio: 25 } }
deflection: { name: Deflection, like: bell, nozzle: { kind: expansionDeflection, areaRatio: 40 } }
ideal: { name: Ideal, propellants: { gamma: 1.2, molarMass: 22 g/mol, temperature: 3000 K }, chamber: { pressure: 50 bar }, size: { throat: 100 mm }, nozzle: { kind: ideal, areaRatio: 10 } }`;

let solved: SolvedStudy;
beforeAll(async () => {
  solved = await solveText(engines, 'ambients: [0.2 bar, 70 bar]\naltitudes: [12 km]');
});

const nothing = { throttle: null, inputs: [], ambient: null, station: null } as const;

function told(
  engine: string,
  quantity: string,
  ambient: AskedAmbient | null = null,
  station: AskedStation | null = null,
  part?: string,
): Told {
  const ask: Ask = { ...nothing, engine, quantity, ambient, station, ...(part !== undefined && { part }) };
  return tell(solved.solutions.get(engine)!, ask);
}

function answerOf(engine: string): EngineAnswer {
  return solved.answer.engines[engine]!;
}

describe('every quantity of the catalogue', () => {
  test('is told of an engine, a vehicle or the air, or says why it is not', () => {
    const known = new Set([...toldOfAnEngine, ...toldOfAVehicle, ...toldOfAir]);
    const neither = catalogue.filter(({ name, notAsked }) => !known.has(name) && notAsked === undefined);
    expect(neither.map(({ name }) => name)).toEqual([]);
    expect([...known].filter((name) => findQuantity(name) === undefined)).toEqual([]);
  });
});

describe.each(['bell', 'plug', 'dual', 'skirt', 'deflection', 'ideal'])('%s: what is told', (id) => {
  test('is every number of its answer', () => {
    const answer = answerOf(id);
    // Of the jet's edge every twelfth point: each is a jet worked out anew; of heat along walls some.
    const thin = leaves(answer).filter(
      ({ path }) => !/(boundary|walls\[\d\]\.points)\[(?!(0|12|24|36|90)\])/.test(path),
    );
    const asked = thin.flatMap(({ path, value }) => {
      const ask = askOfPath(answer, path);
      return ask === null || typeof value !== 'number' ? [] : [{ path, value, ask }];
    });
    expect(asked.length).toBeGreaterThan(200);
    const off = asked.filter(({ value, ask }) => {
      const found = tell(solved.solutions.get(id)!, { ...nothing, engine: id, ...ask });
      // The same numbers by the same code: rounding alone.
      return !found.ok || Math.abs(found.value - value) > 1e-9 * Math.abs(value);
    });
    // The throat of a plug is there twice, as the end of the duct and as the beginning of the field: a place tells the first.
    const second = answer.wall.findIndex((point, i) => point.axial === answer.wall[i - 1]?.axial);
    const paths = off.map(({ path }) => path).filter((path) => !path.includes(`wall[${second}].`));
    expect(paths).toEqual([]);
  });

  test('has the answer’s reason where the answer has none', () => {
    const answer = answerOf(id);
    const asked = answer.reasons.flatMap((reason: Reason) => {
      const ask = askOfPath(answer, reason.path);
      return ask === null ? [] : [{ reason, ask }];
    });
    for (const { reason, ask } of asked) {
      const found = tell(solved.solutions.get(id)!, { ...nothing, engine: id, ...ask });
      expect(found, reason.path).toMatchObject({ ok: false, problem: { what: reason.reason } });
    }
  });
});

describe('the air', () => {
  test.each(toldOfAir)('%s is that of the standard', (quantity) => {
    const found = tellAir({
      ...nothing,
      engine: null,
      quantity,
      ambient: { kind: 'altitude', altitude: 11_019 },
    });
    const air = airAtGeometricAltitude(11_019);
    expect(Object.values(air)).toContain(found.ok && found.value);
  });

  // U.S. Standard Atmosphere, 1976: 216.65 K and 22 632 Pa at 11 019 m.
  test('by its pressure too', () => {
    const ambient = { kind: 'pressure', pressure: 22_632 } as const;
    const found = tellAir({ ...nothing, engine: null, quantity: 'air.temperature', ambient });
    expect(found.ok && found.value).toBeCloseTo(216.65, 2);
  });
});

describe('a place along the wall', () => {
  test('by area ratio is where the wall has it', () => {
    const station = { kind: 'areaRatio', areaRatio: 10 } as const;
    const radius = told('bell', 'wall.radius', null, station);
    // Straight between the contour’s points, exact for what it measures.
    expect(radius.ok && radius.value).toBeCloseTo(0.1 * Math.sqrt(10), 12);
  });

  test('by distance lies between its neighbours', () => {
    const { wall } = answerOf('bell');
    const [a, b] = [wall.at(-3)!, wall.at(-2)!];
    const station = { kind: 'distance', distance: (a.axial + b.axial) / 2 } as const;
    const pressure = told('bell', 'wall.pressure', null, station);
    expect(pressure.ok && pressure.value).toBeCloseTo(Math.sqrt(a.pressure * b.pressure), 6);
  });

  test('the throat is where the axis begins', () => {
    const axial = told('bell', 'wall.axial', null, { kind: 'throat' });
    expect(axial.ok && axial.value).toBe(0);
  });

  test.each([
    [{ kind: 'distance', distance: 40 }],
    [{ kind: 'distance', distance: -40 }],
    [{ kind: 'areaRatio', areaRatio: 61 }],
  ] as const)('outside it is a problem', (station) => {
    expect(told('bell', 'wall.pressure', null, station)).toMatchObject({
      ok: false,
      problem: { code: 'station-outside-wall' },
    });
  });

  test('an area ratio is none on a plug', () => {
    expect(told('plug', 'wall.pressure', null, { kind: 'areaRatio', areaRatio: 5 })).toMatchObject({
      ok: false,
      problem: { code: 'station-without-area-ratio' },
    });
  });
});

describe('one of several', () => {
  test('that is not there is told with those that are', () => {
    const found = told('bell', 'thrustParts.force', { kind: 'vacuum' }, null, 'nozle wall');
    expect(found).toMatchObject({
      ok: false,
      problem: { code: 'part-unknown', why: 'Did you mean nozzle wall?' },
    });
  });

  test('a criterion goes by its key and by its name', () => {
    const pad = { kind: 'altitude', altitude: 0 } as const;
    const byKey = told('bell', 'separation.place.areaRatio', pad, null, 'stark');
    const byName = told('bell', 'separation.place.areaRatio', pad, null, 'Stark 2005');
    const names = answerOf('bell').separation!.criteria.map(({ name }) => name);
    expect(byKey.ok && byKey.value).toBe(
      answerOf('bell').separation!.criteria.find(({ id }) => id === 'stark')!.place!.areaRatio,
    );
    expect(byName.ok || !names.includes('Stark 2005')).toBe(true);
  });
});
