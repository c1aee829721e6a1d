import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, test } from 'vitest';
import { visibleLength } from '../../../src/faces/cli/text/wrap.ts';
import { runMain } from './runMain.ts';

const place = mkdtempSync(join(tmpdir(), 'plumeline-cli-'));
afterAll(() => rmSync(place, { recursive: true, force: true }));
const example = fileURLToPath(new URL('../../../examples/alder-booster', import.meta.url));

function studyFolder(name: string, engines: string, rest = ''): string {
  const folder = join(place, name);
  mkdirSync(folder);
  writeFileSync(
    join(folder, 'study.yaml'),
    `plumeline: 1\nquestion: Which?\nengines:\n${engines}\n${rest}\n`,
  );
  return folder;
}

const perfect =
  'propellants: { gamma: 1.2, molarMass: 22 g/mol, temperature: 3500 K }, chamber: { pressure: 70 bar, efficiency: 98 % }';
const good = `  good: { ${perfect}, size: { throat: 100 mm }, nozzle: { kind: ideal, areaRatio: 10 } }`;
const bad = `  bad: { ${perfect}, size: { throat: 100 mm }, nozzle: { kind: bell, areaRatio: 900 } }`;

describe('help', () => {
  test('teaches the commands, with examples, the exit statuses and the caution', async () => {
    const { status, out, err } = await runMain(['--help']);
    expect(status).toBe(0);
    expect(err).toBe('');
    for (const words of [
      'new',
      'solve',
      'pack',
      'open',
      'quantities',
      'Examples:',
      'Exit status:',
      'not for building',
    ])
      expect(out).toContain(words);
    // Every line of the examples is a command with its words, every command stands in one but schema and help.
    const examples = out
      .slice(out.indexOf('Examples:'), out.indexOf('Exit status:'))
      .trim()
      .split('\n')
      .slice(1);
    for (const line of examples) expect(line).toMatch(/^ {2}plumeline [a-z]+ \S.* {2}\S/);
    for (const command of ['check', 'claims', 'sweep', 'map', 'need'])
      expect(examples.join('\n')).toContain(`plumeline ${command} `);
  });

  test('is what a bare call shows', async () => {
    expect((await runMain([])).out).toBe((await runMain(['--help'])).out);
  });

  test.each(['new', 'solve', 'pack', 'open', 'quantities'])('of %s says what it takes', async (command) => {
    const { status, out } = await runMain([command, '--help']);
    expect(status).toBe(0);
    expect(out).toContain(`Usage: plumeline ${command}`);
  });
});

