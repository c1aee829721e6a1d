import { describe, expect, test } from 'vitest';
import { passagesIn } from '../../../src/answer/claims/captions.ts';
import { breakCost } from '../../../src/telling/captions/breaks.ts';
import { checkCaptions } from '../../../src/telling/captions/checkCaptions.ts';
import { cuesToSubRip, cuesToWebVtt } from '../../../src/telling/captions/files.ts';
import { makeCues } from '../../../src/telling/captions/makeCues.ts';
import type { Cue } from '../../../src/telling/captions/model.ts';
import { CAPTION_RULES, NARROW_ROW } from '../../../src/telling/captions/rules.ts';
import { timeScript } from '../../../src/telling/time/timeScript.ts';
import { randomFrom } from '../../campaigns/random.ts';
import { lineOf, PRESSURE, sceneOf, scriptOf } from '../time/buildScript.ts';
import { readAsPlayer, readStrictly, textOf } from './outsideReaders.ts';

const TEXT = [
  'At the pad the gas would let go of the big bell’s wall, because the air outside pushes harder than the gas inside.',
  'The chamber holds {{p}}, and the throat is the narrowest place on the way out.',
  'No.',
  'A plug has its wall on the inside: the outer edge of the jet is free, so the air itself shapes it at every altitude.',
  'That is 122.5 bar at the start, 80.25 bar after ten seconds and 12.75 bar at the end.',
];
const script = scriptOf([
  sceneOf(
    'a',
    TEXT.slice(0, 3).map((text, i) => lineOf(`a.${i}`, text)),
  ),
  sceneOf(
    'b',
    TEXT.slice(3).map((text, i) => lineOf(`b.${i}`, text, { pause: 1.2 })),
  ),
]);
const saidIn = (cues: readonly Cue[]): string =>
  cues
    .map(({ rows }) => rows.join(' '))
    .join(' ')
    .replace(/\u00a0/g, ' ');

describe('captions of a script', () => {
  const cues = makeCues(script, PRESSURE);

  test('say all of it, in order, by every rule', () => {
    expect(saidIn(cues)).toBe(TEXT.join(' ').replace('{{p}}', '120 bar'));
    expect(checkCaptions(cues)).toEqual([]);
  });

  test('stand while their words are said', () => {
    const { seconds } = timeScript(script, PRESSURE);
    expect(cues[0]?.start).toBe(0);
    expect(cues.at(-1)?.end).toBeLessThanOrEqual(seconds);
    // A sentence of one word is not alone: nobody could read it in its time.
    expect(cues.some(({ rows }) => rows.join() === 'No.')).toBe(false);
  });

  test('a number is not parted from its unit', () => {
    for (const { rows } of cues) for (const row of rows) expect(row).not.toMatch(/\d$/);
    expect(cues.flatMap(({ rows }) => rows).join(' ')).toContain('122.5\u00a0bar');
  });

  test('fit the narrow grid too', () => {
    const rules = { ...CAPTION_RULES, row: NARROW_ROW };
    const narrow = makeCues(script, PRESSURE, undefined, rules);
    expect(checkCaptions(narrow, rules)).toEqual([]);
    expect(saidIn(narrow)).toBe(saidIn(cues));
  });
});

describe('random scripts', () => {
  const words =
    'the a nozzle throat of pressure and because bell, plug. it falls 120 bar very at altitude; No! 3.5 km – gas'.split(
      ' ',
    );
  test('keep every rule, and nothing gets lost', () => {
    let checked = 0;
    for (let seed = 1; seed <= 60; seed++) {
      const random = randomFrom(seed);
      const count = (most: number): number => 1 + Math.floor(random.between(0, most));
      const scenes = Array.from({ length: count(4) }, (_, s) =>
        sceneOf(
          `s${s}`,
          Array.from({ length: count(5) }, (_l, l) =>
            lineOf(`s${s}.${l}`, Array.from({ length: 4 + count(40) }, () => random.pick(words)).join(' '), {
              pause: random.chance(0.3) ? random.between(0, 2) : 0,
            }),
          ),
        ),
      );
      const made = makeCues(scriptOf(scenes), PRESSURE);
      const written = scenes
        .flatMap(({ lines }) =>
          lines.flatMap(({ pieces }) => pieces.map((piece) => ('text' in piece ? piece.text : ''))),
        )
        .join(' ');
      expect(saidIn(made), `seed ${seed}`).toBe(written);
      expect(
        checkCaptions(made).filter(({ rule }) => rule !== 'break'),
        `seed ${seed}`,
      ).toEqual([]);
      checked += made.length;
    }
    expect(checked).toBeGreaterThan(500);
  });
});

