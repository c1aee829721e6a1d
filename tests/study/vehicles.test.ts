import { describe, expect, it } from 'vitest';
import { readStudy, type StudyOutcome } from '../../src/study/index.ts';

const ENGINES = `plumeline: 1
question: What does it carry?
engines:
  bell:
    propellants: { gamma: 1.2, molarMass: 22 g/mol, temperature: 3500 K }
    chamber: { pressure: 100 bar }
    size: { throat: 200 mm }
    nozzle: { kind: bell, areaRatio: 25 }
`;
const BOOSTER = `vehicles:
  booster:
    name: Alder booster
    first: { engine: bell, count: 5, propellant: 210 t, dry: 16 t ± 5 % }
    second: { specificImpulse: 355 s, thrust: 300 kN, propellant: 36 t, dry: 3 to 4 t }
    drag: { area: 11 m2 }
    orbit: { altitude: 200 km }
`;
const read = (vehicles: string): StudyOutcome => readStudy(`${ENGINES}${vehicles}`);
const vehicle = (text: string, which = 0) => {
  const outcome = read(text);
  if (!outcome.ok) throw new Error(outcome.problems.map(({ what }) => what).join(' '));
  return outcome.study.vehicles[which]!;
};
const codes = (text: string): readonly string[] => {
  const outcome = read(text);
  return outcome.ok ? [] : outcome.problems.map(({ code }) => code);
};

describe('a vehicle of the study', () => {
  it('is read into SI, with what is not known and with its defaults', () => {
    const booster = vehicle(BOOSTER);
    expect(booster.stages.map(({ name }) => name)).toEqual(['first', 'second']);
    expect(booster.stages[0]).toMatchObject({
      push: { by: 'engine', engine: 'bell' },
      dry: { value: 16_000, plusMinus: 800 },
      stopped: { value: 0, byDefault: true },
      coast: null,
    });
    expect(booster.stages[1]).toMatchObject({
      push: { by: 'figures', specificImpulse: { value: 355 }, thrust: { value: 300_000 } },
      dry: { spread: { kind: 'even', low: 3000, high: 4000 } },
    });
    expect(booster).toMatchObject({
      goal: { is: 'orbit', altitude: { value: 200_000 }, apogee: null },
      drag: { factor: { value: 1, plusMinus: 0.2, byDefault: true }, table: 'slender' },
      held: 'engines',
      fairing: null,
      reliability: null,
    });
  });

  it('has its engines in its dry mass unless it leaves their mass to the relations', () => {
    expect(vehicle(BOOSTER).stages[0]!.engineMass).toBe('included');
    const estimated = vehicle(BOOSTER.replace('dry: 16 t', 'engineMass: estimated, dry: 12 t'));
    expect(estimated.stages.map(({ engineMass }) => engineMass)).toEqual(['estimated', 'included']);
  });

  it('takes over what it is like, key by key; what pushes it and where it goes are exchanged as a whole', () => {
    const text = `${BOOSTER}  other:
    like: booster
    first: { dry: 18 t }
    second: { engine: bell }
    payload: 400 kg
`;
    const other = vehicle(text, 1);
    expect(other.stages[0]).toMatchObject({
      dry: { value: 18_000, path: 'vehicles.other.first.dry' },
      propellant: { value: 210_000, path: 'vehicles.booster.first.propellant' },
    });
    expect(other.stages[1]!.push).toEqual({ by: 'engine', engine: 'bell' });
    expect(other.goal).toMatchObject({ is: 'height', payload: { value: 400 } });
  });

  it.each([
    ['an unknown key', 'drag: { area: 11 m2 }', 'drag: { area: 11 m2, coefficient: 0.3 }', 'key-unknown'],
    ['an unknown engine', 'engine: bell', 'engine: belt', 'engine-unknown'],
    ['no propellant', 'propellant: 210 t, ', '', 'key-missing'],
    ['a mass in metres', '210 t', '210 m', 'unit-of-other-kind'],
    ['half an engine', 'count: 5', 'count: 2.5', 'not-whole'],
    ['no engine left', 'count: 5', 'count: 2, stopped: 2', 'no-engine-left'],
    ['an orbit in the air', '200 km', '60 km', 'value-out-of-range'],
    ['two goals', 'orbit:', 'payload: 3 t\n    orbit:', 'goal-two-ways'],
    ['no goal', '    orbit: { altitude: 200 km }\n', '', 'key-missing'],
    ['a low apogee', '200 km }', '200 km, apogee: 150 km }', 'apogee-below'],
    ['a third stage without a second', 'second:', 'third:', 'stage-without-one-below'],
    ['two ways to push', 'specificImpulse', 'engine: bell, specificImpulse', 'stage-two-ways'],
    [
      'a mass of engines where figures push',
      'dry: 3 to',
      'engineMass: estimated, dry: 3 to',
      'engine-mass-without-engine',
    ],
    ['a mass of engines in no known word', 'dry: 16 t', 'engineMass: guessed, dry: 16 t', 'word-unknown'],
    ['an id of an engine', '  booster:', '  bell:', 'id-twice'],
    ['a likeness to itself', '    name: Alder booster', '    like: booster', 'like-circle'],
    [
      'a flat orbit',
      'orbit:',
      'launch: { latitude: 40 deg, inclination: 10 deg }\n    orbit:',
      'orbit-too-flat',
    ],
  ])('%s is told', (_, found, written, code) => {
    expect(BOOSTER).toContain(found);
    expect(codes(BOOSTER.replace(found, written))).toContain(code);
  });

  it('tells where', () => {
    const outcome = read(BOOSTER.replace('engine: bell', 'engin: bell'));
    expect(outcome.ok).toBe(false);
    if (!outcome.ok) expect(outcome.problems[0]!.where).toContain('study.yaml:12');
  });
});
