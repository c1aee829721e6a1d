import { describe, expect, test } from 'vitest';
import type { Problem } from '../../../src/numerics/problem.ts';
import { ProblemError } from '../../../src/numerics/problem.ts';
import type { Script } from '../../../src/study/script/model.ts';
import type { CutWish } from '../../../src/telling/cut/model.ts';
import { proposeCut } from '../../../src/telling/cut/proposeCut.ts';
import { timeScript } from '../../../src/telling/time/timeScript.ts';
import { breachOf, makeCutCase } from '../../campaigns/cutCases.ts';
import { runCutCampaign } from '../../campaigns/runCutCampaign.ts';
import { lineOf, PRESSURE, sceneOf, scriptOf } from '../time/buildScript.ts';

/** Fourteen words are six seconds. */
const words = (count: number): string => Array.from({ length: count }, () => 'word').join(' ');
const line = (id: string, count: number, rest = {}) => lineOf(id, words(count), rest);
const wish = (length: number, rest: Partial<CutWish> = {}): CutWish => ({
  length,
  keep: [],
  leave: [],
  ...rest,
});
const keptBy = (script: Script, asked: CutWish): readonly string[] =>
  proposeCut(script, PRESSURE, asked).script.scenes.flatMap(({ lines }) => lines.map(({ id }) => id));

function problemOf(script: Script, asked: CutWish): Problem {
  try {
    proposeCut(script, PRESSURE, asked);
  } catch (error) {
    if (error instanceof ProblemError) return error.problem;
    throw error;
  }
  throw new Error('A problem was expected');
}

describe('a cut by hand', () => {
  // Six seconds each but the first: taken by worth for its time, two light lines would go before one heavy.
  const script = scriptOf([
    sceneOf('a', [line('a.1', 7, { weight: 6 }), line('a.2', 14, { weight: 10 })]),
    sceneOf('b', [line('b.1', 14, { weight: 9 }), line('b.2', 14, { weight: 3, relies: ['a.1'] })]),
  ]);

  test('the greatest weight counts, not the best for its time', () => {
    expect(keptBy(script, wish(12))).toEqual(['a.2', 'b.1']);
    expect(keptBy(script, wish(9))).toEqual(['a.1', 'a.2']);
  });

  test('a line comes with what it relies on, through its scene too', () => {
    expect(keptBy(script, wish(9, { keep: ['b.2'] }))).toEqual(['a.1', 'b.2']);
    const scene = scriptOf([script.scenes[0]!, { ...script.scenes[1]!, relies: ['a.2'] }]);
    expect(keptBy(scene, wish(12))).toEqual(['a.2', 'b.1']);
    expect(keptBy(scene, wish(13, { keep: ['b.1'], leave: ['a.1'] }))).toEqual(['a.2', 'b.1']);
  });

  test('whoever relies on a scene relies on all of its lines', () => {
    const all = scriptOf([script.scenes[0]!, sceneOf('c', [line('c.1', 7, { weight: 50, relies: ['a'] })])]);
    expect(keptBy(all, wish(12))).toEqual(['a.1', 'a.2', 'c.1']);
    expect(keptBy(all, wish(11.9))).toEqual(['a.1', 'a.2']);
  });

  test('a scene adds its weight once, with the first of its lines', () => {
    const scenes = scriptOf([
      sceneOf('a', [line('a.1', 14, { weight: 2 }), line('a.2', 14, { weight: 2 })]),
      sceneOf('b', [line('b.1', 14, { weight: 1 })], { weight: 5 }),
    ]);
    const cut = proposeCut(scenes, PRESSURE, wish(12));
    expect(cut.weight).toBe(8);
    expect(cut.wholeWeight).toBe(10);
    expect(cut.script.scenes.map(({ id }) => id)).toEqual(['a', 'b']);
  });

  test('the writer’s word counts, that on a line before that on its scene', () => {
    expect(keptBy(script, wish(12, { leave: ['a.2'] }))).toEqual(['a.1', 'b.1']);
    expect(keptBy(script, wish(60, { leave: ['a.1'] }))).toEqual(['a.2', 'b.1']);
    expect(keptBy(script, wish(60, { leave: ['a'], keep: ['a.1'] }))).toEqual(['a.1', 'b.1', 'b.2']);
  });

  test('every line is told with its reason', () => {
    const { lines } = proposeCut(script, PRESSURE, wish(15, { keep: ['b.2'], leave: ['b.1'] }));
    expect(lines.map(({ id, because, with: others }) => [id, because, others])).toEqual([
      ['a.1', 'relied on', ['b.2']],
      ['a.2', 'worth its time', []],
      ['b.1', 'left by the writer', []],
      ['b.2', 'kept by the writer', []],
    ]);
    const { lines: less } = proposeCut(script, PRESSURE, wish(6, { leave: ['a.1'] }));
    expect(less.map(({ because }) => because)).toEqual([
      'left by the writer',
      'worth its time',
      'no room',
      'relies on a line left',
    ]);
  });

  test('what is shown stays with the lines it was shown with', () => {
    const shown = (words_: string, at: string) => ({ words: words_, at, from: 0, to: 0 });
    const scene = sceneOf(
      'a',
      [line('a.1', 7, { weight: 0 }), line('a.2', 7), line('a.3', 7, { weight: 0 })],
      {
        shown: [shown('the pad', 'a.1'), shown('the sky', 'a.3')],
      },
    );
    const cut = proposeCut(scriptOf([scene]), PRESSURE, wish(3));
    expect(cut.script.scenes[0]?.shown).toEqual([{ ...shown('the pad', 'a.1'), at: 'a.2' }]);
  });

  test('a dropped line that says a kept sentence’s other half is told', () => {
    const halves = scriptOf([
      sceneOf('a', [
        line('a.1', 7, { says: 'wins', weight: 5 }),
        line('a.2', 7, { says: 'wins' }),
        line('a.3', 7),
      ]),
    ]);
    expect(proposeCut(halves, PRESSURE, wish(3)).verdictNeeds).toEqual([
      { line: 'a.1', sentence: 'wins', dropped: ['a.2'] },
    ]);
    expect(proposeCut(halves, PRESSURE, wish(9)).verdictNeeds).toEqual([]);
  });
});

