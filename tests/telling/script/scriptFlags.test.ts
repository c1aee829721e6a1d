import { expect, test } from 'vitest';
import type { CheckedSentence, Verdict } from '../../../src/answer/sentences/index.ts';
import { readStudy } from '../../../src/study/index.ts';
import { readScript } from '../../../src/study/script/index.ts';
import {
  type FlagParts,
  handNumbers,
  readRecord,
  recordOf,
  resolvedMarkdown,
  resolveScript,
  scriptFlags,
} from '../../../src/telling/script/index.ts';
import { numbers, TIME, told } from './told.ts';

const outcome = readStudy(`
plumeline: 1
question: Which gives more?
engines:
  bell:
    name: Bell
    propellants: { oxidiser: oxygen, fuel: methane, ratio: 3.5 }
    chamber: { pressure: 100 bar }
    size: { throat: 210 mm }
    nozzle: { kind: bell, areaRatio: 25 }
  plug:
    like: bell
    name: Plug
    nozzle: { kind: plug, form: annular, areaRatio: 60, kept: 30 % }
`);
if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
const { study } = outcome;

const ISP = { dimension: TIME, quantity: 'specificImpulse', madeOf: ['specificImpulse'] };
const bell = told('bell.specificImpulse(vacuum)', 343.02, [338, 348], ISP);

function flagsOf(text: string, parts: Partial<FlagParts> = {}) {
  const { script } = readScript(text);
  const resolved = resolveScript(script, parts.told ?? numbers(bell));
  const byHand = handNumbers(script, study);
  return scriptFlags(resolved, { told: numbers(bell), study, judged: [], byHand, record: null, ...parts });
}

function judged(verdict: Verdict, say: string, rest: Partial<CheckedSentence> = {}): CheckedSentence {
  return {
    id: 's',
    say,
    said: true,
    holds: 'x',
    verdict,
    share: 1,
    shareError: 0,
    numbers: [],
    wording: null,
    instead: null,
    wordingHolds: null,
    conditions: [],
    flips: [],
    matters: [],
    alternatives: [],
    absolutes: [],
    saidNumbers: [],
    saidReasons: [],
    why: 'Because.',
    provisional: false,
    problem: null,
    sources: [],
    ...rest,
  };
}

test('a live number within its span raises no flag; digits beyond it, an open sign and no value do', () => {
  expect(flagsOf('The bell gives {{bell.specificImpulse(vacuum), about}}.')).toEqual([]);
  expect(flagsOf('{{bell.specificImpulse(vacuum), 5 digits}}')).toMatchObject([
    { kind: 'too exact', fails: false },
  ]);
  const open = numbers(told('d', 1, [-2, 4], ISP));
  expect(flagsOf('{{d}}', { told: open })).toMatchObject([{ kind: 'sign open', fails: false }]);
  expect(flagsOf('{{d, span}}', { told: open })).toEqual([]);
  expect(flagsOf('{{nothing}}')).toMatchObject([{ kind: 'no value', fails: true }]);
});

test('a number typed by hand is pointed out with the quantity it probably means', () => {
  const [flag, ...rest] = flagsOf('In vacuum the specific impulse of the bell is 343 s.', {
    told: numbers(),
  });
  expect(rest).toEqual([]);
  expect(flag).toMatchObject({ kind: 'by hand', fails: false, line: 'opening.1' });
  expect(flag!.words).toContain('specific impulse');
  expect(flag!.words).toContain('{{bell.specificImpulse(vacuum)}}');
  expect(flagsOf('The plug has twice the thrust of the bell in vacuum.')[0]!.words).toContain(
    '{{plug.thrust(vacuum) / bell.thrust(vacuum)}}',
  );
  // What stands beside it, before what is named elsewhere in the sentence.
  const beside = flagsOf('Its exit pressure is low, far below the air at 1.013 bar.', { told: numbers() });
  expect(beside[0]!.words).toContain('air pressure');
  expect(flagsOf('It wins from 8 km on.', { told: numbers() })[0]!.words).toContain(
    'Nothing in the words says',
  );
  // A live number of its kind and size is the likelier one.
  expect(flagsOf('It makes 345 s.')[0]!.words).toContain('{{bell.specificImpulse(vacuum)}}');
  expect(flagsOf('At ten kilometres, in 1969, five engines fired.')).toEqual([]);
});