describe('the files read back with readers of others', () => {
  const hostile = scriptOf([
    sceneOf('a', [
      lineOf(
        'a.1',
        'Here --> 00:00:09.000 <v Nobody>says</v> & more than <b>that</b> &amp; so on, {\\an8} at the top.',
      ),
      lineOf(
        'a.2',
        'First\n\nNOTE second \u202eesrever\u202c line\r\n\r\n1\n00:00:00,000 --> 00:00:01,000 and a \u0007 bell.',
      ),
      lineOf('a.3', 'One short word and then the pressure in the chamber is {{p}} as we know.'),
    ]),
  ]);
  const cues = makeCues(hostile, PRESSURE);
  const vtt = cuesToWebVtt(cues, 'A script\n\n00:00.000 --> 00:01.000\nnot a caption');

  const shown = cues.map(({ rows }) => rows.join('\n'));

  test('WebVTT by the parser of the standard’s authors: no error, the same words and times', () => {
    const { cues: read, errors } = readStrictly(vtt, 'captions');
    expect(errors).toEqual([]);
    expect(read.map(({ startTime, endTime }) => [startTime, endTime])).toEqual(
      cues.map(({ start, end }) => [start, end]),
    );
    expect(read.map(({ tree }) => textOf({ type: 'object', ...tree }))).toEqual(shown);
    for (const { tree } of read) for (const { type } of tree.children) expect(type).toBe('text');
  });

  test('WebVTT and SubRip by another reader', async () => {
    const web = await readAsPlayer(vtt, 'vtt');
    expect(web.errors).toEqual([]);
    expect(web.cues).toHaveLength(cues.length);
    const srt = await readAsPlayer(cuesToSubRip(cues), 'srt');
    expect(srt.errors).toEqual([]);
    expect(srt.cues.map(({ startTime, endTime }) => [startTime, endTime])).toEqual(
      cues.map(({ start, end }) => [start, end]),
    );
    for (const { text } of srt.cues) expect(text).not.toMatch(/[<>]|\{\\|-->/);
  });

  test('our own reader gives the words back', () => {
    const back = passagesIn(vtt, 'webvtt')
      .map(({ text }) => text)
      .join(' ');
    // It takes {\\an8} for a mark of place.
    expect(back.replace(/\s+/g, ' ')).toBe(shown.join(' ').replace('{\\an8} ', '').replace(/\s+/g, ' '));
    expect(passagesIn(cuesToSubRip(cues), 'srt')).toHaveLength(cues.flatMap(({ rows }) => rows).length);
  });

  test('nothing turns words around or ends a caption early', () => {
    // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
    expect(vtt + cuesToSubRip(cues)).not.toMatch(/[\u0007\u202a-\u202e\u2028\u2029\r]/);
    expect(vtt.match(/-->/g)).toHaveLength(cues.length);
  });
});

describe('the rules', () => {
  const good: Cue = { start: 0, end: 3, rows: ['The gas lets go', 'of the wall.'], words: 7 };
  test.each<[string, Partial<Cue>, string]>([
    ['a row too long', { rows: ['w'.repeat(43)] }, 'row-length'],
    ['three rows', { rows: ['a', 'b', 'c'] }, 'rows'],
    ['half a second', { end: 0.5, words: 1 }, 'too-short'],
    ['eight seconds', { end: 8 }, 'too-long'],
    ['more words than are read', { words: 10 }, 'too-fast'],
    ['an end before its beginning', { end: -1 }, 'order'],
    ['an empty row', { rows: ['a', ' '] }, 'empty'],
    ['an article at a row’s end', { rows: ['The gas lets go of the', 'wall.'] }, 'break'],
  ])('%s', (_, change, rule) => {
    expect(checkCaptions([good])).toEqual([]);
    expect(checkCaptions([{ ...good, ...change }]).map((breach) => breach.rule)).toContain(rule);
  });

  test('captions that overlap', () => {
    expect(checkCaptions([good, { ...good, start: 2.9, end: 6 }]).map(({ rule }) => rule)).toEqual(['order']);
  });

  test('a sentence’s end is the best place, an article the worst', () => {
    const costs = [
      ['end.', 'Then'],
      ['end,', 'then'],
      ['end', 'and'],
      ['end', 'of'],
      ['end', 'word'],
      ['the', 'end'],
    ];
    const found = costs.map(([a, b]) => breakCost(a!, b!));
    expect(found).toEqual([...found].sort((a, b) => a - b));
  });

  test('a pace that nobody can read is told, not hidden', () => {
    const fast = makeCues({ ...script, pace: 300 }, PRESSURE);
    expect(checkCaptions(fast).some(({ rule }) => rule === 'too-fast')).toBe(true);
  });
});