describe('solve', () => {
  let solved: ReturnType<typeof runMain> | null = null;
  /** The example as it stands, solved once for all that look at it; no time has passed by its clock. */
  function solvedExample(): ReturnType<typeof runMain> {
    solved ??= runMain(['solve', example]);
    return solved;
  }

  test('puts the question and the short answer first, engines side by side, and the caution last', {
    timeout: 120_000,
  }, async () => {
    const { status, out, err } = await solvedExample();
    expect(status).toBe(0);
    expect(err).toBe('');
    const order = [
      'How much does a plug',
      'The lead changes',
      'Held equal',
      'Different',
      'At the pad, 1.013 bar outside',
      'At 10 km',
      'In vacuum',
      'Not in these numbers',
      'Handle with care',
      'not for building, pressurising or firing hardware',
    ].map((words) => out.indexOf(words));
    expect(order).not.toContain(-1);
    expect([...order].sort((a, b) => a - b)).toEqual(order);
  });

  test('stays inside the width, and uses no control characters', async () => {
    const { out } = await solvedExample();
    for (const line of out.split('\n')) expect(visibleLength(line)).toBeLessThanOrEqual(100);
    expect(out.replaceAll('\n', '')).not.toMatch(/\p{Cc}/u);
  });

  test('prints JSON with the fixed names, and nothing else on that stream', async () => {
    const { status, out } = await runMain(['solve', example, '--json', '--ambient', '1 bar, 0.2 bar, 0 Pa']);
    expect(status).toBe(0);
    const answer = JSON.parse(out);
    expect(answer).toMatchObject({ format: 'plumeline answer 1', program: { name: 'plumeline' } });
    expect(answer.program.version).toMatch(/^\d+\.\d+\.\d+/);
    expect(answer.caution).toContain('not for building');
    for (const engine of Object.values<EngineJson>(answer.engines)) {
      expect(numericAt(engine, fixedNumbers)).toEqual(fixedNumbers);
      for (const row of [...engine.altitudes, ...engine.ambients]) {
        expect(Object.keys(row)).toEqual(expect.arrayContaining([...rowNames]));
        expect(row.flow.state).toMatch(/^(full|near the limit|separated|unchoked)$/);
        expect(row.flow.criterion).toBeTruthy();
      }
      for (const name of ['models', 'omitted', 'bands', 'reasons', 'notes'])
        expect(engine).toHaveProperty(name);
    }
    const pressures = answer.engines.bell.ambients.map((row: Row) => row.ambientPressure);
    expect(pressures).toEqual([100_000, 20_000, 0]);
    expect(answer.engines.bell.chamber.molarMass).toBeLessThan(0.05);
  });

  test('reports altitudes that were asked for', async () => {
    const { out } = await runMain(['solve', studyFolder('heights', good), '--altitude', '7 km, 20000 ft']);
    expect(out).toContain('At 7 km');
    expect(out).toContain('At 6.096 km');
  });

  test('--engine answers about that engine, with those it takes its size from', async () => {
    const { out } = await runMain(['solve', example, '--json', '--engine', 'bell']);
    expect(Object.keys(JSON.parse(out).engines)).toEqual(['bell']);
    const { out: other } = await runMain(['solve', example, '--json', '--engine', 'adapting']);
    expect(Object.keys(JSON.parse(other).engines).sort()).toEqual(['adapting', 'bell']);
  });

  test('exit status 1 when an engine fails: the answer on one stream, the failure on the other', async () => {
    const { status, out, err } = await runMain(['solve', studyFolder('partly', `${good}\n${bad}`)]);
    expect(status).toBe(1);
    expect(out).toContain('Could not be computed');
    expect(err).toContain('The engine bad could not be computed');
  });

  test('separated flow is an answer: status 0', async () => {
    const wide = `  wide: { ${perfect}, size: { throat: 100 mm }, nozzle: { kind: bell, areaRatio: 80 } }`;
    const { status, out } = await runMain(['solve', studyFolder('wide', wide), '--ambient', '1 bar']);
    expect(status).toBe(0);
    expect(out).toContain('lets go of the wall');
    expect(out).toMatch(/where it lets go, area ratio +\d\S* \(\d\S* to \d\S*\)/);
    expect(out).toMatch(/thrust over all criteria +[\d.]+ kN to [\d.]+ kN/);
    expect(out).toContain('Sideways forces');
  });

  test('tells the difference of two engines in words, beside them', async () => {
    const { out } = await runMain(['solve', example, '--engine', 'plug']);
    expect(out).toMatch(/Alder P +Alder B +Alder B has/);
    expect(out).toMatch(/specific impulse +\d+\.\d s +\d+\.\d s +[\d.]+ s less/);
    expect(out).toMatch(/throat diameter .* the same/);
  });

  test('engines that do not fit beside each other stand in tables below each other', async () => {
    const many = [1, 2, 3, 4, 5, 6].map((i) =>
      good.replace('good:', `e${i}:`).replace('{ prop', `{ name: Engine number ${i}, prop`),
    );
    const { out } = await runMain(['solve', studyFolder('many', many.join('\n'))]);
    for (const line of out.split('\n')) expect(visibleLength(line)).toBeLessThanOrEqual(100);
    for (const i of [1, 2, 3, 4, 5, 6]) expect(out).toContain(`Engine number ${i}`);
    expect(out.match(/^In vacuum$/gm)?.length).toBeGreaterThan(1);
  });

  test('says what it is doing once that takes a while', async () => {
    expect((await solvedExample()).err).toBe('');
    const three = ['one', 'two', 'three'].map((id) => good.replace('good:', `${id}:`)).join('\n');
    expect((await runMain(['solve', studyFolder('slow', three)], 5000)).err).toMatch(
      /Solving \S+ \(1 of 3\)/,
    );
  });
});

