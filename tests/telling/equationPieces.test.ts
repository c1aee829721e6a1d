import { expect, test } from 'vitest';
import { equationHtml } from '../../src/telling/page/equationPieces.ts';

test('lowered and raised parts of an equation stand lower and higher, and a stranger’s markup stays text', () => {
  expect(equationHtml('I_sp = F / (ṁ g₀)')).toBe('I<sub>sp</sub> = F / (ṁ g₀)');
  expect(equationHtml('p_sep = p_a (1.88 M − 1)^−0.64')).toBe(
    'p<sub>sep</sub> = p<sub>a</sub> (1.88 M − 1)<sup>−0.64</sup>',
  );
  expect(equationHtml('x_{i,j} < y^{a+b}')).toBe('x<sub>i,j</sub> &lt; y<sup>a+b</sup>');
  expect(equationHtml('<b>_x')).toBe('&lt;b&gt;<sub>x</sub>');
});
