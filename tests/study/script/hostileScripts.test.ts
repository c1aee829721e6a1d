/** Whatever stands in the file, it is read without a throw, with places in the file and ids that hold together. */

import { expect, test } from 'vitest';
import { randomStream } from '../../../src/numerics/randomStream.ts';
import { PLAIN_ID } from '../../../src/study/form.ts';
import { readScript } from '../../../src/study/script/index.ts';

const PIECES = [
  '# ',
  '## ',
  '### ',
  '> ',
  '- ',
  '1. ',
  '    ',
  '```',
  '---\n',
  '---',
  '\n',
  '\n\n',
  '\r\n',
  '\r',
  '{{',
  '}}',
  '{',
  '}',
  '{#',
  '#a',
  ' weight=',
  '2',
  ' relies=a,b',
  'says=',
  'pause=1s',
  ', about',
  ' in kN',
  'bell.thrust(pad)',
  '(',
  ')',
  '[',
  ']',
  '](',
  '![',
  '<',
  '>',
  '<!--',
  '-->',
  '<b',
  '&amp;',
  '&#x0;',
  '&#1114112;',
  '*',
  '**',
  '_',
  '`',
  '\\',
  '\u202e',
  '\u0000',
  '\ud800',
  '\ufeff',
  'word ',
  'é',
  '😀',
  '\t',
  'cuts: ',
  '{ a: { length: 40 s } }',
  'pace: ',
  '140',
  '*a: &b',
  '%YAML',
  '|',
  '~',
  '=',
  '===',
];

function hostile(seed: number): string {
  const next = randomStream(seed);
  const length = 1 + Math.floor(next() * 60);
  const head = next() < 0.3 ? '---\n' : '';
  return head + Array.from({ length }, () => PIECES[Math.floor(next() * PIECES.length)]!).join('');
}

test.each([1, 2, 3, 4])('three hundred hostile scripts of seed %s', (start) => {
  let read = 0;
  for (let i = 0; i < 300; i++) {
    const text = hostile(1000 * start + i);
    const { script, problems } = readScript(text, { sentences: ['a'] });
    const lines = script.scenes.flatMap((scene) => scene.lines);
    const ids = [...script.scenes, ...lines].map(({ id }) => id);
    expect(new Set(ids).size, text).toBe(ids.length);
    for (const id of ids) expect(id).toMatch(PLAIN_ID);
    for (const { pieces, from, to } of lines) {
      expect(pieces.length).toBeGreaterThan(0);
      for (const piece of pieces) {
        expect(piece.from >= from && piece.to <= to && piece.from < piece.to, text).toBe(true);
        if (piece.kind === 'words') expect(piece.text).not.toMatch(/[\u202e\ufeff\p{Cc}]/u);
      }
      read += 1;
    }
    for (const { shown, lines: own } of script.scenes) {
      for (const { at } of shown) expect(own.map(({ id }) => id)).toContain(at);
    }
    for (const { what, mend } of problems) expect(what !== '' && mend !== '').toBe(true);
  }
  // Seeds that read nothing would prove nothing.
  expect(read).toBeGreaterThan(100);
});

test.each(['[', '*a ', '> ', '[a](', '{{', '{ ', '- ', '`', '_a*b', '<', '![[', '&', '\\', '# ', '{#a} '])(
  'nothing that nests or opens without end stops it: %s',
  (sign) => {
    const long = sign.repeat(Math.floor(3900 / sign.length));
    const { script } = readScript(`${`${long}\n\n`.repeat(8)}The end.`);
    expect(script.scenes.at(-1)!.lines.length).toBeGreaterThan(0);
  },
);
