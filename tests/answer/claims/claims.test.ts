import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Claim, claimsIn } from '../../../src/answer/claims/index.ts';
import { compileTest, scopeOf } from '../../../src/answer/expression/index.ts';
import { ProblemError } from '../../../src/numerics/problem.ts';
import { studyOf } from '../solveText.ts';
import { corpus, type Expected } from './corpus.ts';
import { heldOut } from './heldOut.ts';

const study = await studyOf(`bell:
  name: Alder B
  propellants: { oxidiser: oxygen, fuel: methane, ratio: 3.4 }
  chamber: { pressure: 100 bar }
  size: { throat: 250 mm }
  nozzle: { kind: bell, areaRatio: 30, length: 80 % }
plug:
  name: Alder P
  like: bell
  nozzle: { kind: plug, form: linear, areaRatio: 30, kept: 30 % }`);

const one = (say: string): Claim | null => claimsIn(say, 'text', study)[0] ?? null;

const readAll = (all: readonly Expected[]) =>
  all.map(([say, kind, quantity]) => ({ say, kind, quantity, claim: one(say) }));

function measure(all: readonly Expected[]) {
  const found = readAll(all);
  const claims = found.filter(({ kind }) => kind !== null);
  const named = claims.filter(({ quantity }) => quantity !== null);
  const told = found.filter(({ claim }) => claim !== null);
  const hits = claims.filter(({ claim }) => claim !== null).length;
  const meant = named.filter(({ quantity, claim }) => claim?.quantities[0]?.quantity === quantity);
  return {
    recall: hits / claims.length,
    precision: hits / told.length,
    kind: claims.filter(({ kind, claim }) => claim?.kind === kind).length / claims.length,
    quantity: meant.length / named.length,
  };
}

describe('the corpus', () => {
  // The numbers as told in docs/claims.md.
  test('recall and precision of what is a claim, of its kind and of its first quantity', () => {
    expect(corpus.length).toBeGreaterThanOrEqual(60);
    const { recall, precision, kind, quantity } = measure(corpus);
    expect(recall).toBeGreaterThanOrEqual(0.95);
    expect(precision).toBeGreaterThanOrEqual(0.95);
    expect(kind).toBeGreaterThanOrEqual(0.95);
    expect(quantity).toBeGreaterThanOrEqual(0.95);
  });

  test('the same of sentences that no rule was mended on', () => {
    const { recall, precision, kind, quantity } = measure(heldOut);
    expect(recall).toBeCloseTo(0.88, 1);
    expect(precision).toBeCloseTo(0.93, 1);
    expect(kind).toBeCloseTo(0.75, 1);
    expect(quantity).toBeCloseTo(0.69, 1);
  });

  test('every proposed test compiles; where there is none, the reason stands there', () => {
    for (const { claim } of readAll([...corpus, ...heldOut])) {
      if (claim === null) continue;
      if (claim.test === null) expect(claim.whyNot).not.toBeNull();
      else expect(compileTest(claim.test, scopeOf(study)).ok, claim.test).toBe(true);
    }
  });
});

