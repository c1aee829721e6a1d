import { describe, expect, test } from 'vitest';
import { passagesIn } from '../../../src/answer/claims/index.ts';
import { numberInWords } from '../../../src/answer/spoken/numberWords.ts';
import type { ScriptLine } from '../../../src/study/script/model.ts';
import { cuesToSubRip, cuesToWebVtt } from '../../../src/telling/captions/files.ts';
import { makeCues } from '../../../src/telling/captions/makeCues.ts';
import { readFilm } from '../../../src/telling/film/readFilm.ts';
import type { NumbersTold } from '../../../src/telling/time/model.ts';
import { timeScript } from '../../../src/telling/time/timeScript.ts';
import { randomFrom } from '../../campaigns/random.ts';
import { lineOf, PRESSURE, sceneOf, scriptOf } from '../time/buildScript.ts';

const TEXTS: readonly (readonly [string, string, Partial<ScriptLine>])[] = [
  ['pad.1', 'At the pad the gas would let go of the big bell’s wall.', { says: 'lets-go' }],
  ['pad.2', 'Its chamber holds {{p}}, about as much as a kilometre under the sea.', {}],
  ['plug.1', 'A plug has its wall on the inside, so the air shapes the jet by itself.', { pause: 1 }],
  ['plug.2', 'That is worth 12 seconds at the ground and nothing at all in vacuum.', { says: 'worth' }],
];
const lines = TEXTS.map(([id, text, rest]) => lineOf(id, text, rest));
const script = scriptOf([sceneOf('pad', lines.slice(0, 2)), sceneOf('plug', lines.slice(2))]);
const vtt = cuesToWebVtt(makeCues(script, PRESSURE), 'As written');
const film = (text: string, numbers: NumbersTold = PRESSURE) =>
  readFilm(script, numbers, passagesIn(text, 'webvtt'));
const said = (change: (text: string) => string) => film(change(vtt));
const kinds = ({ slips }: ReturnType<typeof film>) => slips.map(({ kind, line }) => [kind, line]);

describe('a film said as it is written', () => {
  test('has no slips, and the times of its script', () => {
    const { slips, said: share, lines: told, scenes } = film(vtt);
    expect(slips).toEqual([]);
    expect(share).toBe(1);
    const timed = timeScript(script, PRESSURE).scenes.flatMap((scene) => scene.lines);
    told.forEach((line, i) => {
      // Words share their caption's time: a caption is at most 7 s, a word a part of it.
      expect(Math.abs(line.start! - timed[i]!.start)).toBeLessThan(1);
      expect(Math.abs(line.end! - (timed[i]!.start + timed[i]!.seconds - timed[i]!.pause))).toBeLessThan(1);
    });
    expect(scenes.map(({ start }) => Math.round(start!))).toEqual([0, Math.round(timed[2]!.start)]);
  });

  test('the same from SubRip', () => {
    const passages = passagesIn(cuesToSubRip(makeCues(script, PRESSURE)), 'srt');
    expect(readFilm(script, PRESSURE, passages).slips).toEqual([]);
  });

  test('a number in words is the number in figures, and one may round', () => {
    expect(said((text) => text.replace('120\u00a0bar', 'a hundred and twenty bar')).slips).toEqual([]);
    const exact: NumbersTold = () => ({
      ...PRESSURE({} as never),
      written: '122.5 bar',
      said: '',
      value: 122.5e5,
    });
    expect(film(vtt, exact).slips).toEqual([]);
    const as =
      (value: number, written: string): NumbersTold =>
      () => ({ ...exact({} as never), written, value: value * 1e5 });
    const spoken = (text: string) => vtt.replace('120\u00a0bar', text);
    expect(film(spoken('300 bar'), as(345, '345 bar')).slips).toHaveLength(1);
    expect(film(spoken('three bar'), as(3.4, '3.4 bar')).slips).toEqual([]);
    expect(film(spoken('one bar'), as(0.5, '0.5 bar')).slips).toHaveLength(1);
  });
});

