import { describe, expect, test } from 'vitest';
import { isDay, type SignOff, stateText } from '../../../src/study/review/model.ts';
import { readReview } from '../../../src/study/review/readReview.ts';
import { reviewText, withSignOffs } from '../../../src/study/review/writeReview.ts';

const signOff = (id: string, by: string, date = '2026-11-26'): SignOff => ({
  id,
  by,
  date,
  hash: 'ab'.repeat(32),
  reviewed: {
    say: 'It pushes: "harder" # in vacuum\n</script>',
    test: 'a.thrust(vacuum) > 1 N',
    verdict: 'safe to say',
    rests: ['a.thrust(vacuum): about 3 kN', 'yes', '2026-11-26'],
  },
});

describe('review.yaml', () => {
  test('what is written is read back, whatever the words', () => {
    const all = [
      signOff('one', 'J. Doe'),
      { ...signOff('2', 'no'), reviewed: { ...signOff('2', 'no').reviewed, test: null } },
    ];
    expect(readReview(reviewText(all))).toEqual({ ok: true, signOffs: all });
    expect(readReview(reviewText([]))).toEqual({ ok: true, signOffs: [] });
  });

  test('a later sign-off by the same person replaces the earlier one; another’s stays', () => {
    const all = withSignOffs([signOff('one', 'A'), signOff('one', 'B')], [signOff('one', 'A', '2026-12-01')]);
    expect(all.map(({ by, date }) => `${by} ${date}`)).toEqual(['B 2026-11-26', 'A 2026-12-01']);
  });

  test.each([
    ['no YAML', '{', /review\.yaml/],
    ['another file', 'plumeline: 1', /no review/],
    ['a later form', 'plumeline-review: 2\nreviews: []', /no review/],
    ['a piece missing', reviewText([signOff('one', 'A')]).replace(/ {4}verdict.*\n/, ''), /entry 1/],
    ['no day', reviewText([signOff('one', 'A', '2026-02-30')]), /entry 1/],
    ['aliases', 'a: &a [1]\nplumeline-review: 1\nreviews: [*a]', /./],
  ])('%s is told, not half read', (_, text, what) => {
    const outcome = readReview(text);
    expect(outcome.ok).toBe(false);
    if (!outcome.ok) expect(`${outcome.problem.file} ${outcome.problem.what}`).toMatch(what);
  });

  test('a day is a day of the calendar', () => {
    expect(['2024-02-29', '2000-02-29', '2026-12-31'].every(isDay)).toBe(true);
    expect(['2026-02-29', '1900-02-29', '2026-04-31', '2026-13-01', '26-01-01', '2026-1-1'].some(isDay)).toBe(
      false,
    );
  });

  test('the text that is hashed tells every part apart', () => {
    const { reviewed } = signOff('one', 'A');
    const texts = [
      reviewed,
      { ...reviewed, say: '' },
      { ...reviewed, test: null },
      { ...reviewed, rests: [] },
      { ...reviewed, verdict: 'x' },
    ].map(stateText);
    expect(new Set(texts).size).toBe(5);
  });
});
