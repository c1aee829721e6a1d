import { describe, expect, it } from 'vitest';
import { type Done, emptyHistory, recorded, steppedBack, steppedForth } from '../../src/study/history.ts';

const done = (before: string, after: string, more: Partial<Done> = {}): Done => ({
  before,
  after,
  words: after,
  gesture: null,
  time: 0,
  begun: more.time ?? 0,
  by: 'here',
  ...more,
});

describe('the history of a text', () => {
  it('goes back and forth over any run of changes to the very same texts', () => {
    const texts = ['a: 1\nb: 2\n', 'a: 1\nb: 3\n', 'a: 1\nb: 3\nc: 4\n', 'b: 3\nc: 4\n', ''];
    let history = emptyHistory;
    texts.slice(1).forEach((after, i) => {
      history = recorded(history, done(texts[i] ?? '', after));
    });
    let text = texts.at(-1) ?? '';
    for (const expected of texts.slice(0, -1).reverse()) {
      const back = steppedBack(history, text);
      ({ history, text } = back ?? { history, text: 'no step' });
      expect(text).toBe(expected);
    }
    expect(steppedBack(history, text)).toBeNull();
    for (const expected of texts.slice(1)) {
      const forth = steppedForth(history, text);
      ({ history, text } = forth ?? { history, text: 'no step' });
      expect(text).toBe(expected);
    }
    expect(steppedForth(history, text)).toBeNull();
  });

  it('makes one step of a gesture: a slider that is dragged', () => {
    let history = emptyHistory;
    const at = (bar: number) => `pressure: ${bar} bar # kept`;
    for (let bar = 100; bar < 130; bar++) {
      history = recorded(history, done(at(bar), at(bar + 1), { gesture: 'pressure', time: bar * 50 }));
    }
    expect(history.done).toHaveLength(1);
    expect(steppedBack(history, at(130))?.text).toBe(at(100));
  });

  it('keeps steps apart by pause, by place and by who made them', () => {
    const first = recorded(emptyHistory, done('1', '2', { gesture: 'a', time: 0 }));
    expect(recorded(first, done('2', '3', { gesture: 'a', time: 2000 })).done).toHaveLength(2);
    expect(recorded(first, done('2', '3', { gesture: 'b', time: 10 })).done).toHaveLength(2);
    expect(recorded(first, done('2', '3', { gesture: 'a', time: 10, by: 'elsewhere' })).done).toHaveLength(2);
    expect(recorded(first, done('2', '3', { gesture: null, time: 10 })).done).toHaveLength(2);
  });

  it('holds nothing of a gesture that ends where it began, and nothing of no change', () => {
    const there = recorded(emptyHistory, done('1', '2', { gesture: 'a' }));
    expect(recorded(there, done('2', '1', { gesture: 'a' })).done).toHaveLength(0);
    expect(recorded(emptyHistory, done('1', '1')).done).toHaveLength(0);
  });

  it('forgets what was taken back once something else is done', () => {
    const one = recorded(emptyHistory, done('1', '2'));
    const back = steppedBack(one, '2');
    expect(back?.history.undone).toHaveLength(1);
    expect(recorded(back?.history ?? one, done('1', '9')).undone).toHaveLength(0);
  });

  it('does not touch a text that its step does not lead to', () => {
    const one = recorded(emptyHistory, done('pressure: 100', 'pressure: 130'));
    expect(steppedBack(one, 'something else')).toBeNull();
  });
});