describe('what cannot be', () => {
  const script = scriptOf([sceneOf('a', [line('a.1', 14), line('a.2', 14, { relies: ['a.1'] })])]);
  test('keeps that take longer than the cut', () => {
    const problem = problemOf(script, wish(9, { keep: ['a.2'] }));
    expect(problem.code).toBe('cut-keeps-too-long');
    expect(problem.facts).toEqual({ needed: 12, length: 9 });
  });
  test('a keep that relies on a left line', () => {
    const { code, what } = problemOf(script, wish(60, { keep: ['a.2'], leave: ['a.1'] }));
    expect(code).toBe('cut-contradiction');
    expect(what).toContain('a.2 is to be kept and relies on a.1');
  });
  test('the same line kept and left', () =>
    expect(problemOf(script, wish(60, { keep: ['a.1'], leave: ['a.1'] })).code).toBe('cut-contradiction'));
  test('a line that there is not', () =>
    expect(problemOf(script, wish(60, { keep: ['b'] })).code).toBe('line-unknown'));
  test('nothing fits', () => expect(problemOf(script, wish(5)).code).toBe('cut-empty'));
});

describe('random scripts', () => {
  // The whole campaign: `npm run campaign -- cut`.
  test('five hundred, small ones held against every set of their lines', () => {
    const report = runCutCampaign(20_000, 500);
    expect(report.failures).toEqual([]);
    expect(report.unsettled).toBe(0);
    expect(report.counts.cut).toBeGreaterThan(300);
    expect(report.counts['cut-keeps-too-long']).toBeGreaterThan(10);
    expect(report.counts['cut-contradiction']).toBeGreaterThan(2);
  });

  test.each([1, 3])('sixty scenes of hundreds of lines are settled: seed %i', (seed) => {
    const one = makeCutCase(seed, { scenes: 60, lines: 16 });
    const cut = proposeCut(one.script, PRESSURE, { ...one.wish, keep: [], leave: [] });
    expect(breachOf({ ...one, wish: { ...one.wish, keep: [], leave: [] } }, cut)).toBeNull();
    expect(cut.short).toBe(0);
    // A cut cut again stays as it is.
    expect(timeScript(cut.script, PRESSURE).seconds).toBeLessThanOrEqual(cut.target);
    expect(proposeCut(cut.script, PRESSURE, { length: cut.target, keep: [], leave: [] }).weight).toBe(
      cut.weight,
    );
  });
});
