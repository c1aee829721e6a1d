import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { PropellantRecord } from '../../src/physics/gas/records.ts';
import { knownNames } from '../../src/study/names.ts';
import { readStudy } from '../../src/study/read.ts';
import { describeStudyProblem } from '../../src/study/report.ts';
import { badStudies, goodStudy } from './badStudies.ts';

const root = new URL('../../', import.meta.url);
const read = (path: string): string => readFileSync(new URL(path, root), 'utf8');
const { propellants } = JSON.parse(read('data/propellants.json')) as { propellants: PropellantRecord[] };
const known = knownNames(propellants);

function study(text: string) {
  const outcome = readStudy(text, known);
  if (!outcome.ok) throw new Error(outcome.problems.map(describeStudyProblem).join('\n'));
  return outcome;
}
const engine = (text: string, id: string) => {
  const found = study(text).study.engines.find((e) => e.id === id);
  if (found === undefined) throw new Error(`no engine ${id}`);
  return found;
};

describe('a study without a fault', () => {
  test('the good study of the table of bad ones is read without a warning', () => {
    expect(study(goodStudy).warnings).toEqual([]);
  });

  test.each(['examples/alder-booster/study.yaml', 'starters/blank/study.yaml'])('%s', (path) => {
    const outcome = readStudy(read(path), { ...known, file: path });
    expect(outcome.ok ? outcome.warnings : outcome.problems.map(describeStudyProblem)).toEqual([]);
  });

  test('values are in SI, with their text and path', () => {
    const bell = engine(goodStudy, 'bell');
    expect(bell.chamber.pressure).toEqual({
      value: 1e7,
      plusMinus: null,
      text: '100 bar',
      path: 'engines.bell.chamber.pressure',
      byDefault: false,
    });
    expect(bell.size).toMatchObject({ by: 'thrust', thrust: { value: 8e5 }, at: { kind: 'vacuum' } });
    expect(bell.chamber.convergingAngle).toMatchObject({ byDefault: true, text: '30 deg' });
    expect(study(goodStudy).study.altitudes).toMatchObject([{ value: 5000, path: 'altitudes[0]' }]);
  });

  test('names lead to the ids of the data, however they are spelt', () => {
    for (const [name, id] of [
      ['oxygen', 'LOX'],
      ['LOX', 'LOX'],
      ['lox', 'LOX'],
      ['Liquid Oxygen', 'LOX'],
      ['liquid_oxygen', 'LOX'],
      ['LOX-66K', 'LOX-66K'],
      ['98% peroxide', 'H2O2-98'],
    ]) {
      const found = engine(goodStudy.replace('oxidiser: oxygen', `oxidizer: ${name}`), 'bell').propellants;
      expect(found).toMatchObject({ kind: 'burnt', oxidiser: [{ id }] });
    }
  });

  test('every propellant of the data is found by each of its names', () => {
    for (const row of propellants) {
      for (const name of [row.id, ...row.alsoCalled]) {
        const text = goodStudy.replace('fuel: methane', `fuel: ${JSON.stringify(name)}`);
        expect(engine(text, 'bell').propellants).toMatchObject({ fuel: [{ id: row.id }] });
      }
    }
  });

  test('a heated gas is the row stored as a gas', () => {
    const burnt = '{ oxidiser: oxygen, fuel: methane, ratio: 3.5 ± 0.05 }';
    const heated = (gas: string) =>
      engine(goodStudy.replace(burnt, `{ gas: ${gas}, temperature: 2700 K }`), 'bell');
    expect(heated('hydrogen').propellants).toMatchObject({ kind: 'heated', parts: [{ id: 'GH2' }] });
    expect(heated('LH2').propellants).toMatchObject({ kind: 'heated', parts: [{ id: 'GH2' }] });
    expect(heated('ammonia').propellants).toMatchObject({ kind: 'heated', parts: [{ id: 'NH3' }] });
    expect(heated('{ nitrogen: 80 %, helium: 20 % }').propellants).toMatchObject({
      parts: [
        { id: 'GN2', share: { value: 0.8 } },
        { id: 'GHe', share: { value: 0.2 } },
      ],
    });
  });

  test('an ingredient of the study: per mole becomes per mass', () => {
    const text = goodStudy.replace('fuel: methane', 'fuel: { pitch: 60 %, methane: 40 % }');
    const { propellants: found } = engine(text, 'bell');
    if (found.kind !== 'burnt') throw new Error(found.kind);
    expect(found.fuel[0]).toMatchObject({
      id: 'pitch',
      custom: { elements: { C: 1, H: 1.5 }, density: null },
    });
    // CH1.5 weighs 12.0107 + 1.5 · 1.00794 = 13.52261 g/mol.
    expect(found.fuel[0]!.custom!.enthalpy.value).toBeCloseTo(-20000 / 0.01352261, 6);
    expect(found.fuel[1]).toMatchObject({ id: 'LCH4', custom: null });
  });

  test('the other forms of propellants, chemistry and size', () => {
    const burnt = '{ oxidiser: oxygen, fuel: methane, ratio: 3.5 ± 0.05 }';
    const withPropellants = (form: string) => engine(goodStudy.replace(burnt, form), 'bell').propellants;
    expect(withPropellants('{ mixture: { AP: 68 %, Al: 18 %, HTPB: 14 % } }')).toMatchObject({
      kind: 'mixed',
      parts: [{ id: 'AP' }, { id: 'Al' }, { id: 'HTPB' }],
    });
    expect(withPropellants('{ gamma: 1.2, molarMass: 22 g/mol, temperature: 3500 K }')).toMatchObject({
      kind: 'perfect',
      gamma: { value: 1.2 },
      molarMass: { value: 0.022 },
      temperature: { value: 3500 },
    });
    expect(withPropellants('{ oxidiser: oxygen, fuel: methane, equivalenceRatio: 1.1 }')).toMatchObject({
      mixture: { by: 'equivalenceRatio', ratio: { value: 1.1 } },
    });
    const withChemistry = (form: string) => engine(goodStudy.replace('shifting', form), 'bell').chemistry;
    expect(withChemistry('frozen')).toEqual({ kind: 'frozen' });
    expect(withChemistry('{ frozenFrom: { areaRatio: 3 } }')).toMatchObject({ areaRatio: { value: 3 } });
    expect(withChemistry('{ frozenFrom: { pressure: 5 bar } }')).toMatchObject({ pressure: { value: 5e5 } });
    const withSize = (form: string) =>
      engine(goodStudy.replace('{ thrust: 800 kN, at: vacuum }', form), 'bell').size;
    expect(withSize('{ throat: 210 mm }')).toMatchObject({ by: 'throat', diameter: { value: 0.21 } });
    expect(withSize('{ exit: 1.2 m }')).toMatchObject({ by: 'exit', diameter: { value: 1.2 } });
    expect(withSize('{ thrust: 80 tf, at: sea level }')).toMatchObject({
      thrust: { value: 80 * 9806.65 },
      at: { kind: 'altitude', altitude: { value: 0 } },
    });
    expect(withSize('{ thrust: 800 kN, at: 5 km }')).toMatchObject({ at: { altitude: { value: 5000 } } });
    expect(withSize('{ thrust: 800 kN, at: 0.5 bar }')).toMatchObject({ at: { pressure: { value: 5e4 } } });
  });
});

