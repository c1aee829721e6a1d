import { expect, test } from 'vitest';
import { wrapText } from '../../src/telling/look/measureText.ts';

test('a number and its per cent sign stay on one line, however narrow it is', () => {
  for (let width = 60; width <= 400; width += 5) {
    for (const line of wrapText('plug cut to 30 %, area ratio 60', width, 20, 400)) {
      expect(line, `at ${width}`).not.toMatch(/^%/);
    }
  }
});
