import { describe, expect, test } from 'vitest';
import { framesOf } from '../../../src/telling/explore/frames.ts';

const svg = (x: number, words: string): string =>
  `<svg viewBox="0 0 9 9" style="a:b"><title>${words}</title><path d="M${x} 1.26L2 -3.449Z"/><g class="a"><rect/></g><text>${words}</text></svg>`;

describe('pictures at many altitudes', () => {
  const all = [svg(1.04, 'one'), svg(2.06, 'two'), svg(1.04, 'one'), svg(3, 'two')];
  const { parts, frames } = framesOf(all);
  const drawn = frames.map((frame) => frame.map((part) => parts[part]).join(''));

  test('each is put together again from its pieces, to a tenth of a pixel', () => {
    expect(drawn[0]).toBe(
      '<svg viewBox="0 0 9 9"><title>one</title><path d="M1 1.3L2 -3.4Z"/><g class="a"><rect/></g><text>one</text></svg>',
    );
    expect(drawn[1]).toContain('<title>two</title><path d="M2.1 1.3L2 -3.4Z"/>');
    expect(drawn[2]).toBe(drawn[0]);
    expect(drawn[3]).toContain('M3 1.3');
  });

  test('words, their numbers and what is no place stay as they are', () => {
    const text = '<svg><g opacity="0.86" aria-label="0.034 bar"><text x="1.26">0.034 bar</text></g></svg>';
    const kept = framesOf([text]);
    expect(kept.parts.join('')).toBe(text.replace('1.26', '1.3'));
  });

  test('what they share is kept once', () => {
    expect(new Set(parts).size).toBe(parts.length);
    expect(parts.join('').length).toBeLessThan(all.join('').length * 0.7);
    expect(parts.some((part) => part.includes('<g class="a"><rect/></g>'))).toBe(true);
  });

  test('a lone picture is one piece, and none gives none', () => {
    expect(framesOf([svg(1, 'one')]).parts.length).toBe(1);
    expect(framesOf([])).toEqual({ parts: [], frames: [] });
  });
});
