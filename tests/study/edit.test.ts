import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseDocument } from 'yaml';
import { ProblemError } from '../../src/numerics/problem.ts';
import { editStudy, newStudyText } from '../../src/study/edit.ts';
import { readStudy } from '../../src/study/read.ts';
import { editText, parseAsText, yamlScalar } from '../../src/study/textEdit.ts';

const example = readFileSync(new URL('../../examples/alder-booster/study.yaml', import.meta.url), 'utf8');

/** Lines of `after` that `before` does not have, and the other way round. */
function changedLines(before: string, after: string): { gone: string[]; come: string[] } {
  const a = before.split('\n');
  const b = after.split('\n');
  return { gone: a.filter((line) => !b.includes(line)), come: b.filter((line) => !a.includes(line)) };
}

const codeOf = (act: () => unknown): string => {
  try {
    act();
  } catch (error) {
    if (error instanceof ProblemError) return error.problem.code;
    throw error;
  }
  return 'nothing';
};

describe('an edit of a study', () => {
  test('changes one value and no other byte', () => {
    const edited = editStudy(example, [
      { path: ['engines', 'bell', 'chamber', 'pressure'], value: '1450 psi' },
    ]);
    expect(changedLines(example, edited)).toEqual({
      gone: ['      pressure: 100 bar'],
      come: ['      pressure: 1450 psi'],
    });
  });

  test('keeps the comment behind the value, blanks included', () => {
    const edited = editStudy(example, [{ path: ['engines', 'bell', 'propellants', 'ratio'], value: '3.4' }]);
    expect(edited).toContain('propellants: { oxidiser: oxygen, fuel: methane, ratio: 3.4 } # by mass');
  });

  test('gives an engine that is like another a key of its own', () => {
    const path = ['engines', 'adapting', 'chamber', 'pressure'];
    const edited = editStudy(example, [{ path, value: '80 bar' }]);
    expect(changedLines(example, edited)).toEqual({
      gone: [],
      come: ['    chamber: { pressure: 80 bar }'],
    });
    const outcome = readStudy(edited);
    expect(outcome.ok && outcome.study.engines.map((e) => e.chamber.pressure.value)).toEqual([1e7, 1e7, 8e6]);
    // What it does not say itself still comes from the other engine.
    expect(outcome.ok && outcome.study.engines[2]!.chamber.efficiency.path).toBe(
      'engines.bell.chamber.efficiency',
    );
    const back = editStudy(edited, [{ path: ['engines', 'adapting', 'chamber'], value: null }]);
    expect(back).toBe(example);
  });

  test('adds to a flow map, deletes from one, and back', () => {
    const path = ['engines', 'bell', 'nozzle', 'lipAngle'];
    const added = editStudy(example, [{ path, value: '8 deg' }]);
    expect(added).toContain('{ kind: bell, areaRatio: 25, length: 80 %, lipAngle: 8 deg } # length');
    expect(editStudy(added, [{ path, value: null }])).toBe(example);
    const shorter = editStudy(example, [{ path: ['engines', 'bell', 'nozzle', 'length'], value: null }]);
    expect(shorter).toContain('{ kind: bell, areaRatio: 25 } # length');
  });

  test('replaces a section by a single value and a folded text by a line', () => {
    const start = 'plumeline: 1\nquestion: >-\n  long\n  text\n\n# about engines\nengines: {}\n';
    expect(editText(start, { path: ['question'], value: 'short?' })).toBe(
      'plumeline: 1\nquestion: short?\n\n# about engines\nengines: {}\n',
    );
    const block = 'a:\n  chemistry: # how\n    frozenFrom:\n      areaRatio: 3 # why\n  # next\n  b: 1\n';
    expect(editText(block, { path: ['a', 'chemistry'], value: 'frozen' })).toBe(
      'a:\n  chemistry: frozen # how\n  # next\n  b: 1\n',
    );
  });

  test('keeps line ends of either kind, and a file without a last one', () => {
    const crlf = 'a:\r\n  b: 1 # x\r\nc: 2\r\n';
    expect(editText(crlf, { path: ['a', 'd'], value: '5' })).toBe('a:\r\n  b: 1 # x\r\n  d: 5\r\nc: 2\r\n');
    expect(editText(crlf, { path: ['a', 'b'], value: null })).toBe('a: {}\r\nc: 2\r\n');
    expect(editText('a:\n  b: 1', { path: ['a', 'd'], value: 5 })).toBe('a:\n  b: 1\n  d: 5\n');
  });

  test('fills a key that stands alone', () => {
    expect(editText('a:\nb: 1\n', { path: ['a'], value: 'x' })).toBe('a: x\nb: 1\n');
    expect(editText('a: # why\nb: 1\n', { path: ['a', 'c'], value: 'x' })).toBe('a: { c: x } # why\nb: 1\n');
    expect(editText('{ a, b: 1 }\n', { path: ['a'], value: 'x' })).toBe('{ a: x, b: 1 }\n');
  });

  test('edits the items of a list', () => {
    const edited = editStudy(example, [
      { path: ['sentences', 0, 'say'], value: 'At the pad it gains: little.' },
      { path: ['altitudes', 1], value: '70 km' },
    ]);
    expect(edited).toContain('    say: "At the pad it gains: little."\n');
    expect(edited).toContain('altitudes: [11 km, 70 km]');
  });

  test('refuses what would bring a problem, and names it', () => {
    const at = (path: (string | number)[], value: string | null) => () =>
      editStudy(example, [{ path, value }]);
    expect(codeOf(at(['engines', 'bell', 'chamber', 'pressure'], '100 barr'))).toBe('unit-unknown');
    expect(codeOf(at(['engines', 'bell', 'chamber', 'pressure'], null))).toBe('key-missing');
    expect(codeOf(at(['engines', 'bell', 'chamber', 'presure'], '1 bar'))).toBe('key-unknown');
    expect(codeOf(at(['engines', 'bell', 'chemistry', 'frozenFrom'], '1 bar'))).toBe('edit-path-not-a-map');
    expect(codeOf(at(['sentences', 9, 'say'], 'x'))).toBe('edit-path-unknown');
    expect(codeOf(at(['plumeline'], '2'))).toBe('version-newer');
    expect(codeOf(() => editStudy('plumeline: 2\n', [{ path: ['question'], value: 'x' }]))).toBe(
      'version-newer',
    );
    expect(codeOf(() => editStudy('a: [', [{ path: ['question'], value: 'x' }]))).toBe('yaml-syntax');
  });

  test('may mend one of several problems', () => {
    const bad = example.replace('100 bar', '100 barr').replace('areaRatio: 60', 'areaRatio: 0.6');
    const better = editStudy(bad, [{ path: ['engines', 'bell', 'chamber', 'pressure'], value: '100 bar' }]);
    const outcome = readStudy(better);
    expect(outcome.ok ? [] : outcome.problems.map((p) => p.code)).toEqual(['value-out-of-range']);
  });

  test('makes a new study with its question', () => {
    const text = newStudyText(example, 'Which one, and "why": now?');
    const outcome = readStudy(text);
    expect(outcome.ok && outcome.study.question).toBe('Which one, and "why": now?');
    expect(changedLines(example, text).gone).toHaveLength(1);
  });
});

