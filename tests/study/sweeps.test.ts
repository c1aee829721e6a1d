import { describe, expect, it, test } from 'vitest';
import { settableInputs } from '../../src/answer/inputs/index.ts';
import { cycleKinds } from '../../src/study/cycleForm.ts';
import { readStudy, type Study, type StudyProblem } from '../../src/study/index.ts';
import { isVehicle, type Owner, ownersOf } from '../../src/study/owners.ts';
import { sweptKindOf } from '../../src/study/sweepForm.ts';
import { quantityKinds } from '../../src/study/unitTable.ts';

const head = `plumeline: 1
question: Which?
engines:
  bell:
    propellants: { oxidiser: oxygen, fuel: methane, ratio: 3.5 }
    chamber: { pressure: 100 bar, efficiency: 97.5 % }
    size: { throat: 236 mm }
    nozzle: { kind: bell, areaRatio: 25 }
`;

function read(rest: string): Study {
  const outcome = readStudy(head + rest);
  if (!outcome.ok) throw new Error(outcome.problems.map(({ what }) => what).join('\n'));
  return outcome.study;
}

function problemsOf(rest: string): readonly StudyProblem[] {
  const outcome = readStudy(head + rest);
  return outcome.ok ? [] : outcome.problems;
}

describe('the sweeps of a study', () => {
  it('are read with their values in SI', () => {
    const { sweeps } = read(`sweeps:
  - id: pressure
    title: What pressure buys
    of:
      - bell.specificImpulse(vacuum)
      - bell.specificImpulse(0 km)
    over: chamber.pressure
    from: 20 bar
    to: 300 bar
    steps: ratios
    engines: [bell]
    points: 41
`);
    expect(sweeps).toMatchObject([
      {
        id: 'pressure',
        title: 'What pressure buys',
        of: ['bell.specificImpulse(vacuum)', 'bell.specificImpulse(0 km)'],
        range: { over: 'chamber.pressure', from: { value: 20e5 }, to: { value: 300e5 }, steps: 'ratios' },
        engines: ['bell'],
        points: 41,
      },
    ]);
  });

  it('may leave open all but id, what is followed and what moves', () => {
    const { sweeps, maps } = read(
      'sweeps:\n  - { id: a, of: bell.massFlow, over: engines.bell.propellants.ratio }\n',
    );
    expect(sweeps).toMatchObject([
      { of: ['bell.massFlow'], range: { from: null, to: null, steps: null }, engines: null, points: null },
    ]);
    expect(maps).toEqual([]);
  });

  it('are none in a study without them', () => {
    expect(read('')).toMatchObject({ sweeps: [], maps: [] });
  });
});

describe('the maps of a study', () => {
  it('are read with their values in SI', () => {
    const { maps } = read(`maps:
  - id: m
    of: bell.specificImpulse(vacuum)
    across: { over: propellants.ratio, from: 2, to: 5 }
    up: { over: altitude, from: 0 km, to: 20 km }
    points: 9
`);
    expect(maps).toMatchObject([
      { id: 'm', across: { from: { value: 2 } }, up: { over: 'altitude', to: { value: 20_000 } }, points: 9 },
    ]);
  });
});

