/** The editor's view of a script: every sign in its place, live numbers found, expressions put in. */

import { describe, expect, it } from 'vitest';
import {
  appended,
  completed,
  inserted,
  markedLines,
  numberAt,
  startOfLine,
} from '../../../src/faces/workbench/state/writing/scriptMarks.ts';

const script = `---
pace: 140
---
# What a plug gains

<!-- A note
over two lines -->
## At the pad {#pad weight=1}

> cut-at-sea-level
Here it gains {{plug.thrust(pad) in kN, about}} and \\{ that {{bell.areaRatio}} is it. {#small says=pad-gain}
Not closed {{bell.thr
`;

const kinds = (line: number) => markedLines(script)[line - 1]?.marks.map(({ kind }) => kind);

describe('marks of a script', () => {
  it('joined are the text', () => {
    const joined = markedLines(script)
      .map(({ marks }) => marks.map(({ text }) => text).join(''))
      .join('\n');
    expect(joined).toBe(script);
  });

  it('tell head, title, notes, scenes, what is shown, numbers and names apart', () => {
    expect(kinds(2)).toEqual(['head']);
    expect(kinds(4)).toEqual(['title']);
    expect([kinds(6), kinds(7)]).toEqual([['note'], ['note']]);
    expect(kinds(8)).toEqual(['scene', 'name']);
    expect(kinds(10)).toEqual(['shown']);
    expect(kinds(11)).toEqual(['words', 'number', 'words', 'number', 'words', 'name']);
    expect(kinds(12)).toEqual(['words', 'number']);
  });

  it('find a line by its number', () => {
    expect(script.slice(startOfLine(script, 10)).startsWith('> cut')).toBe(true);
    expect(startOfLine('one', 5)).toBe(0);
  });
});

/** The caret stands at the stroke. */
const at = (marked: string) => {
  const caret = marked.indexOf('|');
  const text = marked.replace('|', '');
  return { text, found: numberAt(text, caret) };
};

describe('the live number at the caret', () => {
  it('is found while it is typed, and completed with its braces', () => {
    const { text, found } = at('Now {{exit pressure| and more');
    expect(found?.typed).toBe('exit pressure');
    const { from, to, text: put, caret } = completed(found!, 'bell.exitPressure(10 km)');
    const next = text.slice(0, from) + put + text.slice(to);
    expect(next).toBe('Now {{bell.exitPressure(10 km)}} and more');
    expect(next.slice(0, caret).endsWith('}}')).toBe(true);
  });

  it('keeps how it is told, and the braces that are there', () => {
    const { text, found } = at('{{thr|ust in kN, about}} it is');
    const { from, to, text: put } = completed(found!, 'bell.thrust(pad)');
    expect(text.slice(0, from) + put + text.slice(to)).toBe('{{bell.thrust(pad), about}} it is');
  });

  it('may have commas within brackets', () => {
    expect(at('{{bell.thrust(12 km, thro|').found?.typed).toBe('bell.thrust(12 km, thro');
    expect(at('{{bell.thrust(pad), ab|out}}').found).toBeNull();
  });

  it('is none outside of braces, behind them, or on another line', () => {
    expect(at('Now | {{bell.thrust}}').found).toBeNull();
    expect(at('{{bell.thrust}} n|ow').found).toBeNull();
    expect(at('{{bell\nn|ow').found).toBeNull();
  });

  it('is put into words with spaces where they are missing', () => {
    const put = (text: string, caret: number) => {
      const { from, text: words } = inserted(text, caret, 'bell.areaRatio');
      return text.slice(0, from) + words + text.slice(from);
    };
    expect(put('Now.', 3)).toBe('Now {{bell.areaRatio}}.');
    expect(put('Now so', 4)).toBe('Now {{bell.areaRatio}} so');
    expect(put('', 0)).toBe('{{bell.areaRatio}}');
  });

  it('is a paragraph of its own at the end', () => {
    expect(appended('', 'a.b').text).toBe('{{a.b}}');
    expect(appended('Said.\n', 'a.b').text).toBe('\n{{a.b}}');
    expect(appended('Said.', 'a.b').text).toBe('\n\n{{a.b}}');
  });
});