describe('like', () => {
  test('merges a section of the same form key by key, and takes the rest whole', () => {
    const wide = engine(goodStudy, 'wide');
    expect(wide.nozzle).toMatchObject({
      kind: 'bell',
      areaRatio: { value: 60, path: 'engines.wide.nozzle.areaRatio' },
      length: { value: 0.8, path: 'engines.bell.nozzle.length' },
    });
    expect(wide.chamber.pressure.path).toBe('engines.bell.chamber.pressure');
    expect(wide.size).toEqual({ by: 'same', what: 'throat', as: 'bell' });
    // The name is its own.
    expect(wide.name).toBe('wide');
    expect(wide.like).toBe('bell');
  });

  test('a section of another form starts afresh', () => {
    const cone = goodStudy.replace('nozzle: { areaRatio: 60 }', 'nozzle: { kind: cone, areaRatio: 60 }');
    expect(engine(cone, 'wide').nozzle).toMatchObject({ kind: 'cone', halfAngle: { byDefault: true } });
    const bare = readStudy(goodStudy.replace('nozzle: { areaRatio: 60 }', 'nozzle: { kind: cone }'), known);
    expect(bare.ok ? [] : bare.problems.map((p) => `${p.code} ${p.path}`)).toEqual([
      'key-missing engines.wide.nozzle.areaRatio',
    ]);
  });

  test('one ratio drives out the other', () => {
    const text = goodStudy.replace(
      'like: bell\n',
      'like: bell\n    propellants: { equivalenceRatio: 1.2 }\n',
    );
    expect(engine(text, 'wide').propellants).toMatchObject({
      mixture: { by: 'equivalenceRatio' },
      fuel: [{ id: 'LCH4' }],
    });
  });

  test('goes on through several engines in any order', () => {
    const text = goodStudy.replace(
      'engines:\n',
      'engines:\n  last: { like: wide, chamber: { pressure: 120 bar }, nozzle: { length: 70 % } }\n',
    );
    expect(engine(text, 'last')).toMatchObject({
      chamber: { pressure: { value: 1.2e7 }, efficiency: { value: 0.975 } },
      nozzle: { kind: 'bell', areaRatio: { value: 60 }, length: { value: 0.7 } },
      size: { by: 'same', as: 'bell' },
    });
  });

  test('a fault of the first is not told again for those that are like it', () => {
    for (const [from, to] of [
      ['pressure: 100 bar', 'pressure: 100 barr'],
      ['kind: bell, ', ''],
      ['kind: bell', 'kind: belle'],
      ['fuel: methane, ', ''],
      ['chemistry: shifting', 'chemistry: x'],
    ] as const) {
      const text = goodStudy
        .replace(from, to)
        .replace(
          'like: bell\n',
          'like: bell\n    chamber: { efficiency: 99 % }\n    propellants: { ratio: 3 }\n',
        );
      const outcome = readStudy(text, known);
      expect(outcome.ok ? [] : outcome.problems.map((p) => p.path)).toHaveLength(1);
    }
  });
});