describe('a value written as YAML', () => {
  test('reads back as the same text wherever it stands', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', minLength: 1 }), (value) => {
        const text = value.trim();
        fc.pre(text !== '');
        const scalar = yamlScalar(value);
        expect(parseAsText(`a: ${scalar} # c\n`).toJS()).toEqual({ a: text });
        expect(parseAsText(`{ a: ${scalar}, b: 1 }`).toJS()).toEqual({ a: text, b: '1' });
        // Other programs read the file with YAML's usual types: text must stay text for them.
        if (!/^["\d.+-]/.test(scalar)) expect(parseDocument(`a: ${scalar}`).toJS()).toEqual({ a: text });
      }),
      { numRuns: 2000 },
    );
  });
});

describe('edits at random', () => {
  const tree = fc.letrec((tie) => ({
    leaf: fc.constantFrom('1', '100 bar', 'x y', '"q: r"'),
    map: fc.dictionary(fc.constantFrom('a', 'b', 'c', 'd'), tie('any'), { minKeys: 1, maxKeys: 3 }),
    any: fc.oneof({ weight: 2, arbitrary: tie('leaf') }, { weight: 1, arbitrary: tie('map') }),
  })).map;

  function block(value: unknown, indent: string, comment: number): string {
    let n = comment;
    return Object.entries(value as Record<string, unknown>)
      .map(([key, inner]) => {
        n += 1;
        const note = n % 3 === 0 ? `${indent}# about ${key}\n` : '';
        const behind = n % 2 === 0 ? '  # behind' : '';
        if (typeof inner === 'string') return `${note}${indent}${key}: ${inner}${behind}\n`;
        if (n % 4 === 0) return `${note}${indent}${key}: ${flow(inner)}${behind}\n`;
        return `${note}${indent}${key}:${behind}\n${block(inner, `${indent}  `, n)}`;
      })
      .join('');
  }
  const flow = (value: unknown): string =>
    typeof value === 'string'
      ? value
      : `{ ${Object.entries(value as object)
          .map(([key, inner]) => `${key}: ${flow(inner)}`)
          .join(', ')} }`;

  test('make what the tree says and lose no comment of what stays', () => {
    let done = 0;
    fc.assert(
      fc.property(
        tree,
        fc.nat(3),
        fc.array(fc.constantFrom('a', 'b', 'c', 'd', 'e'), { minLength: 1, maxLength: 3 }),
        fc.constantFrom('7 bar', 'a: b', null),
        (value, seed, path, set) => {
          const text = block(value, '', seed);
          const document = parseAsText(text);
          let edited: string;
          try {
            edited = editText(text, { path, value: set });
          } catch (error) {
            expect(error).toBeInstanceOf(ProblemError);
            return;
          }
          if (set === null) {
            if (document.hasIn(path)) document.deleteIn(path);
          } else document.setIn(path, set);
          expect(parseAsText(edited).errors).toEqual([]);
          expect(parseAsText(edited).toJS()).toEqual(document.toJS());
          const kept = set !== null && !document.hasIn([...path, 'a']);
          if (kept && parseAsText(text).getIn(path) === undefined) {
            expect((edited.match(/#/g) ?? []).length).toBe((text.match(/#/g) ?? []).length);
          }
          done += 1;
        },
      ),
      { numRuns: 1500 },
    );
    expect(done).toBeGreaterThan(500);
  });
});
