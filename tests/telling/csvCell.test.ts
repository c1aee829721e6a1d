import { expect, test } from 'vitest';
import { csvCell } from '../../src/telling/csvCell.ts';

// RFC 4180, section 2, rules 5 to 7.
test.each([
  ['plain', 'plain'],
  ['a,b', '"a,b"'],
  ['say "so"', '"say ""so"""'],
])('%s is written as %s', (text, cell) => {
  expect(csvCell(text)).toBe(cell);
});

test.each(['=1+1', '+1', '@SUM(A1)', '-A1', '-1+A1', "-2+cmd|' /C calc'!A0", '-.5-A1'])(
  '%s does not run in a spreadsheet',
  (text) => {
    expect(csvCell(text)).toBe(`'${text}`);
  },
);

test.each(['-1', '-1.5', '-.5', '-1e-7', '-2.5E+3', '12'])('%s stays a number', (text) => {
  expect(csvCell(text)).toBe(text);
});