describe('warnings', () => {
  const codes = (text: string): string[] => study(text).warnings.map((w) => `${w.code} ${w.place?.line}`);
  const bare = goodStudy.replace(', efficiency: 97.5 ± 1 %', '');
  test('ideal combustion by default is told once, not where losses are none', () => {
    expect(codes(bare)).toEqual(['efficiency-not-stated 8']);
    expect(codes(bare.replace('losses: default', 'losses: none'))).toEqual([]);
    expect(
      codes(
        bare
          .replace('losses: default', 'losses: none')
          .replace('like: bell', 'like: bell\n    losses: default'),
      ),
    ).toEqual(['efficiency-not-stated 12']);
  });
  test('a ± that leaves the range, exchanged propellants, chemistry of a perfect gas', () => {
    expect(codes(goodStudy.replace('97.5 ± 1 %', '99.5 ± 1 %'))).toEqual(['uncertainty-beyond-range 8']);
    expect(
      codes(goodStudy.replace('oxidiser: oxygen, fuel: methane', 'oxidiser: methane, fuel: oxygen')),
    ).toEqual(['role-unusual 6', 'role-unusual 6']);
    const perfect = '{ gamma: 1.2, molarMass: 22 g/mol, temperature: 3500 K }';
    const burnt = '{ oxidiser: oxygen, fuel: methane, ratio: 3.5 ± 0.05 }';
    expect(codes(goodStudy.replace(burnt, perfect))).toEqual(['chemistry-without-effect 7']);
  });
});

