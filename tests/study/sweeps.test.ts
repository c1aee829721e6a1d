import { describe, expect, it, test } from 'vitest';
import { settableInputs } from '../../src/answer/inputs/index.ts';
import { readStudy, type Study, type StudyProblem } from '../../src/study/index.ts';
import { sweptKindOf } from '../../src/study/sweepForm.ts';

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
  it('is whatever may be set on an engine, of the same kind', () => {
    for (const { name, dimension } of settableInputs(read('').engines[0]!)) {
      expect(sweptKindOf(name), name).not.toBeNull();
      expect(dimension).toHaveLength(6);
    }
  });
});