describe('proposed tests', () => {
  test.each([
    ['The plug gives more thrust than the bell at sea level.', 'plug.thrust(0 km) > bell.thrust(0 km)'],
    ['The bell has less thrust than the plug at 12 km.', 'bell.thrust(12 km) < plug.thrust(12 km)'],
    [
      'The plug has ten per cent more thrust than the bell at the pad.',
      'plug.thrust(0 km) is about 1.1 * bell.thrust(0 km)',
    ],
    [
      'The chamber pressure of the plug is twice that of the bell.',
      'plug.chamber.pressure is about 2 * bell.chamber.pressure',
    ],
    [
      'The plug always gives more thrust than the bell.',
      'for every z from pad to vacuum: plug.thrust(z) > bell.thrust(z)',
    ],
    [
      'The specific impulse of Alder B is three hundred and forty seconds in vacuum.',
      'bell.specificImpulse(vacuum) is about 340 s',
    ],
    [
      'The thrust of the bell is never below 700 kN.',
      'for every z from pad to vacuum: bell.thrust(z) is at least 700 kN',
    ],
    ['The thrust of the bell is more than 700 kN at the pad.', 'bell.thrust(0 km) is more than 700 kN'],
    ['The plug has the highest chamber pressure.', 'plug.chamber.pressure > bell.chamber.pressure'],
    ['The bell makes more thrust in vacuum than at sea level.', 'bell.thrust(vacuum) > bell.thrust(0 km)'],
  ])('%s', (say, holds) => {
    expect(one(say)?.test).toBe(holds);
  });

  test('of two engines, what is more than one of them is the other; it is told', () => {
    const found = one('But in vacuum it gives more thrust than the bell.');
    expect(found?.test).toBe('plug.thrust(vacuum) > bell.thrust(vacuum)');
    expect(found?.assumed.join()).toContain('compared is plug');
    expect(one('In vacuum the bell gives more thrust than that.')?.test).toBeNull();
  });

  test.each([
    [
      'The bell is twice as long as the plug.',
      'bell.contour.nozzleLength is about 2 * plug.contour.nozzleLength',
    ],
    ['The plug is half as wide as the bell.', 'plug.exit.diameter is about 0.5 * bell.exit.diameter'],
    ['The bell is longer than the plug.', 'bell.contour.nozzleLength > plug.contour.nozzleLength'],
    ['The gas stays as long as the air is thin, and the bell is 2 m high.', null],
  ])('how long and how wide: %s', (say, test) => {
    expect(one(say)?.test ?? null).toBe(test);
  });

  test.each([
    ['The plug does not give more thrust than the bell.', 'plug.thrust(vacuum) <= bell.thrust(vacuum)'],
    [
      'The plug never gives more thrust than the bell.',
      'for every z from pad to vacuum: plug.thrust(z) <= bell.thrust(z)',
    ],
    [
      'The plug does not always give more thrust than the bell.',
      'for some z from pad to vacuum: plug.thrust(z) <= bell.thrust(z)',
    ],
    [
      'The chamber pressure of the plug isn’t twice that of the bell.',
      'not (plug.chamber.pressure is about 2 * bell.chamber.pressure)',
    ],
    ['The thrust of the bell does not reach 700 kN at the pad.', 'bell.thrust(0 km) is less than 700 kN'],
    ['The thrust of the bell does not exceed 700 kN at the pad.', 'bell.thrust(0 km) is at most 700 kN'],
  ])('what is denied is tested turned round: %s', (say, test) => {
    expect(one(say)).toMatchObject({ test });
  });

  test.each([
    'The plug never fails to give more thrust than the bell, and does not weigh more.',
    'The plug is not heavy, but it has more thrust than the bell.',
    'The plug hardly gives more thrust than the bell.',
    'The thrust of the bell is not 700 kN at the pad.',
  ])('a denial of something else, or one that is unclear, has no test: %s', (say) => {
    expect(one(say)).toMatchObject({ test: null, whyNot: expect.stringContaining('denies') });
  });

  test.each([
    ['Look at the bell.', 'Its chamber pressure is 100 bar.', 'bell.chamber.pressure is about 100 bar'],
    [
      'The plug is an odd thing.',
      'It gives more thrust than the bell at the pad.',
      'plug.thrust(0 km) > bell.thrust(0 km)',
    ],
    [
      'The chamber pressure of the plug is 100 bar.',
      'It is twice that of the bell.',
      'plug.chamber.pressure is about 2 * bell.chamber.pressure',
    ],
  ])('a pronoun stands for what was named last: %s %s', (first, second, test) => {
    const found = claimsIn(`${first} ${second}`, 'text', study).at(-1);
    expect(found).toMatchObject({ say: second, test });
    expect(found!.assumed.join('; ')).toMatch(/named before/);
  });

  test.each([
    ['The plug and the bell are old.', 'Its chamber pressure is 100 bar.'],
    ['Look at the bell.\n\nWell.\n\nNow, then.', 'Its chamber pressure is 100 bar.'],
  ])('and for nothing where two may be meant, or it is long ago: %s %s', (first, second) => {
    expect(claimsIn(`${first} ${second}`, 'text', study).at(-1)).toMatchObject({ say: second, test: null });
  });

  test('what is taken for granted is told; what is of nobody has none', () => {
    expect(one('The thrust of the bell is 840 kN.')!.assumed.join()).toContain('in vacuum');
    expect(one('The chamber pressure is 100 bar.')!.whyNot).toContain('which engine');
    expect(claimsIn('The chamber pressure is 100 bar.', 'text')[0]!.whyNot).toContain('No study');
  });

  test('a quantity whose dimension does not fit is not proposed', () => {
    const found = one('The thrust of the bell lasts 350 s.');
    expect(found!.quantities.map(({ quantity }) => quantity)).not.toContain('thrust');
  });
});