test('a number that the checked sentence holds is no stranger', () => {
  const sentence = judged('safe to say', 'The bell gives more than 330 s in vacuum.', {
    saidNumbers: [{ text: '330 s', agrees: true, words: 'It is the number of the test.' }],
  });
  const line = 'In vacuum the bell gives more than 330 s. {says=s}';
  expect(flagsOf(line).map(({ kind }) => kind)).toEqual(['by hand']);
  expect(flagsOf(line, { judged: [sentence] })).toEqual([]);
  const other = flagsOf('In vacuum the bell gives more than 400 s. {says=s}', {
    judged: [
      {
        ...sentence,
        numbers: [
          {
            expression: 'bell.specificImpulse(vacuum)',
            quantity: 'specificImpulse',
            value: 343,
            low: 338,
            high: 348,
            words: 'about 343 s',
          },
        ],
      },
    ],
  });
  expect(other.map(({ words }) => words).join()).toContain('what is computed is this');
});

test('a tied line carries its verdict; what fails fails, whether the study means to say it or not', () => {
  const line = 'The plug gives more thrust than the bell. {says=s}';
  const say = 'The plug gives more thrust than the bell.';
  expect(flagsOf(line, { judged: [judged('safe to say', say)] })).toEqual([]);
  expect(flagsOf(line, { judged: [judged('say with care', say)] })).toMatchObject([
    { kind: 'verdict', fails: false },
  ]);
  for (const said of [true, false]) {
    const found = flagsOf(line, { judged: [judged('don’t say', say, { said, instead: 'It gives less.' })] });
    expect(found).toMatchObject([{ kind: 'verdict', fails: true }]);
    expect(found[0]!.words).toContain('It gives less.');
  }
});

test.each([
  ['The plug gives always more thrust than the bell.', '“always”'],
  ['The plug gives less thrust than the bell.', 'says less'],
  ['The plug does not give more thrust than the bell.', 'denies'],
  ['In vacuum the plug gives more thrust than the bell.', 'vacuum'],
])('words that are not those of the sentence: %s', (line, part) => {
  const say = 'The plug gives more thrust than the bell at the pad.';
  const found = flagsOf(`${line} {says=s}`, { judged: [judged('safe to say', say)] });
  expect(
    found.some(({ kind, words }) => kind === 'words' && words.includes(part)),
    JSON.stringify(found),
  ).toBe(true);
});

test('a number that moved since it was recorded is told, before and after', () => {
  const text = 'The bell gives {{bell.specificImpulse(vacuum), about}} in vacuum.';
  const { script } = readScript(text);
  const record = recordOf(resolveScript(script, numbers(bell)));
  expect(readRecord(JSON.stringify(record))).toEqual(record);
  expect(flagsOf(text, { record })).toEqual([]);
  const later = numbers({ ...bell, value: 352, low: 347, high: 357 });
  const [flag] = flagsOf(text, { record, told: later });
  expect(flag).toMatchObject({ kind: 'moved', fails: true });
  expect(flag!.words).toContain('about 343\u00a0s → about 352\u00a0s');
  // Within what is said, or said in other units: nothing moved.
  expect(flagsOf(text, { record, told: numbers({ ...bell, value: 343.1 }) })).toEqual([]);
  expect(flagsOf(text.replace('about', '2 digits'), { record }).map(({ kind }) => kind)).not.toContain(
    'moved',
  );
  // In a new line, or told in another way: what was recorded of the expression counts.
  const elsewhere = `First.\n\n${text}`;
  expect(flagsOf(elsewhere, { record }).map(({ kind }) => kind)).toEqual([]);
  expect(flagsOf(elsewhere, { record, told: later }).map(({ kind }) => kind)).toEqual(['moved']);
  const coarse = text.replace('about', '1 digit');
  const near = numbers({ ...bell, value: 346 });
  expect(flagsOf(coarse, { record, told: near }).map(({ kind }) => kind)).not.toContain('moved');
  expect(flagsOf(coarse, { record, told: later }).map(({ kind }) => kind)).toContain('moved');
  for (const odd of ['', '{}', '[]', 'null', '{"format":"plumeline script numbers 1","numbers":[1]}']) {
    expect(readRecord(odd)).toBeNull();
  }
});

test('the script as Markdown holds its numbers, and nothing in its words is markup', () => {
  const { script } = readScript(
    '# T\n\n## S\n\n> shown\n\n\\# \\<b\\> \\*x\\* gives {{bell.specificImpulse(vacuum)}}.\n',
  );
  const text = resolvedMarkdown(resolveScript(script, numbers(bell)));
  expect(text).toContain('343\u00a0s');
  expect(text).toContain('> shown');
  expect(text).toContain('not for building');
  const [again] = readScript(text).script.scenes[0]!.lines;
  expect(again!.pieces).toMatchObject([{ text: '# <b> *x* gives 343\u00a0s.' }]);
});