describe('slips', () => {
  test('another number than the live one, with its time in the film', () => {
    const { slips } = said((text) => text.replace('120\u00a0bar', 'a hundred and thirty bar'));
    expect(slips).toHaveLength(1);
    expect(slips[0]).toMatchObject({
      kind: 'number',
      line: 'pad.2',
      said: 'a hundred and thirty bar,',
      meant: '120 bar,',
    });
    const at = timeScript(script, PRESSURE).scenes[0]!.lines[1]!.start;
    expect(slips[0]!.time).toBeGreaterThan(at);
    expect(slips[0]!.time).toBeLessThan(at + 4);
  });

  test('the live number has moved since the recording', () => {
    const moved: NumbersTold = () => ({
      written: '131 bar',
      said: '',
      value: 131e5,
      dimension: [1, -1, -2, 0, 0, 0],
    });
    expect(kinds(film(vtt, moved))).toEqual([['number', 'pad.2']]);
  });

  test('another kind of unit, a number left out, one put in, one typed by hand', () => {
    expect(kinds(said((text) => text.replace('120\u00a0bar', '120 seconds')))).toEqual([['unit', 'pad.2']]);
    expect(kinds(said((text) => text.replace('120\u00a0bar', 'a lot')))).toEqual([
      ['number missing', 'pad.2'],
    ]);
    expect(kinds(said((text) => text.replace('by itself.', 'by itself at 30 km.')))).toEqual([
      ['number added', 'plug.1'],
    ]);
    expect(kinds(said((text) => text.replace('worth 12', 'worth 15')))).toEqual([['number', 'plug.2']]);
  });

  test('of a number in two units one is enough; of the two ends of a span both are told', () => {
    const told =
      (written: string): NumbersTold =>
      () => ({ ...PRESSURE({} as never), written });
    const spoken = (text: string) => vtt.replace('120\u00a0bar', text);
    expect(kinds(film(spoken('120 bar'), told('120 bar (1740 psi)')))).toEqual([]);
    expect(kinds(film(spoken('1740 psi'), told('120 bar (1740 psi)')))).toEqual([]);
    const span = told('between 110 and 130 bar');
    expect(kinds(film(spoken('between a hundred and ten and a hundred and thirty bar'), span))).toEqual([]);
    expect(kinds(film(spoken('110 bar'), span))).not.toEqual([]);
  });

  test('a “not” in a checked sentence; other words elsewhere are nobody’s business', () => {
    const { slips } = said((text) => text.replace('would let', 'would not let'));
    expect(slips.map(({ kind, sentence }) => [kind, sentence])).toEqual([['wording', 'lets-go']]);
    expect(slips[0]!.words).toContain('“not”');
    expect(said((text) => text.replace('so the air', 'and therefore the air')).slips).toEqual([]);
    expect(said((text) => text.replace('At the pad', 'Well, so, at the pad')).slips).toEqual([]);
  });

  test('a line that is left out', () => {
    const without = {
      ...script,
      scenes: [sceneOf('pad', lines.slice(0, 2)), sceneOf('plug', lines.slice(3))],
    };
    const shorter = cuesToWebVtt(makeCues(without, PRESSURE), 'As said');
    expect(kinds(film(shorter))).toEqual([['line missing', 'plug.1']]);
    expect(film(shorter).lines[2]).toMatchObject({ start: null, said: expect.any(Number) });
  });

  test('words put in before, in between and behind move no line', () => {
    const intro = `WEBVTT\n\n00:00.000 --> 00:05.000\nHello and welcome back to another evening at the desk.\n`;
    const later = vtt
      .slice(vtt.indexOf('\n\n00:') + 1)
      .replace(
        /00:00:(\d\d)\.(\d{3})/g,
        (_, s: string, ms: string) => `00:00:${String(Number(s) + 6).padStart(2, '0')}.${ms}`,
      );
    const { slips, lines: told } = film(intro + later);
    expect(slips).toEqual([]);
    expect(told[0]!.start).toBeCloseTo(6, 1);
  });

  test('an empty film says nothing; an empty script misses nothing', () => {
    expect(kinds(film('WEBVTT\n'))).toEqual(lines.map(({ id }) => ['line missing', id]));
    expect(readFilm(scriptOf([]), PRESSURE, passagesIn(vtt, 'webvtt')).lines).toEqual([]);
  });
});

describe('small changes of words', () => {
  const WORDS =
    'the gas leaves a wall where air outside presses harder than what flows inside of this wide nozzle'.split(
      ' ',
    );
  const numbers: NumbersTold = ({ expression }) => ({
    written: `${expression} bar`,
    said: '',
    value: Number(expression) * 1e5,
    dimension: [1, -1, -2, 0, 0, 0],
  });

  test('one number in six changed is found, others are not touched: two hundred films', () => {
    let found = 0;
    for (let seed = 1; seed <= 200; seed++) {
      const random = randomFrom(seed);
      const values = Array.from({ length: 6 }, () => Math.round(random.between(101, 989)) + 0.5);
      const texts = values.map((value) => {
        const own = random.shuffle([...WORDS, ...WORDS]).slice(0, 14);
        return `${own.slice(0, 7).join(' ')} {{${value}}} ${own.slice(7).join(' ')}.`;
      });
      const own = scriptOf([
        sceneOf(
          's',
          texts.map((text, i) => lineOf(`s.${i}`, text)),
        ),
      ]);
      const wrong = Math.floor(random.between(0, 6));
      const spoken = texts.map((text, i) => {
        const value = i === wrong ? values[i]! + 40 : values[i]!;
        const { words } = numberInWords(value, 6);
        // A word in twelve is left out, another in twelve is another word.
        const kept = text
          .replace(/\{\{.*?\}\}/, `${words.replace(/ /g, '_')}_bar`)
          .split(' ')
          .flatMap((word) =>
            word.includes('_') || random.chance(11 / 12) ? [word] : random.chance(0.5) ? [] : ['somehow'],
          );
        return kept.join(' ').replace(/_/g, ' ');
      });
      const film_ = spoken.map(
        (text, i) => `00:${String(10 + i)}.000 --> 00:${String(11 + i)}.000\n${text}\n`,
      );
      const { slips, lines: told } = readFilm(
        own,
        numbers,
        passagesIn(`WEBVTT\n\n${film_.join('\n')}`, 'webvtt'),
      );
      expect(
        slips.map(({ kind, line }) => [kind, line]),
        `seed ${seed}`,
      ).toEqual([['number', `s.${wrong}`]]);
      expect(Math.floor(slips[0]!.time), `seed ${seed}`).toBe(10 + wrong);
      found += told.filter(({ start }, i) => start !== null && Math.floor(start) === 10 + i).length;
    }
    // Where a line's first word is changed, the same word at the end of the line before may stand in for it.
    expect(found / 1200).toBeGreaterThan(0.99);
  });
});