interface EngineJson {
  readonly altitudes: readonly Row[];
  readonly ambients: readonly Row[];
}
interface Row {
  readonly flow: { readonly state: string; readonly criterion: string };
  readonly ambientPressure: number;
}
const figures = ['thrustCoefficient', 'specificImpulse', 'thrust'];
const fixedNumbers = [
  ...['temperature', 'molarMass', 'isentropicExponent'].map((name) => `chamber.${name}`),
  'characteristicVelocity',
  ...['pressure', 'temperature', 'diameter'].map((name) => `throat.${name}`),
  ...['pressure', 'temperature', 'mach', 'diameter'].map((name) => `exit.${name}`),
  'massFlow',
  ...figures.map((name) => `vacuum.${name}`),
  ...figures.map((name) => `seaLevel.${name}`),
];
const rowNames = [
  'altitude',
  'ambientPressure',
  'thrust',
  'thrustIfFull',
  'thrustCoefficient',
  'specificImpulse',
  'flow',
];

function numericAt(value: unknown, paths: readonly string[]): readonly string[] {
  return paths.filter((path) => {
    const found = path.split('.').reduce<unknown>((at, key) => (at as Record<string, unknown>)[key], value);
    return typeof found === 'number' && Number.isFinite(found);
  });
}

describe('bad input ends with status 2, nothing on the result stream, and words that help', () => {
  test.each<readonly [string, readonly string[], RegExp]>([
    ['an unknown option', ['solve', example, '--jsno'], /Did you mean --json/],
    ['an unknown command', ['slove', example], /Did you mean solve/],
    ['no study', ['solve'], /missing required argument/],
    ['a folder that is not there', ['solve', join(place, 'nowhere')], /plumeline new/],
    ['a pressure without a unit', ['solve', example, '--ambient', '1'], /has no unit/],
    ['a gauge pressure', ['solve', example, '--ambient', '10 psig'], /psi/],
    ['a negative pressure', ['solve', example, '--ambient', '-1 bar'], /outside 0 Pa upwards/],
    ['an altitude beyond the air', ['solve', example, '--altitude', '2000 km'], /−5 km to 1000 km/],
    [
      'an unknown engine',
      ['solve', example, '--engine', 'bel'],
      /Engines of this study: bell, plug (and|or) adapting|Engines of this study: bell, plug, adapting/,
    ],
    ['a package without a place', ['pack', example], /--out <folder>/],
    ['a package over other files', ['pack', example, '--out', example], /no package of this program/],
    ['an unknown quantity', ['quantities', 'thurst'], /Did you mean thrust/],
    ['a symbol of the trade', ['quantities', 'isp'], /Did you mean specificImpulse\?/],
    ['another symbol', ['quantities', 'Pc'], /Did you mean chamber\.pressure\?/],
    ['words of a label', ['quantities', 'mass of a mole'], /plumeline quantities lists them all/],
    ['a decimal comma', ['solve', example, '--ambient', '97,5 bar'], /write 97\.5 bar, with a point/],
    ['a decimal comma', ['solve', example, '--altitude', '3,5 km'], /write 3\.5 km, with a point/],
    ['an unknown starter', ['new', join(place, 'x'), '--from', 'nothing'], /Starters: /],
    ['a port that is none', ['open', example, '--port', '99999'], /0 to 65535/],
  ])('%s', async (_, args, words) => {
    const { status, out, err } = await runMain(args);
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toMatch(words);
  });

  test('an unreadable study: file, line, column, what, mend; every problem at once', async () => {
    const folder = studyFolder(
      'unreadable',
      `${good.replace('70 bar', '70 brr').replace('100 mm', '100 m/s')}\n  same: { like: nobody }`,
    );
    const { status, err } = await runMain(['solve', folder]);
    expect(status).toBe(2);
    expect(err).toMatch(/study\.yaml:4:\d+: /);
    expect(err).toMatch(/study\.yaml:5:\d+: /);
    expect(err).toContain('Did you mean bar?');
    expect(err.match(/study\.yaml:4:/g)?.length).toBe(2);
  });

  test('a warning is told, and the answer still comes', async () => {
    const { status, err, out } = await runMain([
      'solve',
      studyFolder(
        'warned',
        '  burns: { propellants: { oxidiser: oxygen, fuel: methane, ratio: 3.5 }, chamber: { pressure: 70 bar }, size: { throat: 100 mm }, nozzle: { kind: ideal, areaRatio: 10 } }',
      ),
    ]);
    expect(status).toBe(0);
    expect(err).toContain('efficiency');
    expect(out).toContain('To know about the inputs');
  });
});

