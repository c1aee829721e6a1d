import { describe, expect, test } from 'vitest';
import type { Comparison, StudyAnswer } from '../../src/answer/model.ts';
import { geometricAltitudeAtPressure } from '../../src/physics/air/index.ts';
import { solveText } from './solveText.ts';

const gas = '{ gamma: 1.2, molarMass: 22 g/mol, temperature: 3500 K }';
const engine = (id: string, name: string, nozzle: string, rest = ''): string =>
  `${id}: { name: ${name}, propellants: ${gas}, chamber: { pressure: 100 bar }, losses: none, size: { throat: 200 mm }, nozzle: ${nozzle}${rest} }\n`;

async function answerOf(engines: string, rest = ''): Promise<StudyAnswer> {
  return (await solveText(engines, rest)).answer;
}

async function comparisonOf(engines: string, rest = ''): Promise<Comparison> {
  const { comparison, failed } = await answerOf(engines, rest);
  if (comparison === null) throw new Error(JSON.stringify(failed));
  return comparison;
}

const short = engine('short', 'Short', '{ kind: ideal, areaRatio: 10 }');
const long = engine('long', 'Long', '{ kind: ideal, areaRatio: 40 }');

describe('two fixed nozzles that trade places on the way up', () => {
  test('tie where the closed form says', async () => {
    // C_F = C_F,vac − (p_a/p_0) ε is equal for both at p_a = p_0 (C_F,vac,2 − C_F,vac,1)/(ε_2 − ε_1); with the same gas
    // and efficiency that is where the specific impulses are equal. C_F,vac of γ 1.2: 1.7423 and 1.8843 (recomputed).
    const { crossings } = await comparisonOf(short + long);
    const pressure = (1e7 * (1.8843 - 1.7423)) / 30;
    expect(crossings).toHaveLength(1);
    // The printed digits leave 50 Pa of 47 kPa open, 8 m of altitude.
    expect(Math.abs((crossings[0] as number) - geometricAltitudeAtPressure(pressure))).toBeLessThan(20);
  });

  test('are told apart by the height of the tie, each with its lead', async () => {
    const { answer } = await comparisonOf(short + long);
    expect(answer.verdict).toBe('Short below about 6 km, Long above');
    expect(answer.text).toMatch(
      /^Per kilogram of propellant Short leads up to about 6 km, Long above it\. At the pad Short has \d+ s \(\d+ %\) more specific impulse, in vacuum Long has \d+ s \(8 %\) more; the number of Long at the pad supposes gas that stays on a wall it would let go of\.$/,
    );
  });

  test('stand side by side at the altitudes asked for as well', async () => {
    const { quantities } = await comparisonOf(short + long, 'altitudes: [11 km, 65 km]');
    const at = quantities.filter(({ quantity }) => quantity === 'thrust').map(({ altitude }) => altitude);
    expect(at).toEqual([0, 5_000, 10_000, 11_000, 20_000, 65_000]);
  });

  test('say what was held equal and what differs', async () => {
    const { heldEqual, differs } = await comparisonOf(short + long);
    expect(heldEqual).toEqual([
      'propellants',
      'chemistry',
      'chamber pressure',
      'chamber efficiency',
      'nozzle form',
      'throat area',
      'propellant flow',
    ]);
    expect(differs[0]).toBe('area ratio (10 against 40)');
    expect(differs.map((words) => words.replace(/ \(.*/, ''))).toEqual([
      'area ratio',
      'exit diameter',
      'thrust in vacuum',
      'thrust at sea level',
    ]);
  });

  test('`compare` in the study decides which is the base of more and less', async () => {
    const turned = await comparisonOf(short + long, 'compare: { base: long, other: short }');
    const plain = await comparisonOf(short + long);
    const inVacuum = (c: Comparison) => c.quantities.find((q) => q.quantity === 'vacuum.specificImpulse');
    expect(turned.base).toBe('long');
    expect(inVacuum(turned)?.difference).toBeCloseTo(-(inVacuum(plain)?.difference as number), 9);
    expect(inVacuum(plain)?.words).toMatch(/^\d+ s more$/);
    expect(inVacuum(turned)?.words).toMatch(/^\d+ s less$/);
  });
});

test('the same engine twice makes no difference', async () => {
  const { answer, quantities, crossings, differs } = await comparisonOf(
    short + engine('again', 'Again', '{ kind: ideal, areaRatio: 10 }'),
  );
  expect(answer.verdict).toBe('No difference per kilogram of propellant');
  expect(crossings).toEqual([]);
  expect(differs).toEqual([]);
  expect(new Set(quantities.map(({ words }) => words))).toEqual(
    new Set(['the same', 'no number for either']),
  );
});

test('one engine that leads everywhere is said to', async () => {
  const weak = `weak: { name: Weak, propellants: ${gas}, chamber: { pressure: 100 bar, efficiency: 95 % }, size: { throat: 200 mm }, nozzle: { kind: ideal, areaRatio: 10 } }\n`;
  const { answer } = await comparisonOf(weak + short);
  expect(answer.verdict).toBe('Short, from the pad to vacuum');
  // Same thrust, 5 % less c*: the lead is 1/0.95 − 1 = 5.3 % at any altitude.
  expect(answer.text).toMatch(/\(5 %\) more specific impulse at the pad and \d+ s \(5 %\) in vacuum\.$/);
});

describe('a bound', () => {
  const bound = engine('bound', 'Bound', '{ kind: adapting, areaRatio: 40 }');

  test('says "at most", and never that a machine does it', async () => {
    const { answer } = await comparisonOf(short + bound);
    expect(answer.verdict).toMatch(/^At most 0\.\d % more at the pad, 8 % in vacuum$/);
    expect(answer.text).toContain('could give at most');
    expect(answer.text).toContain('A real one gives less than this bound.');
  });

  test('reads the same whichever side it stands on', async () => {
    const one = await comparisonOf(short + bound);
    const other = await comparisonOf(bound + short);
    expect(other.answer).toEqual(one.answer);
  });

  test('of the same area ratio gains nothing in vacuum', async () => {
    const { answer } = await comparisonOf(long + bound);
    expect(answer.verdict).toMatch(/^At most \d+ % more at the pad, nothing in vacuum$/);
    expect(answer.text).toContain('nothing more in vacuum');
  });
});

describe('an engine whose gas leaves the wall at the pad', () => {
  const bells = `${engine('low', 'Low', '{ kind: bell, areaRatio: 15 }').replace('losses: none, ', '')}${engine('high', 'High', '{ kind: bell, areaRatio: 90 }').replace('losses: none, ', '')}`;

  test('has a thrust there with a span, and the answer says so and from where it flows full', async () => {
    const { engines, shortAnswer } = await answerOf(bells);
    const { seaLevel, altitudes, bands } = engines.high!;
    const pad = altitudes[0]!;
    expect(pad.flow.state).toBe('separated');
    expect(seaLevel.thrust).toBeGreaterThan(seaLevel.thrustIfFull);
    expect(seaLevel.thrust).toBeGreaterThanOrEqual(pad.separation!.thrust!.low);
    expect(seaLevel.thrust).toBeLessThanOrEqual(pad.separation!.thrust!.high);
    // The span of the criteria, wider by the scatter of the friction at either end.
    const band = bands['seaLevel.thrust']!;
    const friction = pad.separation!.thrust!.low - band.low;
    expect(friction).toBeGreaterThan(0);
    expect(band.high - friction).toBeCloseTo(pad.separation!.thrust!.high, 6);
    expect(shortAnswer.verdict).toMatch(/^Low below about \d+ km, High above$/);
    expect(shortAnswer.text).toMatch(
      /; at the pad the gas lets go of the wall of High, which makes its number there the less sure, and High flows full from about \d+ km up\.$/,
    );
  });

  test('is compared there all the same', async () => {
    const { quantities } = await comparisonOf(bells);
    const pad = quantities.find(({ quantity, altitude }) => quantity === 'thrust' && altitude === 0);
    expect(pad?.difference).toBeLessThan(0);
  });
});

describe('a study of one engine', () => {
  test('is answered about that engine', async () => {
    const { comparison, shortAnswer } = await answerOf(short);
    expect(comparison).toBeNull();
    expect(shortAnswer.verdict).toMatch(/^\d+ s at the pad, \d+ s in vacuum$/);
    expect(shortAnswer.text).toMatch(/^Short gives \d+ s of specific impulse in vacuum and \d+ s at the pad/);
  });

  test('says "at most" of a bound', async () => {
    const { shortAnswer } = await answerOf(engine('b', 'Bound', '{ kind: adapting, areaRatio: 40 }'));
    expect(shortAnswer.verdict).toMatch(/^At most/);
    expect(shortAnswer.text).toContain('gives at most');
  });
});

test('every short answer is at most two sentences', async () => {
  const studies = [
    short,
    short + long,
    long + short,
    short + engine('b', 'B', '{ kind: adapting, areaRatio: 40 }'),
  ];
  for (const study of studies) {
    const { shortAnswer } = await answerOf(study);
    expect(shortAnswer.text.match(/[.!?](\s|$)/g)?.length).toBeLessThanOrEqual(2);
  }
});
