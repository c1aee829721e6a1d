import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { ProblemError } from '../../src/numerics/problem.ts';
import { editStudy, placeInList } from '../../src/study/edit.ts';
import { readStudy } from '../../src/study/read.ts';

const example = readFileSync(new URL('../../examples/alder-booster/study.yaml', import.meta.url), 'utf8');
const entry = {
  id: 'new-one',
  say: 'It is so: always, he said.',
  said: false,
  holds: 'bell.massFlow > 1 kg/s',
};

const saysOf = (text: string): readonly string[] => {
  const outcome = readStudy(text);
  if (!outcome.ok) throw new Error(outcome.problems[0]!.what);
  return outcome.study.sentences.map(({ id }) => id);
};
const before = saysOf(example);

describe('a sentence added', () => {
  test('stands last, parted like the others, and taking it out again leaves the same bytes', () => {
    const more = editStudy(example, [{ list: 'sentences', add: entry }]);
    expect(saysOf(more)).toEqual([...before, 'new-one']);
    const at = more.indexOf('\n  - id: new-one\n');
    expect(more.slice(0, at)).toMatch(/\n$/);
    expect(more.replace(/\n {2}- id: new-one\n.*\n.*\n.*\n/, '')).toBe(example);
    expect(editStudy(more, [{ list: 'sentences', remove: 'new-one' }]).split('\n')).toEqual(
      expect.arrayContaining(example.split('\n')),
    );
  });

  test('makes the list where there is none, or an empty one', () => {
    const [head = ''] = example.split(/^# Each sentence/m);
    for (const text of [head, head.trimEnd(), `${head}sentences: []\n`, `${head}sentences:\n`]) {
      const more = editStudy(text, [{ list: 'sentences', add: entry }]);
      expect(saysOf(more)).toEqual(['new-one']);
      expect(saysOf(editStudy(more, [{ list: 'sentences', remove: 'new-one' }]))).toEqual([]);
    }
  });

  test('joins a list in one line, and line ends of the other kind', () => {
    const [head = ''] = example.split(/^# Each sentence/m);
    const flow = `${head}sentences: [{ id: a, say: So. }] # mine\n`;
    const more = editStudy(flow, [{ list: 'sentences', add: entry }]);
    expect(saysOf(more)).toEqual(['a', 'new-one']);
    expect(more).toContain('] # mine');
    expect(saysOf(editStudy(more, [{ list: 'sentences', remove: 'a' }]))).toEqual(['new-one']);
    const carried = editStudy(example.replaceAll('\n', '\r\n'), [{ list: 'sentences', add: entry }]);
    expect(carried.replaceAll('\r\n', '')).not.toContain('\n');
    expect(saysOf(carried)).toEqual([...before, 'new-one']);
  });

  test('with a comment has it on the line above, on one line; a list in one line has no room for it', () => {
    const comment = 'found in talk.vtt,\nline 4';
    const more = editStudy(example, [{ list: 'sentences', add: entry, comment }]);
    expect(more).toContain('\n  # found in talk.vtt, line 4\n  - id: new-one\n');
    expect(more.replace(/\n {2}# found.*\n {2}- id: new-one\n.*\n.*\n.*\n/, '')).toBe(example);
    const [head = ''] = example.split(/^# Each sentence/m);
    const flow = `${head}sentences: [{ id: a, say: So. }]\n`;
    expect(() => editStudy(flow, [{ list: 'sentences', add: entry, comment }])).toThrow(ProblemError);
  });

  test('is refused with an id that is there already', () => {
    const twice = () => editStudy(example, [{ list: 'sentences', add: { ...entry, id: before[0]! } }]);
    expect(twice).toThrow(ProblemError);
  });
});

describe('a sentence taken out', () => {
  test.each(before.map((id) => [id]))('%s goes, every comment stays', (id) => {
    const less = editStudy(example, [{ list: 'sentences', remove: id }]);
    expect(saysOf(less)).toEqual(before.filter((other) => other !== id));
    const comments = example.split('\n').filter((line) => /^\s*#/.test(line));
    for (const comment of comments) expect(less).toContain(comment);
    expect(less).not.toMatch(/\n\n\n/);
  });

  test('is refused where there is none', () => {
    expect(() => editStudy(example, [{ list: 'sentences', remove: 'nobody' }])).toThrow(ProblemError);
    expect(placeInList(example, 'sentences', before[1]!)).toBe(1);
    expect(placeInList(example, 'sentences', 'nobody')).toBeNull();
  });
});

test('an entry of keys within keys is written on their line, and reads as meant', () => {
  const map = {
    id: 'new-map',
    of: 'bell.specificImpulse(vacuum)',
    across: { over: 'nozzle.areaRatio' },
    up: { over: 'chamber.pressure' },
  };
  const more = editStudy(example, [{ list: 'maps', add: map }]);
  expect(more).toContain('    across: { over: nozzle.areaRatio }\n    up: { over: chamber.pressure }\n');
  const outcome = readStudy(more);
  expect(outcome.ok && outcome.study.maps.map(({ across, up }) => [across.over, up.over])).toEqual([
    ['nozzle.areaRatio', 'chamber.pressure'],
  ]);
});