describe('new', () => {
  test('--list gives every starter with its question and makes nothing', async () => {
    const listed = await runMain(['new', '--list']);
    expect(listed.status).toBe(0);
    expect(listed.out).toMatch(/^alder-booster +\S.*\?$/m);
    expect(listed.out).toMatch(/^bell-against-plug +Are plug nozzles better than bells\?$/m);
    expect(listed.out.trimEnd().split('\n').length).toBeGreaterThan(20);
  });

  test('without a folder it says what to write', async () => {
    const { status, err } = await runMain(['new']);
    expect(status).toBe(2);
    expect(err).toMatch(/plumeline new --list/);
  });

  test('makes a study that solves, and refuses to overwrite it', async () => {
    const folder = join(place, 'made here', 'fresh');
    const made = await runMain(['new', folder, '--question', 'Why is the bell so big?']);
    expect(made.status).toBe(0);
    expect(made.out).toContain('plumeline solve');
    const text = readFileSync(join(folder, 'study.yaml'), 'utf8');
    expect(text).toContain('question: Why is the bell so big?');
    expect(text).toMatch(/^#/m);
    const solved = await runMain(['solve', folder]);
    expect(solved.status).toBe(0);
    expect(solved.out).toContain('Why is the bell so big?');
    writeFileSync(join(folder, 'study.yaml'), `${text}# mine\n`);
    const again = await runMain(['new', folder]);
    expect(again.status).toBe(2);
    expect(readFileSync(join(folder, 'study.yaml'), 'utf8')).toContain('# mine');
  });

  test('says so where no folder can be made', async () => {
    writeFileSync(join(place, 'a-file'), '');
    const { status, err } = await runMain(['new', join(place, 'a-file', 'inside')]);
    expect(status).toBe(2);
    expect(err).toContain('cannot be made');
  });
});

describe('pack', () => {
  test('writes the study as it stands in the file that was named, whatever its name', async () => {
    const folder = studyFolder('named', good);
    const text = `${readFileSync(join(folder, 'study.yaml'), 'utf8')}# the other one\n`;
    writeFileSync(join(folder, 'other.yaml'), text);
    const out = join(place, 'packed');
    const { status, out: said } = await runMain(['pack', join(folder, 'other.yaml'), '--out', out]);
    expect(status).toBe(0);
    expect(said).toContain('index.html');
    expect(readFileSync(join(out, 'study.yaml'), 'utf8')).toBe(text);
    expect(JSON.parse(readFileSync(join(out, 'numbers.json'), 'utf8')).caution).toContain('not for building');
  });

  test('exit status 1 when an engine fails; the rest is packed', async () => {
    const { status, err } = await runMain([
      'pack',
      studyFolder('partly-packed', `${good}\n${bad}`),
      '--out',
      join(place, 'packed-partly'),
    ]);
    expect(status).toBe(1);
    expect(err).toContain('The engine bad could not be computed');
  });
});

describe('quantities', () => {
  test('explains one, with equation, source and limits', async () => {
    const { status, out } = await runMain(['quantities', 'specificImpulse']);
    expect(status).toBe(0);
    for (const words of ['Meaning', 'Equation', 'Source', 'Limits', 'docs/methods/'])
      expect(out).toContain(words);
  });

  test('explains what a test asks for, as it stands there', async () => {
    for (const asked of ['bell.thrust(pad)', 'thrust(12 km)', 'bell.thrust'])
      expect((await runMain(['quantities', asked])).out).toMatch(/^thrust: thrust\n/);
    expect((await runMain(['quantities', 'bell.isp'])).err).toContain('Did you mean specificImpulse?');
  });

  test('lists them all', async () => {
    expect((await runMain(['quantities'])).out.split('\n').length).toBeGreaterThan(60);
  });
});

test('schema prints the JSON Schema of the study file', async () => {
  const { status, out } = await runMain(['schema']);
  expect(status).toBe(0);
  expect(JSON.parse(out).$schema).toContain('json-schema.org');
});
