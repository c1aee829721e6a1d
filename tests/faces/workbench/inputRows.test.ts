import { describe, expect, it } from 'vitest';
import { steppedText } from '../../../src/faces/workbench/state/inputRows.ts';

describe('one step of an input', () => {
  it.each([
    ['100 bar', 1, false, '101 bar'],
    ['100 bar', -1, true, '90 bar'],
    ['97.5 ± 1 %', 1, false, '97.6 ± 1 %'],
    ['3.50', -1, false, '3.49'],
    ['0.1', -1, false, '0.0'],
    ['9.9 MPa', 1, false, '10.0 MPa'],
    ['-3 °C', 1, false, '-2 °C'],
    ['1450psi', 1, true, '1460psi'],
  ] as const)('%s, %d, large %s → %s', (text, direction, large, expected) => {
    expect(steppedText(text, direction, large)).toBe(expected);
  });

  it('leaves alone what does not begin with a number', () => {
    expect(steppedText('vacuum', 1, false)).toBeNull();
  });
});
