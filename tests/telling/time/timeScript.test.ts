import { describe, expect, test } from 'vitest';
import { timeScript } from '../../../src/telling/time/timeScript.ts';
import { lineOf, PRESSURE, sceneOf, scriptOf } from './buildScript.ts';

const words = (count: number): string => Array.from({ length: count }, () => 'word').join(' ');

describe('time by words at a pace', () => {
  test('a hundred and forty words are a minute; a pause counts behind its line', () => {
    const script = scriptOf([
      sceneOf('a', [lineOf('a.1', words(140)), lineOf('a.2', words(14), { pause: 1.5 })]),
    ]);
    const timed = timeScript(script, PRESSURE);
    expect(timed.seconds).toBe(60 + 6 + 1.5);
    expect(timed.words).toBe(154);
    expect(timed.scenes[0]?.lines[1]).toMatchObject({ start: 60, seconds: 7.5, pause: 1.5 });
  });

  test('three live numbers make a scene slower, two do not; each counts by its spoken words', () => {
    const dense = sceneOf('b', [lineOf('b.1', '{{p}} {{p}} {{p}}')]);
    const light = sceneOf('c', [lineOf('c.1', '{{p}} {{p}}')]);
    const { scenes } = timeScript(scriptOf([dense, light]), PRESSURE);
    expect(scenes.map(({ pace }) => pace)).toEqual([120, 140]);
    // a, hundred, and, twenty, bar
    expect(scenes[0]?.lines[0]).toMatchObject({ words: 15, seconds: 7.5 });
    expect(scenes[1]).toMatchObject({ start: 7.5, seconds: 4.3 });
  });

  test('the sums are those of the tenths that are shown', () => {
    const lines = Array.from({ length: 30 }, (_, i) => lineOf(`a.${i}`, words(1 + (i % 7))));
    const timed = timeScript(scriptOf([sceneOf('a', lines)]), PRESSURE);
    const tenths = timed.scenes[0]!.lines.map(({ seconds }) => Math.round(10 * seconds));
    expect(timed.seconds).toBe(tenths.reduce((sum, one) => sum + one, 0) / 10);
  });

  test('nothing takes no time', () => expect(timeScript(scriptOf([]), PRESSURE).seconds).toBe(0));
});