// After W3C, WebVTT: The Web Video Text Tracks Format, sections 1 and 4; the words are invented.
const VTT = `\uFEFFWEBVTT - Alder talk

STYLE
::cue { color: white }

NOTE
not to be read: 900 kN

intro
00:01.000 --> 00:04.500 align:start
<v Speaker>The plug gives more
thrust <i>than</i> the bell

00:00:05.000 --> 00:00:09.000
at sea level. The chamber pressure &amp; all is 100 bar.
`;

describe('captions', () => {
  test('WebVTT: header, notes, styles, ids, tags and entities; times and lines are kept', () => {
    const found = claimsIn(VTT, 'webvtt', study);
    expect(found.map(({ say, line, time }) => ({ say, line, time }))).toEqual([
      { say: 'The plug gives more thrust than the bell at sea level.', line: 11, time: 1 },
      { say: 'The chamber pressure & all is 100 bar.', line: 15, time: 5 },
    ]);
    expect(claimsIn(VTT.replace(/\n/g, '\r\n'), 'webvtt', study)).toEqual(found);
  });

  test('SubRip', () => {
    const srt =
      '1\n01:00:01,500 --> 01:00:04,000\nThe plug gives more thrust\nthan the bell.\n\n2\n01:00:05,000 --> 01:00:06,000\nHello.\n';
    expect(claimsIn(srt, 'srt', study)).toMatchObject([{ line: 3, time: 3601.5, kind: 'comparison' }]);
  });

  test.each([
    ['webvtt', 'WEBVTX\n\n00:01.000 --> 00:02.000\nx', 'captions-header', 'line 1'],
    ['webvtt', '', 'captions-header', 'line 1'],
    ['webvtt', 'WEBVTT\n\n00:01 --> 00:02.000\nx', 'captions-time', 'line 3'],
    ['webvtt', 'WEBVTT\n\n00:61.000 --> 00:62.000\nx', 'captions-time', 'line 3'],
    ['webvtt', 'WEBVTT\n\n00:03.000 --> 00:02.000\nx', 'captions-time', 'line 3'],
    ['webvtt', 'WEBVTT\n\nwords alone', 'captions-time', 'line 3'],
    ['srt', '1\n00:00:01,000 -> 00:00:02,000\nx', 'captions-time', 'line 1'],
    ['srt', '1\n00:00:01 --> 00:00:02\nx', 'captions-time', 'line 2'],
  ] as const)('broken %s %j: %s at %s', (format, text, code, where) => {
    const problem = ((): unknown => {
      try {
        return claimsIn(text, format);
      } catch (error) {
        return error instanceof ProblemError ? error.problem : error;
      }
    })();
    expect(problem).toMatchObject({ code, where });
  });

  test('whatever the text, nothing but a typed problem is thrown', () => {
    const words = fc.constantFrom(
      'plug',
      'bell',
      'thrust',
      'more',
      'than',
      '12',
      '%',
      'km',
      'never',
      '.',
      '\n',
      '-->',
      'WEBVTT\n',
      '00:01.000',
      '<',
      '&',
      'the most',
      'twice',
      '-3',
      '1e999',
    );
    const text = fc.oneof(
      fc.string({ unit: 'binary' }),
      fc.array(words).map((all) => all.join(' ')),
    );
    fc.assert(
      fc.property(
        text,
        fc.constantFrom('text' as const, 'webvtt' as const, 'srt' as const),
        (given, format) => {
          try {
            for (const claim of claimsIn(format === 'webvtt' ? `WEBVTT\n\n${given}` : given, format, study)) {
              if (claim.test !== null) expect(compileTest(claim.test, scopeOf(study)).ok).toBe(true);
            }
          } catch (error) {
            if (!(error instanceof ProblemError)) throw error;
          }
        },
      ),
      { numRuns: 300 },
    );
  });
});

describe('where a sentence ends', () => {
  test.each([
    ['The exhaust of the bell leaves at 3.1 km/s. In vacuum the thrust is always higher than at the pad.', 2],
    ['The bell has 345 s. The plug always has more than 350 s.', 2],
    ['By J. Smith: the bell has 345 s at sea level.', 1],
  ])('%s', (text, count) => {
    expect(claimsIn(text, 'text', study)).toHaveLength(count);
  });
});