describe('a bad study', () => {
  test('the table is long enough', () => expect(badStudies.length).toBeGreaterThanOrEqual(40));

  test.each(badStudies.map((bad) => [bad.about, bad] as const))('%s', (_, bad) => {
    const outcome = readStudy(bad.text, { ...known, file: 'study.yaml' });
    if (outcome.ok) throw new Error('was read without a problem');
    const told = outcome.problems.map((p) => `${p.code} ${p.place?.line}:${p.place?.column}`);
    expect(told).toEqual(bad.told);
    for (const problem of outcome.problems) {
      expect(problem.what).not.toBe('');
      expect(problem.mend).not.toBe('');
      expect(describeStudyProblem(problem)).toMatch(/^study\.yaml:\d+:\d+/);
    }
  });

  test('what is allowed and the nearest name stand in the message', () => {
    const message = (from: string, to: string): string => {
      const outcome = readStudy(goodStudy.replace(from, to), known);
      return outcome.ok ? '' : describeStudyProblem(outcome.problems[0]!);
    };
    expect(message('fuel: methane', 'fuel: metane')).toBe(
      `study.yaml:6:44 (engines.bell.propellants.fuel): “metane” is not a known propellant. Did you mean methane? Known: pitch, ${propellants
        .slice(0, -1)
        .map((p) => p.id)
        .join(
          ', ',
        )} or ${propellants.at(-1)!.id}, and their plain names. Another can be described under ingredients.`,
    );
    expect(message('kind: bell', 'kind: bel')).toContain(
      'Did you mean bell? Allowed here: ideal, cone, bell, idealBell, adapting, extendableSkirt, insert, expansionDeflection, dualBell or plug.',
    );
    expect(message('efficiency:', 'eficiency:')).toContain(
      'Did you mean efficiency? Allowed here: pressure,',
    );
    expect(message('97.5 ± 1 %', '97.5')).toContain('Did you mean 97.5 %?');
    expect(message('as: bell', 'as: bel')).toContain(
      'Did you mean bell? Engines of this study: bell or wide.',
    );
  });

  test('text of the study in a message is short, on one line and without direction signs', () => {
    const nasty = `"a\\u202eb\\n${'x'.repeat(500)}"`;
    const outcome = readStudy(goodStudy.replace('kind: bell', `kind: ${nasty}`), known);
    if (outcome.ok) throw new Error('was read');
    expect(outcome.problems[0]!.what).toMatch(/^“ab x{10,60}…” is not/);
  });

  test('a file that is too large is refused, and one just below is read', () => {
    const filler = (n: number): string => `${goodStudy}# ${'x'.repeat(n)}\n`;
    expect(study(filler(900_000)).ok).toBe(true);
    const outcome = readStudy(filler(1_000_000), known);
    expect(outcome.ok ? '' : outcome.problems[0]!.code).toBe('file-too-large');
  });

  test('a byte order mark and Windows line ends change nothing', () => {
    const plain = study(goodStudy).study;
    expect(study(`\ufeff${goodStudy}`).study).toEqual(plain);
    expect(study(goodStudy.replaceAll('\n', '\r\n')).study).toEqual(plain);
    const bad = readStudy(goodStudy.replaceAll('\n', '\r\n').replace('100 bar', '100 barr'), known);
    expect(bad.ok ? null : bad.problems[0]!.place).toEqual({ line: 8, column: 26 });
  });

  test('deep nesting and long chains end in a message, not in a crash', () => {
    for (const text of [
      '['.repeat(100_000),
      '{a: '.repeat(50_000),
      '- '.repeat(50_000),
      '? '.repeat(50_000),
    ]) {
      const outcome = readStudy(text, known);
      expect(outcome.ok ? '' : outcome.problems[0]!.code).toBe('nested-too-deep');
    }
    const engines = Array.from({ length: 20_000 }, (_, i) => `  e${i}: { like: e${i + 1} }`).join('\n');
    const outcome = readStudy(`plumeline: 1\nquestion: q\nengines:\n${engines}\n`, known);
    expect(outcome.ok ? '' : outcome.problems[0]!.code).toBe('too-many-engines');
  });

  test('more than a hundred problems are counted', () => {
    const keys = Array.from({ length: 250 }, (_, i) => `unknown${i}: x`).join('\n');
    const outcome = readStudy(`${goodStudy}${keys}\n`, known);
    if (outcome.ok) throw new Error('was read');
    expect(outcome.problems).toHaveLength(101);
    expect(outcome.problems.at(-1)!.what).toContain('150 more');
  });
});

describe('whatever is in the file', () => {
  const ends = (text: string): void => {
    const outcome = readStudy(text, known);
    if (outcome.ok) expect(outcome.study.engines.length).toBeGreaterThan(0);
    else {
      expect(outcome.problems.length).toBeGreaterThan(0);
      for (const problem of outcome.problems) {
        if (problem.place === null) continue;
        expect(problem.place.line).toBeGreaterThan(0);
        expect(problem.place.line).toBeLessThanOrEqual(text.split('\n').length + 1);
      }
    }
  };

  test('random bytes', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 400 }), (bytes) => ends(new TextDecoder().decode(bytes))),
      { numRuns: 800 },
    );
  });

  test('random YAML signs', () => {
    const signs = fc.string({ unit: fc.constantFrom(...'ab:-?{}[],#&*!|>%@`"\' \n\t~<.1'), maxLength: 200 });
    fc.assert(fc.property(signs, ends), { numRuns: 1500 });
    fc.assert(
      fc.property(signs, (text) => ends(`plumeline: 1\nquestion: q\nengines:\n  a:\n    ${text}`)),
      { numRuns: 1500 },
    );
  });

  test('the good study with a piece cut out, doubled or replaced', () => {
    let read = 0;
    fc.assert(
      fc.property(
        fc.nat(goodStudy.length),
        fc.nat(40),
        fc.constantFrom(
          '',
          '[',
          '{ a: b }',
          '*x',
          '&x',
          'null',
          '~',
          '1e400',
          '\t',
          '__proto__',
          '<<: {}',
          '\n',
        ),
        (at, length, put) => {
          const text = goodStudy.slice(0, at) + put + goodStudy.slice(at + length);
          ends(text);
          if (readStudy(text, known).ok) read += 1;
        },
      ),
      { numRuns: 600 },
    );
    expect(read).toBeGreaterThan(5);
  });

  test('the good study with words exchanged', () => {
    const words = goodStudy.match(/[A-Za-z]+|[\d.]+/g)!;
    fc.assert(
      fc.property(fc.constantFrom(...words), fc.constantFrom(...words), (from, to) =>
        ends(goodStudy.replaceAll(from, to)),
      ),
      { numRuns: 800 },
    );
  });
});
