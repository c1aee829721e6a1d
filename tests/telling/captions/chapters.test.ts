import { describe, expect, test } from 'vitest';
import { chaptersToList, chaptersToWebVtt } from '../../../src/telling/captions/files.ts';
import { makeChapters, type SceneTimes } from '../../../src/telling/captions/makeChapters.ts';
import { readAsPlayer, readStrictly, textOf } from './outsideReaders.ts';

const scenes = (...lengths: readonly (readonly [string, number])[]): readonly SceneTimes[] => {
  let at = 0;
  return lengths.map(([name, length], i) => {
    const start = at;
    at += length;
    return { id: `s${i}`, name, start, end: at };
  });
};

describe('chapters', () => {
  // First at 0:00, at least three, ascending, each 10 s: practice of film platforms.
  test('are the scenes where each lasts long enough', () => {
    const { chapters, notes } = makeChapters(scenes(['Why', 20.4], ['How', 65], ['So what', 12]));
    expect(notes).toEqual([]);
    expect(chaptersToList(chapters)).toBe('0:00 Why\n0:20 How\n1:25 So what\n');
    expect(chapters.at(-1)?.end).toBeCloseTo(97.4, 9);
  });

  test('take in scenes that are too short, and say so; the longest gives the name', () => {
    const { chapters, notes } = makeChapters(
      scenes(
        ['Hello', 4],
        ['Why bells are long', 30],
        ['The plug', 11],
        ['Aside', 5],
        ['End', 9.5],
        ['Bye', 3],
      ),
    );
    expect(chapters.map(({ title, scenes: own }) => [title, own])).toEqual([
      ['Why bells are long', ['s0', 's1']],
      ['The plug', ['s2']],
      ['End', ['s3', 's4', 's5']],
    ]);
    expect(notes).toHaveLength(2);
    expect(notes[0]).toContain('“Hello”, “Why bells are long”');
    for (const { start, end } of chapters) expect(end - start).toBeGreaterThanOrEqual(10);
  });

  test('are none where there would be fewer than three', () => {
    expect(makeChapters(scenes(['A', 40], ['B', 9], ['C', 9])).chapters).toEqual([]);
    expect(makeChapters(scenes(['A', 40], ['B', 9], ['C', 9])).notes[0]).toContain('at least 3');
    expect(makeChapters([]).chapters).toEqual([]);
  });

  test('beyond an hour have hours', () => {
    const { chapters } = makeChapters(scenes(['A', 3599], ['B', 3600], ['C', 60]));
    expect(chaptersToList(chapters)).toBe('0:00:00 A\n0:59:59 B\n1:59:59 C\n');
  });

  test('have titles of fifty signs at most, and no word cut where there are any', () => {
    const { chapters } = makeChapters(
      scenes(
        ['A scene with a name that goes on and on and on for longer than fifty signs', 20],
        ['B'.repeat(60), 20],
        ['', 20],
      ),
    );
    expect(chapters.map(({ title }) => title)).toEqual([
      'A scene with a name that goes on and on and on…',
      `${'B'.repeat(49)}…`,
      'Untitled',
    ]);
  });

  test('are read by readers of others, hostile names as plain words', async () => {
    const { chapters } = makeChapters(
      scenes(['Is p < q --> <b>bold</b>\n\nNOTE &lt;', 20], ['\u202eright to left\u202c', 20], ['C & D', 20]),
    );
    const text = chaptersToWebVtt(chapters, 'Chapters of a script');
    const { cues, errors } = readStrictly(text, 'chapters');
    expect(errors).toEqual([]);
    expect(cues.map(({ tree }) => textOf({ type: 'object', ...tree }))).toEqual(
      chapters.map(({ title }) => title),
    );
    const web = await readAsPlayer(text, 'vtt');
    expect(web.errors).toEqual([]);
    expect(web.cues.map(({ startTime }) => startTime)).toEqual([0, 20, 40]);
    expect(chaptersToList(chapters).split('\n')).toHaveLength(4);
    expect(text).not.toMatch(/[\u202a-\u202e]/);
  });
});
