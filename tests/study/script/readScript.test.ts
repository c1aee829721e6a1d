/** The form of docs/script.md, read: what it says, and where it cannot be read. */

import { expect, test } from 'vitest';
import { readScript } from '../../../src/study/script/index.ts';

const WHOLE = `---
pace: 130
units: both
cuts: { short: { length: 40 s, keep: [why], leave: [pad.2] }, long: { length: 10 min } }
---
# My *title*

<!-- a note to myself -->

## The pad {#pad weight=3 relies=end}

> cut-in-vacuum from pad to vacuum

At the pad the bell pushes with {{bell.thrust(pad) in kN, about, 2 digits}},
and **the plug** with {{plug.thrust(pad), spoken}}. {#why weight=2 relies=end,pad.2 says=lets-go pause=1.5s}

No more.

## The end

Good [night](http://example.org/x) &amp; thanks \\{all\\}. {#end}
`;

test('a whole script is read, without a problem', () => {
  const { script, problems } = readScript(WHOLE, { sentences: ['lets-go'] });
  expect(problems).toEqual([]);
  expect(script).toMatchObject({ title: 'My title', pace: 130, densePace: 120, units: 'both' });
  expect(script.cuts).toEqual([
    { name: 'short', length: 40, keep: ['why'], leave: ['pad.2'] },
    { name: 'long', length: 600, keep: [], leave: [] },
  ]);
  expect(script.scenes.map(({ id, name, weight, relies }) => ({ id, name, weight, relies }))).toEqual([
    { id: 'pad', name: 'The pad', weight: 3, relies: ['end'] },
    { id: 'the-end', name: 'The end', weight: 0, relies: [] },
  ]);
  expect(script.scenes[0]!.shown).toMatchObject([{ figure: 'cut-in-vacuum', at: 'why' }]);
  const [why, second] = script.scenes[0]!.lines;
  expect(why).toMatchObject({ id: 'why', weight: 2, relies: ['end', 'pad.2'], says: 'lets-go', pause: 1.5 });
  expect(second).toMatchObject({ id: 'pad.2', weight: 1, pause: 0 });
  expect(why!.pieces).toMatchObject([
    { kind: 'words', text: 'At the pad the bell pushes with ' },
    { kind: 'number', expression: 'bell.thrust(pad)', unit: 'kN', about: true, spoken: false, digits: 2 },
    { kind: 'words', text: ', and the plug with ' },
    { kind: 'number', expression: 'plug.thrust(pad)', about: false, spoken: true },
    { kind: 'words', text: '.' },
  ]);
  expect(script.scenes[1]!.lines[0]!.pieces).toMatchObject([{ text: 'Good night & thanks {all}.' }]);
});

test('places are those of the file, whatever its line ends', () => {
  for (const text of [WHOLE, WHOLE.replaceAll('\n', '\r\n')]) {
    const { script } = readScript(text);
    const [line] = script.scenes[0]!.lines;
    const number = line!.pieces[1]!;
    expect(text.slice(number.from, number.to)).toBe('{{bell.thrust(pad) in kN, about, 2 digits}}');
    expect(text.slice(line!.from, line!.from + 10)).toBe('At the pad');
  }
});

test.each([
  ['Words {{bell.thrust(pad), abut}}.', 'number-option-unknown', 1, 7, 'Did you mean about?'],
  ['Words {{bell.thrust(pad) in kNN}}.', 'unit-unknown', 1, 7, 'Did you mean kN?'],
  ['Words {{ }}.', 'number-empty', 1, 7, 'Write it like'],
  ['Words {{bell.thrust(pad.', 'number-open', 1, 7, 'Write }}'],
  ['One {#one}\n\nTwo {relies=onn}', 'line-unknown', 3, 13, 'Did you mean one?'],
  ['One {#one}\n\nTwo {#one}', 'id-twice', 3, 1, 'an id of its own'],
  ['One {says=lets-gone}', 'sentence-unknown', 1, 11, 'Did you mean lets-go?'],
  ['One {wieght=2}', 'attribute-unknown', 1, 6, 'Did you mean weight=?'],
  ['One {weight=200}', 'weight-unfit', 1, 6, '0 to 100'],
  ['One {pause=2 days}', 'pause-unfit', 1, 6, 'seconds'],
  ['- a list', 'block-not-said', 1, 1, 'paragraphs'],
  ['One <b>two</b>', 'not-said', 1, 5, 'backslash'],
  ['### Deep\n\nOne', 'heading-too-deep', 1, 1, '##'],
  ['# A\n\n# B\n\nOne', 'title-twice', 3, 1, '##'],
  ['> shown\nsaid\n\nOne', 'shown-runs-on', 2, 1, 'empty line'],
  ['> shown', 'shown-without-line', 1, 3, 'before the line'],
  ['---\npace: 900\n---\nOne', 'pace-unfit', 2, 7, '40 to 400'],
  ['---\nunits: imperial\n---\nOne', 'word-unknown', 2, 8, 'customary'],
  ['---\ncuts: { a: { length: 1 s } }\n---\nOne', 'value-out-of-range', 2, 22, '40 s'],
  ['---\ncuts: { a: { length: 9 s, keep: [on] } }\n---\nOne {#one}', 'line-unknown', 2, 34, 'one'],
  ['---\npace: 140\nOne', 'head-open', 1, 1, '---'],
  ['One\u202etwo', 'hidden-sign', 1, 4, 'Delete'],
  [`One ${'x '.repeat(5000)}`, 'paragraph-too-long', 1, 1, 'empty lines'],
])('%s', (text, code, line, column, mend) => {
  const { problems, script } = readScript(text, { sentences: ['lets-go'] });
  const found = problems.find((problem) => problem.code === code);
  expect(found?.place, JSON.stringify(problems)).toEqual({ line, column });
  expect(found!.mend).toContain(mend);
  expect(found!.where).toContain(`script.md:${line}:${column}`);
  expect(script.scenes.length).toBeLessThanOrEqual(1);
});

test('what turns the direction of words, or cannot be seen, is not in the words', () => {
  const { script } = readScript('One\u202e two\u200b\u0007 {{bell.thrust(pad)}} <script>x</script> three');
  const words = script.scenes[0]!.lines[0]!.pieces.map((piece) =>
    piece.kind === 'words' ? piece.text : '',
  ).join('');
  expect(words).not.toMatch(/[\u202e\u200b\p{Cc}<]/u);
});

test('paragraphs before the first heading are a scene of their own', () => {
  const { script } = readScript('One.\n\n## Two\n\nThree.');
  expect(script.scenes.map(({ id, lines }) => [id, lines.length])).toEqual([
    ['opening', 1],
    ['two', 1],
  ]);
});

test('more lines than anybody says are left out, and told', () => {
  const { script, problems } = readScript('One.\n\n'.repeat(5001));
  expect(script.scenes[0]!.lines).toHaveLength(5000);
  expect(problems[0]!.code).toBe('script-too-long');
  expect(readScript('x'.repeat(400_001)).problems[0]!.code).toBe('script-too-long');
});
