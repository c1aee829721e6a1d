import { expect, test } from 'vitest';
import { openDataShelf } from '../../src/faces/disk/data.ts';
import { cycleForms, cycleKinds } from '../../src/study/cycleForm.ts';
import { knownNames, readStudy, type StudyOutcome } from '../../src/study/index.ts';

const known = knownNames(await openDataShelf().propellants());

function read(cycle: string, other = ''): StudyOutcome {
  const text = `plumeline: 1
question: Which one?
engines:
  bell:
    propellants: { oxidiser: oxygen, fuel: hydrogen, ratio: 5.5 }
    chamber: { pressure: 60 bar, efficiency: 98 % }
    nozzle: { kind: bell, areaRatio: 40 }
    size: { throat: 200 mm }
    cycle: ${cycle}
${other}`;
  return readStudy(text, { file: 'study.yaml', ...known });
}

function engines(cycle: string, other = '') {
  const outcome = read(cycle, other);
  if (!outcome.ok) throw new Error(outcome.problems.map(({ what }) => what).join(' '));
  return outcome.study.engines;
}

function problems(cycle: string): readonly string[] {
  const outcome = read(cycle);
  return outcome.ok
    ? []
    : outcome.problems.map(({ code, place }) => `${code} ${place?.line}:${place?.column}`);
}

test.each(cycleKinds)('a cycle of the kind %s is read with its defaults', (kind) => {
  const [engine] = engines(`{ kind: ${kind} }`);
  const { cycle } = engine!;
  expect(cycle?.kind).toBe(kind);
  for (const [key, field] of Object.entries(cycleForms[kind])) {
    const value = (cycle as unknown as Record<string, unknown>)[key];
    if (field.is === 'choice') expect(value).toBe('fuel');
    else if ('optional' in field) expect(value, key).toBeNull();
    else expect(value, key).toMatchObject({ byDefault: true, path: `engines.bell.cycle.${key}` });
  }
});

test('values carry their unit, their ± and their place', () => {
  const [engine] = engines(
    '{ kind: gasGenerator, turbineInletTemperature: 650 °C, fuelPumpEfficiency: 72 ± 4 % }',
  );
  const { cycle } = engine!;
  if (cycle?.kind !== 'gasGenerator') throw new Error('not read as stated');
  expect(cycle.turbineInletTemperature.value).toBeCloseTo(923.15, 9);
  expect(cycle.fuelPumpEfficiency).toMatchObject({
    plusMinus: 0.04,
    path: 'engines.bell.cycle.fuelPumpEfficiency',
  });
});

test('it is inherited key by key, begins afresh as another kind, and can be taken away', () => {
  const all = engines(
    '{ kind: gasGenerator, turbineEfficiency: 50 %, tankPressure: 5 bar }',
    `  same: { like: bell }
  other: { like: bell, cycle: { turbineEfficiency: 65 % } }
  closed: { like: bell, cycle: { kind: stagedCombustion, rich: oxidiser } }
  without: { like: bell, cycle: none }
`,
  );
  const [bell, same, other, closed, without] = all.map(({ cycle }) => cycle);
  expect(same).toEqual(bell);
  expect(other).toMatchObject({
    kind: 'gasGenerator',
    turbineEfficiency: { value: 0.65 },
    tankPressure: { value: 5e5 },
  });
  expect(closed).toMatchObject({ kind: 'stagedCombustion', rich: 'oxidiser', tankPressure: { value: 3e5 } });
  expect(without).toBeNull();
});

test('what is wrong is told with its place', () => {
  expect(problems('{ turbineEfficiency: 50 % }')).toEqual(['key-missing 9:5']);
  expect(problems('{ kind: gasgenerator }')).toEqual(['word-unknown 9:20']);
  expect(problems('{ kind: pressureFed, turbineEfficiency: 50 % }')).toEqual(['key-unknown 9:33']);
  expect(problems('{ kind: gasGenerator, turbineEfficiency: 130 % }')).toEqual(['value-out-of-range 9:53']);
  expect(problems('{ kind: gasGenerator, tankPressure: 300 K }')).toHaveLength(1);
  expect(problems('{ kind: stagedCombustion, rich: metal }')).toEqual(['word-unknown 9:44']);
  expect(problems('gasGenerator')).toHaveLength(1);
});