describe('problems with their place', () => {
  const line = (text: string): string => `sweeps:\n  - { id: a, of: bell.massFlow, ${text} }\n`;
  it.each([
    [line('over: nozzle.areaRato'), 'sweep-input-unknown', 'Did you mean nozzle.areaRatio?'],
    [line('over: areaRatio'), 'sweep-input-unknown', 'Did you mean nozzle.areaRatio?'],
    [line('over: nozzle.areaRatio, from: 10, to: 10'), 'sweep-without-width', 'two different'],
    [line('over: nozzle.areaRatio, from: 10 km'), 'unit-of-other-kind', 'bare number'],
    [line('over: nozzle.areaRatio, from: 0.5'), 'value-out-of-range', 'range'],
    [line('over: chamber.pressure, from: 20'), 'unit-missing', 'bar'],
    [line('over: chamber.pressure, from: 20 ± 1 bar'), 'sweep-end-uncertain', 'alone'],
    [line('over: chamber.pressure, points: 4'), 'sweep-points', 'from 5'],
    [line('over: chamber.pressure, points: many'), 'sweep-points', 'whole number'],
    [line('over: chamber.pressure, engines: bel'), 'engine-unknown', 'Did you mean bell?'],
    [line('over: chamber.pressure, step: even'), 'key-unknown', 'Did you mean steps?'],
    [line('over: chamber.pressure, steps: evn'), 'word-unknown', 'Did you mean even?'],
    ['sweeps:\n  - { id: a, over: chamber.pressure }\n', 'key-missing', 'of: bell'],
    ['sweeps:\n  - { id: a, of: bell.massFlow }\n', 'key-missing', 'over'],
    ['sweeps:\n  - { id: a, of: [], over: chamber.pressure }\n', 'sweep-curves', 'Split'],
    [`${line('over: throttle')}${line('over: altitude').replace('sweeps:\n', '')}`, 'id-twice', 'of its own'],
    ['maps:\n  - { id: a, of: bell.massFlow, across: { over: throttle } }\n', 'key-missing', 'up:'],
    [
      'maps:\n  - { id: a, of: bell.massFlow, across: throttle, up: { over: altitude } }\n',
      'value-of-other-form',
      'over',
    ],
    ['sweeps: 3\n', 'value-of-other-form', 'Write each'],
  ])('%j', (rest, code, mend) => {
    const problems = problemsOf(rest);
    expect(problems.map((problem) => problem.code)).toContain(code);
    const told = problems.find((problem) => problem.code === code)!;
    expect(told.mend).toContain(mend);
    expect(told.place!.line).toBeGreaterThan(8);
  });
});

test('ends that stand the wrong way round are turned, and that is told', () => {
  const outcome = readStudy(
    `${head}sweeps:\n  - { id: a, of: bell.massFlow, over: nozzle.areaRatio, from: 100, to: 10 }\n`,
  );
  if (!outcome.ok) throw new Error('no study');
  expect(outcome.study.sweeps).toMatchObject([{ range: { from: { value: 10 }, to: { value: 100 } } }]);
  expect(outcome.warnings).toMatchObject([
    { code: 'sweep-backwards', mend: expect.stringContaining('from: 10, to: 100') },
  ]);
});

describe('what may be swept', () => {
  it.each(Object.values(settableOwners()))('is whatever may be set on $id', (owner) => {
    for (const { name, dimension } of settableInputs(owner)) {
      const kind = sweptKindOf(name)!;
      expect(kind, name).not.toBeNull();
      expect(quantityKinds[kind.kinds[0]!].dimension, name).toEqual(dimension);
      const place = isVehicle(owner) ? 'vehicles' : 'engines';
      expect(sweptKindOf(`${place}.${owner.id}.${name}`), name).toEqual(kind);
    }
  });
});

/** An engine of each kind of cycle, one of them cooled, and a vehicle of each goal. */
function settableOwners(): Readonly<Record<string, Owner>> {
  const cycles = cycleKinds.map(
    (kind) =>
      `  ${kind}: { like: bell, cycle: { kind: ${kind}${kind === 'stagedCombustion' ? ', rich: fuel' : ''}, burnTime: 150 s } }\n`,
  );
  const text = `${head}  cooled: { like: bell, cooling: { wall: copper } }
${cycles.join('')}vehicles:
  booster:
    first: { engine: bell, propellant: 40 t, dry: 4 t }
    second: { specificImpulse: 355 s, thrust: 60 kN, propellant: 8 t, dry: 1 t }
    drag: { area: 3 m2 }
    fairing: { mass: 0.3 t, dropAltitude: 110 km }
    limits: { acceleration: 45 m/s2 }
    orbit: { altitude: 200 km }
  high:
    first: { engine: bell, propellant: 4 t, dry: 1 t }
    drag: { area: 1 m2 }
    payload: 100 kg
`;
  const outcome = readStudy(text);
  if (!outcome.ok) throw new Error(outcome.problems.map(({ what }) => what).join('\n'));
  return Object.fromEntries(ownersOf(outcome.study).map((owner) => [owner.id, owner]));
}
